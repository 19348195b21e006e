#include "report/compare_words.h"

#include <cmath>

#include "quantity/number.h"
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
  const bool runs_down = change.low && change.high && *change.low > *change.high;
  const std::string least = end(runs_down ? change.high : change.low);
  const std::string most = end(runs_down ? change.low : change.high);
  const std::string by = least == most ? least : least + " to " + most;
  return out + " (" + by + unit + ")";
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
