// Regulation (EC) No 1272/2008 (CLP), Annex I: mixture rules for skin (quoted), eyes and
// sensitisers (from memory), airways (quoted), extreme pH and relevant components (read).
#include <doctest/doctest.h>

#include <string_view>
#include <vector>

#include "science/mixture_classification.h"

using namespace sudsmark::science;

namespace {

MixtureComponent part(std::string_view name, double share,
                      std::vector<std::string_view> statements) {
  MixtureComponent component;
  component.name = name;
  component.statements = std::move(statements);
  component.share = {share, share};
  return component;
}

bool definite(const std::vector<MixtureComponent>& mix, std::string_view code) {
  const auto result = classify_mixture(mix);
  const MixtureStatement* found = result.find(code);
  return found != nullptr && found->definite;
}

}  // namespace

TEST_CASE("CLP (from memory): a dry premix with a tenth of surfactant damages eyes") {
  MixtureComponent slsa = part("SLSA", 0.10, {"H318"});
  slsa.not_additive = true;
  const std::vector<MixtureComponent> mix{part("sodium bicarbonate", 0.50, {}),
                                          part("citric acid", 0.25, {"H319", "H335"}),
                                          part("starch", 0.15, {}), slsa};
  const auto result = classify_mixture(mix);
  REQUIRE(result.find("H318") != nullptr);
  CHECK(result.find("H318")->definite);
  CHECK(result.find("H318")->reasons.size() == 2);  // by the sum, and by the exception
  CHECK(result.find("H319") == nullptr);            // taken in by eye damage
  REQUIRE(result.find("H335") != nullptr);          // STOT SE 3
  CHECK(result.find("H335")->definite);
  CHECK(result.find("H335")->reasons.front().components == std::vector<std::string>{"citric acid"});
}

TEST_CASE("CLP Table 3.2.3 (quoted): skin") {
  CHECK(definite({part("x", 0.05, {"H314"})}, "H314"));
  CHECK_FALSE(definite({part("x", 0.049, {"H314"})}, "H314"));
  CHECK(definite({part("x", 0.01, {"H314"})}, "H315"));
  CHECK(definite({part("x", 0.10, {"H315"})}, "H315"));
  CHECK_FALSE(definite({part("x", 0.099, {"H315"})}, "H315"));
  // 10 x 0.5 % would be enough, and does not count below 1 %; 10 x 1 % does.
  CHECK_FALSE(definite({part("x", 0.005, {"H314"}), part("y", 0.05, {"H315"})}, "H315"));
  CHECK(definite({part("x", 0.02, {"H314"}), part("y", 0.02, {"H315"})}, "H315"));
}

TEST_CASE("CLP Table 3.3.3 (from memory): eyes") {
  CHECK(definite({part("x", 0.03, {"H318"})}, "H318"));
  CHECK_FALSE(definite({part("x", 0.029, {"H318"})}, "H318"));
  CHECK(definite({part("x", 0.01, {"H318"})}, "H319"));
  CHECK(definite({part("x", 0.10, {"H319"})}, "H319"));
  CHECK_FALSE(definite({part("x", 0.09, {"H319"})}, "H319"));
  CHECK(definite({part("x", 0.015, {"H318"}), part("y", 0.02, {"H318"})}, "H318"));
}

TEST_CASE("CLP Table 3.3.4 (from memory): a surfactant from 1 % on, where sums say 3 %") {
  MixtureComponent surfactant = part("SLSA", 0.01, {"H318"});
  CHECK_FALSE(definite({surfactant}, "H318"));
  surfactant.not_additive = true;
  CHECK(definite({surfactant}, "H318"));
  MixtureComponent mild = part("SCI", 0.03, {"H319"});
  CHECK_FALSE(definite({mild}, "H319"));
  mild.not_additive = true;
  CHECK(definite({mild}, "H319"));
}

TEST_CASE("CLP 3.8.3.4.5 (quoted): airways from 20 %, each endpoint for itself") {
  CHECK(definite({part("x", 0.12, {"H335"}), part("y", 0.08, {"H335"})}, "H335"));
  CHECK_FALSE(definite({part("x", 0.12, {"H335"}), part("y", 0.08, {"H336"})}, "H335"));
}

TEST_CASE("CLP Table 3.4.5 (from memory): skin sensitisers are not added up") {
  MixtureComponent scent = part("scent", 0.009, {"H317"});
  scent.sensitiser = SensitiserCategory::one_b;
  MixtureComponent other = scent;
  other.name = "other scent";
  CHECK_FALSE(definite({scent, other}, "H317"));
  scent.share = {0.01, 0.01};
  CHECK(definite({scent}, "H317"));
  scent.sensitiser = SensitiserCategory::one_a;
  scent.share = {0.001, 0.001};
  CHECK(definite({scent}, "H317"));
}

TEST_CASE("CLP 3.2.3.1.2 and 3.3.3.1.2: extreme pH") {
  const std::vector<MixtureComponent> mix{part("x", 1.0, {})};
  for (const double ph : {2.0, 11.5}) {
    const auto result = classify_mixture(mix, Interval{ph, ph});
    REQUIRE(result.find("H314") != nullptr);
    REQUIRE(result.find("H318") != nullptr);
    CHECK(result.find("H314")->definite);
  }
  CHECK(classify_mixture(mix, Interval{2.1, 11.4}).statements.empty());
  const auto straddling = classify_mixture(mix, Interval{11.0, 12.0});
  REQUIRE(straddling.find("H314") != nullptr);
  CHECK_FALSE(straddling.find("H314")->definite);
}
