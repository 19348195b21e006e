#include "report/suggest/suggest_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "wording/words.h"

namespace sudsmark::report {
namespace {

// what a maker knows her bar by
constexpr std::array<std::string_view, 14> main_measures{
    "surfactant",     "emulsifier.to_oil", "emulsifier", "oils",         "scent",   "colour",
    "water",          "humectants",        "wet_to_dry", "acid.to_base", "bath.ph", "bath.ph_aired",
    "carbon_dioxide", "hlb.supplied"};

bool moved(const FigureChange& change) {
  constexpr double noticed = 0.01;
  const auto end = [](const std::optional<double>& was, const std::optional<double>& is) {
    if (!was || !is) return was.has_value() != is.has_value();
    return std::abs(*is - *was) >= noticed * std::max(std::abs(*was), std::abs(*is)) && *was != *is;
  };
  return end(change.before.low, change.after.low) || end(change.before.high, change.after.high);
}

}  // namespace

std::string in_short(const SuggestedChange& answer) {
  constexpr double noticed = 0.1;  // a line that moves by more than a tenth is named
  std::vector<std::string> words = answer.statements;
  for (const SuggestedAmount& one : answer.amounts) {
    const double was = one.was.low.value_or(0) + one.was.high.value_or(0);
    const double is = one.is.low.value_or(0) + one.is.high.value_or(0);
    if (!one.leads && std::abs(is - was) <= noticed * was) continue;
    if (!one.out_of.empty()) {
      words.push_back("take " + one.name + " in place of " + one.out_of);
    } else if (one.added) {
      words.push_back("add " + one.name);
    } else {
      words.push_back((one.removed ? "leave out " : is > was ? "raise " : "lower ") + one.name);
    }
  }
  return wording::joined(words);
}

std::vector<Trade> trades(const SuggestedChange& answer) {
  std::vector<Trade> out;
  for (const std::string_view name : main_measures) {
    const auto& all = answer.comparison.measures;
    const auto at = std::find_if(all.begin(), all.end(),
                                 [&](const MeasureChange& one) { return one.name == name; });
    if (at != all.end() && moved(at->figure)) out.push_back({at->name, at->figure});
  }
  return out;
}

}  // namespace sudsmark::report
