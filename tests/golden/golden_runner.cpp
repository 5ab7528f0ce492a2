// Runs a session of the command and compares what it prints with what the session says.
// README.md describes the format.
//
//     golden_runner COMMAND SESSION           exit 0 as expected, 1 different, 2 no such session
//     golden_runner --accept COMMAND SESSION  writes what was printed into the session
#include <fcntl.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <csignal>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace {

namespace fs = std::filesystem;

constexpr std::string_view header_mark = "--- ";
// The last line of a text that ends without a newline.
constexpr std::string_view no_newline = "\\ no newline";
constexpr unsigned seconds_per_run = 60;
constexpr int exit_same = 0;
constexpr int exit_different = 1;
constexpr int exit_no_session = 2;

constexpr auto kinds = std::to_array<std::string_view>(
    {"file", "file-hex", "run", "stdout", "stderr", "exit", "expect-file", "no-file"});

struct Section {
    std::string kind;
    std::string argument;
    std::string body; // the lines up to the next header
    std::size_t line = 0;
};

struct Session {
    std::string preamble;
    std::vector<Section> sections;
};

struct Outcome {
    std::string output;
    std::string errors;
    int status = 0;
};

[[noreturn]] void refuse(const std::string& why) {
    throw std::runtime_error(why);
}

// ---- texts

std::vector<std::string> lines_of(std::string_view text) {
    std::vector<std::string> lines;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        lines.emplace_back(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return lines;
}

bool is_header(std::string_view line) {
    return line.starts_with(header_mark);
}

std::string text_of(const Section& section) {
    std::string text = section.body;
    const std::string ending = std::string(no_newline) + "\n";
    if (text == ending) {
        return {};
    }
    if (text.ends_with("\n" + ending)) {
        text.resize(text.size() - ending.size() - 1);
    }
    return text;
}

// The other way: a text as lines of a section.
std::string body_of(const std::string& text) {
    for (const std::string& line : lines_of(text)) {
        if (is_header(line)) {
            refuse("the output holds the line '" + line +
                   "', which a session reads as a section; pipe it through sed");
        }
    }
    return text.empty() || text.back() == '\n' ? text : text + "\n" + std::string(no_newline) + "\n";
}

int hex_value(char digit) {
    const auto byte = static_cast<unsigned char>(digit);
    if (std::isdigit(byte) != 0) {
        return digit - '0';
    }
    return std::isxdigit(byte) != 0 ? std::tolower(byte) - 'a' + 10 : -1;
}

std::string bytes_of_hex(const Section& section) {
    std::string bytes;
    int high = -1;
    for (const char digit : section.body) {
        if (std::isspace(static_cast<unsigned char>(digit)) != 0) {
            continue;
        }
        const int value = hex_value(digit);
        if (value < 0) {
            refuse("line " + std::to_string(section.line) + ": '" + std::string(1, digit) +
                   "' is no hex digit");
        }
        if (high < 0) {
            high = value;
        } else {
            bytes.push_back(static_cast<char>(high * 16 + value));
            high = -1;
        }
    }
    if (high >= 0) {
        refuse("line " + std::to_string(section.line) + ": an odd number of hex digits");
    }
    return bytes;
}

// ---- files

std::string read_file(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    if (!in || fs::is_directory(path)) {
        refuse("cannot read " + path.string());
    }
    return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

void write_file(const fs::path& path, const std::string& text) {
    if (path.has_parent_path()) {
        fs::create_directories(path.parent_path());
    }
    std::ofstream out(path, std::ios::binary);
    out << text;
    out.close();
    if (!out) {
        refuse("cannot write " + path.string());
    }
}

// A folder of its own, gone at the end.
class TemporaryFolder {
public:
    TemporaryFolder() {
        std::string name = (fs::temp_directory_path() / "golden.XXXXXX").string();
        if (::mkdtemp(name.data()) == nullptr) {
            refuse("cannot make a temporary folder");
        }
        path_ = name;
    }
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;
    ~TemporaryFolder() {
        std::error_code ignored;
        fs::remove_all(path_, ignored);
    }
    const fs::path& path() const { return path_; }

private:
    fs::path path_;
};

// ---- the session

Section read_header(const std::string& line, std::size_t number) {
    const std::string rest = line.substr(header_mark.size());
    const std::size_t space = std::min(rest.find(' '), rest.size());
    Section section{.kind = rest.substr(0, space), .argument = {}, .body = {}, .line = number};
    if (std::find(kinds.begin(), kinds.end(), section.kind) == kinds.end()) {
        refuse("line " + std::to_string(number) + ": unknown section '" + section.kind + "'");
    }
    section.argument = space < rest.size() ? rest.substr(space + 1) : "";
    return section;
}

// What follows a section of one line: notes for the reader.
void check_is_comment(const Section& section) {
    const bool has_body = section.kind != "exit" && section.kind != "no-file";
    if (has_body) {
        return;
    }
    for (const std::string& line : lines_of(section.body)) {
        if (!line.empty() && line.front() != '#') {
            refuse("line " + std::to_string(section.line) + ": '" + section.kind +
                   "' takes no lines, only comments");
        }
    }
}

void check_order(const Session& session) {
    bool has_run = false;
    for (const Section& section : session.sections) {
        const bool is_file = section.kind == "file" || section.kind == "file-hex";
        has_run = has_run || section.kind == "run";
        if (is_file == has_run && section.kind != "run") {
            refuse("line " + std::to_string(section.line) +
                   ": files stand before the first run, expectations after it");
        }
        check_is_comment(section);
    }
    if (!has_run) {
        refuse("the session runs nothing");
    }
}

Session read_session(const fs::path& path) {
    Session session;
    std::size_t number = 0;
    for (const std::string& line : lines_of(read_file(path))) {
        ++number;
        if (is_header(line)) {
            session.sections.push_back(read_header(line, number));
        } else if (session.sections.empty()) {
            if (!line.empty() && line.front() != '#') {
                refuse("line " + std::to_string(number) + ": only comments stand before the first section");
            }
            session.preamble += line + "\n";
        } else {
            session.sections.back().body += line + "\n";
        }
    }
    check_order(session);
    return session;
}

std::string text_of(const Session& session) {
    std::string text = session.preamble;
    for (const Section& section : session.sections) {
        const std::string space = section.argument.empty() ? "" : " ";
        text += std::string(header_mark) + section.kind + space + section.argument + "\n" + section.body;
    }
    return text;
}

// ---- running

void redirect(const char* path, int flags, int descriptor) {
    const int opened = ::open(path, flags, 0600);
    if (opened < 0 || ::dup2(opened, descriptor) < 0) {
        ::_exit(127);
    }
    ::close(opened);
}

[[noreturn]] void become_shell(const fs::path& root, const std::string& script) {
    constexpr int overwrite = O_WRONLY | O_CREAT | O_TRUNC;
    redirect("/dev/null", O_RDONLY, STDIN_FILENO);
    redirect((root / "stdout").c_str(), overwrite, STDOUT_FILENO);
    redirect((root / "stderr").c_str(), overwrite, STDERR_FILENO);
    std::signal(SIGPIPE, SIG_DFL); // as in a terminal, whoever started us
    ::umask(022);
    ::alarm(seconds_per_run);
    if (::chdir((root / "work").c_str()) == 0) {
        ::execl("/bin/sh", "sh", "-c", script.c_str(), static_cast<char*>(nullptr));
    }
    ::_exit(127);
}

Outcome run_script(const fs::path& root, const std::string& script) {
    std::fflush(nullptr);
    const pid_t child = ::fork();
    if (child < 0) {
        refuse("cannot start a shell");
    }
    if (child == 0) {
        become_shell(root, script);
    }
    int status = 0;
    while (::waitpid(child, &status, 0) < 0) {
    }
    Outcome outcome{.output = read_file(root / "stdout"), .errors = read_file(root / "stderr"), .status = 0};
    outcome.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
    return outcome;
}

void set_variable(const char* name, const std::string& value) {
    if (::setenv(name, value.c_str(), 1) != 0) {
        refuse("cannot set " + std::string(name));
    }
}

void prepare(const fs::path& root, const fs::path& command, const Session& session) {
    const char* source = std::getenv("LEAVENWRIGHT_SOURCE_DIR");
    if (source == nullptr) {
        refuse("LEAVENWRIGHT_SOURCE_DIR is not set");
    }
    fs::create_directories(root / "bin");
    fs::create_directories(root / "work");
    fs::create_symlink(fs::canonical(command), root / "bin" / "leavenwright");
    const char* path = std::getenv("PATH");
    set_variable("PATH", (root / "bin").string() + ":" + (path == nullptr ? "/usr/bin:/bin" : path));
    set_variable("FORMULAS", (fs::canonical(source) / "formulas").string());
    set_variable("LC_ALL", "C.UTF-8");
    for (const Section& section : session.sections) {
        if (section.kind == "file") {
            write_file(root / "work" / section.argument, text_of(section));
        } else if (section.kind == "file-hex") {
            write_file(root / "work" / section.argument, bytes_of_hex(section));
        }
    }
}

std::string script_of(const Section& run) {
    return run.argument + "\n" + run.body;
}

// ---- comparing

struct Change {
    char mark; // ' ' in both, '-' expected only, '+' got only
    std::size_t number;
    std::string line;
};

// Lengths of the longest common subsequences of the ends of both.
std::vector<std::vector<std::size_t>> common_lengths(const std::vector<std::string>& expected,
                                                     const std::vector<std::string>& got) {
    std::vector<std::vector<std::size_t>> lengths(expected.size() + 1,
                                                  std::vector<std::size_t>(got.size() + 1));
    for (std::size_t i = expected.size(); i-- > 0;) {
        for (std::size_t j = got.size(); j-- > 0;) {
            lengths[i][j] = expected[i] == got[j] ? lengths[i + 1][j + 1] + 1
                                                  : std::max(lengths[i + 1][j], lengths[i][j + 1]);
        }
    }
    return lengths;
}

std::vector<Change> changes_of(const std::vector<std::string>& expected,
                               const std::vector<std::string>& got) {
    const auto lengths = common_lengths(expected, got);
    std::vector<Change> changes;
    std::size_t i = 0;
    std::size_t j = 0;
    while (i < expected.size() || j < got.size()) {
        if (i < expected.size() && j < got.size() && expected[i] == got[j]) {
            changes.push_back({' ', j + 1, got[j]});
            ++i;
            ++j;
        } else if (j == got.size() || (i < expected.size() && lengths[i + 1][j] >= lengths[i][j + 1])) {
            changes.push_back({'-', i + 1, expected[i]});
            ++i;
        } else {
            changes.push_back({'+', j + 1, got[j]});
            ++j;
        }
    }
    return changes;
}

// Bytes that a terminal would not show, made visible.
std::string visible(const std::string& line) {
    std::string shown;
    for (const char character : line) {
        const auto byte = static_cast<unsigned char>(character);
        if (byte >= 0x20U && byte != 0x7FU) {
            shown.push_back(character);
            continue;
        }
        std::array<char, 8> text{};
        std::snprintf(text.data(), text.size(), "\\x%02X", static_cast<unsigned>(byte));
        shown += text.data();
    }
    return shown;
}

void print_difference(const std::string& what, const std::string& expected, const std::string& got) {
    constexpr std::size_t context = 2;
    std::printf("%s differs (- expected, + got):\n", what.c_str());
    const std::vector<Change> changes = changes_of(lines_of(body_of(expected)), lines_of(body_of(got)));
    const auto is_near_change = [&](std::size_t at) {
        const std::size_t from = at > context ? at - context : 0;
        const std::size_t to = std::min(at + context + 1, changes.size());
        return std::any_of(changes.begin() + static_cast<std::ptrdiff_t>(from),
                           changes.begin() + static_cast<std::ptrdiff_t>(to),
                           [](const Change& change) { return change.mark != ' '; });
    };
    for (std::size_t at = 0; at < changes.size(); ++at) {
        if (is_near_change(at)) {
            std::printf("  %c %4zu | %s\n", changes[at].mark, changes[at].number,
                        visible(changes[at].line).c_str());
        }
    }
}

class Comparison {
public:
    explicit Comparison(const fs::path& work) : work_(work) {}

    void compare(const std::string& what, const std::string& expected, const std::string& got) {
        if (expected != got) {
            is_same_ = false;
            print_difference(what, expected, got);
        }
    }

    void compare_file(const Section& section) {
        const fs::path path = work_ / section.argument;
        if (!fs::is_regular_file(path)) {
            fail("file " + section.argument + " is not there");
        } else {
            compare("file " + section.argument, text_of(section), read_file(path));
        }
    }

    void compare_absence(const Section& section) {
        if (fs::exists(fs::symlink_status(work_ / section.argument))) {
            fail("file " + section.argument + " is there");
        }
    }

    void fail(const std::string& what) {
        is_same_ = false;
        std::printf("%s\n", what.c_str());
    }

    bool is_same() const { return is_same_; }

private:
    fs::path work_;
    bool is_same_ = true;
};

// A run and the expectations that follow it, up to the next run.
using Sections = std::vector<Section>;

std::vector<Sections> runs_of(const Session& session) {
    std::vector<Sections> runs;
    for (const Section& section : session.sections) {
        if (section.kind == "run") {
            runs.emplace_back();
        }
        if (!runs.empty()) {
            runs.back().push_back(section);
        }
    }
    return runs;
}

const Section* find_section(const Sections& run, std::string_view kind) {
    const auto found =
        std::find_if(run.begin(), run.end(), [&](const Section& section) { return section.kind == kind; });
    return found == run.end() ? nullptr : &*found;
}

bool check_run(const Sections& run, const Outcome& outcome, const fs::path& work) {
    const Section* output = find_section(run, "stdout");
    const Section* errors = find_section(run, "stderr");
    const Section* status = find_section(run, "exit");
    Comparison comparison(work);
    comparison.compare("stdout", output == nullptr ? "" : text_of(*output), outcome.output);
    comparison.compare("stderr", errors == nullptr ? "" : text_of(*errors), outcome.errors);
    comparison.compare("exit status", (status == nullptr ? "0" : status->argument) + "\n",
                       std::to_string(outcome.status) + "\n");
    for (const Section& section : run) {
        if (section.kind == "expect-file") {
            comparison.compare_file(section);
        } else if (section.kind == "no-file") {
            comparison.compare_absence(section);
        }
    }
    if (!comparison.is_same()) {
        std::printf("of the run on line %zu: %s\n\n", run.front().line, script_of(run.front()).c_str());
    }
    return comparison.is_same();
}

// The run with what it printed in place of what was expected.
Sections accepted(const Sections& run, const Outcome& outcome, const fs::path& work) {
    Sections result{run.front()};
    const auto add = [&](const std::string& kind, const std::string& argument, const std::string& body) {
        result.push_back({.kind = kind, .argument = argument, .body = body, .line = 0});
    };
    if (!outcome.output.empty()) {
        add("stdout", "", body_of(outcome.output));
    }
    if (!outcome.errors.empty()) {
        add("stderr", "", body_of(outcome.errors));
    }
    const Section* status = find_section(run, "exit");
    add("exit", std::to_string(outcome.status), status == nullptr ? "" : status->body);
    for (const Section& section : run) {
        if (section.kind == "expect-file") {
            add(section.kind, section.argument, body_of(read_file(work / section.argument)));
        } else if (section.kind == "no-file") {
            result.push_back(section);
        }
    }
    return result;
}

bool run_session(const fs::path& command, const fs::path& path, bool accept) {
    Session session = read_session(path);
    const TemporaryFolder folder;
    prepare(folder.path(), command, session);
    const fs::path work = folder.path() / "work";
    bool is_same = true;
    const std::vector<Sections> runs = runs_of(session);
    std::erase_if(session.sections, [](const Section& section) {
        return section.kind != "file" && section.kind != "file-hex";
    });
    for (const Sections& run : runs) {
        const Outcome outcome = run_script(folder.path(), script_of(run.front()));
        if (accept) {
            const Sections now = accepted(run, outcome, work);
            session.sections.insert(session.sections.end(), now.begin(), now.end());
        } else {
            is_same = check_run(run, outcome, work) && is_same;
        }
    }
    if (accept) {
        write_file(path, text_of(session));
    }
    return is_same;
}

} // namespace

int main(int count, char** arguments) {
    std::vector<std::string> words(arguments + 1, arguments + count);
    const bool accept = !words.empty() && words.front() == "--accept";
    if (accept) {
        words.erase(words.begin());
    }
    if (words.size() != 2) {
        std::fprintf(stderr, "usage: golden_runner [--accept] COMMAND SESSION\n");
        return exit_no_session;
    }
    try {
        return run_session(words[0], words[1], accept) ? exit_same : exit_different;
    } catch (const std::exception& fault) {
        std::fprintf(stderr, "%s: %s\n", words[1].c_str(), fault.what());
        return exit_no_session;
    }
}
