// pH of bars and of single surfactants, measured or stated by their makers. The sources seldom give
// the whole formula; then a usual one of the kind that they name stands here, and what counts is
// that the range covers what they measured.
#include <doctest/doctest.h>

#include <string>

#include "measures/solution_ph.h"
#include "reference/read_measure.h"

namespace {

using namespace sudsmark;
using namespace sudsmark::testing;
using quantity::Range;

/// Range of pH of so much of it, in per cent of the solution.
Range ph_of(const Shares& parts, double per_cent = 1.0) {
  const WorkshopFormula formula(mix(parts), matter());
  const double grams = 1000.0 * per_cent / (100.0 - per_cent);
  const measures::Measured found = measures::solution_ph(formula.view(), grams);
  CAPTURE(formula.lacks());
  REQUIRE(found.missing.empty());
  REQUIRE(found.value.known());
  return found.value;
}

/// The range holds what was measured, and is no wider than `most` [pH].
void covers(const Range& range, double low, double high, double most) {
  CAPTURE(range.low);
  CAPTURE(range.high);
  CHECK(range.low <= low + 0.01);
  CHECK(range.high >= high - 0.01);
  CHECK(range.high - range.low <= most);
}

/// A pressed bar: 50 % isethionate, some coco-sulfate and betaine, fats, no acid.
const Shares plain_bar{{"SCI", 50},          {"SCS", 12},         {"CAPB", 14},
                       {"cetyl alcohol", 7}, {"cocoa butter", 5}, {"kaolin", 12}};

Shares with(Shares parts, const std::string& name, double part) {
  parts.back().second -= part;
  parts.emplace_back(name, part);
  return parts;
}

}  // namespace

TEST_CASE("a maker's chemist (published): shampoo bars 6.2 and 6.4 at 5 %") {
  covers(ph_of(plain_bar, 5.0), 6.2, 6.4, 3.6);
}

TEST_CASE("recipe page (published): isethionate and coco-sulfate 7 to 8 without acid, 4.5 with") {
  const Shares bar{{"SCI", 25}, {"SCS", 25}, {"corn starch", 50}};
  covers(ph_of(bar), 7.0, 8.0, 4.2);
  covers(ph_of(with(bar, "citric acid", 1.0)), 4.5, 4.5, 2.5);
}

TEST_CASE("abstract of 2025 (published): pressed isethionate bars closer to 4 to 5") {
  covers(ph_of({{"SCI", 60}, {"cetearyl alcohol", 20}, {"stearic acid", 20}}), 4.7, 5.0, 2.5);
}

TEST_CASE("chemists' forum (published): isethionate and betaine with 2.5 % citric acid, 4 to 5") {
  const Range range =
      ph_of({{"SCI", 50}, {"CAPB", 25}, {"citric acid", 2.5}, {"corn starch", 22.5}});
  CAPTURE(range.low);
  CAPTURE(range.high);
  // no formula was given; the range meets the lower part of what was measured
  CHECK(range.high >= 4.0);
  CHECK(range.low >= 3.0);
}

TEST_CASE("soap makers' forum (published): five cold-process soaps at 1 %, 10.35 to 10.52") {
  // About 80 % soap, the rest water and glycerin; the oils move the molar mass alone.
  covers(ph_of({{"soap noodles", 92}, {"glycerin", 8}}), 10.35, 10.52, 0.6);
  covers(ph_of({{"test laurate", 80}, {"glycerin", 20}}), 10.35, 10.52, 0.6);
}

TEST_CASE("soap makers' forum (published): liquid of glucosides, taurate, betaine, 0.67 % citric") {
  const WorkshopFormula formula(mix({{"decyl glucoside", 10},
                                     {"lauryl glucoside", 5},
                                     {"sodium methyl cocoyl taurate liquid", 15},
                                     {"CAPB", 10},
                                     {"citric acid", 0.667},
                                     {"water", 59.333}}),
                                matter());
  // undiluted: some 80 % of it is water
  const Range range = measures::solution_ph(formula.view(), 1250.0).value;
  covers(range, 3.8, 3.8, 6.5);
}

TEST_CASE("single surfactants at the strength that their source states") {
  covers(ph_of({{"SCI", 1}}, 10.0), 4.5, 6.5, 2.1);                                // 4.5 to 6.5
  covers(ph_of({{"SLSA", 1}}, 5.0), 6.3, 6.3, 1.6);                                // 6.3
  covers(ph_of({{"SLS powder", 1}}, 1.0), 7.0, 9.5, 2.6);                          // 7 to 9.5
  covers(ph_of({{"sodium lauroyl sarcosinate powder", 1}}, 10.0), 7.5, 8.5, 1.1);  // 7.5 to 8.5
  covers(ph_of({{"cocoamphodiacetate", 1}}, 10.0), 9.0, 9.0, 1.1);                 // 9
  covers(ph_of({{"disodium laureth sulfosuccinate", 1}}, 10.0), 6.0, 6.0, 1.4);    // 6
  covers(ph_of({{"sodium methyl cocoyl taurate liquid", 1}}, 10.0), 7.5, 8.5, 2.1);
  covers(ph_of({{"SCS", 1}}, 1.0), 7.5, 10.5, 3.1);                // 7.5 to 10.5
  covers(ph_of({{"decyl glucoside", 1}}, 10.0), 11.5, 12.5, 5.6);  // 11.5 to 12.5
}

TEST_CASE("an everyday hair bar with a little citric acid is no acid") {
  const Range range = ph_of(with(plain_bar, "citric acid", 0.3));
  CAPTURE(range.low);
  CAPTURE(range.high);
  CHECK(range.low > 3.9);
  CHECK(range.high < 7.5);
  CHECK(range.high > 5.0);
}

TEST_CASE("soda ash makes a bar alkaline, and much citric acid makes it acid") {
  for (const double soda : {5.0, 8.0}) {
    CAPTURE(soda);
    CHECK(ph_of(with(plain_bar, "soda ash", soda)).low > 9.5);
  }
  CHECK(ph_of(with(plain_bar, "citric acid", 6.0)).high < 4.0);
}

TEST_CASE("stearic acid does not dissolve: it cannot make a bar acid") {
  const Range without = ph_of(plain_bar);
  const Range with_it = ph_of(with(plain_bar, "stearic acid", 3.0));
  CHECK(with_it.low >= without.low - 0.05);
  CHECK(with_it.high <= without.high + 0.05);
  const WorkshopFormula formula(mix(with(plain_bar, "stearic acid", 3.0)), matter());
  (void)formula("solution.ph");
  CHECK(formula.told().find("does not dissolve: ") != std::string::npos);
  CHECK(formula.told().find("Stearic acid") != std::string::npos);
}

TEST_CASE("more citric acid never makes a bar less acid") {
  Range before{14.0, 14.0};
  for (const double acid : {0.1, 0.3, 0.6, 1.0, 2.0, 4.0, 8.0}) {
    const Range now = ph_of(with(plain_bar, "citric acid", acid));
    CHECK(now.low <= before.low + 1e-6);
    CHECK(now.high <= before.high + 1e-6);
    before = now;
  }
}
