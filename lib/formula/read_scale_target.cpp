#include "formula/read_scale_target.hpp"

#include "formula/read_process.hpp"
#include "quantity/number.hpp"
#include "quantity/read_quantity.hpp"
#include "source/unicode.hpp"

#include <array>
#include <numbers>

namespace leavenwright {
namespace {

constexpr double inch_cm = 2.54;
constexpr double fill_area_cm2 = 1000.0; // that --fill is given for
constexpr double largest_factor = 1e6;

class TargetReader {
public:
    TargetReader(const WrittenScaleTarget& written, Diagnostics& diagnostics)
        : written_(written), diagnostics_(diagnostics) {}

    std::optional<ScaleTarget> read() {
        if (!is_one_size()) {
            return std::nullopt;
        }
        if (written_.dough) {
            const auto mass = read_mass(*written_.dough, diagnostics_);
            return mass ? std::optional<ScaleTarget>(
                              ToDough{*mass, std::string(trimmed(*written_.dough).text)})
                        : std::nullopt;
        }
        if (written_.flour) {
            const auto mass = read_mass(*written_.flour, diagnostics_);
            return mass ? std::optional<ScaleTarget>(ToFlour{*mass}) : std::nullopt;
        }
        if (written_.pieces) {
            return read_pieces();
        }
        if (written_.baked) {
            return read_baked();
        }
        return written_.factor ? read_factor() : read_pans();
    }

private:
    void refuse(const SourcedText& place, std::string message, std::string hint) {
        diagnostics_.error(Code::scale_target_unfit, place, std::move(message), std::move(hint));
    }

    bool is_one_size() {
        const SourcedText* first = nullptr;
        for (const auto* size : {&written_.dough, &written_.pieces, &written_.flour, &written_.baked,
                                 &written_.pan_volume, &written_.pan_area, &written_.factor}) {
            if (*size && first != nullptr) {
                refuse(**size, "two sizes are given", "keep one of them");
                return false;
            }
            first = *size ? &**size : first;
        }
        if (first == nullptr) {
            refuse({}, "no size is given to scale to",
                   "say one: --dough 1.8kg, --pieces \"3 x 600 g\", --flour 1kg, --baked 800g --loss "
                   "12%, --pan-volume 2l --fill 0.5kg, --by 1.5");
            return false;
        }
        if (written_.loss && !written_.baked) {
            refuse(*written_.loss, "a loss belongs to --baked",
                   "add --baked with the weight out of the oven");
            return false;
        }
        if (written_.fill && !written_.pan_volume && !written_.pan_area) {
            refuse(*written_.fill, "a fill belongs to pans", "add --pan-volume or --pan-area");
            return false;
        }
        return true;
    }

    std::optional<ScaleTarget> read_pieces() {
        const auto yield = read_yield(*written_.pieces, diagnostics_);
        if (!yield) {
            return std::nullopt;
        }
        if (!yield->pieces || !yield->piece) {
            refuse(*written_.pieces,
                   in_quotes(written_.pieces->text) + " does not say how many of which weight",
                   "write \"3 x 600 g\"");
            return std::nullopt;
        }
        return ToPieces{*yield->pieces, yield->noun, *yield->piece, yield->text};
    }

    std::optional<ScaleTarget> read_baked() {
        const auto bread = read_mass(*written_.baked, diagnostics_);
        if (!written_.loss) {
            refuse(*written_.baked, "how much is lost between dough and bread is not known",
                   "add --loss 12%");
            return std::nullopt;
        }
        const auto loss = read_percentage(*written_.loss, diagnostics_);
        if (loss && loss->value() >= 1.0) {
            refuse(*written_.loss, "nothing is left at a loss of " + in_quotes(written_.loss->text),
                   "lean bread loses about 10 to 15 %");
            return std::nullopt;
        }
        return bread && loss ? std::optional<ScaleTarget>(ToBaked{*bread, Fraction(loss->value())})
                             : std::nullopt;
    }

    std::optional<ScaleTarget> read_factor() {
        const SourcedText place = trimmed(*written_.factor);
        const auto number = read_number(place, diagnostics_);
        if (!number) {
            return std::nullopt;
        }
        const bool is_factor =
            number->length == place.text.size() && number->value > 0.0 && number->value <= largest_factor;
        if (!is_factor) {
            refuse(place, in_quotes(place.text) + " is no factor", "write a number: --by 1.5");
            return std::nullopt;
        }
        return ByFactor{number->value};
    }

    std::optional<ScaleTarget> read_pans() {
        const SourcedText& pan = written_.pan_volume ? *written_.pan_volume : *written_.pan_area;
        if (!written_.fill) {
            refuse(pan, "how much dough the pans take is not known",
                   written_.pan_volume ? "add --fill 0.5kg, the dough per litre of pan"
                                       : "add --fill 0.6kg, the dough per 1000 cm2 of pan");
            return std::nullopt;
        }
        const auto fill = read_mass(*written_.fill, diagnostics_);
        const auto units = written_.pan_volume ? read_litres(pan) : read_area(pan);
        if (!fill || !units) {
            return std::nullopt;
        }
        return ToPans{*fill * *units, std::string(pan.text) + " of pan"};
    }

    std::optional<double> read_litres(const SourcedText& place) {
        const auto amount = read_amount(place, diagnostics_);
        if (!amount) {
            return std::nullopt;
        }
        if (!std::holds_alternative<Volume>(*amount)) {
            diagnostics_.error(Code::unit_unfit, place, in_quotes(place.text) + " is not a volume",
                               "write --pan-volume 2l");
            return std::nullopt;
        }
        return std::get<Volume>(*amount).value() * 1000.0;
    }

    // "20 x 30 cm", "8 x 4 in", "28 cm round", "600 cm2": in units of 1000 cm2.
    std::optional<double> read_area(const SourcedText& untrimmed) {
        SourcedText rest = trimmed(untrimmed);
        const auto first = read_number(rest, diagnostics_);
        if (!first) {
            return std::nullopt;
        }
        rest = trimmed(rest.part(first->length, rest.text.size()));
        double second = 0.0;
        if (rest.text.starts_with('x') || rest.text.starts_with("\xC3\x97")) {
            rest = trimmed(rest.part(rest.text.starts_with('x') ? 1 : 2, rest.text.size()));
            const auto number = read_number(rest, diagnostics_);
            if (!number) {
                return std::nullopt;
            }
            second = number->value;
            rest = trimmed(rest.part(number->length, rest.text.size()));
        }
        const auto area_cm2 = area(first->value, second, fold_name(rest.text));
        if (!area_cm2 || !(*area_cm2 > 0.0)) {
            diagnostics_.error(Code::unit_unfit, untrimmed,
                               in_quotes(untrimmed.text) + " is not the area of a pan",
                               "write \"20 x 30 cm\", \"8 x 12 in\", \"28 cm round\" or 600cm2");
            return std::nullopt;
        }
        return *area_cm2 / fill_area_cm2;
    }

    static std::optional<double> area(double first, double second, std::string_view words) {
        const double radius = first / 2.0;
        const double side = second > 0.0 ? first * second : 0.0;
        if (words == "cm") {
            return side;
        }
        if (words == "in" || words == "inch" || words == "inches") {
            return side * inch_cm * inch_cm;
        }
        if (words == "cm round" && second == 0.0) {
            return std::numbers::pi * radius * radius;
        }
        if ((words == "in round" || words == "inch round") && second == 0.0) {
            return std::numbers::pi * radius * radius * inch_cm * inch_cm;
        }
        if ((words == "cm2" || words == "cm\xC2\xB2") && second == 0.0) {
            return first;
        }
        return std::nullopt;
    }

    const WrittenScaleTarget& written_;
    Diagnostics& diagnostics_;
};

} // namespace

std::optional<ScaleTarget> read_scale_target(const WrittenScaleTarget& written, Diagnostics& diagnostics) {
    return TargetReader(written, diagnostics).read();
}

} // namespace leavenwright
