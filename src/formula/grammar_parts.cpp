// Phases, premixes and portions: their headings and their ingredient lines; and includes.
#include <string>

#include "formula/amount.h"
#include "formula/grammar.h"
#include "formula/terms.h"
#include "formula/words.h"

namespace sudsmark::formula {
namespace {

constexpr auto amount =
    term<Amount>("an amount, such as 44 %, 500 g or q.s.",
                 [](Iterator& first, Iterator last, Reading& reading, Amount& value) {
                   return read_amount(first, last, reading, value);
                 });

/// The unit of a premix, in the spelling in which units are compared.
constexpr auto premix_unit =
    term<Word>("the premix's own unit, such as bag",
               [](Iterator& first, Iterator last, Reading& reading, Word& word) {
                 const Token token = token_at(first, last);
                 if (token.begin == token.end || *token.begin == '"') return false;
                 const Span place = reading.span(token.begin, token.end);
                 if (!free_for_premix(token.text())) {
                   return reading.refuse(messages::unit_not_free, place, {shown(token.text())});
                 }
                 word = {singular(token.text()), place, false};
                 first = token.end;
                 return true;
               });

/// Something behind an amount whose unit is nobody's unit, with no name: the unit was left out and
/// the word is the name.
bool unit_left_out(const Line& line, Rest rest, Reading& reading) {
  if (line.amount.kind != AmountKind::units || !line.name.text.empty()) return false;
  const Span unit = line.amount.unit_place;
  const Iterator begin = rest.first + (unit.begin - reading.span(rest.first, rest.last).begin);
  const Iterator end = begin + (unit.end - unit.begin);
  if (skip_blanks(end, rest.last) != rest.last) return false;
  const std::string_view word(begin, static_cast<std::size_t>(end - begin));
  return !reading.refuse(messages::unit_or_name_missing, unit, {shown(word)});
}

}  // namespace

bool read_title(std::string_view words, Rest rest, Reading& reading, Word& title) {
  return run(reading, rest, need(name(words))[into(title)]);
}

bool read_premix(Rest rest, Reading& reading, Premix& premix) {
  return run(reading, rest,
             need(name("the name of the premix", {.keyword = "makes"}))[into(premix.name)] >>
                 need(keyword("makes", "'makes' and what one making weighs")) >>
                 need(figure(measure::mass_above_zero))[into(premix.makes)] >>
                 -(keyword("as", "'as'") >> need(premix_unit)[into(premix.unit)]));
}

bool read_portion(Rest rest, Reading& reading, Portion& portion) {
  Span apart;
  const bool read = run(
      reading, rest,
      need(name("the name of the portion", {.keyword = {}, .comma = true}))[into(portion.name)] >>
          need("a comma and the portion's share, such as ', 50 %'", comma) >>
          need(figure(measure::share_above_zero))[into(portion.share)] >>
          -(comma >>
            need("'sold apart'", keyword("sold", "")[into(apart)] >> keyword("apart", ""))));
  if (read && apart.somewhere()) portion.sold_apart = apart;
  return read;
}

bool read_line(Rest rest, Reading& reading, Line& line) {
  line.place = reading.span(rest.first, rest.last);
  const auto nothing_after_unit =
      term<x3::unused_type>("", [&](Iterator&, Iterator, Reading&, x3::unused_type&) {
        return !unit_left_out(line, rest, reading);
      });
  return run(
      reading, rest,
      need(amount)[into(line.amount)] >> nothing_after_unit >> -keyword("of", "'of'") >>
          need(name("the name of a material", {.keyword = {}, .comma = true}))[into(line.name)] >>
          -dries_off(line.dries_off));
}

bool read_include(Rest rest, Reading& reading, Include& include) {
  return run(reading, rest,
             need(quoted_text("the path of a file in double quotes"))[into(include.path)]);
}

}  // namespace sudsmark::formula
