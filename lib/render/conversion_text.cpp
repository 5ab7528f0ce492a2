#include "convert/describe_conversion.hpp"
#include "quantity/show.hpp"
#include "render/conversion.hpp"
#include "render/text_table.hpp"
#include "render/weigh_out.hpp"
#include "source/unicode.hpp"
#include "source/wrap_text.hpp"

#include <fmt/core.h>

namespace leavenwright {
namespace {

class ConversionSheet {
public:
    ConversionSheet(const Conversion& conversion, const TextStyle& style)
        : conversion_(conversion), style_(style) {}

    std::string text() {
        write_heading();
        const WeighOut weigh_out = render_weigh_out(conversion_.after, style_);
        out_ += weigh_out.tables;
        write_removed();
        out_ += "\n" + weigh_out.as_weighed;
        write_uncertainty();
        write_balance();
        write_notes();
        return std::move(out_);
    }

private:
    void write_heading() {
        out_ += wrap_text(printable(conversion_.after.name, 400) + ", raised by a levain", "", "  ",
                          style_.columns);
        if (conversion_.after.makes) {
            out_ += "makes " + printable(conversion_.after.makes->text, 70) + "\n";
        }
        out_ += wrap_text(describe_levain(conversion_.levain), "", "", style_.columns);
    }

    void write_removed() {
        if (conversion_.removed.empty()) {
            return;
        }
        out_ += "\ntaken out\n";
        TextTable table(style_.columns);
        for (const Removed& removed : conversion_.removed) {
            const std::vector<Mass> mass{removed.mass};
            table.add_row({removed.name, show_weighed(weigh(mass, style_.scale).total, style_.scale)});
        }
        out_ += table.text();
    }

    void write_uncertainty() {
        const double spread = conversion_.overall_before.hydration_uncertainty().value();
        if (spread > noticeable_spread) {
            const double middle = conversion_.overall_after.hydration_true().value();
            out_ += wrap_text(fmt::format("Cups, spoons and counts leave the true hydration between {:.0f} "
                                          "and {:.0f} %: weigh once to know.",
                                          (middle - spread) * 100.0, (middle + spread) * 100.0),
                              "", "", style_.columns);
        }
    }

    void write_balance() {
        out_ += "\nbalance\n";
        const ShownBalance balance = show_balance(conversion_.balance, conversion_, style_.scale);
        TextTable table(style_.columns);
        table.add_row({"", "before", "after", "difference"});
        for (const ShownBalanceRow& row : balance.rows) {
            table.add_row({row.name, row.before, row.after, row.difference});
        }
        out_ += table.text();
        for (const std::string& reason : balance.reasons) {
            out_ += wrap_text(printable(reason, 1000), "  ", "      ", style_.columns);
        }
    }

    void write_notes() {
        if (conversion_.notes.empty()) {
            return;
        }
        out_ += "\nnotes\n";
        for (const std::string& note : conversion_.notes) {
            out_ += wrap_text(printable(note, 2000), "- ", "  ", style_.columns);
        }
    }

    const Conversion& conversion_;
    const TextStyle& style_;
    std::string out_;
};

} // namespace

std::string render_conversion_text(const Conversion& conversion, const TextStyle& style) {
    return ConversionSheet(conversion, style).text();
}

} // namespace leavenwright
