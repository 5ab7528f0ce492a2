// Writes the man page and the completions for bash, zsh and fish from the option table. Run by
// the build:
//
//     describe_command FOLDER
#include "describe/describe.hpp"

#include <cstdio>
#include <fstream>
#include <string>
#include <string_view>

namespace leavenwright {
namespace {

bool write_file(const std::string& path, const std::string& text) {
    std::ofstream file(path, std::ios::binary);
    file << text << std::flush;
    if (!file) {
        std::fprintf(stderr, "describe_command: cannot write %s\n", path.c_str());
    }
    return static_cast<bool>(file);
}

} // namespace
} // namespace leavenwright

int main(int count, char** arguments) {
    using namespace leavenwright;
    if (count != 2) {
        std::fputs("usage: describe_command FOLDER\n", stderr);
        return 2;
    }
    const std::string folder = std::string(arguments[1]) + "/";
    const bool written = write_file(folder + "leavenwright.1", man_page()) &&
                         write_file(folder + "leavenwright.bash", bash_completion()) &&
                         write_file(folder + "_leavenwright", zsh_completion()) &&
                         write_file(folder + "leavenwright.fish", fish_completion());
    return written ? 0 : 1;
}
