// Bounds against workplace limits: whose limit counts, and the sums, by hand.
#include <cmath>

#include "measures/dust_limits.h"
#include "measures/workshop_formula.h"

namespace {

using namespace sudsmark;
using quantity::Range;
using testing::WorkshopFormula;

std::string handled(const std::string& market, const std::string& tasks) {
  return "formula \"Puck\"\n  product bubble bar\n" + market +
         "workshop \"loft\"\n  room 40 m3\n  air changes 2 per hour\n"
         "phase \"all\"\n  70 % sodium bicarbonate\n  30 % SLSA\n" +
         tasks;
}

std::string task(const std::string& what, const std::string& more = "") {
  return "task \"tip\"\n  handles " + what + "\n  takes 10 min\n  times 1 per day\n" + more;
}

const double per_mg = (1 - std::exp(-16.0)) / 16 / 40;  // mg/m3 of an 8 h mean per mg released

const measures::OfLimit& only(const measures::OfLimits& limits) {
  REQUIRE(limits.substances.size() == 1);
  return limits.substances.front();
}

TEST_CASE("starch in Great Britain: 10 mg/m3 inhalable and 4 respirable (EH40, as quoted)") {
  const WorkshopFormula formula(handled("  market GB\n", task("1 kg corn starch")));
  const auto limits = measures::of_limits(formula.view());
  const auto& starch = only(limits);
  CHECK(starch.limit.country == "GB");
  CHECK(!starch.limit.elsewhere);
  // 5000 mg inhalable over 10, and 300 mg respirable over 4: the first fills its limit more. The
  // moisture of the starch is weighed with its dust, and is 86 + 10 to 90 + 14 % of it.
  CHECK(starch.limit.value * 1e6 == doctest::Approx(10));
  CHECK(starch.of_limit.low == doctest::Approx(0.96 * 5000 * per_mg / 10));
  CHECK(std::isinf(starch.of_limit.high));
  CHECK(formula("dust.of_limit").low == doctest::Approx(0.96 * 5000 * per_mg / 10));
}

TEST_CASE("kaolin has a limit of fine dust alone, talc a lower one") {
  const WorkshopFormula kaolin(handled("  market GB\n", task("1 kg kaolin")));
  const auto clay = measures::of_limits(kaolin.view());
  CHECK(only(clay).respirable);
  CHECK(only(clay).limit.value * 1e6 == doctest::Approx(2));
  CHECK(only(clay).of_limit.low == doctest::Approx(300 * per_mg / 2));
  const WorkshopFormula talc(handled("  market GB\n", task("1 kg talc")));
  CHECK(measures::of_limits(talc.view()).sum.low == doctest::Approx(300 * per_mg / 1));
}

TEST_CASE("citric acid: the German limit where it is sold in the EU, and beside for want of one") {
  const WorkshopFormula eu(handled("  market EU\n", task("1 kg citric acid")));
  const auto in_eu = measures::of_limits(eu.view());
  CHECK(only(in_eu).limit.country == "DE");
  CHECK(!only(in_eu).limit.elsewhere);
  CHECK(only(in_eu).limit.value * 1e6 == doctest::Approx(2));
  const WorkshopFormula gb(handled("  market GB\n", task("1 kg citric acid")));
  const auto in_gb = measures::of_limits(gb.view());
  CHECK(only(in_gb).limit.country == "DE");
  CHECK(only(in_gb).limit.elsewhere);
  static_cast<void>(gb("dust.of_limit"));
  CHECK(gb.told().find("none known where it is sold") != std::string::npos);
}

TEST_CASE("two markets: the strictest of them counts") {
  // starch: 10 in Great Britain; 15 by US law, 10 recommended there
  const WorkshopFormula both(handled("  market GB, US\n", task("1 kg corn starch")));
  CHECK(only(measures::of_limits(both.view())).limit.value * 1e6 == doctest::Approx(10));
  const WorkshopFormula us(handled("  market US\n", task("1 kg corn starch")));
  const auto limits = measures::of_limits(us.view());
  CHECK(only(limits).limit.country == "US");
  CHECK(only(limits).limit.value * 1e6 == doctest::Approx(10));
}

TEST_CASE("what has no limit is told, and is not safe for that") {
  const WorkshopFormula formula(handled("  market GB\n", task("1 kg sodium bicarbonate")));
  CHECK(formula("dust.of_limit") == Range::unknown());
  CHECK(formula.told().find("no limit known for Sodium bicarbonate") != std::string::npos);
  CHECK(formula.told().find("makes none of them safe") != std::string::npos);
  CHECK(formula.lacks().find("a workplace limit of any of the powders") != std::string::npos);
}

TEST_CASE("a stated dustiness: like the powder at the least, all of the strictest at the most") {
  // 1 kg of mix raises 400 mg: of it 2 % kaolin (2 mg/m3) and 8 % starch (10 and 4 mg/m3)
  const std::string premix =
      "premix \"bag\" makes 1 kg\n  900 g sodium bicarbonate\n  80 g corn starch\n  20 g kaolin\n";
  const WorkshopFormula formula(
      handled("  market GB\n", premix + task("1 kg \"bag\"", "  raises 400 mg/kg\n")));
  const Range found = formula("dust.of_limit");
  // at least: starch 0.08 x 0.96 x 400 mg over 10; kaolin's limit is of fine dust, of which there
  // may be none
  CHECK(found.low == doctest::Approx(0.08 * 0.96 * 400 * per_mg / 10));
  // at most: all 400 mg are kaolin, of which there are 20 g
  CHECK(found.high == doctest::Approx(400 * per_mg / 2));
}

TEST_CASE("the strictest is taken only as far as there is any of it") {
  // 1 kg raises 100 g (nobody's powder, to have round figures): 20 g kaolin at 2, then 80 g starch
  // at its 4 mg/m3 of fine dust, of the 83.2 g that it is at most
  const std::string premix =
      "premix \"bag\" makes 1 kg\n  900 g sodium bicarbonate\n  80 g corn starch\n  20 g kaolin\n";
  const WorkshopFormula formula(
      handled("  market GB\n", premix + task("1 kg \"bag\"", "  raises 100000 mg/kg\n")));
  CHECK(formula("dust.of_limit").high == doctest::Approx((20000.0 / 2 + 80000.0 / 4) * per_mg));
}

TEST_CASE("pearl: a bound that meets its limit to the letter") {
  // mica 0.8 mg/m3 respirable; so much of it that the bound is just that
  const double grams = 0.8 / (per_mg * 1000) / 0.3;  // kg at 300 mg/kg of fine dust
  const WorkshopFormula formula(handled("  market GB\n", task(std::to_string(grams) + " kg mica")));
  const auto limits = measures::of_limits(formula.view());
  CHECK(limits.sum.low >= 1 - 1e-5);
}

}  // namespace
