// Forms that several statements have: a name, a choice, a figure, a text, a day.
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

/// One of the words, but for what is meant for two of them: GB and NI are two markets with two
/// laws, so the usual word for both is no market here.
auto one_of_list(const ChoicesForm& form) {
  constexpr static Choice or_quoted{"a known claim (others stand in quotes)", vocabulary::claims};
  return term<Word>(
      form.choice.words, [&form](Iterator& first, Iterator last, Reading& reading, Word& word) {
        if (form.or_text && first != last && *first == '"') {
          return quoted_text(form.choice.words).scan(first, last, reading, word);
        }
        const Token token = token_at(first, last);
        if (&form.choice == &choice::market && token.text() == "UK") {
          return reading.refuse(messages::two_markets, reading.span(token.begin, token.end));
        }
        return one_of(form.or_text ? or_quoted : form.choice).scan(first, last, reading, word);
      });
}

/// Runs a grammar that fills a list of words, and leaves it empty after an error.
template <typename Item>
bool run_list(std::vector<Word>& words, Reading& reading, Rest rest, const Item& item) {
  if (run(reading, rest, need(item)[onto(words)] >> *(comma >> need(item)[onto(words)]))) {
    return true;
  }
  words.clear();
  return false;
}

}  // namespace

bool read_value(const NameForm& form, StatementLine line, Reading& reading,
                std::optional<Word>& word) {
  return run_into(word, reading, line.rest, need(name(form.words))[into(word)]);
}

bool read_value(const NamesForm& form, StatementLine line, Reading& reading,
                std::vector<Word>& words) {
  return run_list(words, reading, line.rest, name(form.words, {.keyword = {}, .comma = true}));
}

bool read_value(const ChoiceForm& form, StatementLine line, Reading& reading,
                std::optional<Word>& word) {
  const std::string_view words = form.words.empty() ? form.choice.words : form.words;
  return run_into(word, reading, line.rest, need(words, one_of(form.choice))[into(word)]);
}

bool read_value(const ChoicesForm& form, StatementLine line, Reading& reading,
                std::optional<WordList>& list) {
  list.emplace().place = line.place;
  std::vector<Word>& words = list->words;
  const auto add = [&](const auto& context) {
    Word& word = x3::_attr(context);
    const bool again = std::any_of(words.begin(), words.end(),
                                   [&](const Word& before) { return before.text == word.text; });
    if (again) reading.refuse(messages::named_twice, word.place, {shown(word.text)});
    words.push_back(std::move(word));
  };
  const auto one = one_of_list(form);
  return run_into(list, reading, line.rest, need(one)[add] >> *(comma >> need(one)[add]));
}

bool read_value(const JoinedForm& form, StatementLine line, Reading& reading,
                std::optional<WordList>& list) {
  list.emplace().place = line.place;
  const auto one = name(form.words, {.keyword = "and", .comma = true});
  const auto add = onto(list->words);
  return run_into(list, reading, line.rest,
                  need(one)[add] >> *(comma >> -keyword("and", "") >> need(one)[add] |
                                      keyword("and", "") >> need(one)[add]));
}

bool read_value(const FigureForm& form, StatementLine line, Reading& reading,
                std::optional<Figure>& value) {
  return run_into(value, reading, line.rest, need(figure(form.measure))[into(value)]);
}

bool read_value(const RateForm& form, StatementLine line, Reading& reading,
                std::optional<Figure>& value) {
  return run_into(value, reading, line.rest,
                  need(form.words, figure(form.measure))[into(value)] >>
                      need(form.per_unit, keyword("per", "") >> keyword(form.per, "")));
}

bool read_value(const TextForm& form, StatementLine line, Reading& reading,
                std::optional<Word>& text) {
  return run_into(text, reading, line.rest, need(quoted_text(form.words))[into(text)]);
}

bool read_value(const TextsForm& form, StatementLine line, Reading& reading,
                std::vector<Word>& texts) {
  return run_list(texts, reading, line.rest, quoted_text(form.words));
}

bool read_value(const DayForm& /*form*/, StatementLine line, Reading& reading,
                std::optional<Date>& day) {
  return run_into(day, reading, line.rest, need(date)[into(day)]);
}

bool read_value(const FlagForm& /*form*/, StatementLine line, Reading& reading,
                std::optional<Span>& place) {
  place = line.place;
  return run_into(place, reading, line.rest, x3::eps);
}

}  // namespace sudsmark::formula
