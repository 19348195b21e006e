// Pictures as data agree with the measures that they draw.
#include <algorithm>
#include <cmath>

#include "estuary.h"

namespace {

using namespace sudsmark;
using namespace sudsmark::testing;

const Curve& curve(const FormulaResult& formula, std::string_view name) {
  const auto found = std::find_if(formula.curves.begin(), formula.curves.end(),
                                  [&](const Curve& one) { return one.name == name; });
  REQUIRE(found != formula.curves.end());
  return *found;
}

const Figure& measure(const FormulaResult& formula, std::string_view name) {
  const auto found = std::find_if(formula.measures.begin(), formula.measures.end(),
                                  [&](const MeasureResult& one) { return one.name == name; });
  REQUIRE(found != formula.measures.end());
  return found->figure;
}

/// The point at or next to an x.
const CurvePoint& at(const Curve& curve, double x) {
  return *std::min_element(curve.points.begin(), curve.points.end(),
                           [&](const CurvePoint& a, const CurvePoint& b) {
                             return std::abs(a.x - x) < std::abs(b.x - x);
                           });
}

}  // namespace

TEST_CASE("curves of the bath meet its measures") {
  const Rulesets rulesets = estuary_rulesets();
  const RunResult run = estuary(rulesets);
  REQUIRE(run.formulas.size() == 1);
  const FormulaResult& formula = run.formulas.front();
  const Figure& held = measure(formula, "bath.ph");
  const Figure& aired = measure(formula, "bath.ph_aired");

  const Curve& airing = curve(formula, "bath.ph by gas left");
  CHECK(*at(airing, 100).low == doctest::Approx(*held.low));
  CHECK(*at(airing, 100).high == doctest::Approx(*held.high));
  CHECK(*at(airing, 0).low == doctest::Approx(*aired.low));
  CHECK(*at(airing, 0).high == doctest::Approx(*aired.high));

  const Curve& by_dose = curve(formula, "bath.ph by dose");
  REQUIRE(by_dose.today.has_value());
  CHECK(*by_dose.today->low == 80);
  CHECK(by_dose.points.front().x == 0);
  CHECK(by_dose.points.back().x == 160);
  CHECK(*at(by_dose, 80).low == doctest::Approx(*held.low));
  CHECK(*at(by_dose, 80).high == doctest::Approx(*held.high));
  const Curve& aired_by_dose = curve(formula, "bath.ph_aired by dose");
  CHECK(*at(aired_by_dose, 80).high == doctest::Approx(*aired.high));
  // neutral at 38 C is 6.80, published ion product of water (Marshall and Franck 1981)
  CHECK(*by_dose.neutral == doctest::Approx(6.80).epsilon(0.001));
}

TEST_CASE("the pH of a bath rises as its gas leaves") {
  const Rulesets rulesets = estuary_rulesets();
  const RunResult run = estuary(rulesets);
  const Curve& airing = curve(run.formulas.front(), "bath.ph by gas left");
  for (std::size_t point = 1; point < airing.points.size(); ++point) {
    CHECK(airing.points[point].x < airing.points[point - 1].x);
    CHECK(*airing.points[point].low >= *airing.points[point - 1].low);
  }
}

TEST_CASE(
    "dust rises while a task is done and falls after, and its bound is no less than the mean") {
  const Rulesets rulesets = estuary_rulesets();
  const RunResult run = estuary(rulesets);
  const Curve& dust = curve(run.formulas.front(), "dust bound by time");
  CHECK(dust.subject == "tip the dry mix");
  CHECK(*dust.points.front().high == 0);
  double highest = 0;
  double when = 0;
  for (const CurvePoint& point : dust.points) {
    REQUIRE(point.low.has_value());
    REQUIRE(point.high.has_value());
    CHECK(*point.low <= *point.high);
    if (*point.high > highest) {
      highest = *point.high;
      when = point.x;
    }
  }
  CHECK(when == doctest::Approx(10).epsilon(0.1));  // minutes, as the formula says it takes
  // by hand: 950 g of powder, 100 mg/kg, in 10 min into 28 m3 with 1.5 changes an hour:
  // G/Q (1 - exp(-1.5/6)) with G = 6 x 0.95 x 100 mg/h and Q = 42 m3/h
  const double mass = 0.95;
  const double bound = 6 * mass * 100 / 42 * (1 - std::exp(-0.25));
  CHECK(highest == doctest::Approx(bound).epsilon(0.05));
}

TEST_CASE("a product that goes into no bath has no curves of one") {
  const Rulesets rulesets = estuary_rulesets();
  std::string text = file_contents(golden("estuary.formula"));
  text.replace(text.find("bubble bar"), 10, "shampoo bar");
  const RunResult run = checked("a.formula", text, rulesets);
  REQUIRE(run.formulas.size() == 1);
  CHECK(std::none_of(run.formulas.front().curves.begin(), run.formulas.front().curves.end(),
                     [](const Curve& one) { return one.measure.starts_with("bath.ph"); }));
}
