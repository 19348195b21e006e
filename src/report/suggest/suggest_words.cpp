#include "report/suggest/suggest_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "quantity/number.h"
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

std::string weighed(const Figure& figure) {
  const auto end = [](const std::optional<double>& value) {
    return value ? quantity::machine_number(std::round(*value * 1e4) / 1e4)
                 : std::string("unknown");
  };
  std::string out = end(figure.low);
  if (end(figure.high) != out) out += " to " + end(figure.high);
  return out + " " + figure.unit;
}

std::string line_of(const SuggestedAmount& one) {
  return one.container.empty() ? one.name : one.name + " in " + one.container;
}

std::string beside_amount(const SuggestedAmount& one) {
  std::string out;
  if (one.removed) out += ", taken out altogether";
  if (!one.out_of.empty()) out += ", in place of " + one.out_of;
  if (one.added && one.out_of.empty()) out += ", new";
  if (one.fills) out += ", fills up";
  return out;
}

std::string rounding_words(const SuggestedChange& answer, Level threshold) {
  if (answer.outside) return "no change of the formula, so there is no tweak of it";
  if (answer.rounding_breaks) {
    return "as computed: rounded to what the scales show it would not pass";
  }
  const std::size_t left = answer.left.size();
  const std::string weight = threshold == Level::error     ? " that must change"
                             : threshold == Level::warning ? " that must or should change"
                                                           : "";
  return "rounded to " + answer.rounded_to + " and checked again: " +
         (left == 0
              ? "nothing is left" + weight
              : std::to_string(left) + (left == 1 ? " finding is left" : " findings are left"));
}

bool is_told(const VerdictChange& one, Level threshold, bool verbose) {
  const bool was_broken =
      one.before && one.before->level >= threshold && one.before->kind != Kind::pass;
  return verbose || one.direction != Direction::better || was_broken;
}

bool holds_now(const VerdictChange& one) {
  return one.direction == Direction::better && one.after && one.after->kind == Kind::pass &&
         !one.after->message.empty();
}

bool comes_with_it(const VerdictChange& one) {
  return one.direction != Direction::better && !one.before;
}

std::string left_words(const Suggestion& of) {
  if (!of.answers.empty()) {
    return of.blocked.empty() ? "" : "left as it is: with the total kept, these cannot all hold";
  }
  if (of.broken.size() <= of.unmendable.size()) return "no change of amounts mends this";
  return of.conflict.empty()
             ? "no change of amounts was found that mends this and breaks nothing else"
             : "no change of amounts mends this: with the total kept, these cannot all hold";
}

std::vector<Remedies> remedies_of(const Suggestion& of) {
  const bool none = of.answers.empty() && of.unmendable.empty();
  return {{"not mended by amounts", &of.unmendable},
          {"without a change of amounts", &of.otherwise},
          {"what else may help", none ? &of.broken : &of.blocked}};
}

std::string remedy_words(const Finding& finding) {
  std::string words = finding.remedy;
  for (const std::string& missing : finding.missing) words += " It needs " + missing + ".";
  return words;
}

}  // namespace sudsmark::report
