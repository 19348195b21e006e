// What `formula` says in forms of its own: bath, water, keep and allow.
#include <algorithm>

#include "formula/choice.h"
#include "formula/codes.h"
#include "formula/grammar.h"

namespace sudsmark::formula {
namespace {

constexpr auto date = term<Date>("a date, such as 2026-11-01",
                                 [](Iterator& first, Iterator last, Reading& reading, Date& day) {
                                   return scan_date(first, last, reading, day);
                                 });

constexpr auto rule_name = term<Word>(
    "the name of a rule", [](Iterator& first, Iterator last, Reading& reading, Word& word) {
      return scan_word(first, last, reading, word);
    });

/// What one bath gets: a mass, or a number of pieces.
constexpr auto bath_dose =
    term<BathUse>("a mass or a number of pieces",
                  [](Iterator& first, Iterator last, Reading& reading, BathUse& use) {
                    RawFigure raw;
                    Iterator next = first;
                    if (!read_raw_figure(next, last, reading, raw)) return false;
                    const std::string_view unit = raw.unit.begin != nullptr ? raw.unit.text() : "";
                    Figure figure;
                    if (unit != "piece" && unit != "pieces") {
                      constexpr static Measure dose{.words = "a mass or a number of pieces",
                                                    .units_listed = "mg, g, kg, oz, lb or pieces",
                                                    .units = measure::masses,
                                                    .above_zero = true};
                      if (!convert(raw, last, reading, dose, figure)) return false;
                      use.dose = figure;
                    } else {
                      constexpr static Measure pieces{
                          .words = "a number of pieces", .units_listed = "", .above_zero = true};
                      if (raw.low_unit.begin != nullptr && raw.low_unit.text() != "piece" &&
                          raw.low_unit.text() != "pieces") {
                        return reading.refuse(messages::range_of_two_units,
                                              reading.span(raw.low_unit.begin, raw.unit.end),
                                              {shown(raw.low_unit.text()), shown(unit)});
                      }
                      RawFigure bare = raw;
                      bare.low_unit = bare.unit = {};
                      if (!convert(bare, last, reading, pieces, figure)) return false;
                      use.dose = figure.value;
                    }
                    first = next;
                    return true;
                  });

}  // namespace

bool read_value(const OwnForm& /*form*/, StatementLine line, Reading& reading,
                std::optional<BathUse>& field) {
  BathUse& bath = field.emplace();
  bath.place = line.place;
  const auto dose = bath_dose[([&](const auto& context) { bath.dose = x3::_attr(context).dose; })];
  const auto volume = keyword("in", "'in'") >> need(figure(measure::volume))[into(bath.volume)];
  const auto temperature =
      keyword("at", "'at'") >> need(figure(measure::temperature))[into(bath.temperature)];
  return run_into(field, reading, line.rest,
                  need("what one bath gets, such as 28 g in 150 l",
                       (dose >> -volume >> -temperature) | (volume >> -temperature) | temperature));
}

bool read_value(const OwnForm& /*form*/, StatementLine line, Reading& reading,
                std::optional<Water>& field) {
  Water& water = field.emplace();
  water.place = line.place;
  const Rest rest = line.rest;
  // Each figure once: where it stands again, nothing of the list matches.
  const auto once = [](const std::optional<Figure>& seen) {
    return term<x3::unused_type>(
        "", [&seen](Iterator&, Iterator, Reading&, x3::unused_type&) { return !seen; });
  };
  const auto item =
      (once(water.alkalinity) >> keyword("alkalinity", "") >>
       need(figure(measure::alkalinity))[into(water.alkalinity)]) |
      (once(water.hardness) >> keyword("hardness", "") >>
       need(figure(measure::hardness))[into(water.hardness)]) |
      (once(water.ph) >> keyword("ph", "") >> need(figure(measure::ph))[into(water.ph)]);
  const bool figures = std::any_of(rest.first, rest.last, is_digit);
  if (!figures && rest.first != rest.last) {
    return run_into(field, reading, rest, need(one_of(choice::water))[into(water.named)]);
  }
  constexpr std::string_view words =
      "alkalinity, hardness or ph, each once, or one of pure, soft, medium and hard";
  return run_into(field, reading, rest, need(words, item) >> *(comma >> need(words, item)));
}

bool read_value(const OwnForm& /*form*/, StatementLine line, Reading& reading,
                std::vector<Keep>& keeps) {
  Keep keep;
  const bool read = run(
      reading, line.rest,
      need(name("the name of what is kept", {.keyword = {}, .bounds = true}))[into(keep.name)] >>
          -figure(measure::share)[into(keep.bounds)]);
  if (read) keeps.push_back(std::move(keep));
  return read;
}

bool read_value(const OwnForm& /*form*/, StatementLine line, Reading& reading,
                std::vector<Allow>& allows) {
  Allow allow;
  const bool read =
      run(reading, line.rest,
          need(rule_name)[into(allow.rule)] >> need(keyword("because", "'because'")) >>
              need(quoted_text("the reason, in double quotes"))[into(allow.because)] >>
              -(keyword("until", "'until'") >> need(date)[into(allow.until)]));
  if (read) allows.push_back(std::move(allow));
  return read;
}

bool read_value(const OwnForm& /*form*/, StatementLine line, Reading& reading,
                std::optional<Drying>& field) {
  Drying& dried = field.emplace();
  dried.place = line.place;
  return run_into(
      field, reading, line.rest,
      need(figure(measure::time))[into(dried.time)] >>
          -(keyword("at", "'at'") >> need(figure(measure::temperature))[into(dried.temperature)]));
}

}  // namespace sudsmark::formula
