// Laws of the conversion, on thousands of random formulas read from text.
#include "convert/convert.hpp"
#include "diagnostic/render_diagnostic.hpp"
#include "formula/read_formula.hpp"
#include "formula/write_formula.hpp"
#include "fuzz/formula_equality.hpp"
#include "property/random_formula.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>
#include <fmt/core.h>

#include <cmath>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

constexpr std::uint64_t first_seed = 20240901;
constexpr std::size_t cases = 8000;

std::optional<Formula> read(const std::string& text, Diagnostics& diagnostics) {
    return read_formula(std::make_shared<SourceText>("random.yaml", text), Pantry(), diagnostics);
}

const Ingredient& ingredient(std::string_view name) {
    static const Pantry pantry;
    return *pantry.find(name).ingredient;
}

// What a request asks for, in numbers.
struct Wish {
    ConversionRequest request;
    double hydration = 1.0;
    std::string shown;
};

Wish random_wish(Dice& dice, const Formula& formula) {
    Wish wish;
    wish.hydration = dice.between(0.4, 2.0);
    // A large share at a high hydration seldom fits: as many small ones as large ones.
    const double share = dice.chance(0.5) ? dice.between(0.02, 0.25) : dice.between(0.02, 0.6);
    wish.request.levain_hydration = Hydration(wish.hydration);
    switch (dice.below(3)) {
    case 0:
        wish.request.inoculation = PrefermentedFlour(share);
        break;
    case 1:
        wish.request.inoculation = LevainOnTotalFlour(share * (1.0 + wish.hydration));
        break;
    default:
        wish.request.inoculation = LevainOnDoughFlour(share * (1.0 + wish.hydration) / (1.0 - share));
    }
    if (dice.chance(0.4)) {
        static constexpr std::string_view names[] = {"rye flour", "bread flour", "whole rye flour"};
        const std::string_view first = dice.one_of(names);
        const double part = dice.chance(0.5) ? 1.0 : dice.between(0.1, 0.9);
        wish.request.levain_flour.push_back(
            {.name = std::string(first), .ingredient = &ingredient(first), .share = Fraction(part)});
        if (part < 1.0) {
            wish.request.levain_flour.push_back({.name = "whole wheat flour",
                                                 .ingredient = &ingredient("whole wheat flour"),
                                                 .share = Fraction(1.0 - part)});
        }
    }
    wish.request.dry_milk = dice.chance(0.4);
    for (const Stage& stage : formula.stages) {
        if (stage.kind != StageKind::levain && is_preferment(stage.kind) && dice.chance(0.3)) {
            wish.request.keep.push_back(stage.name);
        }
    }
    const double value = std::visit([](auto ratio) { return ratio.value(); }, wish.request.inoculation);
    static constexpr std::string_view bases[] = {"prefermented flour", "levain on total flour",
                                                 "levain on dough flour"};
    wish.shown =
        fmt::format("{} {:.17g}, hydration {:.17g}, dry milk {}, keep {}, levain flours {}",
                    bases[wish.request.inoculation.index()], value, wish.hydration, wish.request.dry_milk,
                    wish.request.keep.size(), wish.request.levain_flour.size());
    return wish;
}

bool is_kept(const Stage& stage, const ConversionRequest& request) {
    return !is_preferment(stage.kind) ||
           std::find(request.keep.begin(), request.keep.end(), stage.name) != request.keep.end();
}

// The part of a formula that a conversion may touch, added up independently of the library's own way.
struct Touchable {
    std::vector<Line> lines;
    double yeast_kg = 0.0;
    double yeast_water_kg = 0.0;
    double flour_kg = 0.0;
    double plain_water_kg = 0.0;
    double other_water_kg = 0.0; // of milks and thin liquids

    double mass_of(const Ingredient& wanted) const {
        double kg = 0.0;
        for (const Line& line : lines) {
            kg += line.ingredient == &wanted ? line.mass.value() : 0.0;
        }
        return kg;
    }
};

// Water that 1 kg of a liquid gives up.
double yield_of(const Ingredient& liquid, bool with_dry_milk) {
    const double water = liquid.composition.water.value();
    if (!with_dry_milk || liquid.dries_to.empty()) {
        return water;
    }
    const double dry_water = ingredient(liquid.dries_to).composition.water.value();
    return water - (1.0 - water) / (1.0 - dry_water) * dry_water;
}

bool gives_water(const Ingredient& liquid) {
    return !liquid.is_water() &&
           (!liquid.dries_to.empty() ||
            (liquid.ingredient_class == IngredientClass::liquid && liquid.composition.water.value() >= 0.8));
}

Touchable touchable_of(const Formula& formula, const ConversionRequest& request) {
    Touchable part;
    part.lines = formula.dough;
    for (const Stage& stage : formula.stages) {
        if (!is_kept(stage, request)) {
            const std::vector<Line> contents = contents_of(stage, *formula.pantry);
            part.lines.insert(part.lines.end(), contents.begin(), contents.end());
        }
    }
    for (const Line& line : part.lines) {
        const double kg = line.mass.value();
        const Ingredient& what = *line.ingredient;
        part.flour_kg += what.is_flour() ? kg : 0.0;
        part.yeast_kg += what.is_yeast() ? kg : 0.0;
        part.yeast_water_kg += what.is_yeast() ? kg * what.composition.water.value() : 0.0;
        part.plain_water_kg += what.is_water() ? kg : 0.0;
        part.other_water_kg += gives_water(what) ? kg * yield_of(what, request.dry_milk) : 0.0;
    }
    return part;
}

double share_of(const Wish& wish, const Touchable& part, double total_flour_kg) {
    const double per_flour = 1.0 + wish.hydration;
    if (const auto* share = std::get_if<PrefermentedFlour>(&wish.request.inoculation)) {
        return share->value();
    }
    if (const auto* share = std::get_if<LevainOnTotalFlour>(&wish.request.inoculation)) {
        return share->value() / per_flour;
    }
    // levain = s x (flour at mixing), flour at mixing = D - p F, levain = (1 + h) p F
    const double share = std::get<LevainOnDoughFlour>(wish.request.inoculation).value();
    return share * part.flour_kg / total_flour_kg / (per_flour + share);
}

// Says which law is broken; empty where all hold.
class Laws {
public:
    void hold(bool is_so, const std::string& law) {
        if (!is_so && broken_.empty()) {
            broken_ = law;
        }
    }
    void same(double actual, double expected, double absolute, const std::string& law) {
        hold(near(actual, expected, 1e-9, absolute),
             fmt::format("{}: {:.17g}, not {:.17g}", law, actual, expected));
    }
    const std::string& broken() const { return broken_; }

private:
    std::string broken_;
};

enum class Outcome { converted, refused, unclear };

struct Verdict {
    std::string broken;
    Outcome outcome = Outcome::unclear;
};

std::optional<Conversion> try_convert(const Formula& formula, const ConversionRequest& request) {
    Diagnostics diagnostics;
    return convert(formula, request, diagnostics);
}

void check_flours(Laws& laws, const Conversion& conversion, const Wish& wish, const Touchable& part,
                  double share) {
    const double scale = conversion.scaled_by;
    const double flour_kg = conversion.overall_before.total_flour.value();
    laws.same(conversion.overall_after.total_flour.value(), flour_kg, 0.0, "total flour is conserved");
    // What the levain's flour has that the dough does not; only then may the blend move.
    double short_kg = 0.0;
    for (const LevainFlour& flour : wish.request.levain_flour) {
        short_kg +=
            std::max(0.0, flour.share.value() * share * flour_kg - scale * part.mass_of(*flour.ingredient));
    }
    for (const Line& line : conversion.overall_before.flours()) {
        const double before = line.mass.value();
        const double after = conversion.overall_after.mass_of(*line.ingredient).value();
        if (short_kg <= 1e-9 * flour_kg) {
            laws.same(after, before, 1e-9 * flour_kg, "each kind of flour is conserved: " + line.name);
        } else {
            laws.hold(after >= before - short_kg - 1e-9 * flour_kg &&
                          after <= before + short_kg + 1e-9 * flour_kg,
                      "a blend moves by no more than what is short: " + line.name);
        }
    }
    const bool says_moved =
        std::any_of(conversion.notes.begin(), conversion.notes.end(),
                    [](const std::string& note) { return note.starts_with("The blend of flours moved"); });
    const bool is_dust = short_kg > 0.0 && short_kg < 1e-6 * flour_kg; // rounding may call it either
    laws.hold(is_dust || says_moved == (short_kg > 0.0), "a note says that the blend moved");
}

void check_liquids(Laws& laws, const Conversion& conversion, const Wish& wish, const Touchable& part,
                   double share) {
    const Overall& before = conversion.overall_before;
    const Overall& after = conversion.overall_after;
    const double scale = conversion.scaled_by;
    const double dough_kg = before.total.value();
    const double slack = 1e-9 * dough_kg;
    laws.same(after.salt.value(), before.salt.value(), 1e-12 * dough_kg, "salt is conserved");
    laws.same(after.true_water.value(), before.true_water.value() - scale * part.yeast_water_kg, slack,
              "true water is conserved, but for what the yeast carried");
    const double levain_water = wish.hydration * share * before.total_flour.value();
    const bool is_plain_enough = levain_water <= scale * part.plain_water_kg;
    // What of the other liquids is gone, and what it was made of.
    double water_kg = std::min(levain_water, scale * part.plain_water_kg);
    double sugar_kg = 0.0;
    double fat_kg = 0.0;
    double counted_kg = 0.0;
    double dry_kg = 0.0;
    for (const Line& line : before.lines) {
        const Ingredient& what = *line.ingredient;
        const double gone = line.mass.value() - after.mass_of(what).value();
        const bool is_dry_milk = what.name.find("dry milk") != std::string_view::npos;
        if (what.is_flour() || what.is_water()) {
            continue;
        }
        if (what.is_yeast()) {
            laws.same(gone, scale * part.mass_of(what), slack,
                      "the yeast outside kept stages is gone, no other: " + line.name);
        } else if (gives_water(what) && !is_plain_enough) {
            laws.hold(gone >= -slack, "no liquid grows: " + line.name);
            water_kg += gone * yield_of(what, wish.request.dry_milk);
            sugar_kg += gone * what.composition.sugars.value();
            fat_kg += gone * what.composition.fat.value();
            const auto& counted = conversion.before.count_as_water;
            counted_kg += std::find(counted.begin(), counted.end(), &what) != counted.end() ? gone : 0.0;
            dry_kg += wish.request.dry_milk && !what.dries_to.empty()
                          ? gone * (1.0 - what.composition.water.value()) /
                                (1.0 - ingredient(what.dries_to).composition.water.value())
                          : 0.0;
        } else if (!is_dry_milk || is_plain_enough || !wish.request.dry_milk) {
            laws.same(gone, 0.0, 1e-12 * dough_kg,
                      "what is neither flour, water nor yeast stays: " + line.name);
        }
    }
    laws.same(water_kg, levain_water, slack, "the levain's water came out of the dough");
    const double plain_kg = std::min(levain_water, scale * part.plain_water_kg);
    laws.same(after.added_water.value(), before.added_water.value() + levain_water - plain_kg - counted_kg,
              slack, "added water is conserved where plain water gave it");
    if (!wish.request.dry_milk || is_plain_enough) {
        laws.same(after.sugar.value(), before.sugar.value() - sugar_kg, slack,
                  "sugar is conserved, but for that of milk that gave up water");
        laws.same(after.fat.value(), before.fat.value() - fat_kg, slack,
                  "fat is conserved, but for that of milk that gave up water");
    }
    double dry_before = 0.0;
    double dry_after = 0.0;
    for (const std::string_view name : {"nonfat dry milk", "whole dry milk"}) {
        dry_before += before.mass_of(ingredient(name)).value();
        dry_after += after.mass_of(ingredient(name)).value();
    }
    laws.same(dry_after, dry_before + dry_kg, slack, "dry milk restores the solids of the milk that is gone");
}

void check_levain(Laws& laws, const Formula& formula, const Conversion& conversion, const Wish& wish,
                  double share) {
    const Levain& levain = conversion.levain;
    const double flour_kg = conversion.overall_after.total_flour.value();
    const double at_mixing = add_up(conversion.after.dough, {}).total_flour.value();
    laws.same(levain.flour.value(), share * flour_kg, 1e-12 * flour_kg, "levain flour is p F");
    laws.same(levain.water.value(), wish.hydration * share * flour_kg, 1e-12 * flour_kg,
              "levain water is h p F");
    laws.same(levain.prefermented_flour.value(), share, 0.0, "the prefermented share is the one asked for");
    laws.same(levain.on_total_flour.value(), (1.0 + wish.hydration) * share, 0.0,
              "levain on total flour is (1 + h) p");
    const Stage* stage = nullptr;
    for (const Stage& candidate : conversion.after.stages) {
        stage = candidate.kind == StageKind::levain ? &candidate : stage;
    }
    laws.hold(stage != nullptr && stage->used == stage->mass(), "the levain is a stage and goes in whole");
    if (stage != nullptr) {
        laws.same(stage->mass().value(), levain.mass().value(), 0.0,
                  "the stage weighs what the levain weighs");
    }
    if (at_mixing > 1e-3 * flour_kg) {
        laws.same(levain.on_dough_flour.value(), levain.mass().value() / at_mixing, 0.0,
                  "levain on the flour added at mixing");
        ConversionRequest other = wish.request;
        for (const Inoculation& basis :
             {Inoculation(levain.prefermented_flour), Inoculation(levain.on_total_flour),
              Inoculation(levain.on_dough_flour)}) {
            other.inoculation = basis;
            const auto again = try_convert(formula, other);
            laws.hold(again.has_value(), "the same levain on another basis fits too");
            if (again) {
                laws.same(again->levain.flour.value(), levain.flour.value(), 1e-9 * flour_kg,
                          "the three bases agree");
            }
        }
    }
}

void check_result(Laws& laws, const Formula& formula, const Conversion& conversion, const Wish& wish,
                  const Touchable& part) {
    const Overall& before = conversion.overall_before;
    const Overall& after = conversion.overall_after;
    const Formula& result = conversion.after;
    const double dough_kg = before.total.value();
    laws.same(before.total_flour.value(), conversion.scaled_by * compute_overall(formula).total_flour.value(),
              0.0, "'before' has the size of the result");
    laws.same(result.dough_mass().value(), after.total.value(), 0.0,
              "the dough weighs what the overall formula weighs");
    for (const Line& line : result.dough) {
        laws.hold(line.mass.value() >= 0.0 && !line.ingredient->is_yeast(),
                  "no yeast and nothing below nothing in the dough: " + line.name);
    }
    std::size_t kept = 0;
    for (const Stage& stage : formula.stages) {
        kept += is_kept(stage, wish.request) ? 1U : 0U;
    }
    laws.hold(result.stages.size() == kept + 1, "the stages are the levain and what is kept");
    for (std::size_t i = 0; i < result.stages.size(); ++i) {
        for (const Line& line : result.stages[i].lines) {
            laws.hold(line.mass.value() >= 0.0 && (i > 0 || !line.ingredient->is_yeast()),
                      "no yeast and nothing below nothing in a stage: " + line.name);
        }
    }
    double removed_kg = 0.0;
    for (const Removed& removed : conversion.removed) {
        removed_kg += removed.mass.value();
    }
    laws.same(removed_kg, conversion.scaled_by * part.yeast_kg, 1e-12 * dough_kg,
              "what was removed is the yeast outside kept stages");
    for (const BalanceRow& row : conversion.balance) {
        laws.hold(!row.meant.empty() || std::abs(row.difference().value()) <= 1e-9 * dough_kg,
                  "what moves without a reason: " + row.name);
    }
    if (formula.makes && formula.makes->dough) {
        const double promised = formula.makes->dough->value();
        if (formula.dough_mass().value() >= promised * (1.0 - 1e-9)) {
            laws.hold(result.dough_mass().value() >= promised * (1.0 - 2e-9),
                      "the promised dough weight is met");
            laws.hold(conversion.scaled_by == 1.0 || near(result.dough_mass().value(), promised, 1e-9, 0.0),
                      "scaled to the promise and no further");
        } else if (formula.dough_mass().value() >= promised * (1.0 - makes_short_slack)) {
            laws.hold(near(result.dough_mass().value(), promised, 1e-9, 0.0),
                      "a dough within half a percent of its promise is brought to it");
        } else {
            laws.hold(conversion.scaled_by == 1.0, "a promise that was not met is not met by scaling");
        }
    } else {
        laws.hold(conversion.scaled_by == 1.0, "nothing scales without a promise");
    }
}

void check_round_trip(Laws& laws, const Formula& formula, const std::string& what) {
    const std::string written = write_formula(formula, "Random.");
    Diagnostics diagnostics;
    const auto again = read(written, diagnostics);
    laws.hold(again.has_value(),
              what + " is read after it was written:\n" + written + render_diagnostics(diagnostics, {}));
    if (again) {
        const std::string difference = first_difference(formula, *again);
        laws.hold(difference.empty(),
                  what + " keeps its values to the last bit: " + difference + "\n" + written);
        laws.hold(write_formula(*again, "Random.") == written,
                  what + " is written in the same bytes again:\n" + written);
    }
}

// Every law on one formula and one wish.
Verdict judge(const Formula& formula, const Wish& wish) {
    Laws laws;
    Verdict verdict;
    const Overall overall = compute_overall(formula);
    const double flour_kg = overall.total_flour.value();
    const Touchable part = touchable_of(formula, wish.request);
    const double share = share_of(wish, part, flour_kg);
    const double flour_left = part.flour_kg - share * flour_kg;
    const double water_left = part.plain_water_kg + part.other_water_kg - wish.hydration * share * flour_kg;
    const double closest = std::min(flour_left, water_left);
    Diagnostics diagnostics;
    const auto conversion = convert(formula, wish.request, diagnostics);
    if (std::abs(closest) > 1e-7 * flour_kg) {
        laws.hold(conversion.has_value() == (closest > 0.0),
                  "a levain fits where flour and water suffice, and nowhere else");
    }
    check_round_trip(laws, formula, "the formula");
    if (!conversion) {
        verdict.outcome = Outcome::refused;
        auto findings = diagnostics.in_order();
        std::erase_if(findings, [](const Diagnostic& item) { return item.severity != Severity::error; });
        laws.hold(findings.size() == 1 && findings.front().code == Code::levain_does_not_fit,
                  "what does not fit gives one levain-does-not-fit");
        verdict.broken = laws.broken();
        return verdict;
    }
    verdict.outcome = Outcome::converted;
    laws.hold(!diagnostics.has_errors(), "a conversion reports no errors");
    check_flours(laws, *conversion, wish, part, share);
    check_liquids(laws, *conversion, wish, part, share);
    check_levain(laws, formula, *conversion, wish, share);
    check_result(laws, formula, *conversion, wish, part);
    check_round_trip(laws, conversion->after, "the result");
    verdict.broken = laws.broken();
    return verdict;
}

using Judge = std::function<std::string(const RandomFormula&)>; // what is broken

// The smallest formula that is still broken, by leaving out one entry after the other.
RandomFormula shrunk(RandomFormula formula, const Judge& judge) {
    bool is_smaller = true;
    while (is_smaller) {
        is_smaller = false;
        const auto attempt = [&](auto&& change) {
            RandomFormula smaller = formula;
            change(smaller);
            if (!judge(smaller).empty()) {
                formula = std::move(smaller);
                is_smaller = true;
            }
        };
        for (std::size_t i = formula.lines.size(); i-- > 0;) {
            attempt([&](RandomFormula& it) {
                it.lines.erase(it.lines.begin() + static_cast<std::ptrdiff_t>(i));
            });
        }
        for (std::size_t i = formula.head.size(); i-- > 0;) {
            attempt(
                [&](RandomFormula& it) { it.head.erase(it.head.begin() + static_cast<std::ptrdiff_t>(i)); });
        }
        for (std::size_t i = formula.preferments.size(); i-- > 0;) {
            attempt([&](RandomFormula& it) {
                it.preferments.erase(it.preferments.begin() + static_cast<std::ptrdiff_t>(i));
            });
        }
        for (std::size_t i = formula.soakers.size(); i-- > 0;) {
            attempt([&](RandomFormula& it) {
                it.soakers.erase(it.soakers.begin() + static_cast<std::ptrdiff_t>(i));
            });
        }
    }
    return formula;
}

void report(std::uint64_t seed, const RandomFormula& formula, const Judge& judge) {
    const std::string broken = judge(formula);
    const RandomFormula small = shrunk(formula, judge);
    FAIL_CHECK("seed ", seed, ": ", broken, "\n--- shrunk: ", judge(small), "\n", small.text(),
               "--- as made\n", formula.text());
}

struct Tally {
    std::size_t read = 0;
    std::size_t converted = 0;
    std::size_t refused = 0;
    std::size_t failures = 0;
};

constexpr std::size_t most_failures = 3; // shown and shrunk, of each test

// Runs `law` on each random formula with a wish; gives what is broken, and counts.
template <class Law>
Tally for_each_case(std::uint64_t seed, std::size_t count, Law law) {
    Tally tally;
    std::map<std::string, std::size_t> broken_laws;
    for (std::uint64_t i = 0; i < count; ++i) {
        const RandomFormula formula = FormulaMaker(seed + i).make();
        const Judge judge = [&](const RandomFormula& candidate) -> std::string {
            Diagnostics diagnostics;
            const auto read_one = read(candidate.text(), diagnostics);
            if (!read_one) {
                return {};
            }
            Dice dice(seed + i + 1000000);
            return law(*read_one, candidate, dice).broken;
        };
        Diagnostics diagnostics;
        const auto read_one = read(formula.text(), diagnostics);
        if (!read_one) {
            continue;
        }
        ++tally.read;
        Dice dice(seed + i + 1000000);
        const Verdict verdict = law(*read_one, formula, dice);
        tally.converted += verdict.outcome == Outcome::converted ? 1U : 0U;
        tally.refused += verdict.outcome == Outcome::refused ? 1U : 0U;
        if (verdict.broken.empty()) {
            continue;
        }
        ++broken_laws[verdict.broken.substr(0, verdict.broken.find(':'))];
        if (++tally.failures <= most_failures) {
            report(seed + i, formula, judge);
        }
    }
    for (const auto& [law_name, times] : broken_laws) {
        MESSAGE(times, " times broken: ", law_name);
    }
    CHECK(tally.failures == 0);
    MESSAGE("seeds ", seed, " to ", seed + count - 1, ": ", tally.read, " read, ", tally.converted,
            " converted, ", tally.refused, " refused");
    return tally;
}

std::string difference_of_sums(const Overall& left, const Overall& right) {
    Laws laws;
    const double slack = 1e-12 * left.total.value();
    laws.same(right.total_flour.value(), left.total_flour.value(), slack, "total flour");
    laws.same(right.added_water.value(), left.added_water.value(), slack, "added water");
    laws.same(right.true_water.value(), left.true_water.value(), slack, "true water");
    laws.same(right.salt.value(), left.salt.value(), slack, "salt");
    laws.same(right.sugar.value(), left.sugar.value(), slack, "sugar");
    laws.same(right.fat.value(), left.fat.value(), slack, "fat");
    laws.same(right.total.value(), left.total.value(), slack, "dough");
    return laws.broken();
}

} // namespace

TEST_CASE("conversion: every law holds for random formulas") {
    const Tally tally =
        for_each_case(first_seed, cases, [](const Formula& formula, const RandomFormula&, Dice& dice) {
            return judge(formula, random_wish(dice, formula));
        });
    CHECK(tally.read >= cases * 85 / 100);
    CHECK(tally.converted >= 5000);
    CHECK(tally.refused >= 500);
}

TEST_CASE("conversion: the largest that fits does fit, and a thousandth more does not") {
    std::size_t shares = 0;
    std::size_t hydrations = 0;
    constexpr double wettest_searched = 9.99; // above it every levain fits
    for_each_case(first_seed + 100000, 2000, [&](const Formula& formula, const RandomFormula&, Dice& dice) {
        Laws laws;
        Wish wish = random_wish(dice, formula);
        const LargestFit fit = largest_fit(formula, wish.request);
        ConversionRequest request = wish.request;
        const double share = fit.prefermented_flour.value();
        if (share > 1e-4) {
            ++shares;
            request.inoculation = PrefermentedFlour(share);
            laws.hold(try_convert(formula, request).has_value(),
                      fmt::format("the largest share fits: {} ({})", share, wish.shown));
            request.inoculation = PrefermentedFlour(share * 1.001);
            laws.hold(
                !try_convert(formula, request),
                fmt::format("a larger share than the largest does not fit: {} ({})", share, wish.shown));
        }
        request = wish.request;
        const double wettest = fit.levain_hydration.value();
        if (wettest > 1e-4 && wettest < wettest_searched) {
            ++hydrations;
            request.levain_hydration = Hydration(wettest);
            laws.hold(try_convert(formula, request).has_value(),
                      fmt::format("the largest hydration fits: {} ({})", wettest, wish.shown));
            request.levain_hydration = Hydration(wettest * 1.001);
            laws.hold(!try_convert(formula, request),
                      fmt::format("a larger hydration than the largest does not fit: {} ({})", wettest,
                                  wish.shown));
        }
        for (int i = 0; i <= 60 && wettest == 0.0; ++i) {
            request.levain_hydration = Hydration(0.05 + 0.05 * i);
            laws.hold(!try_convert(formula, request),
                      fmt::format("no hydration is offered: {} fits ({})", request.levain_hydration.value(),
                                  wish.shown));
        }
        return Verdict{laws.broken(), Outcome::unclear};
    });
    CHECK(shares >= 1500);
    CHECK(hydrations >= 900);
}

TEST_CASE("conversion: a levain as heavy as the flour allows is found, whatever the basis") {
    for_each_case(first_seed + 150000, 500, [&](const Formula& formula, const RandomFormula&, Dice& dice) {
        Laws laws;
        Wish wish = random_wish(dice, formula);
        // Just below all of the flour, at a hydration that takes just less than all of the water.
        const Touchable part = touchable_of(formula, wish.request);
        const double flour_kg = compute_overall(formula).total_flour.value();
        const double share = dice.between(0.9, 0.99) * part.flour_kg / flour_kg;
        const double hydration =
            dice.between(0.9, 0.99) * (part.plain_water_kg + part.other_water_kg) / (share * flour_kg);
        wish.request.levain_hydration = Hydration(hydration);
        wish.request.inoculation = LevainOnTotalFlour(share * (1.0 + hydration));
        const double wettest = largest_fit(formula, wish.request).levain_hydration.value();
        laws.hold(!try_convert(formula, wish.request) || wettest >= hydration * (1.0 - 1e-9),
                  fmt::format("the wettest levain that fits is found: {:.6g} of total flour fits at "
                              "hydration {:.6g}, the largest is said to be {:.6g}",
                              share * (1.0 + hydration), hydration, wettest));
        return Verdict{laws.broken(), Outcome::unclear};
    });
}

TEST_CASE("conversion: the order of the ingredients does not matter") {
    const Tally tally = for_each_case(
        first_seed + 200000, 2000, [](const Formula& formula, const RandomFormula& random, Dice& dice) {
            Laws laws;
            const Wish wish = random_wish(dice, formula);
            RandomFormula shuffled = random;
            dice.shuffle(shuffled.lines);
            dice.shuffle(shuffled.preferments);
            for (RandomStage& stage : shuffled.preferments) {
                dice.shuffle(stage.lines);
                dice.shuffle(stage.keys);
            }
            Diagnostics diagnostics;
            const auto other = read(shuffled.text(), diagnostics);
            laws.hold(other.has_value(), "a shuffled formula is read");
            Verdict verdict;
            if (other) {
                const std::string sums =
                    difference_of_sums(compute_overall(formula), compute_overall(*other));
                laws.hold(sums.empty(), "sums of a shuffled formula: " + sums);
                const auto left = try_convert(formula, wish.request);
                const auto right = try_convert(*other, wish.request);
                laws.hold(left.has_value() == right.has_value(), "a shuffled formula converts as well");
                if (left && right) {
                    verdict.outcome = Outcome::converted;
                    const double flour_kg = left->overall_after.total_flour.value();
                    laws.same(right->overall_after.total_flour.value(), flour_kg, 0.0, "total flour");
                    laws.same(right->overall_after.salt.value(), left->overall_after.salt.value(), 0.0,
                              "salt");
                    // The promise scales both alike only where the same liquids gave up water.
                    const bool is_plain =
                        touchable_of(formula, wish.request).plain_water_kg * left->scaled_by >=
                        left->levain.water.value();
                    if (is_plain) {
                        const std::string after =
                            difference_of_sums(left->overall_after, right->overall_after);
                        laws.hold(after.empty(), "sums of a shuffled conversion: " + after);
                        laws.same(right->levain.mass().value(), left->levain.mass().value(), 0.0, "levain");
                    }
                }
            }
            verdict.broken = laws.broken();
            return verdict;
        });
    CHECK(tally.converted >= 1000);
}

TEST_CASE("conversion: every mass scales with the formula") {
    const Tally tally =
        for_each_case(first_seed + 300000, 1500, [](Formula formula, const RandomFormula&, Dice& dice) {
            Laws laws;
            const Wish wish = random_wish(dice, formula);
            const double factor = std::exp(dice.between(-6.0, 6.0));
            formula.makes.reset();
            Formula scaled = formula;
            scaled.scale(factor);
            const auto left = try_convert(formula, wish.request);
            const auto right = try_convert(scaled, wish.request);
            laws.hold(left.has_value() == right.has_value(), "a scaled formula converts as well");
            Verdict verdict;
            if (left && right) {
                verdict.outcome = Outcome::converted;
                const double slack = 1e-9 * right->overall_after.total.value();
                laws.hold(left->after.dough.size() == right->after.dough.size() &&
                              left->after.stages.size() == right->after.stages.size(),
                          "as many lines");
                for (std::size_t i = 0; laws.broken().empty() && i < left->after.dough.size(); ++i) {
                    laws.same(right->after.dough[i].mass.value(), factor * left->after.dough[i].mass.value(),
                              slack, left->after.dough[i].name);
                }
                for (std::size_t i = 0; laws.broken().empty() && i < left->after.stages.size(); ++i) {
                    laws.same(right->after.stages[i].mass().value(),
                              factor * left->after.stages[i].mass().value(), slack,
                              left->after.stages[i].name);
                }
            }
            verdict.broken = laws.broken();
            return verdict;
        });
    CHECK(tally.converted >= 800);
}

TEST_CASE("reading: a mass is the same in every unit") {
    constexpr double ounce_g = 28.349523125;
    struct UnitText {
        std::string_view name;
        double grams;
    };
    static constexpr UnitText units[] = {
        {"g", 1.0}, {"kg", 1000.0}, {"oz", ounce_g}, {"lb", 16.0 * ounce_g}, {"mg", 0.001}};
    Dice dice(first_seed + 400000);
    std::size_t compared = 0;
    for (int round = 0; round < 1000; ++round) {
        const double flour_g = std::exp(dice.between(3.0, 10.0));
        const double water_g = dice.between(0.4, 0.9) * flour_g;
        std::vector<Formula> formulas;
        for (const UnitText& unit : units) {
            const std::string text = fmt::format("formula: 1\nname: Units\ndough:\n  bread flour: {:.17g} "
                                                 "{}\n  water: {:.17g} {}\n  salt: {:.17g} {}\n",
                                                 flour_g / unit.grams, unit.name, water_g / unit.grams,
                                                 unit.name, 0.02 * flour_g / unit.grams, unit.name);
            Diagnostics diagnostics;
            auto formula = read(text, diagnostics);
            REQUIRE_MESSAGE(formula.has_value(), text);
            formulas.push_back(*std::move(formula));
        }
        for (std::size_t unit = 1; unit < formulas.size(); ++unit) {
            for (std::size_t i = 0; i < formulas[0].dough.size(); ++i) {
                CHECK(near(formulas[unit].dough[i].mass.value(), formulas[0].dough[i].mass.value(), 1e-12,
                           0.0));
                ++compared;
            }
        }
    }
    CHECK(compared == 12000);
}
