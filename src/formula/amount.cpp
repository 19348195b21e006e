#include "formula/amount.h"

#include <algorithm>
#include <string>

#include "formula/messages.h"
#include "formula/terms.h"
#include "formula/words.h"
#include "quantity/unit.h"
#include "text/name.h"

namespace sudsmark::formula {
namespace {

constexpr std::string_view units_listed = "mg, g, kg, oz, lb, %, ppm, parts, ml or l";
constexpr Measure dose_base{.words = "a mass, such as kg",
                            .units_listed = "mg, g, kg, oz or lb",
                            .units = measure::masses,
                            .base = "g",
                            .above_zero = true};
constexpr Measure volume{.words = "a volume, such as 20 ml",
                         .units_listed = "ml or l",
                         .units = {{{"l"}, {"ml"}}},
                         .base = "l"};

bool is_part(std::string_view word) {
  return word == "part" || word == "parts";
}

/// A unit of the language in another case: 'Kg', 'ML'.
std::string_view known_but_for_case(std::string_view word) {
  const std::string folded = text::fold(word);
  if (is_part(folded)) return folded == "part" ? "part" : "parts";
  for (const quantity::Unit& unit : quantity::units()) {
    if (unit.word.size() == word.size() && text::fold(unit.word) == folded) return unit.word;
  }
  return {};
}

/// A word that is no unit of an ingredient's amount: refused if it can be no premix's unit either.
bool read_units(const RawFigure& raw, Reading& reading, Amount& amount) {
  const std::string_view word = raw.unit.text();
  const Span place = reading.span(raw.unit.begin, raw.unit.end);
  const std::string folded = text::fold(word);
  if (is_kitchen_measure(folded)) {
    return reading.refuse(messages::kitchen_measure, place, {shown(word)});
  }
  if (const std::size_t slash = word.find('/'); slash != std::string_view::npos) {
    const std::string_view mass = word.substr(0, slash);
    const std::string_view per_mass = word.substr(slash + 1);
    if (takes_unit(measure::mass, mass) && takes_unit(measure::mass, per_mass)) {
      return reading.refuse(messages::dose_with_slash, place,
                            {shown(word), std::string(mass), std::string(per_mass),
                             std::string(mass) + " per " + std::string(per_mass)});
    }
  }
  const bool gallons =
      is_gallon(folded) || word == measure::us_gallon.word || word == measure::imperial_gallon.word;
  if (gallons || quantity::find_unit(word) || word.find('/') != std::string_view::npos) {
    return reading.refuse(messages::not_an_amount, place, {shown(word), std::string(units_listed)});
  }
  const std::string_view whole = known_but_for_case(word);
  const std::string_view known = whole.empty() ? known_but_for_case(singular(word)) : whole;
  if (!known.empty()) {
    return reading.refuse(messages::unit_in_other_case, place, {shown(word), std::string(known)});
  }
  if (raw.low_unit.begin != nullptr && singular(raw.low_unit.text()) != singular(word)) {
    return reading.refuse(messages::range_of_two_units,
                          reading.span(raw.low_unit.begin, raw.unit.end),
                          {shown(raw.low_unit.text()), shown(word)});
  }
  amount.kind = AmountKind::units;
  amount.unit = singular(word);
  amount.unit_place = place;
  amount.value = {raw.low.value, raw.high.value};
  return true;
}

bool read_parts(const RawFigure& raw, Reading& reading, Amount& amount) {
  if (raw.low_unit.begin != nullptr && !is_part(raw.low_unit.text())) {
    return reading.refuse(messages::range_of_two_units,
                          reading.span(raw.low_unit.begin, raw.unit.end),
                          {shown(raw.low_unit.text()), shown(raw.unit.text())});
  }
  amount.kind = AmountKind::parts;
  amount.value = {raw.low.value, raw.high.value};
  return true;
}

/// A figure with its unit, anything but a dose or q.s.
bool read_plain(Iterator& first, Iterator last, Reading& reading, Amount& amount) {
  RawFigure raw;
  Iterator next = first;
  if (!read_raw_figure(next, last, reading, raw)) return false;
  amount.place = reading.span(raw.begin(), raw.end());
  const Measure* converted = nullptr;
  if (raw.unit.begin == nullptr) {
    return refuse_missing_unit(raw, last, reading, units_listed);
  }
  const std::string_view unit = raw.unit.text();
  if (takes_unit(measure::mass, unit)) {
    amount.kind = AmountKind::mass;
    converted = &measure::mass;
  } else if (takes_unit(measure::share, unit)) {
    amount.kind = AmountKind::share;
    converted = &measure::share;
  } else if (takes_unit(volume, unit)) {
    amount.kind = AmountKind::volume;
    converted = &volume;
  }
  if (converted != nullptr) {
    Figure value;
    if (!convert(raw, last, reading, *converted, value)) return false;
    amount.value = value.value;
  } else {
    const bool read =
        is_part(unit) ? read_parts(raw, reading, amount) : read_units(raw, reading, amount);
    if (!read) return false;
    if (raw.low.value > raw.high.value) {
      return reading.refuse(messages::backward_range, amount.place,
                            {shown(raw.begin(), raw.end())});
    }
  }
  first = next;
  return true;
}

constexpr auto plain =
    term<Amount>("an amount", [](Iterator& first, Iterator last, Reading& reading, Amount& amount) {
      return read_plain(first, last, reading, amount);
    });

/// What a dose is counted on: `kg` for one kg, or `500 g`.
constexpr auto per_mass = term<Figure>(
    dose_base.words, [](Iterator& first, Iterator last, Reading& reading, Figure& base) {
      if (first != last && is_digit(*first)) {
        return read_single_figure(first, last, reading, dose_base, base);
      }
      RawFigure one;
      Iterator next = first;
      if (!scan_unit(next, last, one.unit)) return false;
      one.low = one.high = {1.0, {one.unit.begin, one.unit.begin, {}}};
      if (!convert(one, last, reading, dose_base, base)) return false;
      first = next;
      return true;
    });

constexpr auto fill = keyword("q.s.", "'q.s.'");
constexpr auto per = keyword("per", "'per'");

}  // namespace

bool free_for_premix(std::string_view word) {
  Iterator next = word.data();
  Token token;
  if (!scan_unit(next, word.data() + word.size(), token) || token.text() != word ||
      word.find('/') != std::string_view::npos) {
    return false;
  }
  const std::string folded = text::fold(word);
  const std::string one = singular(word);
  return known_but_for_case(folded).empty() && known_but_for_case(one).empty() &&
         !is_kitchen_measure(folded) && !is_kitchen_measure(one) && meant_unit(folded).empty();
}

bool read_amount(Iterator& first, Iterator last, Reading& reading, Amount& amount) {
  Figure base;
  bool dose = false;
  const auto as_fill = [&](const auto& context) {
    amount.kind = AmountKind::fill;
    amount.place = x3::_attr(context);
  };
  const auto as_dose = [&](const auto& context) {
    base = x3::_attr(context);
    dose = true;
  };
  const auto grammar = fill[as_fill] | (plain[into(amount)] >> -(per >> need(per_mass)[as_dose]));
  Iterator next = first;
  const bool matched = x3::phrase_parse(next, last, x3::with<ReadingTag>(reading)[grammar],
                                        Blanks{}, x3::skip_flag::dont_post_skip);
  if (!matched || reading.refused()) return false;
  if (amount.kind == AmountKind::fill) {
    // "q.s. to 100 %": what it fills up to is known
    Iterator up_to = skip_blanks(next, last);
    Iterator figure = up_to;
    RawFigure raw;
    if (scan_keyword(figure, last, "to") && digit_at(skip_blanks(figure, last), last) &&
        read_raw_figure(figure = skip_blanks(figure, last), last, reading, raw)) {
      return reading.refuse(messages::fill_to, reading.span(up_to, figure), {shown(up_to, figure)});
    }
    if (reading.refused()) return false;
  }
  if (dose) {
    if (amount.kind != AmountKind::mass) {
      return reading.refuse(messages::dose_of_no_mass, amount.place);
    }
    amount.kind = AmountKind::dose;
    amount.value = {amount.value.low / base.value.low, amount.value.high / base.value.low};
    amount.place.end = base.place.end;
  }
  first = next;
  return true;
}

}  // namespace sudsmark::formula
