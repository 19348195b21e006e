#include "formula/print_figure.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "quantity/number.h"
#include "quantity/unit.h"
#include "text/digits.h"

namespace sudsmark::formula {
namespace {

constexpr double largest_number = 1e12;
constexpr double smallest_number = 1e-12;
constexpr Measure volume{"", "ml or l", {{{"l"}, {"ml"}}}};

/// Plain decimals for a figure, by so many digits that count.
std::string decimals(double figure, int digits) {
  return text::plain_digits(text::rounded_to_digits(figure, digits));
}

/// The shortest number that `to_base` makes the value of; none if there is none.
template <typename ToBase>
std::optional<std::string> written(double near, double value, const ToBase& to_base) {
  if (!(near >= 0) || near > largest_number || (near > 0 && near < smallest_number)) {
    return std::nullopt;
  }
  for (int digits = 1; digits <= 17; ++digits) {
    const std::string text = decimals(near, digits);
    const auto read = quantity::read_number(text);
    if (read && to_base(*read) == value) return text;
  }
  for (const double beside : {std::nextafter(near, 0.0), std::nextafter(near, 2 * near + 1)}) {
    if (to_base(beside) == value) return printed_number(beside);
  }
  return std::nullopt;
}

struct InUnit {
  std::string number;
  std::string_view unit;
};

std::optional<std::string> in_unit(double value, const AcceptedUnit& accepted) {
  const quantity::Unit unit = unit_of(accepted);
  return written(unit.from_base(value / accepted.worth), value,
                 [&](double figure) { return unit.to_base(figure) * accepted.worth; });
}

/// The unit in which a value is shortest, the first of those that are equally short.
InUnit in_some_unit(double value, const Measure& measure) {
  InUnit best;
  for (const AcceptedUnit& accepted : measure.units) {
    if (accepted.word.empty()) break;
    const auto number = in_unit(value, accepted);
    if (number && (best.unit.empty() || number->size() < best.number.size())) {
      best = {*number, accepted.word};
    }
  }
  if (!best.unit.empty()) return best;
  // No unit gives the very double back (an ulp may be lost); the first is as near as can be.
  const AcceptedUnit& first = measure.units.front();
  const double figure = unit_of(first).from_base(value / first.worth);
  return {printed_number(std::max(figure, 0.0)), first.word};
}

/// Both ends in one unit, the one in which they are shortest; empty if no unit gives both back.
std::string in_one_unit(const Range& value, const Measure& measure) {
  std::string best;
  for (const AcceptedUnit& accepted : measure.units) {
    if (accepted.word.empty()) break;
    const auto low = in_unit(value.low, accepted);
    const auto high = in_unit(value.high, accepted);
    if (!low || !high) continue;
    std::string text = *low + " - " + *high + " " + std::string(accepted.word);
    if (best.empty() || text.size() < best.size()) best = std::move(text);
  }
  return best;
}

std::string dose(const Range& value) {
  const auto per_kg = [](double one) {
    return written(one * 1000, one, [](double figure) { return figure / 1000; });
  };
  const auto low = per_kg(value.low);
  const auto high = per_kg(value.high);
  if (low && high) {
    return *low + (value.exact() ? "" : " - " + *high) + " g per kg";
  }
  return printed_number(value.low) + (value.exact() ? "" : " - " + printed_number(value.high)) +
         " g per g";
}

std::string counted(const Range& value, const std::string& unit) {
  return printed_number(value.low) + (value.exact() ? "" : " - " + printed_number(value.high)) +
         " " + unit;
}

}  // namespace

std::string printed_number(double value) {
  return text::plain_digits(value);
}

std::string printed_figure(const Range& value, const Measure& measure) {
  if (measure.units.front().word.empty()) {
    return printed_number(value.low) + (value.exact() ? "" : " - " + printed_number(value.high));
  }
  if (!value.exact()) {
    const std::string both = in_one_unit(value, measure);
    if (!both.empty()) return both;
  }
  const InUnit low = in_some_unit(value.low, measure);
  const std::string left = low.number + " " + std::string(low.unit);
  if (value.exact()) return left;
  const InUnit high = in_some_unit(value.high, measure);
  return left + " - " + high.number + " " + std::string(high.unit);
}

std::string printed_unit(std::string unit) {
  std::replace(unit.begin(), unit.end(), ' ', '-');
  return unit;
}

std::string printed_amount(const Amount& amount) {
  switch (amount.kind) {
    case AmountKind::mass:
      return printed_figure(amount.value, measure::mass);
    case AmountKind::share:
      return printed_figure(amount.value, measure::share);
    case AmountKind::parts:
      return counted(amount.value, "parts");
    case AmountKind::dose:
      return dose(amount.value);
    case AmountKind::volume:
      return printed_figure(amount.value, volume);
    case AmountKind::fill:
      return "q.s.";
    case AmountKind::units:
      return counted(amount.value, printed_unit(amount.unit));
  }
  return {};
}

}  // namespace sudsmark::formula
