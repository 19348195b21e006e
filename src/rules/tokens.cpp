#include "rules/tokens.h"

#include <algorithm>
#include <array>
#include <optional>

#include "quantity/number.h"
#include "rules/messages.h"
#include "text/name.h"

namespace sudsmark::rules {
namespace {

using quantity::Unit;

constexpr std::array<std::string_view, 10> keywords{"and", "or",      "not",  "in",   "is",
                                                    "if",  "between", "then", "else", "holds"};

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_letter(char c) {
  const bool outside_ascii = (static_cast<unsigned char>(c) & 0x80U) != 0;
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || outside_ascii;
}
bool is_inner(char c) {
  return is_letter(c) || is_digit(c);
}

/// Whether a name goes on with the byte at `at`: an underscore anywhere, and hyphens, points and
/// apostrophes between letters and digits; in a selection slashes too.
bool goes_on(Iterator at, Iterator last, bool selection) {
  if (at == last) return false;
  if (is_inner(*at) || *at == '_') return true;
  const bool joins = *at == '-' || *at == '.' || *at == '\'' || (selection && *at == '/');
  return joins && at + 1 != last && is_inner(at[1]);
}

void skip_blanks(Iterator& first, Iterator last) {
  while (first != last && is_blank(*first)) ++first;
}

bool scan_word(Iterator& first, Iterator last, bool selection, bool digit_first) {
  if (first == last) return false;
  if (!is_letter(*first) && !(digit_first && is_digit(*first))) return false;
  if (at_keyword(first, last)) return false;
  ++first;
  while (goes_on(first, last, selection)) ++first;
  return true;
}

std::optional<std::string_view> scan_number(Iterator& first, Iterator last) {
  Iterator at = first;
  while (at != last && is_digit(*at)) ++at;
  if (at == first) return std::nullopt;
  if (at + 1 < last && *at == '.' && is_digit(at[1])) {
    ++at;
    while (at != last && is_digit(*at)) ++at;
  }
  const std::string_view digits(first, static_cast<std::size_t>(at - first));
  first = at;
  return digits;
}

/// The longest unit that stands here and ends where a word would end.
const Unit* scan_unit(Iterator& first, Iterator last) {
  const std::string_view rest(first, static_cast<std::size_t>(last - first));
  const Unit* longest = nullptr;
  for (const Unit& unit : quantity::units()) {
    if (unit.word == "1" || !rest.starts_with(unit.word)) continue;
    const Iterator after = first + unit.word.size();
    if (unit.word != "%" && goes_on(after, last, false)) continue;
    if (longest == nullptr || unit.word.size() > longest->word.size()) longest = &unit;
  }
  if (longest != nullptr) first += longest->word.size();
  return longest;
}

std::string unit_hint(std::string_view word) {
  std::vector<std::string> known;
  for (const Unit& unit : quantity::units()) {
    if (unit.word != "1") known.emplace_back(unit.word);
  }
  const std::vector<std::string> near = text::nearest(word, known);
  return near.empty() ? std::string() : "; perhaps " + text::listed(near);
}

const Unit* unit_called(std::string_view word) {
  const auto all = quantity::units();
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const Unit& unit) { return unit.word == word; });
  return found == all.end() ? nullptr : &*found;
}

/// `per kg`, `per 100 g` behind a figure: the figure becomes a quotient.
bool scan_per(Iterator& first, Iterator last, Scan& scan, Node& figure) {
  Iterator at = first;
  skip_blanks(at, last);
  const Iterator word = at;
  if (!scan_keyword(at, last, "per")) return true;
  if (figure.unit == nullptr) return scan.refuse(messages::per_unit, word, at);
  skip_blanks(at, last);
  double many = 1.0;
  if (const auto digits = scan_number(at, last)) {
    const auto read = quantity::read_number(*digits);
    if (!read) return scan.refuse(messages::figure_size, at - digits->size(), at);
    many = *read;
    skip_blanks(at, last);
  }
  const Unit* below = scan_unit(at, last);
  if (below == nullptr || !(many > 0)) return scan.refuse(messages::per_unit, word, at);
  const std::string both = std::string(figure.unit->word) + "/" + std::string(below->word);
  const bool mass_in_mass = figure.dimension == quantity::dimension::mass &&
                            below->dimension == quantity::dimension::mass;
  figure.value = figure.value / quantity::Range(below->to_base(many));
  figure.dimension = mass_in_mass ? quantity::dimension::share
                                  : quantity::quotient(figure.dimension, below->dimension);
  figure.unit = unit_called(both);
  if (figure.unit == nullptr) figure.unit = &quantity::usual_unit(figure.dimension);
  first = at;
  return true;
}

std::string shown(Iterator at, Iterator end) {
  if (at == end) return "the end";
  constexpr std::ptrdiff_t most = 30;
  Iterator to = at;
  if (is_letter(*to) || is_digit(*to)) {
    while (goes_on(to, end, true)) ++to;
  } else {
    ++to;
  }
  if (to - at > most) {
    to = at + most;
    while (to != at && (static_cast<unsigned char>(*to) & 0xC0U) == 0x80U) --to;
  }
  return "'" + std::string(at, to) + "'";
}

}  // namespace

bool is_blank(char c) {
  return c == ' ' || c == '\n' || c == '\t' || c == '\r';
}

NodeIndex Scan::add(Op op, std::vector<NodeIndex> parts, Iterator from, Iterator to,
                    std::string text) {
  Node node;
  node.op = op;
  node.begin = from != nullptr ? offset(from) : tree[parts.front()].begin;
  node.end = to != nullptr ? offset(to) : tree[parts.back()].end;
  node.text = std::move(text);
  node.parts = std::move(parts);
  return add(std::move(node));
}

NodeIndex Scan::add(Node node) {
  tree.nodes.push_back(std::move(node));
  return static_cast<NodeIndex>(tree.nodes.size() - 1);
}

bool Scan::refuse(const text::Message& message, Iterator from, Iterator to,
                  std::vector<text::Argument> arguments) {
  if (!refused()) error = {&message, std::move(arguments), offset(from), offset(to)};
  return false;
}

bool Scan::expected(std::string_view words, Iterator at) {
  if (refused()) return false;
  skip_blanks(at, end_);
  const Iterator after = at == end_ ? at : at + 1;
  if (at != end_) {
    const bool digits = at != begin_ && is_digit(at[-1]) && at + 1 != end_ && is_digit(at[1]);
    if (*at == ',' && digits) return refuse(messages::decimal_comma, at, after);
    if (*at == '-') return refuse(messages::subtraction, at, after);
    const bool relation = *at == '<' || *at == '>' || *at == '=' || *at == '!';
    if (relation && compared) return refuse(messages::comparison_chain, at, after);
    if (*at == '"' || *at == '\'') {
      std::string text;
      Iterator quote = at;
      if (!scan_quoted(quote, end_, *this, text)) return false;
    }
  }
  return refuse(messages::syntax, at, after, {std::string(words), shown(at, end_)});
}

bool scan_keyword(Iterator& first, Iterator last, std::string_view word) {
  if (!std::string_view(first, static_cast<std::size_t>(last - first)).starts_with(word)) {
    return false;
  }
  const Iterator after = first + word.size();
  if (goes_on(after, last, false)) return false;
  first = after;
  return true;
}

bool at_keyword(Iterator first, Iterator last) {
  return std::any_of(keywords.begin(), keywords.end(), [&](std::string_view word) {
    Iterator at = first;
    return scan_keyword(at, last, word);
  });
}

bool scan_sign(Iterator& first, Iterator last, std::string_view sign) {
  if (!std::string_view(first, static_cast<std::size_t>(last - first)).starts_with(sign)) {
    return false;
  }
  const Iterator after = first + sign.size();
  if ((sign == "<" || sign == ">") && after != last && *after == '=') return false;
  first = after;
  return true;
}

bool scan_minus(Iterator& first, Iterator last, const Scan& scan) {
  if (first == last || *first != '-' || first == scan.begin() || !is_blank(first[-1])) return false;
  if (first + 1 == last || !is_blank(first[1])) return false;
  ++first;
  return true;
}

bool scan_name(Iterator& first, Iterator last, bool selection, std::string& name) {
  Iterator end = first;
  if (!scan_word(end, last, selection, selection)) return false;
  Iterator next = end;
  while (true) {
    const Iterator before = next;
    skip_blanks(next, last);
    if (next == before || !scan_word(next, last, selection, true)) break;
    end = next;
  }
  name.clear();
  for (Iterator at = first; at != end; ++at) {
    if (!is_blank(*at)) {
      name += *at;
    } else if (name.back() != ' ') {
      name += ' ';
    }
  }
  first = end;
  return true;
}

bool scan_function(Iterator& first, Iterator last, std::string& name) {
  Iterator at = first;
  if (!scan_word(at, last, false, false)) return false;
  Iterator behind = at;
  skip_blanks(behind, last);
  if (behind == last || *behind != '(') return false;
  name.assign(first, at);
  first = at;
  return true;
}

bool scan_quoted(Iterator& first, Iterator last, Scan& scan, std::string& text) {
  if (first == last || (*first != '"' && *first != '\'')) return false;
  const char quote = *first;
  text.clear();
  for (Iterator at = first + 1; at != last; ++at) {
    if (*at == quote) {
      first = at + 1;
      return true;
    }
    const bool escape = quote == '"' && *at == '\\' && at + 1 != last;
    if (escape && (at[1] == '"' || at[1] == '\\')) ++at;
    text += *at;
  }
  return scan.refuse(messages::quote_open, first, first + 1);
}

bool scan_figure(Iterator& first, Iterator last, Scan& scan, Node& figure) {
  const Iterator begin = first;
  Iterator at = first;
  const auto digits = scan_number(at, last);
  if (!digits) return false;
  const auto read = quantity::read_number(*digits);
  if (!read) return scan.refuse(messages::figure_size, first, at);
  quantity::Range value = *read;

  // `1/3 kg` is a third of a kilogram; without a unit it is a division like any other
  Iterator behind = at;
  if (behind != last && *behind == '/') {
    ++behind;
    if (const auto below = scan_number(behind, last)) {
      Iterator unit = behind;
      skip_blanks(unit, last);
      const double divisor = quantity::read_number(*below).value_or(0.0);
      if (divisor > 0 && scan_unit(unit, last) != nullptr) {
        value = value / quantity::Range(divisor);
        at = behind;
      }
    }
  }

  const Iterator number_end = at;
  skip_blanks(at, last);
  const Iterator word = at;
  const Unit* unit = scan_unit(at, last);
  if (unit == nullptr) {
    Iterator stray = word;
    Iterator per = word;
    if (!scan_keyword(per, last, "per") && scan_word(stray, last, true, false)) {
      const std::string_view found(word, static_cast<std::size_t>(stray - word));
      return scan.refuse(messages::unknown_unit, word, stray,
                         {std::string(found), unit_hint(found)});
    }
    at = number_end;
  }
  figure.op = Op::figure;
  figure.value = value;
  if (unit != nullptr) {
    figure.value = {unit->to_base(value.low), unit->to_base(value.high)};
    figure.dimension = unit->dimension;
    figure.unit = unit;
  }
  if (!scan_per(at, last, scan, figure)) return false;
  figure.begin = scan.offset(begin);
  figure.end = scan.offset(at);
  first = at;
  return true;
}

}  // namespace sudsmark::rules
