// What a formula states of who uses it, what is claimed, which categories a certificate names and
// since when it is sold, as rules see it.
#include <doctest/doctest.h>

#include "rules/workbench.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

std::string bar(std::string_view statements, std::string_view sections = "") {
  return "formula \"test\"\n product bubble bar\n" + std::string(statements) +
         "phase \"all\"\n 3 % sweet oil\n q.s. bicarb\n" + std::string(sections);
}

std::string kind(std::string_view keys, const std::string& formula) {
  const std::string all = verdict_of(std::string(keys) + "    message: no\n", formula);
  return all.substr(0, all.find_first_of(" \n"));
}

}  // namespace

TEST_CASE("users are a set, and who says no age is of unknown age") {
  const std::string adults = "    expect: users = adults\n";
  CHECK(kind(adults, bar(" users adults, sensitive skin\n")) == "pass");
  CHECK(kind(adults, bar(" users children under 3\n")) == "fail");
  CHECK(kind(adults, bar(" users sensitive skin\n")) == "open");
  CHECK(kind(adults, bar("")) == "open");
  const std::string sensitive = "    expect: users = sensitive skin\n";
  CHECK(kind(sensitive, bar(" users adults, sensitive skin\n")) == "pass");
  CHECK(kind(sensitive, bar(" users adults\n")) == "fail");
}

TEST_CASE("a claim that is not stated is not made") {
  const std::string vegan = "    expect: claims = vegan\n";
  CHECK(kind(vegan, bar(" claims vegan, \"soft as rain\"\n")) == "pass");
  CHECK(kind(vegan, bar(" claims \"vegan at heart\"\n")) == "fail");
  CHECK(kind(vegan, bar("")) == "fail");
}

TEST_CASE("a certificate of several categories is for each of them") {
  const std::string rule =
      "    each: material\n    when: material is fragrance\n"
      "    expect: material.category = product.fragrance_category\n";
  const auto asked = [&](std::string_view category) {
    return kind(rule,
                "formula \"test\"\n product bubble bar\nphase \"all\"\n 3 % fig\n"
                " q.s. bicarb\nfragrance fig\n category " +
                    std::string(category) + "\n");
  };
  CHECK(asked("9") == "pass");
  CHECK(asked("9, 7A") == "pass");
  CHECK(asked("7A and 9") == "pass");
  CHECK(asked("7A") == "fail");
  CHECK(asked("7A, 19 and 5A") == "fail");
}

TEST_CASE("each market's law counts from a day of its own") {
  const auto asked = [](std::string_view market, std::string_view statements) {
    Workbench bench(
        rule_file("    expect: oils <= 2 %\n    message: no\n"
                  "    from: 2026-07-31\n    shelf: 2028-07-31\n",
                  "authority: law\nmarkets: [" + std::string(market) + "]\n"));
    REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
    const blend::Blend blend = bench.mix(bar(" market GB, CA\n" + std::string(statements)));
    return ask(bench, blend, {test_day, {}, {}, true}).verdicts.front().kind ==
           sudsmark::Kind::fail;
  };
  // an old product, of which a new batch is made
  const std::string_view old = " on sale since 2024-03-01\n";
  CHECK(asked("GB", old));
  CHECK_FALSE(asked("CA", old));
  // an old batch of it
  const std::string_view batch = " batch made 2026-07-30\n on sale since 2026-08-01\n";
  CHECK_FALSE(asked("GB", batch));
  CHECK(asked("CA", batch));
  CHECK(asked("GB, CA", batch));
}

TEST_CASE("portions tell whether they are sold apart") {
  const std::string rule = "    each: portion\n    expect: portion.sold_apart = 1\n";
  CHECK(kind(rule, bar("", "portion one, 100 %, sold apart\n")) == "pass");
  CHECK(kind(rule, bar("", "portion one, 100 %\n")) == "fail");
}

TEST_CASE("what dries off is in the dough and not in the product") {
  const std::string formula =
      "formula \"test\"\n product bubble bar\n dried 12 h at 35 C\nphase \"all\"\n"
      " 80 % bicarb\n 20 % sweet oil, dries off\n";
  CHECK(kind("    expect: oils = 0 %\n", formula) == "pass");
  CHECK(kind("    expect: wet_to_dry = 0.25\n", formula) == "pass");
  CHECK(kind("    expect: forming.dries_off = 20 %\n", formula) == "pass");
  CHECK(kind("    expect: forming.dried_at = 35 C\n", formula) == "pass");
  CHECK(kind("    expect: forming.dried_at <= 35 C\n", bar("")) == "open");
}
