#include "report/compare_words.h"

#include <array>
#include <cmath>
#include <utility>
#include <vector>

#include "quantity/number.h"
#include "report/subject_words.h"
#include "report/verdict_words.h"
#include "wording/words.h"

namespace sudsmark::report {
using namespace wording;

std::string_view direction_word(Direction direction) {
  return direction == Direction::worse    ? "worse"
         : direction == Direction::better ? "better"
                                          : "undecided";
}

std::string_view amount_word(AmountKind kind) {
  switch (kind) {
    case AmountKind::added:
      return "added";
    case AmountKind::removed:
      return "removed";
    case AmountKind::raised:
      return "raised";
    case AmountKind::lowered:
      return "lowered";
    case AmountKind::swapped:
      break;
  }
  return "swapped";
}

namespace {

std::string with_sign(double by) {
  const std::string digits = quantity::printed(std::abs(by));
  return (by < 0 ? "-" : "+") + digits;
}

/// A figure with six digits, for two that look the same with three.
std::string in_detail(const Figure& figure) {
  const auto end = [](const std::optional<double>& value) {
    if (!value) return std::string("unknown");
    if (*value == 0) return std::string("0");
    const double scale = std::pow(10.0, 5 - std::floor(std::log10(std::abs(*value))));
    return quantity::machine_number(std::round(*value * scale) / scale);
  };
  std::string out = end(figure.low);
  if (end(figure.high) != out) out += " to " + end(figure.high);
  return figure.unit == "1" ? out : out + " " + figure.unit;
}

}  // namespace

std::string printed_change(const FigureChange& change) {
  // between percentages lie points
  const std::string unit = change.after.unit == "1"   ? ""
                           : change.after.unit == "%" ? " points"
                                                      : " " + change.after.unit;
  std::string before = wording::printed(change.before);
  std::string after = wording::printed(change.after);
  if (!change.changed()) return after;
  if (before == after) {
    before = in_detail(change.before);
    after = in_detail(change.after);
  }
  std::string out = before + " -> " + after;
  if (!change.low && !change.high) return out;
  const auto end = [](const std::optional<double>& by) {
    return by ? with_sign(*by) : std::string("unknown");
  };
  // the ends of a range need not move alike, and the lesser change is said first
  std::optional<double> less = change.low;
  std::optional<double> more = change.high;
  if (less && more && *less > *more) std::swap(less, more);
  std::string by = end(less);
  if (end(more) != by) by += " to " + end(more);
  // from 2 % to 6 % is four points, and three times as much
  return out + " (" + by + (unit == " %" ? " percentage points" : unit) + ")";
}

std::string before_and_after(const VerdictChange& change) {
  if (!change.before || !change.after) return {};
  const auto& was = change.before->measured;
  const auto& is = change.after->measured;
  if (!was || !is || was->unit != is->unit) return {};
  const std::string before = wording::printed(*was);
  const std::string after = wording::printed(*is);
  return before == after ? std::string() : "before " + before + ", now " + after;
}

std::string worse_in_words(const Comparison& comparison) {
  std::array<std::size_t, 4> counts{};
  const VerdictChange* gravest = nullptr;
  for (const VerdictChange& one : comparison.verdicts) {
    if (one.direction == Direction::better || !one.after) continue;
    ++counts.at(static_cast<std::size_t>(one.after->level));
    if (gravest == nullptr || gravest->after->level < one.after->level) gravest = &one;
  }
  if (gravest == nullptr) return "nothing got worse";
  std::vector<std::string> parts;
  const auto add = [&](Level level, const std::string& what) {
    const std::size_t many = counts.at(static_cast<std::size_t>(level));
    if (many > 0) parts.push_back(std::to_string(many) + " " + what);
  };
  add(Level::error, "must change");
  add(Level::warning, "should change");
  add(Level::note, "worth knowing");
  std::string out = "got worse: " + wording::joined(parts);
  const Finding& said = *gravest->after;
  if (said.message.empty()) return out;
  return out + (counts[0] + counts[1] + counts[2] + counts[3] > 1 ? "; first of all " : ": ") +
         subject_prefix(said.subject_kind, said.subject) + said.message;
}

std::string verdict_state(const std::optional<Finding>& finding) {
  if (!finding) return "does not apply";
  const std::string word{verdict_word(*finding)};
  if (finding->met_from_memory && !finding->allowed) return "is kept, by a limit from memory";
  switch (finding->allowed ? Kind::pass : finding->kind) {
    case Kind::fail:
      return finding->level > Level::note ? word : "is " + word;
    case Kind::review:
    case Kind::not_applicable:
      return word;
    case Kind::open:
    case Kind::pass:
      break;
  }
  return "is " + word;
}

}  // namespace sudsmark::report
