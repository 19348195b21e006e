// A formula with ranges is all the formulas that can be weighed out within them: each of those has
// its figures within the ranges of the whole, and what is sure of the whole is sure of each.
#include <doctest/doctest.h>

#include <map>
#include <tuple>

#include "property/recipes.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

/// A recipe and the same with some of its amounts widened.
struct Pair {
  std::string point;
  std::string wide;
};

/// The first number of a line of an exact share: "12.5 % kaolin".
std::optional<double> share_of(const std::string& line) {
  const std::size_t end = line.find(" % ");
  if (end == std::string::npos || line.find(" - ") < end) return std::nullopt;
  if (line.find_first_not_of("0123456789.") != end) return std::nullopt;
  return std::stod(line);
}

Pair widened(std::uint64_t seed) {
  Dice dice(seed + 5000);
  Recipe point = recipe(seed);
  for (Section& section : point.parts) {
    if (!section.head.starts_with("phase")) continue;
    for (std::string& line : section.lines) {
      // ranges of the recipe itself become one of their points
      const std::size_t dash = line.find(" - ");
      if (dash == std::string::npos) continue;
      const double low = std::stod(line);
      const double high = std::stod(line.substr(dash + 3));
      line = figure(low + (high - low) * static_cast<double>(dice.below(11)) / 10) +
             line.substr(line.find(" %"));
    }
  }
  Recipe wide = point;
  for (Section& section : wide.parts) {
    if (!section.head.starts_with("phase")) continue;
    for (std::string& line : section.lines) {
      const auto share = share_of(line);
      if (!share || dice.one_in(3)) continue;
      const double by = *share * static_cast<double>(1 + dice.below(10)) / 100;
      const double down = dice.one_in(3) ? 0 : by;
      line = figure(*share - down) + " - " + figure(*share + by) + line.substr(line.find(" %"));
    }
  }
  return {point.text(), wide.text()};
}

/// A bath is worked out at the ends and the middle of its ranges; between them its pH may lie that
/// much outside, far below its stated doubt.
constexpr double ph_between = 0.01;

bool within(const Figure& point, const Figure& wide) {
  constexpr double slack = 1e-6;  // figures are written with so many digits
  const double between = wide.unit == "pH" ? ph_between : 0;
  const auto reach = [&](double value) { return between + slack * std::max(1.0, std::abs(value)); };
  if (wide.low && (!point.low || *point.low < *wide.low - reach(*wide.low))) return false;
  return !wide.high || (point.high && *point.high <= *wide.high + reach(*wide.high));
}

using Key = std::tuple<std::string, std::string, std::string>;

std::map<Key, Kind> verdicts(const FormulaResult& result) {
  std::map<Key, Kind> out;
  for (const Finding& one : result.findings) {
    const Kind kind = one.met_from_memory ? Kind::pass : one.kind;
    out.emplace(Key{one.rule, one.subject_kind, one.subject}, kind);
  }
  return out;
}

}  // namespace

TEST_CASE("what can be weighed out of ranges has its figures within theirs") {
  const Rulesets rulesets = Rulesets::built_in();
  CheckOptions options = on_a_day();
  options.verdicts = false;
  options.particulars = false;
  std::size_t asked = 0;
  for (std::uint64_t seed = 0; seed < 80; ++seed) {
    const Pair pair = widened(seed);
    const FormulaResult point = result_of(pair.point, rulesets, options);
    const FormulaResult wide = result_of(pair.wide, rulesets, options);
    REQUIRE(point.measures.size() == wide.measures.size());
    for (std::size_t at = 0; at < point.measures.size(); ++at) {
      const MeasureResult& a = point.measures[at];
      const MeasureResult& b = wide.measures[at];
      // a doubt of the model and a middle are no figures of the product
      if (a.name == "bath.ph_uncertainty" || a.name == "likely-ph") continue;
      const auto end = [](const std::optional<double>& one) { return one ? *one : 0; };
      CHECK_MESSAGE(within(a.figure, b.figure),
                    a.name << ": " << end(a.figure.low) << " to " << end(a.figure.high) << " in "
                           << end(b.figure.low) << " to " << end(b.figure.high) << "\n"
                           << pair.wide);
      ++asked;
    }
  }
  CHECK(asked > 3000);
}

TEST_CASE("what is sure of ranges is sure of each formula within them") {
  const Rulesets rulesets = Rulesets::built_in();
  CheckOptions options = on_a_day();
  options.measures = false;
  options.particulars = false;
  std::size_t sure = 0;
  for (std::uint64_t seed = 100; seed < 160; ++seed) {
    const Pair pair = widened(seed);
    const auto points = verdicts(result_of(pair.point, rulesets, options));
    for (const auto& verdict : verdicts(result_of(pair.wide, rulesets, options))) {
      const auto& key = verdict.first;
      const Kind kind = verdict.second;
      if (kind == Kind::review || kind == Kind::open) continue;
      const auto found = points.find(key);
      const Kind of_point = found == points.end() ? Kind::not_applicable : found->second;
      // a rule that some of the range does not concern is kept by all of it
      if (kind == Kind::pass && of_point == Kind::not_applicable) continue;
      CHECK_MESSAGE(of_point == kind, std::get<0>(key)
                                          << " " << std::get<2>(key) << ": " << kind_word(kind)
                                          << " of ranges, " << kind_word(of_point)
                                          << " of a point in them\n"
                                          << pair.point << pair.wide);
      ++sure;
    }
  }
  CHECK(sure > 5000);
}
