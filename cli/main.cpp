#include "exit_status.hpp"
#include "files.hpp"
#include "options.hpp"
#include "verbs/verbs.hpp"

#include <csignal>
#include <exception>
#include <string>

namespace leavenwright {
namespace {

int run(int count, char** arguments) {
    const ReadOptions read = read_options(count, arguments);
    if (read.options) {
        return run_verb(*read.options);
    }
    if (read.status == exit_done) {
        return deliver_output(read.answer);
    }
    write_error(read.answer);
    return read.status;
}

} // namespace
} // namespace leavenwright

int main(int count, char** arguments) {
    std::signal(SIGPIPE, SIG_IGN); // a pager that was closed is no fault
    std::signal(SIGXFSZ, SIG_IGN); // a file that may not grow so large is reported where it is written
    try {
        return leavenwright::run(count, arguments);
    } catch (const std::exception& fault) {
        leavenwright::write_error(
            "leavenwright: internal error, please report it: " + std::string(fault.what()) + "\n");
        return leavenwright::exit_our_fault;
    }
}
