// Worked examples of the law and of the fragrance trade, each with where it was printed.
#include <doctest/doctest.h>

#include "rules/workbench.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

std::string rules_over(std::string_view rows, std::string_view expect) {
  return rule_file("    each: row of figures\n    expect: " + std::string(expect) +
                   "\n    otherwise: error\n    message: '{share} of {row}'\n") +
         "substances:\n"
         "  - { name: Bergapten, roles: [aroma chemical] }\n"
         "  - { name: Sodium benzoate, roles: [preservative] }\n"
         "  - { name: Potassium sorbate, roles: [preservative] }\n"
         "tables:\n  - id: figures\n    title: Figures\n    columns:\n"
         "      - { name: limit, unit: \"%\" }\n      - { name: counts, unit: \"%\" }\n    "
         "rows:\n" +
         std::string(rows);
}

std::string asked(std::string_view rows, std::string_view expect, std::string_view lines,
                  std::string_view sections = "") {
  Workbench bench(rules_over(rows, expect));
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  const std::string text = "formula \"test\"\n product bubble bar\nphase \"all\"\n" +
                           std::string(lines) + " q.s. bicarb\n" + std::string(sections);
  return ask(bench, bench.mix(text)).text;
}

std::string own(std::string_view name) {
  return "material \"" + std::string(name) + "\"\n role preservative\n form fine powder\n";
}

}  // namespace

TEST_CASE("a threshold is exceeded, not reached: exactly 0.01 %") {
  const std::string_view row =
      "      - { name: Linalool, substance: Linalool, limit: 0.01 %, source: book }\n";
  const auto scent = [](std::string_view share) {
    return "fragrance \"tide\"\n " + std::string(share) + " linalool\n undeclared none\n";
  };
  CHECK(asked(row, "share <= limit", " 1 % tide\n", scent("1 %")).starts_with("pass"));
  CHECK(asked(row, "share <= limit", " 1 % tide\n", scent("1.01 %")).starts_with("fail error"));
  CHECK(asked(row, "share <= limit", " 1 % tide\n", scent("0.9 - 1.1 %")).starts_with("review"));
}

TEST_CASE("salts count as their acids") {
  // molar masses: benzoic acid 122.12, sodium benzoate 144.10, sorbic acid 112.13, potassium
  // sorbate 150.22 g/mol; the limits are 2.5 and 0.6 %, as the acids
  const std::string_view benzoate =
      "      - { name: Benzoate, substance: Sodium benzoate, limit: 2.5 %, counts: 84.75 %,\n"
      "          source: book }\n";
  const std::string_view sorbate =
      "      - { name: Sorbate, substance: Potassium sorbate, limit: 0.6 %, counts: 74.64 %,\n"
      "          source: book }\n";
  CHECK(2.5 * 144.10 / 122.12 == doctest::Approx(2.95).epsilon(0.001));
  CHECK(0.6 * 150.22 / 112.13 == doctest::Approx(0.80).epsilon(0.005));
  const auto verdict = [](std::string_view row, const std::string& share, std::string_view name) {
    return asked(row, "share * counts <= limit", " " + share + " " + std::string(name) + "\n",
                 own(name));
  };
  CHECK(verdict(benzoate, "2.94 %", "sodium benzoate").starts_with("pass"));
  CHECK(verdict(benzoate, "2.96 %", "sodium benzoate").starts_with("fail error"));
  CHECK(verdict(sorbate, "0.80 %", "potassium sorbate").starts_with("pass"));
  CHECK(verdict(sorbate, "0.81 %", "potassium sorbate").starts_with("fail error"));
}

TEST_CASE("the bergapten example of an association of producers of bergamot oil") {
  // Its page: an oil with 3500 ppm of bergapten, a fragrance that may hold 75 ppm: 2.14 % of the
  // oil (it prints 2 %); 20 % of that fragrance in a product is 15 ppm of bergapten.
  CHECK(75.0 / 3500.0 * 100 == doctest::Approx(2.14).epsilon(0.002));
  const std::string_view row =
      "      - { name: Bergapten, substance: Bergapten, limit: 0.0015 %, source: book }\n";
  const std::string scent = "fragrance \"grove\"\n 75 ppm bergapten\n undeclared none\n";
  CHECK(asked(row, "share <= limit", " 20 % grove\n", scent).starts_with("pass"));
  CHECK(asked(row, "share <= limit", " 20.1 % grove\n", scent).starts_with("fail error"));
}

TEST_CASE("two oils that pass alone fail together") {
  const std::string_view row =
      "      - { name: Citral, substance: Citral, limit: 0.02 %, source: book }\n";
  const std::string oils =
      "fragrance \"reed\"\n 1.5 % citral\n undeclared none\n"
      "fragrance \"gull\"\n 1 % citral\n undeclared none\n";
  CHECK(asked(row, "share <= limit", " 1 % reed\n", oils).starts_with("pass"));
  CHECK(asked(row, "share <= limit", " 1 % gull\n", oils).starts_with("pass"));
  CHECK(asked(row, "share <= limit", " 1 % reed\n 1 % gull\n", oils) ==
        "fail error line 4: 0.025 % of Citral; at most 0.02 %\n");
}
