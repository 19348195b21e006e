#include "formula/figure.h"

#include <optional>
#include <string>

#include "formula/messages.h"
#include "formula/terms.h"
#include "formula/words.h"
#include "quantity/unit.h"
#include "text/name.h"

namespace sudsmark::formula {
namespace {

constexpr auto number_term =
    term<Number>("a number", [](Iterator& first, Iterator last, Reading& reading, Number& number) {
      return scan_number(first, last, reading, number);
    });

constexpr auto unit_term =
    term<Token>("a unit", [](Iterator& first, Iterator last, Reading& /*reading*/, Token& unit) {
      return scan_unit(first, last, unit);
    });

/// The sign of a range, where a figure follows it: a hyphen or `to`. The dashes that word
/// processors put in its place are refused.
constexpr auto range_sign = term<x3::unused_type>(
    "'-' or 'to'", [](Iterator& first, Iterator last, Reading& reading, x3::unused_type&) {
      Iterator at = first;
      bool dash = false;
      if (at != last && *at == '-') {
        ++at;
      } else if (!scan_keyword(at, last, "to")) {
        const std::string_view text{at, static_cast<std::size_t>(last - at)};
        for (const std::string_view wide :
             {"\u2010", "\u2011", "\u2012", "\u2013", "\u2014", "\u2212"}) {
          if (text.starts_with(wide)) {
            dash = true;
            at += wide.size();
            break;
          }
        }
        if (!dash) return false;
      }
      const Iterator next = skip_blanks(at, last);
      const bool figure_follows =
          next != last && (is_digit(*next) || *next == '-' || *next == '.' || *next == '+');
      if (!figure_follows) return false;
      if (dash) {
        return reading.refuse(messages::wide_dash, reading.span(first, at),
                              {shown(std::string_view(first, at)), "-"});
      }
      first = at;
      return true;
    });

std::optional<double> base_value(double figure, std::string_view unit, const Measure& measure) {
  for (const AcceptedUnit& accepted : measure.units) {
    if (!accepted.word.empty() && accepted.word == unit) {
      return quantity::find_unit(unit)->to_base(figure) * accepted.worth;
    }
  }
  return std::nullopt;
}

}  // namespace

bool read_raw_figure(Iterator& first, Iterator last, Reading& reading, RawFigure& raw) {
  const auto grammar = number_term[into(raw.low)] >> -(!range_sign >> unit_term[into(raw.unit)]) >>
                       -(range_sign[([&](const auto&) {
                           raw.range = true;
                           std::swap(raw.low_unit, raw.unit);
                         })] >>
                         need(number_term)[into(raw.high)] >> -unit_term[into(raw.unit)]);
  Iterator at = first;
  const bool matched = x3::phrase_parse(at, last, x3::with<ReadingTag>(reading)[grammar], Blanks{},
                                        x3::skip_flag::dont_post_skip);
  if (!matched || reading.refused()) return false;
  if (!raw.range) raw.high = raw.low;
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
  return reading.refuse(messages::unit_missing, reading.span(token.begin, token.end),
                        {std::string(units_listed), shown(std::string_view(raw.begin(), raw.end())),
                         found(raw.end(), last)});
}

bool refuse_unit(const Token& unit, Reading& reading, const Measure& measure) {
  const Span place = reading.span(unit.begin, unit.end);
  const std::string folded = text::fold(unit.text());
  if (is_kitchen_measure(folded)) {
    return reading.refuse(messages::kitchen_measure, place, {shown(unit.text())});
  }
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
  const std::string shown_figure = shown(std::string_view(raw.begin(), raw.end()));
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
  Iterator at = first;
  if (!read_raw_figure(at, last, reading, raw)) return false;
  if (!convert(raw, last, reading, measure, figure)) return false;
  first = at;
  return true;
}

bool read_single_figure(Iterator& first, Iterator last, Reading& reading, const Measure& measure,
                        Figure& figure) {
  RawFigure raw;
  Iterator at = first;
  if (!scan_number(at, last, reading, raw.low)) return false;
  raw.high = raw.low;
  at = skip_blanks(at, last);
  scan_unit(at, last, raw.unit);
  if (!convert(raw, last, reading, measure, figure)) return false;
  first = raw.end();
  return true;
}

}  // namespace sudsmark::formula
