#include "science/mixture_classification.h"

#include <doctest/doctest.h>

#include <cmath>
#include <random>
#include <string_view>
#include <vector>

using namespace sudsmark::science;

namespace {
MixtureComponent part(std::string_view name, Interval share,
                      std::vector<std::string_view> statements) {
  MixtureComponent component;
  component.name = name;
  component.statements = std::move(statements);
  component.share = share;
  return component;
}
}  // namespace

TEST_CASE("a range over the limit is possible, not definite") {
  const std::vector mix{part("SLSA", {0.02, 0.04}, {"H318"})};
  const auto result = classify_mixture(mix);
  REQUIRE(result.find("H318") != nullptr);
  CHECK_FALSE(result.find("H318")->definite);
  // And eye irritation is sure, so that it stays beside the graver possibility.
  REQUIRE(result.find("H319") != nullptr);
  CHECK(result.find("H319")->definite);
  CHECK(result.find("H318")->reasons.front().of_limit.high == doctest::Approx(4.0 / 3));
}

TEST_CASE("one substance from two lines is added up before the 1 % is looked at") {
  const std::vector mix{part("SLS", {0.006, 0.006}, {"H315"}), part("SLS", {0.006, 0.006}, {}),
                        part("SCS", {0.09, 0.09}, {"H315"})};
  const auto result = classify_mixture(mix);
  REQUIRE(result.find("H315") != nullptr);
  CHECK(result.find("H315")->definite);
}

TEST_CASE("a supplier's own limits come first") {
  // Supplier of a betaine (from memory): eye damage above 10 %, irritation above 4 %.
  MixtureComponent betaine = part("betaine", {0.05, 0.05}, {"H318"});
  betaine.not_additive = true;
  betaine.limits = {{"H318", 0.10}, {"H319", 0.04}};
  const auto result = classify_mixture(std::vector{betaine});
  CHECK(result.find("H318") == nullptr);
  REQUIRE(result.find("H319") != nullptr);
  CHECK(result.find("H319")->definite);
  betaine.share = {0.03, 0.03};
  CHECK(classify_mixture(std::vector{betaine}).statements.empty());
  betaine.share = {0.2, 0.2};
  const auto strong = classify_mixture(std::vector{betaine});
  REQUIRE(strong.find("H318") != nullptr);
  CHECK(strong.find("H318")->reasons.size() == 1);  // by its own limit, and no other
}

TEST_CASE("a supplier's limit below 1 % makes smaller shares count") {
  MixtureComponent sharp = part("sharp", {0.006, 0.006}, {"H318"});
  CHECK(classify_mixture(std::vector{sharp}).statements.empty());
  sharp.limits = {{"H318", 0.005}};
  REQUIRE(classify_mixture(std::vector{sharp}).find("H318") != nullptr);
}

TEST_CASE("a sensitiser whose category nobody stated") {
  const auto between = classify_mixture(std::vector{part("scent", {0.005, 0.005}, {"H317"})});
  REQUIRE(between.find("H317") != nullptr);
  CHECK_FALSE(between.find("H317")->definite);
  CHECK(
      classify_mixture(std::vector{part("scent", {0.01, 0.01}, {"H317"})}).find("H317")->definite);
  CHECK(classify_mixture(std::vector{part("scent", {0.0009, 0.0009}, {"H317"})}).find("H317") ==
        nullptr);
}

TEST_CASE("statements without a rule come back as undecided") {
  const auto result =
      classify_mixture(std::vector{part("SLS", {0.1, 0.1}, {"H228", "H302", "H318", "H412"})});
  REQUIRE(result.undecided.size() == 3);
  CHECK(result.undecided[0].code == "H228");
  CHECK(result.undecided[0].component == "SLS");
}

TEST_CASE("a corrosive mix takes in skin irritation and damages eyes") {
  const auto result = classify_mixture(std::vector{part("lye", {0.06, 0.06}, {"H314"})});
  CHECK(result.find("H314") != nullptr);
  CHECK(result.find("H318") != nullptr);
  CHECK(result.find("H315") == nullptr);
  CHECK(result.find("H319") == nullptr);
  CHECK(result.statements.front().code == "H314");
}

TEST_CASE("property: a wider range keeps what was possible and adds nothing definite") {
  std::mt19937_64 random(7);
  const auto unit = [&random] { return static_cast<double>(random() >> 11) * 0x1.0p-53; };
  const std::vector<std::string_view> codes{"H314", "H315", "H317", "H318", "H319", "H335", "H336"};
  const std::vector<std::string_view> names{"a", "b", "c", "d"};
  for (int round = 0; round < 2000; ++round) {
    std::vector<MixtureComponent> exact;
    std::vector<MixtureComponent> wide;
    for (const std::string_view name : names) {
      const double share = std::pow(10.0, -3 * unit());
      auto component = part(name, {share, share}, {codes[random() % codes.size()]});
      component.not_additive = random() % 2 == 0;
      exact.push_back(component);
      component.share = {share * unit(), std::min(1.0, share * (1 + unit()))};
      wide.push_back(component);
    }
    const auto narrow_result = classify_mixture(exact);
    const auto wide_result = classify_mixture(wide);
    const auto sure = [](const MixtureClassification& result, std::string_view code) {
      const MixtureStatement* found = result.find(code);
      return found != nullptr && found->definite;
    };
    for (const std::string_view code : codes) {
      // A statement may be left out because a graver one is sure.
      const bool taken_in = (code == "H315" && sure(narrow_result, "H314")) ||
                            (code == "H319" && sure(narrow_result, "H318"));
      if (sure(wide_result, code)) CHECK((sure(narrow_result, code) || taken_in));
      if (narrow_result.find(code) != nullptr) {
        const bool wide_taken_in = (code == "H315" && sure(wide_result, "H314")) ||
                                   (code == "H319" && sure(wide_result, "H318"));
        CHECK((wide_result.find(code) != nullptr || wide_taken_in));
      }
    }
  }
}
