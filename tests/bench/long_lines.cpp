// One line, or many, of 1 MB and of half of it, of several kinds, through the reader of recipes: the time for
// twice the length is about twice the time. Prints both.
#include "diagnostic/diagnostic.hpp"
#include "transcribe/transcribe.hpp"

#include <fmt/core.h>

#include <array>
#include <chrono>
#include <memory>
#include <string>
#include <utility>

using namespace leavenwright;

namespace {

double milliseconds_for(const std::string& text) {
    const Pantry pantry;
    const auto source = std::make_shared<SourceText>("long.txt", text);
    const auto begin = std::chrono::steady_clock::now();
    Diagnostics diagnostics;
    const bool is_recipe = is_recipe_text(*source, pantry);
    const auto transcription = transcribe(source, pantry, diagnostics);
    const std::chrono::duration<double, std::milli> time = std::chrono::steady_clock::now() - begin;
    if (is_recipe && !transcription && diagnostics.empty()) {
        fmt::print("no answer\n");
    }
    return time.count();
}

std::string repeated(const std::string& part, std::size_t bytes) {
    std::string text = "500 g flour\n300 g water\n";
    while (text.size() < bytes) {
        text += part;
    }
    return text.substr(0, bytes) + "\n";
}

} // namespace

int main() {
    constexpr std::size_t half = 500'000;
    constexpr auto kinds = std::to_array<std::pair<const char*, const char*>>({
        {"digits", "9"},
        {"fractions", "1 1/2 "},
        {"brackets", "("},
        {"amounts", "1 cup flour, "},
        {"amounts with in", "1 cup flour in 2 cups water "},
        {"plus", "1 cup plus "},
        {"or", "butter or "},
        {"words", "warm "},
        {"letters", "a"},
        {"vulgar", "\xC2\xBD"},
        {"bullets", "- "},
        {"ingredient lines", "1 cup flour in 2 cups water\n"},
        {"unknown lines", "1 cup flowr of the moon\n"},
        {"sentences", "Let rise 1 hour at 80 F. "},
        {"titles", "\nROLLS\n\nMix it all with both hands.\n"},
        {"columns", "2 cups milk     2 cups water\n                  (a remark\n"},
        {"heads of stages", "SPONGE.  DOUGH.  TOTAL.\n"},
        {"leaders", "Flour .... 1 cup    "},
        {"lists and steps", "1 cup flour\n2 tsp salt\n\nMix it now, and let it rise for an hour or two.\n\n"},
        {"tags", "<b>"},
        {"json", "{\"@type\":\"x\","},
    });
    fmt::print("{:<18} {:>10} {:>10} {:>6}\n", "kind", "0.5 MB", "1 MB", "ratio");
    for (const auto& [name, part] : kinds) {
        const double once = milliseconds_for(repeated(part, half));
        const double twice = milliseconds_for(repeated(part, 2 * half));
        const double page_once = milliseconds_for("<p>" + repeated(part, half));
        const double page_twice = milliseconds_for("<p>" + repeated(part, 2 * half));
        fmt::print("{:<18} {:>7.1f} ms {:>7.1f} ms {:>6.2f}   page {:>7.1f} {:>7.1f} ms\n", name, once, twice,
                   twice / once, page_once, page_twice);
    }
}
