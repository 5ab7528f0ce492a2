// Random formulas as text, from a seed. Every kind of amount, both notations, preferments and soakers.
#pragma once

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <random>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace leavenwright::testing {

/// Random numbers that are the same with every standard library.
class Dice {
public:
    explicit Dice(std::uint64_t seed) : engine_(seed) {}

    std::uint64_t bits() { return engine_(); }
    double between(double least, double most) {
        constexpr double unit = 0x1p-53;
        return least + (most - least) * static_cast<double>(engine_() >> 11U) * unit;
    }
    /// From 0 to `count` - 1.
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(engine_() % count); }
    bool chance(double probability) { return between(0.0, 1.0) < probability; }
    template <class Value, std::size_t count>
    Value one_of(const Value (&values)[count]) {
        return values[below(count)];
    }
    template <class Container>
    void shuffle(Container& values) {
        for (std::size_t i = values.size(); i > 1; --i) {
            std::swap(values[i - 1], values[below(i)]);
        }
    }

private:
    std::mt19937_64 engine_;
};

using Entries = std::vector<std::pair<std::string, std::string>>; // key and value

struct RandomStage {
    std::string name;
    Entries keys; // kind, size, culture hydration
    Entries lines;
    std::string use; // in the dough's list; empty where it is not named there
};

struct RandomFormula {
    Entries head; // makes, flour weight, count as water
    bool is_overall = false;
    Entries lines;
    std::vector<RandomStage> preferments;
    std::vector<RandomStage> soakers;

    std::string text() const {
        std::string out = "formula: 1\nname: Random loaf\n";
        const auto add = [&](std::string_view indent, const Entries& entries) {
            for (const auto& [key, value] : entries) {
                out += fmt::format("{}{}: {}\n", indent, key, value);
            }
        };
        add("", head);
        out += is_overall ? "overall:\n" : "dough:\n";
        add("  ", lines);
        for (const RandomStage& stage : preferments) {
            out += stage.use.empty() ? "" : fmt::format("  {}: {}\n", stage.name, stage.use);
        }
        const auto add_stages = [&](std::string_view key, const std::vector<RandomStage>& stages) {
            if (!stages.empty()) {
                out += fmt::format("{}:\n", key);
            }
            for (const RandomStage& stage : stages) {
                out += fmt::format("  {}:\n", stage.name);
                add("    ", stage.keys);
                add("    ", stage.lines);
            }
        };
        add_stages("preferments", preferments);
        add_stages("soakers", soakers);
        return out;
    }
};

/// A weight in a random unit and number of digits.
inline std::string random_weight(Dice& dice, double grams) {
    constexpr double ounce_g = 28.349523125;
    switch (dice.below(8)) {
    case 0:
        return fmt::format("{:.3f} kg", std::max(grams, 1.0) / 1000.0);
    case 1:
        return fmt::format("{:.2f} oz", std::max(grams, 1.0) / ounce_g);
    case 2:
        return fmt::format("{:.4f} lb", std::max(grams, 1.0) / (16.0 * ounce_g));
    case 3: {
        const double ounces = std::max(grams, 500.0) / ounce_g;
        return fmt::format("{} lb {:.1f} oz", static_cast<int>(ounces / 16.0), std::fmod(ounces, 16.0) + 0.1);
    }
    case 4:
        return fmt::format("{:.0f} mg", std::max(grams, 0.1) * 1000.0);
    case 5:
        return fmt::format("{:.17g} g", std::max(grams, 0.1));
    default:
        return fmt::format("{:.1f} g", std::max(grams, 0.1));
    }
}

class FormulaMaker {
public:
    explicit FormulaMaker(std::uint64_t seed) : dice_(seed) {}

    RandomFormula make() {
        formula_.is_overall = dice_.chance(0.4);
        const bool in_percent = dice_.chance(0.4);
        flour_g_ = std::exp(dice_.between(std::log(200.0), std::log(20000.0)));
        main_flour_ = dice_.one_of(flours);
        if (in_percent) {
            make_percentages();
        } else {
            make_weights();
        }
        if (dice_.chance(0.2)) {
            formula_.head.emplace_back("count as water", "[milk]");
        }
        return formula_;
    }

    Dice& dice() { return dice_; }

private:
    static constexpr std::string_view flours[] = {"bread flour", "all-purpose flour", "whole wheat flour",
                                                  "rye flour", "spelt flour"};
    static constexpr std::string_view yeasts[] = {"instant yeast", "active dry yeast", "fresh yeast",
                                                  "osmotolerant instant yeast"};

    std::vector<std::string> other_flours() {
        std::vector<std::string> names(std::begin(flours), std::end(flours));
        std::erase(names, std::string(main_flour_));
        dice_.shuffle(names);
        names.resize(dice_.below(4));
        return names;
    }

    void add(std::string_view name, std::string amount) {
        formula_.lines.emplace_back(name, std::move(amount));
    }

    // The lines beside the flours: `amount` turns a share of the flour into text.
    template <class AmountOf>
    void add_others(AmountOf amount, bool with_measures) {
        const auto measured = [&](double share, std::string_view measure) {
            return with_measures && dice_.chance(0.3) ? std::string(measure) : amount(share);
        };
        const bool has_milk = dice_.chance(0.35);
        if (!has_milk || dice_.chance(0.6)) {
            add("water", measured(dice_.between(0.35, 0.95), "2 1/2 cups"));
        }
        if (has_milk) {
            add(dice_.chance(0.6)   ? "milk"
                : dice_.chance(0.5) ? "buttermilk"
                                    : "skim milk",
                measured(dice_.between(0.1, 0.5), "1½ cups"));
        }
        if (dice_.chance(0.1)) {
            add("beer", amount(dice_.between(0.05, 0.3)));
        }
        if (dice_.chance(0.95)) {
            add("salt", measured(dice_.between(0.01, 0.025), "2 tsp"));
        }
        if (dice_.chance(0.4)) {
            add("sugar", measured(dice_.between(0.01, 0.2), "3 tbsp"));
        }
        if (dice_.chance(0.2)) {
            add("honey", measured(dice_.between(0.01, 0.1), "1 tbsp"));
        }
        if (dice_.chance(0.3)) {
            add("butter", measured(dice_.between(0.02, 0.4), "1 stick"));
        }
        if (dice_.chance(0.3)) {
            add("olive oil", measured(dice_.between(0.01, 0.1), "2 tbsp"));
        }
        if (dice_.chance(0.25)) {
            add("egg", measured(dice_.between(0.05, 0.3), dice_.chance(0.5) ? "2 large" : "3"));
        }
        if (dice_.chance(0.1)) {
            add("nonfat dry milk", amount(dice_.between(0.01, 0.05)));
        }
        if (dice_.chance(0.1)) {
            add("kosher salt", amount(0.001));
        }
        yeast_ = dice_.one_of(yeasts);
        if (dice_.chance(0.95)) {
            add(yeast_,
                measured(dice_.between(0.002, 0.03), yeast_ == "fresh yeast" ? "1 cube" : "1 packet"));
        }
        if (dice_.chance(0.1) && yeast_ != "fresh yeast") {
            add("fresh yeast", amount(0.005));
        }
    }

    void make_weights() {
        double left_g = flour_g_;
        for (const std::string& name : other_flours()) {
            const double grams = dice_.between(0.02, 0.3) * left_g;
            left_g -= grams;
            add(name, dice_.chance(0.1) ? "1/4 cup" : random_weight(dice_, grams));
        }
        add(main_flour_, dice_.chance(0.05) ? fmt::format("{:.0f} cups", std::ceil(left_g / 130.0))
                                            : random_weight(dice_, left_g));
        add_others([&](double share) { return random_weight(dice_, share * flour_g_); }, true);
        add_stages();
        dice_.shuffle(formula_.lines);
        if (dice_.chance(0.3)) {
            formula_.head.emplace_back("makes", fmt::format("{} rolls", 1 + dice_.below(24)));
        } else if (dice_.chance(0.3)) {
            formula_.head.emplace_back("makes", fmt::format("{:.0f} g", 1.3 * flour_g_));
        }
    }

    void make_percentages() {
        in_percent_ = true;
        for (const std::string& name : other_flours()) {
            const int hundredths = 1 + static_cast<int>(dice_.below(1900));
            main_hundredths_ -= hundredths;
            add(name, in_hundredths(hundredths));
        }
        add_others([&](double share) { return fmt::format("{:.{}f}%", 100.0 * share, 1 + dice_.below(3)); },
                   false);
        if (dice_.chance(0.5)) {
            formula_.head.emplace_back("flour weight", random_weight(dice_, flour_g_));
        } else {
            const auto pieces = 1 + dice_.below(9);
            formula_.head.emplace_back(
                "makes", fmt::format("{} x {:.0f} g", pieces, 1.8 * flour_g_ / static_cast<double>(pieces)));
        }
        add_stages();
        add(main_flour_, in_hundredths(main_hundredths_));
        dice_.shuffle(formula_.lines);
    }

    static std::string in_hundredths(int hundredths) {
        return fmt::format("{}.{:02}%", hundredths / 100, hundredths % 100);
    }

    // In the `dough` notation all flours, the stages' included, add up to 100 %.
    std::string stage_percentage(int hundredths) {
        main_hundredths_ -= formula_.is_overall ? 0 : hundredths;
        return in_hundredths(hundredths);
    }

    void add_stages() {
        const std::size_t count = dice_.below(5);
        for (std::size_t i = 0; i < count && i < 2; ++i) {
            add_preferment(i);
        }
        if (dice_.chance(0.25)) {
            add_soaker();
        }
    }

    void add_preferment(std::size_t number) {
        static constexpr std::string_view kinds[] = {"poolish", "biga", "sponge", "old dough", "levain"};
        RandomStage stage;
        const std::string_view kind = dice_.one_of(kinds);
        const bool is_named_apart = number == 1 || dice_.chance(0.2);
        stage.name = !is_named_apart ? std::string(kind) : number == 0 ? "first stage" : "second stage";
        if (is_named_apart && (kind == "levain" || dice_.chance(0.6))) {
            stage.keys.emplace_back("kind", kind);
        }
        const bool is_levain = kind == "levain";
        const double share = dice_.between(0.03, 0.2);
        const double water = dice_.between(0.4, 1.2);
        const double yeast = dice_.between(0.0005, 0.01);
        // The overall formula has to hold what is in the stage.
        const bool has_water = is_in_lines("water") || !formula_.is_overall;
        const bool has_yeast = is_in_lines(yeast_) || !formula_.is_overall;
        const bool is_sized = in_percent_ || dice_.chance(0.4);
        const auto amount = [&](double ratio) {
            return is_sized ? fmt::format("{:.2f}%", std::max(100.0 * ratio, 0.01))
                            : fmt::format("{:.3f} g", std::max(ratio * share * flour_g_, 0.001));
        };
        stage.lines.emplace_back(main_flour_, is_sized ? "100%" : amount(1.0));
        if (has_water) {
            stage.lines.emplace_back("water", amount(water));
        }
        if (is_levain) {
            stage.lines.emplace_back(dice_.chance(0.7) ? "culture" : "ripe starter",
                                     amount(dice_.between(0.05, 0.4)));
            if (dice_.chance(0.5) || !has_water) {
                stage.keys.emplace_back("culture hydration",
                                        has_water ? fmt::format("{:.1f}%", dice_.between(40.0, 150.0))
                                                  : "0.001%");
            }
            if (!has_water) { // a culture would need some
                stage.lines.pop_back();
            }
        } else if (has_yeast) {
            stage.lines.emplace_back(yeast_, amount(yeast));
        }
        if (!formula_.is_overall && dice_.chance(0.2)) {
            stage.lines.emplace_back("salt", amount(0.02));
        }
        if (is_sized) {
            const bool is_share_of_percentages = in_percent_ && !formula_.is_overall;
            if (is_share_of_percentages || dice_.chance(0.5)) {
                stage.keys.emplace_back("prefermented flour",
                                        stage_percentage(static_cast<int>(10000.0 * share)));
            } else {
                stage.keys.emplace_back("weight", fmt::format("{:.2f} g", 0.8 * share * flour_g_));
            }
        }
        if (!formula_.is_overall) {
            if (!in_percent_ && dice_.chance(0.3)) {
                stage.use = fmt::format("{:.2f} g", 0.6 * share * flour_g_);
            } else if (dice_.chance(0.5)) {
                stage.use = "all";
            }
        }
        dice_.shuffle(stage.lines);
        formula_.preferments.push_back(std::move(stage));
    }

    void add_soaker() {
        RandomStage stage;
        const bool is_scald = dice_.chance(0.3);
        stage.name = is_scald ? "scald" : "seed soaker";
        const double share = dice_.between(0.02, 0.1);
        const auto amount = [&](double ratio) {
            return in_percent_ || dice_.chance(0.3) ? fmt::format("{:.2f}%", 100.0 * ratio * share)
                                                    : fmt::format("{:.3f} g", ratio * share * flour_g_);
        };
        if (is_scald) {
            const bool is_percentage = in_percent_ && !formula_.is_overall;
            stage.lines.emplace_back(main_flour_, is_percentage
                                                      ? stage_percentage(static_cast<int>(5000.0 * share))
                                                      : amount(0.5));
        } else {
            const std::string seeds = amount(1.0);
            stage.lines.emplace_back("sunflower seeds", seeds);
            if (formula_.is_overall) {
                add("sunflower seeds", seeds);
            }
        }
        if (is_in_lines("water") || !formula_.is_overall) {
            stage.lines.emplace_back("water", amount(1.2));
        }
        formula_.soakers.push_back(std::move(stage));
    }

    bool is_in_lines(std::string_view name) const {
        return std::any_of(formula_.lines.begin(), formula_.lines.end(),
                           [&](const auto& line) { return line.first == name; });
    }

    Dice dice_;
    RandomFormula formula_;
    double flour_g_ = 0.0;
    std::string_view main_flour_;
    std::string_view yeast_;
    int main_hundredths_ = 10000; // of a percent
    bool in_percent_ = false;
};

} // namespace leavenwright::testing
