#include "diagnostic/codes.hpp"

#include "support/formulas.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string>

using namespace leavenwright;

TEST_CASE("codes: the catalogue is in the order of the enumeration") {
    const auto catalogue = diagnostic_catalogue();
    REQUIRE_FALSE(catalogue.empty());
    for (std::size_t i = 0; i < catalogue.size(); ++i) {
        CHECK(static_cast<std::size_t>(catalogue[i].code) == i);
        CHECK(name_of(catalogue[i].code) == catalogue[i].name);
    }
    CHECK(catalogue.back().code == Code::yeast_unusual);
}

TEST_CASE("codes: names are kebab-case, unique and in order") {
    std::set<std::string_view> names;
    std::string_view last;
    for (const CatalogueEntry& entry : diagnostic_catalogue()) {
        CAPTURE(entry.name);
        const bool is_kebab = std::all_of(entry.name.begin(), entry.name.end(), [](char byte) {
            return (byte >= 'a' && byte <= 'z') || (byte >= '0' && byte <= '9') || byte == '-';
        });
        CHECK(is_kebab);
        CHECK_FALSE(entry.name.empty());
        CHECK_FALSE(entry.name.starts_with('-'));
        CHECK_FALSE(entry.name.ends_with('-'));
        CHECK(entry.name.find("--") == std::string_view::npos);
        CHECK(names.insert(entry.name).second);
        CHECK(last < entry.name);
        last = entry.name;
    }
}

TEST_CASE("codes: every code has a session that brings it about") {
    for (const CatalogueEntry& entry : diagnostic_catalogue()) {
        CAPTURE(entry.name);
        const std::string path = "tests/golden/errors/" + std::string(entry.name) + ".test";
        std::string session;
        REQUIRE_NOTHROW(session = testing::project_file(path));
        CHECK(session.find("[" + std::string(entry.name) + "]") != std::string::npos);
    }
}

TEST_CASE("codes: every entry says what is wrong and what to write") {
    for (const CatalogueEntry& entry : diagnostic_catalogue()) {
        CAPTURE(entry.name);
        CHECK_FALSE(entry.cause.empty());
        CHECK(entry.cause.ends_with('.'));
        CHECK_FALSE(entry.wrong.empty());
        CHECK_FALSE(entry.right.empty());
        CHECK(entry.wrong != entry.right);
    }
}
