#include "pdf_helper.hpp"

#include "pdf/exit_status.hpp"

#include <fcntl.h>
#include <poll.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <climits>
#include <cstdlib>
#include <cstring>
#include <stdexcept>

extern char** environ;

namespace leavenwright {
namespace {

// The file of a program that runs, without its name; empty where the system does not say.
std::string own_folder() {
    std::array<char, PATH_MAX> path{};
    const ssize_t length = ::readlink("/proc/self/exe", path.data(), path.size());
    const std::string file(path.data(), length > 0 ? static_cast<std::size_t>(length) : 0);
    return file.substr(0, file.find_last_of('/') + 1);
}

std::string find_program() {
    if (const char* named = std::getenv("LEAVENWRIGHT_PDF"); named != nullptr && *named != '\0') {
        return named;
    }
    const std::string beside = own_folder() + "leavenwright-pdf";
    return ::access(beside.c_str(), X_OK) == 0 ? beside
                                               : own_folder() + "../libexec/leavenwright/leavenwright-pdf";
}

class Pipe {
public:
    Pipe() {
        if (::pipe2(ends_.data(), O_CLOEXEC) != 0) {
            throw std::runtime_error(std::string("no pipe: ") + std::strerror(errno));
        }
    }
    ~Pipe() {
        close(0);
        close(1);
    }
    Pipe(const Pipe&) = delete;
    Pipe& operator=(const Pipe&) = delete;

    int end(std::size_t which) const { return ends_[which]; }
    bool is_open(std::size_t which) const { return ends_[which] >= 0; }
    void close(std::size_t which) {
        if (ends_[which] >= 0) {
            ::close(ends_[which]);
            ends_[which] = -1;
        }
    }

private:
    std::array<int, 2> ends_{-1, -1}; // to read from, to write to
};

struct Finished {
    int status = pdf_faulty;
    std::string output;
    std::string complaint;
};

void take(Pipe& pipe, std::string& text) {
    std::array<char, 65536> buffer{};
    const ssize_t got = ::read(pipe.end(0), buffer.data(), buffer.size());
    if (got > 0) {
        text.append(buffer.data(), static_cast<std::size_t>(got));
    } else if (got == 0 || errno != EINTR) {
        pipe.close(0);
    }
}

void give(Pipe& pipe, std::string_view& rest) {
    const ssize_t written = ::write(pipe.end(1), rest.data(), rest.size());
    if (written > 0) {
        rest.remove_prefix(static_cast<std::size_t>(written));
    }
    const bool is_gone = written < 0 && errno != EAGAIN && errno != EINTR;
    if (rest.empty() || is_gone) {
        pipe.close(1);
    }
}

// Feeds and empties the pipes as each side is ready, so that neither waits for the other.
void exchange(Pipe& input, std::string_view rest, Pipe& output, Pipe& complaint, Finished& finished) {
    ::fcntl(input.end(1), F_SETFL, O_NONBLOCK);
    while (input.is_open(1) || output.is_open(0) || complaint.is_open(0)) {
        std::array<pollfd, 3> ready{pollfd{input.end(1), POLLOUT, 0}, pollfd{output.end(0), POLLIN, 0},
                                    pollfd{complaint.end(0), POLLIN, 0}};
        if (::poll(ready.data(), ready.size(), -1) < 0 && errno != EINTR) {
            return;
        }
        if (ready[0].revents != 0) {
            give(input, rest);
        }
        if (ready[1].revents != 0) {
            take(output, finished.output);
        }
        if (ready[2].revents != 0) {
            take(complaint, finished.complaint);
        }
    }
}

Finished run(const std::string& program, const std::string& input_text) {
    Pipe input;
    Pipe output;
    Pipe complaint;
    posix_spawn_file_actions_t actions;
    ::posix_spawn_file_actions_init(&actions);
    ::posix_spawn_file_actions_adddup2(&actions, input.end(0), STDIN_FILENO);
    ::posix_spawn_file_actions_adddup2(&actions, output.end(1), STDOUT_FILENO);
    ::posix_spawn_file_actions_adddup2(&actions, complaint.end(1), STDERR_FILENO);
    std::string name = program;
    std::array<char*, 2> arguments{name.data(), nullptr};
    pid_t child = 0;
    const int fault = ::posix_spawn(&child, program.c_str(), &actions, nullptr, arguments.data(), environ);
    ::posix_spawn_file_actions_destroy(&actions);
    if (fault != 0) {
        return {.status = pdf_faulty, .output = {}, .complaint = std::strerror(fault)};
    }
    input.close(0);
    output.close(1);
    complaint.close(1);
    Finished finished;
    exchange(input, input_text, output, complaint, finished);
    int status = 0;
    while (::waitpid(child, &status, 0) < 0 && errno == EINTR) {
    }
    finished.status = WIFEXITED(status) ? WEXITSTATUS(status) : pdf_faulty;
    if (WIFSIGNALED(status)) {
        finished.complaint = "it was ended by signal " + std::to_string(WTERMSIG(status));
    }
    return finished;
}

// Without the empty lines that a report may begin with.
std::string first_line(const std::string& text) {
    const std::size_t begin = text.find_first_not_of("\r\n");
    return begin == std::string::npos ? std::string()
                                      : text.substr(begin, text.find_first_of("\r\n", begin) - begin);
}

std::string reason(const Finished& finished) {
    const std::string said = first_line(finished.complaint);
    return said.empty() ? "it ended with status " + std::to_string(finished.status) : said;
}

} // namespace

std::optional<std::string> pdf_of_cards(const std::string& json, Diagnostics& diagnostics) {
    const std::string program = find_program();
    Finished finished = run(program, json);
    if (finished.status == pdf_done) {
        return std::move(finished.output);
    }
    if (finished.status == pdf_font_missing) {
        diagnostics.error(
            Code::font_missing, {},
            "no font here has every character of " + in_quotes(first_line(finished.output)),
            "install the Debian packages fonts-dejavu-core, fonts-noto-core and fonts-noto-cjk, "
            "or take --format html");
        return std::nullopt;
    }
    diagnostics.error(Code::pdf_unavailable, {}, "cannot run " + in_quotes(program) + ": " + reason(finished),
                      "install leavenwright with its PDF program, name it in LEAVENWRIGHT_PDF, or take "
                      "--format html and print that");
    return std::nullopt;
}

} // namespace leavenwright
