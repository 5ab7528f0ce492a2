// leavenwright-pdf: cards as JSON on standard input, a PDF on standard output, or a text that
// no font has all characters of. A program of its own,
// so that the command does without the libraries that set type.
#include "pdf/card_sheet.hpp"
#include "pdf/exit_status.hpp"
#include "pdf/read_card.hpp"

#include <cstdio>
#include <exception>
#include <string>

namespace leavenwright {
namespace {

std::string read_input() {
    std::string text;
    char buffer[65536];
    std::size_t got = 0;
    while ((got = std::fread(buffer, 1, sizeof buffer, stdin)) > 0) {
        text.append(buffer, got);
    }
    return text;
}

int write_pdf() {
    const CardFile file = read_cards(read_input());
    PdfDocument pdf(file.paper, file.cards.size() == 1 ? file.cards.front().title : "Bake cards");
    for (const Card& card : file.cards) {
        draw_card(card, pdf);
    }
    if (!pdf.texts_without_font().empty()) {
        std::fprintf(stdout, "%s\n", pdf.texts_without_font().front().c_str());
        return pdf_font_missing;
    }
    const std::string bytes = pdf.finish();
    const bool is_whole = std::fwrite(bytes.data(), 1, bytes.size(), stdout) == bytes.size();
    return is_whole && std::fflush(stdout) == 0 ? pdf_done : pdf_faulty;
}

} // namespace
} // namespace leavenwright

int main() {
    try {
        return leavenwright::write_pdf();
    } catch (const std::exception& fault) {
        std::fprintf(stderr, "%s\n", fault.what());
        return leavenwright::pdf_faulty;
    }
}
