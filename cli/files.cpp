#include "files.hpp"

#include "document/document.hpp"
#include "exit_status.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <climits>
#include <cstdio>
#include <cstring>

namespace leavenwright {
namespace {

bool write_all(int descriptor, std::string_view text) {
    while (!text.empty()) {
        const ssize_t written = ::write(descriptor, text.data(), text.size());
        if (written < 0 && errno != EINTR) {
            return false;
        }
        text.remove_prefix(written > 0 ? static_cast<std::size_t>(written) : 0);
    }
    return true;
}

std::string reason() {
    return std::strerror(errno);
}

// Read and write for all, less the process's mask: what a newly made file has.
mode_t usual_mode() {
    const mode_t mask = ::umask(0);
    ::umask(mask);
    return static_cast<mode_t>(0666) & ~mask;
}

} // namespace

ReadFile read_file(const std::string& path) {
    const bool is_input = path == "-";
    const int descriptor = is_input ? STDIN_FILENO : ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
    if (descriptor < 0) {
        return {nullptr, reason()};
    }
    struct stat status {};
    const bool has_size = ::fstat(descriptor, &status) == 0 && S_ISREG(status.st_mode);
    const auto size = has_size ? static_cast<std::size_t>(status.st_size) : 0;
    // Room for the whole of a known size and the end after it; small at first for pipes.
    std::size_t room = std::min(size, largest_document_bytes) + 1;
    room = std::max<std::size_t>(room, 4096);
    std::string text;
    ssize_t got = 1;
    while (text.size() <= largest_document_bytes && got != 0) {
        const std::size_t before = text.size();
        text.resize(before + room);
        got = ::read(descriptor, text.data() + before, room);
        if (got < 0 && errno != EINTR) {
            const std::string why = reason();
            if (!is_input) {
                ::close(descriptor);
            }
            return {nullptr, why};
        }
        text.resize(before + (got > 0 ? static_cast<std::size_t>(got) : 0));
    }
    if (!is_input) {
        ::close(descriptor);
    }
    return {std::make_shared<SourceText>(is_input ? "standard input" : path, std::move(text)), {}};
}

namespace {

// Where a path leads through links, so that the file is replaced and not the link to it; a link may lead to
// what is not there yet.
std::string resolved(std::string path) {
    constexpr int most_links = 16;
    for (int links = 0; links < most_links; ++links) {
        std::string target(PATH_MAX, '\0');
        const ssize_t length = ::readlink(path.c_str(), target.data(), target.size());
        if (length <= 0) {
            break;
        }
        target.resize(static_cast<std::size_t>(length));
        const std::size_t slash = path.rfind('/');
        const bool is_beside = !target.starts_with('/') && slash != std::string::npos;
        path = is_beside ? path.substr(0, slash + 1) + target : target;
    }
    return path;
}

// Devices and pipes are written to; replacing one by a file would take it away from everyone.
std::string write_through(const std::string& path, std::string_view text) {
    const int descriptor = ::open(path.c_str(), O_WRONLY | O_CLOEXEC);
    if (descriptor < 0) {
        return reason();
    }
    const std::string fault = write_all(descriptor, text) ? "" : reason();
    ::close(descriptor);
    return fault;
}

// By way of a file beside it, so that it is there whole or not at all.
std::string replace_file(const std::string& path, std::string_view text, bool force, mode_t mode) {
    std::string beside = path + ".XXXXXX";
    const int descriptor = ::mkstemp(beside.data());
    if (descriptor < 0) {
        return reason();
    }
    const bool is_good =
        write_all(descriptor, text) && ::fchmod(descriptor, mode) == 0 && ::fsync(descriptor) == 0;
    std::string fault = is_good ? "" : reason();
    ::close(descriptor);
    // A link fails where a rename would replace a file that came into being meanwhile.
    if (is_good && ::link(beside.c_str(), path.c_str()) == 0) {
        ::unlink(beside.c_str());
        return {};
    }
    const bool may_rename = is_good && (force || errno != EEXIST);
    if (may_rename && ::rename(beside.c_str(), path.c_str()) == 0) {
        return {};
    }
    fault = fault.empty() ? reason() : fault;
    ::unlink(beside.c_str());
    return fault;
}

} // namespace

std::string write_file(const std::string& path, std::string_view text, bool force) {
    struct stat status {};
    const bool exists = ::stat(path.c_str(), &status) == 0;
    if (exists && S_ISDIR(status.st_mode)) {
        return "it is a folder";
    }
    if (exists && !S_ISREG(status.st_mode)) {
        return write_through(path, text);
    }
    if (exists && !force) {
        return "the file is there already; --force replaces it";
    }
    const mode_t mode = exists ? status.st_mode & static_cast<mode_t>(07777) : usual_mode();
    return replace_file(resolved(path), text, force, mode);
}

int deliver_output(std::string_view text) {
    if (write_all(STDOUT_FILENO, text) || errno == EPIPE) {
        return exit_done;
    }
    write_error("leavenwright: cannot write to standard output: " + reason() + "\n");
    return exit_cannot_write;
}

void write_error(std::string_view text) {
    write_all(STDERR_FILENO, text);
}

} // namespace leavenwright
