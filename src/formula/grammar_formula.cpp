// Statements of `formula`, which a tweak may also carry.
#include <algorithm>
#include <array>

#include "formula/choice.h"
#include "formula/codes.h"
#include "formula/grammar.h"

namespace sudsmark::formula {
namespace {

constexpr std::array<std::string_view, 6> formings{"pressed", "hand moulded", "scooped",
                                                   "rolled",  "poured",       "loose"};
constexpr std::array<std::string_view, 5> markets{"GB", "EU", "NI", "US", "CA"};
constexpr std::array<std::string_view, 4> waters{"pure", "soft", "medium", "hard"};
constexpr std::array<std::string_view, 3> users{"adults", "children over 3", "children under 3"};

constexpr Choice forming_choice{"a way of forming", formings};
constexpr Choice market_choice{"a market", markets};
constexpr Choice users_choice{"a group of users", users};

constexpr auto date = term<Date>("a date, such as 2026-11-01",
                                 [](Iterator& first, Iterator last, Reading& reading, Date& day) {
                                   return scan_date(first, last, reading, day);
                                 });

/// GB and NI are two markets with two laws, so the usual word for both is no market here.
constexpr auto market =
    term<Word>("a market", [](Iterator& first, Iterator last, Reading& reading, Word& word) {
      const Token token = token_at(first, last);
      if (token.text() == "UK") {
        return reading.refuse(messages::two_markets, reading.span(token.begin, token.end));
      }
      return one_of(market_choice).scan(first, last, reading, word);
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
                    Iterator at = first;
                    if (!read_raw_figure(at, last, reading, raw)) return false;
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
                    first = at;
                    return true;
                  });

bool read_bath(Rest rest, Reading& reading, BathUse& bath) {
  const auto dose = bath_dose[([&](const auto& context) { bath.dose = x3::_attr(context).dose; })];
  const auto volume = keyword("in", "'in'") >> need(figure(measure::volume))[into(bath.volume)];
  const auto temperature =
      keyword("at", "'at'") >> need(figure(measure::temperature))[into(bath.temperature)];
  return run(reading, rest,
             need("what one bath gets, such as 28 g in 150 l",
                  (dose >> -volume >> -temperature) | (volume >> -temperature) | temperature));
}

bool read_water(Rest rest, Reading& reading, Water& water) {
  constexpr static Choice named{"a kind of water", waters};
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
    return run(reading, rest, need(one_of(named))[into(water.named)]);
  }
  constexpr std::string_view words =
      "alkalinity, hardness or ph, each once, or one of pure, soft, medium and hard";
  return run(reading, rest, need(words, item) >> *(comma >> need(words, item)));
}

bool read_markets(Rest rest, Reading& reading, Statements& statements) {
  const auto add = [&](const auto& context) {
    Word& word = x3::_attr(context);
    const auto again = std::find_if(statements.markets.begin(), statements.markets.end(),
                                    [&](const Word& before) { return before.text == word.text; });
    if (again != statements.markets.end()) {
      reading.refuse(messages::market_twice, word.place, {shown(word.text)});
    }
    statements.markets.push_back(std::move(word));
  };
  if (run(reading, rest, need(market)[add] >> *(comma >> need(market)[add]))) {
    return true;
  }
  statements.markets.clear();
  return false;
}

bool read_keep(Rest rest, Reading& reading, std::vector<Keep>& keeps) {
  Keep keep;
  const bool read = run(
      reading, rest,
      need(name("the name of what is kept", {.keyword = {}, .bounds = true}))[into(keep.name)] >>
          -figure(measure::share)[into(keep.bounds)]);
  if (read) keeps.push_back(std::move(keep));
  return read;
}

bool read_allow(Rest rest, Reading& reading, std::vector<Allow>& allows) {
  Allow allow;
  const bool read =
      run(reading, rest,
          need(rule_name)[into(allow.rule)] >> need(keyword("because", "'because'")) >>
              need(quoted_text("the reason, in double quotes"))[into(allow.because)] >>
              -(keyword("until", "'until'") >> need(date)[into(allow.until)]));
  if (read) allows.push_back(std::move(allow));
  return read;
}

}  // namespace

bool read_statement(Statement statement, Span keyword_place, Rest rest, Reading& reading,
                    Statements& to) {
  switch (statement) {
    case Statement::product:
      return run_into(to.product, reading, rest, need(name("a kind of product"))[into(to.product)]);
    case Statement::forming:
      return run_into(to.forming, reading, rest, need(one_of(forming_choice))[into(to.forming)]);
    case Statement::market:
      to.markets_place = keyword_place;
      return read_markets(rest, reading, to);
    case Statement::batch:
      return run_into(to.batch, reading, rest,
                      need(figure(measure::mass_above_zero))[into(to.batch)]);
    case Statement::piece:
      return run_into(to.piece, reading, rest,
                      need(figure(measure::mass_above_zero))[into(to.piece)]);
    case Statement::bath:
      to.bath.emplace().place = keyword_place;
      if (read_bath(rest, reading, *to.bath)) return true;
      to.bath.reset();
      return false;
    case Statement::water:
      to.water.emplace().place = keyword_place;
      if (read_water(rest, reading, *to.water)) return true;
      to.water.reset();
      return false;
    case Statement::users:
      return run_into(to.users, reading, rest, need(one_of(users_choice))[into(to.users)]);
    case Statement::first_sold:
      return run_into(to.first_sold, reading, rest,
                      need(keyword("sold", "'sold'")) >> need(date)[into(to.first_sold)]);
    case Statement::looks_like_food:
      to.looks_like_food = keyword_place;
      return run_into(to.looks_like_food, reading, rest,
                      need(keyword("like", "'like food'")) >> need(keyword("food", "'food'")));
    case Statement::made_in:
      return run_into(
          to.made_in, reading, rest,
          need(keyword("in", "'in'")) >> need(name("the name of a workshop"))[into(to.made_in)]);
    case Statement::keep:
      return read_keep(rest, reading, to.keeps);
    case Statement::allow:
      return read_allow(rest, reading, to.allows);
    default:
      return reading.expected("a statement of a formula", rest.first, rest.last);
  }
}

}  // namespace sudsmark::formula
