#include "schedule/search.hpp"

#include "diagnostic/codes.hpp"
#include "support/formulas.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

constexpr double hour = 3600.0;

Formula loaf(const std::string& process) {
    return formula_from("formula: 1\nname: Loaf\nmakes: 1 x 1720 g\ndough:\n"
                        "  bread flour: 900 g\n  water: 600 g\n  salt: 20 g\n  levain: 200 g\n"
                        "preferments:\n  levain:\n    kind: levain\n    bread flour: 80 g\n"
                        "    water: 80 g\n    culture: 40 g\n    culture hydration: 100%\n" +
                        process);
}

const std::string no_retard = "process:\n  - bulk\n  - shape\n  - proof\n";
const std::string retard = "process:\n  - bulk\n  - shape\n  - retard: { for: 10 h, at: 4 C }\n  - proof\n";

SearchRequest wish(Sought sought, double hours) {
    return {.sought = sought,
            .available = seconds(hours * hour),
            .inoculation = PrefermentedFlour(0.1),
            .unfit = {},
            .place = {},
            .command = {}};
}

std::string code_of(const Formula& formula, const SearchRequest& request) {
    Diagnostics diagnostics;
    const auto answer = search(formula, {}, request, {.members = least_members}, diagnostics);
    CHECK_FALSE(answer);
    REQUIRE_FALSE(diagnostics.in_order().empty());
    return std::string(name_of(diagnostics.in_order().front().code));
}

Answer answer_of(const Formula& formula, const SearchRequest& request) {
    Diagnostics diagnostics;
    return search(formula, {}, request, {.members = least_members}, diagnostics).value();
}

} // namespace

TEST_CASE("search: one setting is answered, in a sentence, within its bounds") {
    const Answer levain = answer_of(loaf(no_retard), wish(Sought::inoculation, 8.0));
    REQUIRE(levain.inoculation);
    CHECK_FALSE(levain.temperature);
    CHECK_FALSE(levain.retard);
    CHECK(*levain.inoculation >= least_inoculation);
    CHECK(*levain.inoculation <= most_inoculation);
    CHECK(levain.sentence.find("ready in 8 h") != std::string::npos);

    const Answer warmth = answer_of(loaf(no_retard), wish(Sought::temperature, 12.0));
    REQUIRE(warmth.temperature);
    CHECK(*warmth.temperature > coolest_search);
    CHECK(*warmth.temperature < warmest_search);

    const Answer cold = answer_of(loaf(retard), wish(Sought::retard, 30.0));
    REQUIRE(cold.retard);
    CHECK(cold.retard->value() > 12.0 * hour);
    CHECK(*cold.retard < longest_retard);
}

TEST_CASE("search: more time, less levain, cooler, longer in the refrigerator") {
    CHECK(*answer_of(loaf(no_retard), wish(Sought::inoculation, 7.0)).inoculation >
          *answer_of(loaf(no_retard), wish(Sought::inoculation, 10.0)).inoculation);
    CHECK(*answer_of(loaf(no_retard), wish(Sought::temperature, 9.0)).temperature >
          *answer_of(loaf(no_retard), wish(Sought::temperature, 14.0)).temperature);
    CHECK(*answer_of(loaf(retard), wish(Sought::retard, 24.0)).retard <
          *answer_of(loaf(retard), wish(Sought::retard, 36.0)).retard);
}

TEST_CASE("search: nothing fits, and it says what would") {
    CHECK(code_of(loaf(no_retard), wish(Sought::inoculation, 1.0)) == "no-answer");
    CHECK(code_of(loaf(no_retard), wish(Sought::inoculation, 500.0)) == "no-answer");
    CHECK(code_of(loaf(no_retard), wish(Sought::temperature, 1.0)) == "no-answer");
    Diagnostics diagnostics;
    search(loaf(no_retard), {}, wish(Sought::temperature, 1.0), {.members = least_members}, diagnostics);
    const std::string hint = diagnostics.in_order().front().hint;
    CHECK(hint.find("within these bounds it takes") != std::string::npos);
    CHECK(hint.find("\nleavenwright proof FILE --ready-in ") != std::string::npos);
}

TEST_CASE("search: a share that had no room is named beside the one that is found") {
    SearchRequest request = wish(Sought::inoculation, 8.0);
    request.most = PrefermentedFlour(0.14);
    request.unfit = PrefermentedFlour(0.2);
    const Answer answer = answer_of(loaf(no_retard), request);
    CHECK(*answer.inoculation <= request.most);
    CHECK(answer.sentence.find("(20 % does not fit)") != std::string::npos);
}

TEST_CASE("search: the end of a profile bounds the times that are named") {
    PlanRequest short_of_all;
    short_of_all.profile =
        TemperatureProfile(std::vector<TemperatureProfile::Leg>{{.time = hours(12.0), .at = usual_room}});
    Diagnostics diagnostics;
    search(loaf(no_retard), short_of_all, wish(Sought::inoculation, 50.0), {.members = least_members},
           diagnostics);
    const std::string hint = diagnostics.in_order().front().hint;
    CAPTURE(hint);
    CHECK(hint.find(" to 11.9 h; the nearest:") != std::string::npos);
}

TEST_CASE("search: a retard that the process does not have") {
    CHECK(code_of(loaf(no_retard), wish(Sought::retard, 30.0)) == "no-answer");
}
