// Shares of masses that are ranges: hand-worked extremes, and random masses that must lie inside.
#include "blend/composition.h"

#include <doctest/doctest.h>

#include <cmath>
#include <random>
#include <vector>

namespace {

using sudsmark::blend::Composition;
using sudsmark::blend::Ingredient;
using sudsmark::quantity::Range;

Composition of(std::vector<Range> masses, std::optional<double> fixed = std::nullopt) {
  Composition composition;
  composition.fixed_total = fixed;
  for (const Range& mass : masses) composition.ingredients.push_back({0, mass, {}, false});
  return composition;
}

TEST_CASE("exact masses give the exact share") {
  const std::vector<Range> first{1.0, 0.0};
  CHECK(of({25.0, 75.0}).weighted_share(first) == Range(0.25));
  CHECK(of({0.0, 0.0}).weighted_share(first) == Range::unknown());
}

TEST_CASE("free masses: what grows makes the whole grow") {
  // 2 to 3 g in 2 to 3 g + 7 g: 2/9 to 3/10
  const Range share = of({{2, 3}, 7.0}).weighted_share(std::vector<Range>{1.0, 0.0});
  CHECK(share.low == doctest::Approx(2.0 / 9));
  CHECK(share.high == doctest::Approx(3.0 / 10));
}

TEST_CASE("a fixed total: what one gains another loses") {
  // 2 to 3 of 10, the second takes the rest: the first is 20 to 30 %, the second 70 to 80 %, both
  // together all of it, to the last bit
  const Composition filled = of({{2, 3}, {7, 8}}, 10.0);
  CHECK(filled.weighted_share(std::vector<Range>{1.0, 0.0}).low == doctest::Approx(0.2));
  CHECK(filled.weighted_share(std::vector<Range>{1.0, 0.0}).high == doctest::Approx(0.3));
  const Range all = filled.weighted_share(std::vector<Range>{1.0, 1.0});
  CHECK(all.low == doctest::Approx(1.0));
  CHECK(all.high == doctest::Approx(1.0));
  // 65 to 72 % active in the first, 30 % in the second: (2*0.65 + 8*0.3)/10, (3*0.72 + 7*0.3)/10
  const Range active = filled.weighted_share(std::vector<Range>{{0.65, 0.72}, 0.3});
  CHECK(active.low == doctest::Approx(0.37));
  CHECK(active.high == doctest::Approx(0.426));
}

TEST_CASE("a dose on top of a fixed total") {
  Composition composition = of({{2, 3}, {7, 8}}, 10.0);
  composition.ingredients.push_back({0, {0.1, 0.2}, {}, true});
  const Range dose = composition.weighted_share(std::vector<Range>{0.0, 0.0, 1.0});
  CHECK(dose.low == doctest::Approx(0.1 / 10.1));
  CHECK(dose.high == doctest::Approx(0.2 / 10.2));
  CHECK(composition.total().low == doctest::Approx(10.1));
}

TEST_CASE("no random choice of masses and coefficients lies outside") {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> unit(0.0, 1.0);
  for (int round = 0; round < 400; ++round) {
    const auto count = static_cast<std::size_t>(2 + round % 6);
    std::vector<Range> masses;
    std::vector<Range> coefficients;
    double low = 0;
    double high = 0;
    for (std::size_t at = 0; at < count; ++at) {
      const double from = unit(random) * 10;
      const double to = from + (unit(random) < 0.3 ? 0.0 : unit(random) * 5);
      masses.emplace_back(from, to);
      low += from;
      high += to;
      const double c = unit(random);
      coefficients.emplace_back(c, c + unit(random) * (1 - c));
    }
    const bool fixed = round % 2 == 0;
    const double total = low + (high - low) * unit(random);
    const Composition composition = of(masses, fixed ? std::optional<double>(total) : std::nullopt);
    const Range share = composition.weighted_share(coefficients);
    for (int draw = 0; draw < 20; ++draw) {
      std::vector<double> chosen(count);
      double sum = 0;
      for (std::size_t at = 0; at < count; ++at) {
        chosen[at] = masses[at].low + (masses[at].high - masses[at].low) * unit(random);
        sum += chosen[at];
      }
      if (fixed) {
        // move all masses towards one end in proportion until the total is met
        const bool down = sum > total;
        const double room = down ? sum - low : high - sum;
        const double part = room > 0 ? std::abs(total - sum) / room : 0;
        sum = 0;
        for (std::size_t at = 0; at < count; ++at) {
          const double towards = down ? masses[at].low : masses[at].high;
          chosen[at] += (towards - chosen[at]) * part;
          sum += chosen[at];
        }
      }
      double weighted = 0;
      for (std::size_t at = 0; at < count; ++at) {
        const Range& c = coefficients[at];
        weighted += chosen[at] * (c.low + (c.high - c.low) * unit(random));
      }
      const double value = weighted / sum;
      CHECK(value >= share.low - 1e-12);
      CHECK(value <= share.high + 1e-12);
    }
  }
}

}  // namespace
