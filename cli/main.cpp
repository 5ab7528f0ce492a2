#include "exit_status.hpp"
#include "files.hpp"
#include "options.hpp"
#include "verbs/convert.hpp"
#include "verbs/pantry.hpp"

#include <csignal>
#include <exception>
#include <string>

namespace leavenwright {
namespace {

int run(const Answered& answer) {
    if (answer.status == exit_done) {
        return write_output(answer.text) ? exit_done : exit_cannot_write;
    }
    write_error(answer.text);
    return answer.status;
}
int run(const ConvertOptions& options) {
    return run_convert(options);
}
int run(const PantryOptions& options) {
    return run_pantry(options);
}

} // namespace
} // namespace leavenwright

int main(int count, char** arguments) {
    std::signal(SIGPIPE, SIG_IGN); // a pager that was closed is no fault
    try {
        const auto options = leavenwright::read_options(count, arguments);
        return std::visit([](const auto& chosen) { return leavenwright::run(chosen); }, options);
    } catch (const std::exception& fault) {
        leavenwright::write_error(
            "leavenwright: internal error, please report it: " + std::string(fault.what()) + "\n");
        return leavenwright::exit_our_fault;
    }
}
