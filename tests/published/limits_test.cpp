// Limits of a conversion, by arithmetic: with flour F, water W, prefermented share p and levain
// hydration h the levain needs h p F of water, so it fits if and only if h p <= W / F.
#include "published/published_support.hpp"
#include "support/formulas.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <cstdio>
#include <cstdlib>

namespace leavenwright {
namespace {

using namespace leavenwright::testing;

struct Limit {
    const char* water;
    double share_percent;
    double hydration_percent;
    const char* shortfall; // as the message says it
    double largest_percent;
    const char* command;
    double wettest_percent; // W / (p F), rounded down to 0.1 %
};

const Limit limits[] = {
    {"550 g", 50.0, 125.0, "75 g of water short", 44.0, "--prefermented-flour 44% --levain-hydration 125%",
     110.0},
    {"200 g", 30.0, 100.0, "100 g of water short", 20.0, "--prefermented-flour 20% --levain-hydration 100%",
     66.6},
};

Formula dough_with(const char* water) {
    return formula_from("formula: 1\nname: Dry dough\n"
                        "dough:\n"
                        "  bread flour: 1000 g\n"
                        "  water: " +
                        std::string(water) +
                        "\n"
                        "  salt: 18 g\n"
                        "  instant yeast: 6 g\n");
}

ConversionRequest request_for(double share_percent, double hydration_percent) {
    ConversionRequest request;
    request.inoculation = PrefermentedFlour::percent(share_percent);
    request.levain_hydration = Hydration::percent(hydration_percent);
    request.command = "leavenwright convert dry.yaml";
    return request;
}

bool fits(const Formula& formula, double share_percent, double hydration_percent) {
    Diagnostics diagnostics;
    const auto conversion = convert(formula, request_for(share_percent, hydration_percent), diagnostics);
    CHECK(conversion.has_value() != diagnostics.has_errors());
    return conversion.has_value();
}

} // namespace

TEST_CASE("published limits: the message has the shortfall, the hint the most that fits and a command") {
    for (const Limit& limit : limits) {
        CAPTURE(limit.shortfall);
        Diagnostics diagnostics;
        const Formula formula = dough_with(limit.water);
        CHECK_FALSE(convert(formula, request_for(limit.share_percent, limit.hydration_percent), diagnostics));
        const auto findings = diagnostics.in_order();
        REQUIRE(findings.size() == 1);
        const Diagnostic& finding = findings.front();
        CAPTURE(finding.message);
        CAPTURE(finding.hint);
        CHECK(finding.code == Code::levain_does_not_fit);
        // " 75 g" and not "175 g"
        CHECK(finding.message.find(" " + std::string(limit.shortfall)) != std::string::npos);
        const std::string largest = std::to_string(static_cast<int>(limit.largest_percent)) + " %:";
        CHECK(finding.hint.find("the most that fits is " + largest) != std::string::npos);
        CHECK(finding.hint.find("leavenwright convert dry.yaml " + std::string(limit.command)) !=
              std::string::npos);
    }
}

TEST_CASE("published limits: the offered share fits, and a step of 0.1 % more does not") {
    for (const Limit& limit : limits) {
        CAPTURE(limit.shortfall);
        const Formula formula = dough_with(limit.water);
        CHECK(fits(formula, limit.largest_percent, limit.hydration_percent));
        CHECK_FALSE(fits(formula, limit.largest_percent + 0.1, limit.hydration_percent));
        // At the limit all water is in the levain.
        const Conversion conversion =
            converted(formula, request_for(limit.largest_percent, limit.hydration_percent));
        // 1e-6 g, far below any scale: what rounding of doubles may leave
        CHECK(near(grams_in(conversion.after.dough, "water"), 0.0, 0.0, 1e-6));
        const double all_water_g = std::strtod(limit.water, nullptr);
        CHECK(near(in_grams(conversion.levain.water), all_water_g, 1e-9, 0.0)); // exact but for doubles
    }
}

TEST_CASE("published limits: every command of the hint works as it is typed, and 0.1 % wetter does not") {
    for (const Limit& limit : limits) {
        CAPTURE(limit.shortfall);
        const Formula formula = dough_with(limit.water);
        Diagnostics diagnostics;
        CHECK_FALSE(convert(formula, request_for(limit.share_percent, limit.hydration_percent), diagnostics));
        const auto findings = diagnostics.in_order();
        REQUIRE(!findings.empty());
        const std::string& hint = findings.front().hint;
        const std::string option = "--prefermented-flour ";
        int commands = 0;
        double wettest = 0.0;
        for (std::size_t at = hint.find(option); at != std::string::npos; at = hint.find(option, at + 1)) {
            double share = 0.0;
            double hydration = 0.0;
            REQUIRE(std::sscanf(hint.c_str() + at, "--prefermented-flour %lf%% --levain-hydration %lf%%",
                                &share, &hydration) == 2);
            CAPTURE(share);
            CAPTURE(hydration);
            CHECK(fits(formula, share, hydration));
            CHECK_FALSE(fits(formula, share, hydration + 0.1));
            wettest = hydration;
            ++commands;
        }
        CHECK(commands == 2);                                   // less levain, or a stiffer one
        CHECK(near(wettest, limit.wettest_percent, 0.0, 1e-6)); // printed to 0.1 %
    }
}

TEST_CASE("published limits: largest_fit says the same unrounded") {
    for (const Limit& limit : limits) {
        CAPTURE(limit.shortfall);
        const LargestFit fit =
            largest_fit(dough_with(limit.water), request_for(limit.share_percent, limit.hydration_percent));
        const double water_ratio = std::strtod(limit.water, nullptr) / 1000.0;
        // exact but for doubles
        CHECK(near(fit.prefermented_flour.in_percent(), limit.largest_percent, 1e-9, 0.0));
        CHECK(near(fit.levain_hydration.value(), water_ratio / (limit.share_percent / 100.0), 1e-9, 0.0));
    }
}

} // namespace leavenwright
