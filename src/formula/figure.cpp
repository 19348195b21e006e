#include "formula/figure.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "formula/messages.h"
#include "formula/words.h"
#include "quantity/unit.h"
#include "text/name.h"

namespace sudsmark::formula {
namespace {

/// The sign of a range, where a figure follows it: a hyphen or `to`. The dashes that word
/// processors put in its place are refused.
bool scan_range_sign(Iterator& first, Iterator last, Reading& reading) {
  Iterator next = first;
  bool dash = false;
  if (next != last && *next == '-') {
    ++next;
  } else if (!scan_keyword(next, last, "to")) {
    const std::string_view text{next, static_cast<std::size_t>(last - next)};
    for (const std::string_view wide :
         {"\u2010", "\u2011", "\u2012", "\u2013", "\u2014", "\u2212"}) {
      if (text.starts_with(wide)) {
        dash = true;
        next += wide.size();
        break;
      }
    }
    if (!dash) return false;
  }
  const Iterator figure = skip_blanks(next, last);
  const bool figure_follows =
      figure != last && (is_digit(*figure) || *figure == '-' || *figure == '.' || *figure == '+');
  if (!figure_follows) return false;
  if (dash) {
    return reading.refuse(messages::wide_dash, reading.span(first, next),
                          {shown(first, next), "-"});
  }
  first = next;
  return true;
}

/// What one of a unit of mass is in g; 0 if it is none.
double grams(std::string_view unit) {
  return takes_unit(measure::mass, unit) ? quantity::find_unit(unit)->to_base(1) : 0.0;
}

/// A second mass behind the first, in a smaller unit: `1 lb 4 oz` is one amount, in lb.
bool add_second_mass(Iterator& first, Iterator last, Reading& reading, Number& number,
                     Token& unit) {
  const double whole = grams(unit.text());
  Iterator next = skip_blanks(first, last);
  if (!(whole > 0) || !digit_at(next, last)) return true;
  // a number with no mass behind it is a name's
  const Iterator digits =
      std::find_if_not(next, last, [](char c) { return is_digit(c) || c == '.' || c == '/'; });
  Iterator behind = skip_blanks(digits, last);
  Token second_unit;
  if (!scan_unit(behind, last, second_unit) || !(grams(second_unit.text()) > 0)) return true;
  Number second;
  if (!scan_number(next, last, reading, second)) return !reading.refused();
  const double part = grams(second_unit.text());
  const Span place = reading.span(number.token.begin, behind);
  if (part >= whole || second.value * part >= whole) {
    return reading.refuse(messages::rising_units, place, {shown(number.token.begin, behind)});
  }
  number.value += second.value / (whole / part);
  unit = {unit.begin, behind, unit.text()};
  first = behind;
  return true;
}

/// A number with the unit behind it, if there is one. What belongs to a range is left.
bool scan_measured(Iterator& first, Iterator last, Reading& reading, Number& number, Token& unit) {
  if (!scan_number(first, last, reading, number)) return false;
  Iterator next = skip_blanks(first, last);
  Iterator sign = next;
  if (scan_range_sign(sign, last, reading)) return true;
  if (reading.refused()) return false;
  if (!scan_unit(next, last, unit)) return true;
  if (next != last && *next == '.' && (next + 1 == last || is_blank(next[1]))) {
    return reading.refuse(messages::unit_with_point, reading.span(unit.begin, next + 1),
                          {shown(unit.begin, next + 1), std::string(unit.text())});
  }
  first = next;
  return add_second_mass(first, last, reading, number, unit);
}

std::optional<double> base_value(double figure, std::string_view unit, const Measure& measure) {
  for (const AcceptedUnit& accepted : measure.units) {
    if (!accepted.word.empty() && accepted.word == unit) {
      return unit_of(accepted).to_base(figure) * accepted.worth;
    }
  }
  return std::nullopt;
}

}  // namespace

quantity::Unit unit_of(const AcceptedUnit& accepted) {
  return quantity::find_unit(accepted.word).value_or(quantity::Unit{accepted.word, {}, 1.0, 0.0});
}

bool read_raw_figure(Iterator& first, Iterator last, Reading& reading, RawFigure& raw) {
  Iterator next = first;
  if (!scan_measured(next, last, reading, raw.low, raw.unit)) return false;
  Iterator right = skip_blanks(next, last);
  if (scan_range_sign(right, last, reading)) {
    raw.range = true;
    std::swap(raw.low_unit, raw.unit);
    right = skip_blanks(right, last);
    if (!scan_measured(right, last, reading, raw.high, raw.unit)) {
      return reading.expected("a number", right, last);
    }
  } else {
    raw.high = raw.low;
  }
  if (reading.refused()) return false;
  first = raw.end();
  return true;
}

bool takes_unit(const Measure& measure, std::string_view unit) {
  return base_value(1, unit, measure).has_value();
}

bool refuse_missing_unit(const RawFigure& raw, Iterator last, Reading& reading,
                         std::string_view units_listed) {
  Iterator next = skip_blanks(raw.end(), last);
  const bool sign = (next != last && *next == '-') || scan_keyword(next, last, "to");
  if (sign && !raw.range) {
    if (next != last && *next == '-') ++next;
    if (digit_at(skip_blanks(next, last), last)) {
      return reading.refuse(messages::range_here, reading.span(raw.begin(), raw.end()));
    }
    return reading.expected("the right end of a range", next, last);
  }
  const Token token = token_at(raw.end(), last);
  return reading.refuse(
      messages::unit_missing, reading.span(token.begin, token.end),
      {std::string(units_listed), shown(raw.begin(), raw.end()), found(raw.end(), last)});
}

bool refuse_unit(const Token& unit, Reading& reading, const Measure& measure) {
  const Span place = reading.span(unit.begin, unit.end);
  const std::string folded = text::fold(unit.text());
  if (is_kitchen_measure(folded)) {
    return reading.refuse(messages::kitchen_measure, place, {shown(unit.text())});
  }
  if (is_gallon(folded)) return reading.refuse(messages::two_gallons, place, {shown(unit.text())});
  const std::string_view meant = meant_unit(folded);
  const bool known = !meant.empty() && takes_unit(measure, meant);
  const std::string_view what = measure.words.substr(0, measure.words.find(','));
  std::string hint = known ? "; write '" + std::string(meant) + "'"
                           : ": give " + std::string(measure.units_listed);
  return reading.refuse(messages::wrong_unit, place,
                        {shown(unit.text()), std::string(what), std::move(hint),
                         std::string(known ? meant : std::string_view())});
}

bool convert(const RawFigure& raw, Iterator last, Reading& reading, const Measure& measure,
             Figure& figure) {
  figure.place = reading.span(raw.begin(), raw.end());
  const std::string shown_figure = shown(raw.begin(), raw.end());
  if (measure.units_listed.empty()) {
    if (raw.low_unit.begin != nullptr || raw.unit.begin != nullptr) {
      const Token& unit = raw.low_unit.begin != nullptr ? raw.low_unit : raw.unit;
      return reading.refuse(messages::no_unit_here, reading.span(unit.begin, unit.end),
                            {shown(unit.text()), std::string(measure.words)});
    }
    figure.value = {raw.low.value, raw.high.value};
  } else {
    if (raw.unit.begin == nullptr) {
      return refuse_missing_unit(raw, last, reading, measure.units_listed);
    }
    const Token& low_unit = raw.low_unit.begin != nullptr ? raw.low_unit : raw.unit;
    const auto low = base_value(raw.low.value, low_unit.text(), measure);
    const auto high = base_value(raw.high.value, raw.unit.text(), measure);
    if (!low && high && quantity::find_unit(low_unit.text())) {
      return reading.refuse(messages::range_of_two_units,
                            reading.span(low_unit.begin, raw.unit.end),
                            {shown(low_unit.text()), shown(raw.unit.text())});
    }
    if (!low) return refuse_unit(low_unit, reading, measure);
    if (!high) return refuse_unit(raw.unit, reading, measure);
    figure.value = {*low, *high};
  }
  if (figure.value.low > figure.value.high) {
    return reading.refuse(messages::backward_range, figure.place, {shown_figure});
  }
  if (figure.value.high > measure.most) {
    if (measure.most == measure::whole) {
      return reading.refuse(messages::above_hundred, figure.place, {shown_figure});
    }
    return reading.refuse(messages::above_most, figure.place, {shown_figure, measure.most});
  }
  if (measure.above_zero && !(figure.value.low > 0)) {
    return reading.refuse(messages::zero_here, figure.place, {shown_figure});
  }
  return true;
}

bool read_figure(Iterator& first, Iterator last, Reading& reading, const Measure& measure,
                 Figure& figure) {
  RawFigure raw;
  Iterator next = first;
  if (!read_raw_figure(next, last, reading, raw)) return false;
  if (!convert(raw, last, reading, measure, figure)) return false;
  first = next;
  return true;
}

bool read_single_figure(Iterator& first, Iterator last, Reading& reading, const Measure& measure,
                        Figure& figure) {
  RawFigure raw;
  Iterator next = first;
  if (!scan_number(next, last, reading, raw.low)) return false;
  raw.high = raw.low;
  next = skip_blanks(next, last);
  scan_unit(next, last, raw.unit);
  if (!convert(raw, last, reading, measure, figure)) return false;
  first = raw.end();
  return true;
}

}  // namespace sudsmark::formula
