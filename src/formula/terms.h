// Terms: the words, names and figures of a line as Spirit X3 parsers, and how a line is run.
//
// A grammar of this room is an X3 expression over these terms, built where it is used, with actions
// that put what was read into a field. A term scans by hand (see scan.h), so that numbers and bytes
// outside ASCII are read the way the language says. Nothing throws: `need` takes the place of X3's
// expectation and keeps what was expected, in our words, as the line's refusal.
//
//     run(reading, rest, need(name({.keyword = "makes"}))[into(premix.name)] >>
//                                   need(keyword("makes")) >> need(mass)[into(premix.makes)]);
#pragma once

#include <boost/spirit/home/x3.hpp>
#include <optional>
#include <string_view>
#include <type_traits>
#include <utility>

#include "formula/card.h"
#include "formula/figure.h"
#include "formula/messages.h"
#include "formula/reading.h"
#include "formula/scan.h"

namespace sudsmark::formula {

namespace x3 = boost::spirit::x3;

/// Under this tag the Reading travels in the context of a grammar.
struct ReadingTag;

/// Spaces and tabs, between any two terms.
struct Blanks : x3::parser<Blanks> {
  using attribute_type = x3::unused_type;
  static constexpr bool has_attribute = false;

  template <typename Context, typename RuleContext, typename Attribute>
  bool parse(Iterator& first, const Iterator& last, const Context& /*context*/,
             RuleContext& /*rule*/, Attribute& /*attribute*/) const {
    if (first == last || !is_blank(*first)) return false;
    ++first;
    return true;
  }
};

/// A parser from a scanner: `scan(first, last, reading, attribute)`. `words` is what to call it.
template <typename Attribute, typename Scan>
struct Term : x3::parser<Term<Attribute, Scan>> {
  using attribute_type = Attribute;
  static constexpr bool has_attribute = true;

  constexpr Term(std::string_view expected_words, Scan scanner)
      : words(expected_words), scan(scanner) {}

  template <typename Context, typename RuleContext, typename Target>
  bool parse(Iterator& first, const Iterator& last, const Context& context, RuleContext& /*rule*/,
             Target& target) const {
    x3::skip_over(first, last, context);
    Attribute attribute{};
    Iterator at = first;
    if (!scan(at, last, x3::get<ReadingTag>(context), attribute)) return false;
    first = at;
    if constexpr (std::is_same_v<Target, Attribute>) target = std::move(attribute);
    return true;
  }

  std::string_view words;
  Scan scan;
};

template <typename Attribute, typename Scan>
constexpr Term<Attribute, Scan> term(std::string_view words, Scan scan) {
  return {words, scan};
}

/// What cannot be left out: where the subject does not match, the line is refused.
template <typename Subject>
struct Need : x3::unary_parser<Subject, Need<Subject>> {
  using base = x3::unary_parser<Subject, Need<Subject>>;
  static constexpr bool is_pass_through_unary = true;

  constexpr Need(const Subject& wrapped, std::string_view expected_words)
      : base(wrapped), words(expected_words) {}

  template <typename Context, typename RuleContext, typename Target>
  bool parse(Iterator& first, const Iterator& last, const Context& context, RuleContext& rule,
             Target& target) const {
    if (this->subject.parse(first, last, context, rule, target)) return true;
    return x3::get<ReadingTag>(context).expected(words, first, last);
  }

  std::string_view words;
};

template <typename Attribute, typename Scan>
constexpr Need<Term<Attribute, Scan>> need(const Term<Attribute, Scan>& subject) {
  return {subject, subject.words};
}
template <typename Subject>
constexpr auto need(std::string_view words, const Subject& subject) {
  return Need<typename x3::extension::as_parser<Subject>::value_type>{x3::as_parser(subject),
                                                                      words};
}

/// An action that puts what was read into a field.
template <typename Target>
constexpr auto into(Target& target) {
  return [&target](const auto& context) { target = std::move(x3::_attr(context)); };
}
/// An action that puts what was read at the end of a list.
template <typename List>
constexpr auto onto(List& list) {
  return [&list](const auto& context) { list.push_back(std::move(x3::_attr(context))); };
}

/// A word of the language. It has the place as its attribute; `quoted` is how sentences show it.
constexpr auto keyword(std::string_view word, std::string_view quoted) {
  return term<Span>(quoted, [word](Iterator& first, Iterator last, Reading& reading, Span& place) {
    const Iterator begin = first;
    if (!scan_keyword(first, last, word)) return false;
    place = reading.span(begin, first);
    return true;
  });
}

/// A comma between two items.
inline constexpr auto comma = term<x3::unused_type>(
    "a comma", [](Iterator& first, Iterator last, Reading& /*reading*/, x3::unused_type&) {
      if (first == last || *first != ',') return false;
      ++first;
      return true;
    });

constexpr auto name(std::string_view words, NameEnd end = {}) {
  return term<Word>(words, [end](Iterator& first, Iterator last, Reading& reading, Word& word) {
    return scan_name(first, last, reading, end, word);
  });
}

/// Text in double quotes that says something.
constexpr auto quoted_text(std::string_view words) {
  return term<Word>(words, [](Iterator& first, Iterator last, Reading& reading, Word& word) {
    if (!scan_text(first, last, reading, word)) return false;
    return !word.text.empty() || reading.refuse(messages::empty_text, word.place);
  });
}

/// A figure of one measure, or a range of them. The measure must outlive the term.
constexpr auto figure(const Measure& measure) {
  return term<Figure>(measure.words,
                      [&measure](Iterator& first, Iterator last, Reading& reading, Figure& value) {
                        return read_figure(first, last, reading, measure, value);
                      });
}

/// `, dries off` behind a name. Another comma is one that the name needs quotes for.
inline auto dries_off(std::optional<Span>& field) {
  return term<x3::unused_type>(
      "", [&field](Iterator& first, Iterator last, Reading& reading, x3::unused_type&) {
        if (first == last || *first != ',') return false;
        Iterator next = skip_blanks(first + 1, last);
        const Iterator begin = next;
        if (scan_keyword(next, last, "dries")) {
          next = skip_blanks(next, last);
          if (!scan_keyword(next, last, "off")) return reading.expected("'off'", next, last);
          field = reading.span(begin, next);
          first = next;
          return true;
        }
        return reading.refuse(messages::needs_quotes, reading.span(first, first + 1),
                              {shown(first, first + 1)});
      });
}

/// Runs a grammar over the rest of a line. False if the line is refused, which it also is for what
/// stands behind the end of the statement.
template <typename Grammar>
bool run(Reading& reading, Rest rest, const Grammar& grammar) {
  auto [first, last] = rest;
  const bool matched =
      x3::phrase_parse(first, last, x3::with<ReadingTag>(reading)[grammar], Blanks{});
  if (reading.refused()) return false;
  if (!matched) return reading.expected("a statement", first, last);
  if (first == last) return true;
  const Token token = token_at(first, last);
  return reading.refuse(messages::text_after_end, reading.span(token.begin, token.end),
                        {shown(token.text())});
}

/// Runs a grammar that fills one optional field, and leaves the field empty after an error.
template <typename Value, typename Grammar>
bool run_into(std::optional<Value>& field, Reading& reading, Rest rest, const Grammar& grammar) {
  if (run(reading, rest, grammar)) return true;
  field.reset();
  return false;
}

}  // namespace sudsmark::formula
