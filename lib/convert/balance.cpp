#include "convert/balance.hpp"

#include <cmath>
#include <stdexcept>

namespace leavenwright {
namespace {

// Relative to the dough: a row that differs by less has not moved.
constexpr double unmoved = 1e-9;

// The flours of both sides, those of `before` first.
std::vector<Line> flours_of(const Overall& before, const Overall& after) {
    std::vector<Line> flours = before.flours();
    for (const Line& flour : after.flours()) {
        if (before.mass_of(*flour.ingredient).value() == 0.0) {
            flours.push_back(flour);
        }
    }
    return flours;
}

} // namespace

std::vector<BalanceRow> balance_of(const Overall& before, const Overall& after, const MeantMoves& moves) {
    std::vector<BalanceRow> rows;
    const auto add = [&](std::string name, Mass was, Mass is, const std::string& meant) {
        const bool moved = std::abs((is - was).value()) > unmoved * before.total.value();
        rows.push_back(
            {.name = std::move(name), .before = was, .after = is, .meant = moved ? meant : std::string()});
    };
    for (const Line& flour : flours_of(before, after)) {
        add(flour.name, before.mass_of(*flour.ingredient), after.mass_of(*flour.ingredient),
            "the blend moved");
    }
    add(std::string(total_flour_row), before.total_flour, after.total_flour, "");
    add("added water", before.added_water, after.added_water,
        after.added_water > before.added_water
            ? "water that another liquid gave up counts as added in the levain"
            : "a liquid that counts whole as added water gave up the water in it");
    add("true water", before.true_water, after.true_water,
        moves.yeast_carries_water ? "in the yeast taken out" : "");
    add("salt", before.salt, after.salt, "");
    add("sugar", before.sugar, after.sugar, moves.solids);
    add("fat", before.fat, after.fat, moves.solids);
    add("dough", before.total, after.total,
        moves.loses_solids ? "the yeast taken out, and what else was in the liquid that gave up its water"
                           : "the yeast taken out");
    return rows;
}

void prove(const Overall& before, const Overall& after, Mass yeast_water) {
    const auto holds = [&](Mass difference) {
        return std::abs(difference.value()) <= unmoved * before.total.value();
    };
    const bool is_proven = holds(after.total_flour - before.total_flour) && holds(after.salt - before.salt) &&
                           holds(after.true_water - before.true_water + yeast_water);
    if (!is_proven) {
        throw std::logic_error("a conversion moved flour, water or salt");
    }
}

} // namespace leavenwright
