// Reads a workbook (flat ODF) that a spreadsheet program has computed, and compares the
// rows "check, what, result, expected, size" that write_workbook wrote:
//
//     compare_workbook workbook.fods
//
// Results agree within 1e-9 of the size: far above the rounding of doubles, far below any scale.
// Prints what does not agree, then "N passed, N failed".
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

namespace {

constexpr double tolerance = 1e-9;

struct Cell {
    std::string text;  // shown
    std::string value; // office:value, all digits
};

std::string attribute(std::string_view tag, std::string_view name) {
    const std::string start = " " + std::string(name) + "=\"";
    const std::size_t begin = tag.find(start);
    if (begin == std::string_view::npos) {
        return {};
    }
    const std::size_t from = begin + start.size();
    return std::string(tag.substr(from, tag.find('"', from) - from));
}

// The cells of one row, repeated ones as often as they stand.
std::vector<Cell> cells_of(std::string_view row) {
    std::vector<Cell> cells;
    std::size_t at = 0;
    while ((at = row.find("<table:table-cell", at)) != std::string_view::npos) {
        const std::size_t tag_end = row.find('>', at);
        const std::string_view tag = row.substr(at, tag_end - at);
        Cell cell{.text = {}, .value = attribute(tag, "office:value")};
        at = tag_end;
        if (!tag.ends_with('/')) {
            const std::size_t end = row.find("</table:table-cell>", at);
            const std::string_view inside = row.substr(at, end - at);
            const std::size_t text = inside.find("<text:p>");
            if (text != std::string_view::npos) {
                const std::size_t from = text + 8;
                cell.text = std::string(inside.substr(from, inside.find("</text:p>", from) - from));
            }
            at = end;
        }
        const std::string repeated = attribute(tag, "table:number-columns-repeated");
        const long times = repeated.empty() ? 1 : std::min(std::atol(repeated.c_str()), 8L);
        cells.insert(cells.end(), static_cast<std::size_t>(times), cell);
    }
    return cells;
}

// The number behind a word: "expected 12.5".
double number_after(std::string_view word, const std::string& text) {
    return text.starts_with(word) ? std::strtod(text.c_str() + word.size(), nullptr) : std::nan("");
}

bool agrees(const Cell& result, double expected, double size) {
    char* end = nullptr;
    const double value = std::strtod(result.value.c_str(), &end);
    const bool is_number = !result.value.empty() && *end == '\0';
    return is_number && std::abs(value - expected) <= tolerance * size;
}

} // namespace

int main(int argc, char** argv) {
    std::ifstream file(argc == 2 ? argv[1] : "", std::ios::binary);
    if (!file) {
        std::cerr << "compare_workbook: give a workbook\n";
        return 1;
    }
    std::ostringstream content;
    content << file.rdbuf();
    const std::string xml = content.str();

    int passed = 0;
    int failed = 0;
    std::string sheet;
    std::size_t at = 0;
    while ((at = xml.find("<table:table", at)) != std::string::npos) {
        const std::string_view rest = std::string_view(xml).substr(at);
        if (rest.starts_with("<table:table ")) {
            sheet = attribute(rest.substr(0, rest.find('>')), "table:name");
        }
        if (!rest.starts_with("<table:table-row")) {
            ++at;
            continue;
        }
        const std::size_t end = std::min(rest.find("</table:table-row>"), rest.size());
        at += end;
        const std::vector<Cell> cells = cells_of(rest.substr(0, end));
        if (cells.empty() || cells[0].text != "check") {
            continue;
        }
        const bool is_whole = cells.size() >= 5;
        const double expected = is_whole ? number_after("expected ", cells[3].text) : std::nan("");
        const double size = is_whole ? number_after("size ", cells[4].text) : std::nan("");
        if (is_whole && agrees(cells[2], expected, size)) {
            ++passed;
        } else {
            ++failed;
            std::printf("FAILED: %s: %s: computed %s, %s\n", sheet.c_str(),
                        is_whole ? cells[1].text.c_str() : "row", is_whole ? cells[2].value.c_str() : "",
                        is_whole ? cells[3].text.c_str() : "not whole");
        }
    }
    std::printf("%d passed, %d failed\n", passed, failed);
    return failed == 0 && passed > 0 ? 0 : 1;
}
