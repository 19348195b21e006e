#include "formula/scan.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>

#include "formula/messages.h"
#include "quantity/number.h"

namespace sudsmark::formula {
namespace {

constexpr std::size_t longest_name = 200;
constexpr double largest_number = 1e12;
constexpr double smallest_number = 1e-12;

/// Words that follow an amount and can therefore be no unit.
constexpr std::array<std::string_view, 5> not_units{"at", "in", "of", "per", "to"};

/// What a name may hold without quotes: the punctuation that real names of materials are full of,
/// and none that means something else in a line.
constexpr std::array<bool, 256> name_characters = [] {
  std::array<bool, 256> table{};
  for (std::size_t c = 0; c < table.size(); ++c) {
    const auto character = static_cast<char>(c);
    table[c] = is_letter(character) || is_digit(character) || is_wide(character);
  }
  for (const char c : std::string_view("-_/().+&':")) table[static_cast<unsigned char>(c)] = true;
  return table;
}();

bool in_name(char c) {
  return name_characters[static_cast<unsigned char>(c)];
}

bool in_word(char c) {
  return is_letter(c) || is_digit(c) || c == '-' || c == '_' || c == '.';
}

std::string_view rest(Iterator at, Iterator last) {
  return {at, static_cast<std::size_t>(last - at)};
}

Iterator skip_digits(Iterator at, Iterator last) {
  return std::find_if_not(at, last, is_digit);
}

/// How a number with a comma would be written with a point; `thousands` may be meant by it.
std::string without_comma(std::string_view text, bool& thousands) {
  const std::size_t comma = text.find(',');
  thousands = comma <= 3 && comma > 0 && text[0] != '0' && text.find('.') > comma;
  for (std::size_t at = comma; thousands && at < text.size() && text[at] == ',';) {
    const std::size_t next = std::min(text.find_first_of(",.", at + 1), text.size());
    thousands = next - at == 4;
    at = next;
  }
  std::string out;
  if (thousands) {
    std::copy_if(text.begin(), text.end(), std::back_inserter(out),
                 [](char c) { return c != ','; });
    return out;
  }
  const std::size_t decimals = text.rfind(',');
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (at == decimals) {
      out += out.empty() ? "0." : ".";
    } else if (is_digit(text[at])) {
      out += text[at];
    }
  }
  return out;
}

bool refuse_comma(Iterator first, Iterator last, Reading& reading) {
  const Iterator end =
      std::find_if_not(first, last, [](char c) { return is_digit(c) || c == ',' || c == '.'; });
  const std::string_view text = rest(first, end);
  bool thousands = false;
  const std::string instead = without_comma(text, thousands);
  const Span place = reading.span(first, end);
  if (!thousands) return reading.refuse(messages::decimal_comma, place, {shown(text), instead});
  return reading.refuse(messages::thousands_comma, place, {shown(text), instead});
}

/// What stands where a number should, and nearly is one.
bool refuse_no_number(Iterator first, Iterator last, Reading& reading) {
  const std::string_view text = rest(first, last);
  const std::string_view minus = text.starts_with("\u2212") ? "\u2212" : "-";
  const auto to_end_of_number = [&](Iterator at) {
    return std::find_if_not(at, last, [](char c) { return is_digit(c) || c == '.' || c == '/'; });
  };
  if (text.starts_with(minus)) {
    const Iterator figure = skip_blanks(first + minus.size(), last);
    if (!digit_at(figure, last) && rest(figure, last).substr(0, 1) != ".") return false;
    const Iterator end = to_end_of_number(figure);
    return reading.refuse(messages::negative, reading.span(first, end), {shown(rest(first, end))});
  }
  if (text.starts_with("+") && digit_at(first + 1, last)) {
    const Iterator end = to_end_of_number(first + 1);
    return reading.refuse(messages::plus_sign, reading.span(first, end),
                          {shown(rest(first, end)), std::string(rest(first + 1, end))});
  }
  if (text.starts_with(".") && digit_at(first + 1, last)) {
    const Iterator end = skip_digits(first + 1, last);
    return reading.refuse(messages::lone_point, reading.span(first, end),
                          {shown(rest(first, end)), "0" + std::string(rest(first, end))});
  }
  if (text.starts_with(",") && digit_at(first + 1, last)) {
    return refuse_comma(first, last, reading);
  }
  constexpr std::array<std::array<std::string_view, 2>, 3> fractions{
      {{"\u00BC", "1/4"}, {"\u00BD", "1/2"}, {"\u00BE", "3/4"}}};
  for (const auto& [sign, plain] : fractions) {
    if (text.starts_with(sign)) {
      return reading.refuse(messages::fraction_sign, reading.span(first, first + sign.size()),
                            {shown(sign), std::string(plain)});
    }
  }
  return false;
}

/// Refuses what follows a number's digits and spoils it.
bool spoiled(Iterator first, Iterator end, Iterator last, Reading& reading) {
  if (end == last) return false;
  if (*end == ',' && digit_at(end + 1, last)) {
    refuse_comma(first, last, reading);
    return true;
  }
  if (*end == '.') {
    const Iterator stop =
        std::find_if_not(first, last, [](char c) { return is_digit(c) || c == '.' || c == ','; });
    const std::string_view text = rest(first, stop);
    if (text.find(',') != std::string_view::npos && digit_at(stop - 1, last)) {
      refuse_comma(first, last, reading);
    } else {
      reading.refuse(messages::bad_point, reading.span(first, stop), {shown(text)});
    }
    return true;
  }
  if (*end == 'e' || *end == 'E') {
    Iterator power = end + 1;
    if (power != last && (*power == '-' || *power == '+')) ++power;
    if (!digit_at(power, last)) return false;
    const Iterator stop = skip_digits(power, last);
    reading.refuse(messages::exponent, reading.span(first, stop), {shown(rest(first, stop))});
    return true;
  }
  return false;
}

/// The end of a plain decimal that starts at `at`: digits, and a point if digits follow it.
Iterator decimal_end(Iterator at, Iterator last) {
  Iterator end = skip_digits(at, last);
  if (end != last && *end == '.' && digit_at(end + 1, last)) end = skip_digits(end + 1, last);
  return end;
}

/// Whether all that is left of a line is a share or a range of shares: `5 %`, `18 - 22 %`.
bool only_share_left(Iterator at, Iterator last) {
  const auto skip = [&](std::string_view word) {
    if (!rest(at, last).starts_with(word)) return false;
    at = skip_blanks(at + word.size(), last);
    return true;
  };
  const auto skip_figure = [&] {
    const Iterator end = std::find_if_not(
        at, last, [](char c) { return is_digit(c) || c == '.' || c == ',' || c == '/'; });
    const bool figure = digit_at(at, last);
    at = skip_blanks(end, last);
    return figure;
  };
  const auto skip_unit = [&] { return skip("%") || skip("ppm"); };
  if (!skip_figure()) return false;
  const bool unit = skip_unit();
  if (skip("-") || (is_blank(at[-1]) && skip("to")))
    return skip_figure() && skip_unit() && at == last;
  return unit && at == last;
}

bool check_name(const Word& name, Reading& reading) {
  if (name.text.size() > longest_name) {
    return reading.refuse(messages::name_too_long, name.place, {std::to_string(name.text.size())});
  }
  if (std::all_of(name.text.begin(), name.text.end(), is_blank)) {
    return reading.refuse(messages::empty_name, name.place);
  }
  return true;
}

}  // namespace

Iterator skip_blanks(Iterator at, Iterator last) {
  return std::find_if_not(at, last, is_blank);
}

Token token_at(Iterator at, Iterator last) {
  at = skip_blanks(at, last);
  if (at == last) return {at, at};
  if (*at == '"') {
    Iterator end = at + 1;
    while (end != last && *end != '"') end += *end == '\\' && end + 1 != last ? 2 : 1;
    return {at, end == last ? end : end + 1};
  }
  const Iterator end =
      std::find_if(at + 1, last, [](char c) { return is_blank(c) || c == '"' || c == ','; });
  return {at, end};
}

bool scan_keyword(Iterator& first, Iterator last, std::string_view word) {
  const std::string_view text = rest(first, last);
  if (!text.starts_with(word)) return false;
  if (text.size() > word.size()) {
    const char next = text[word.size()];
    if (is_letter(next) || is_digit(next) || is_wide(next) || next == '-' || next == '_') {
      return false;
    }
  }
  first += word.size();
  return true;
}

bool scan_number(Iterator& first, Iterator last, Reading& reading, Number& number) {
  if (!digit_at(first, last)) return refuse_no_number(first, last, reading);
  Iterator end = decimal_end(first, last);
  if (spoiled(first, end, last, reading)) return false;
  std::optional<double> value = quantity::read_number(rest(first, end));
  if (value && end != last && *end == '/' && digit_at(end + 1, last)) {
    const Iterator below = end + 1;
    const bool whole = skip_digits(first, last) == end;
    end = decimal_end(below, last);
    if (spoiled(below, end, last, reading)) return false;
    const bool goes_on = end != last && *end == '/' && digit_at(end + 1, last);
    if (goes_on) end = skip_digits(end + 1, last);
    if (!whole || goes_on || skip_digits(below, last) != end) {
      return reading.refuse(messages::bad_fraction, reading.span(first, end),
                            {shown(rest(first, end))});
    }
    const std::optional<double> divisor = quantity::read_number(rest(below, end));
    if (divisor && *divisor == 0) {
      return reading.refuse(messages::zero_below, reading.span(first, end),
                            {shown(rest(first, end))});
    }
    value = divisor ? std::optional(*value / *divisor) : std::nullopt;
  }
  if (!value || *value > largest_number || (*value != 0 && *value < smallest_number)) {
    return reading.refuse(messages::number_out_of_bounds, reading.span(first, end),
                          {shown(rest(first, end))});
  }
  number = {*value, {first, end, {}}};
  first = end;
  return true;
}

bool scan_unit(Iterator& first, Iterator last, Token& found) {
  if (first == last) return false;
  Iterator end = first;
  if (*first == '%') {
    ++end;
  } else if (is_letter(*first) || is_wide(*first)) {
    const auto inside = [](char c) { return is_letter(c) || is_digit(c) || is_wide(c); };
    while (end != last) {
      const bool joint = *end == '/' || *end == '-' || *end == '_';
      if (!inside(*end) && !(joint && end + 1 != last && inside(end[1]))) break;
      ++end;
    }
  } else {
    return false;
  }
  Token unit{first, end, {}};
  for (const std::string_view gallon : {"US gal", "imperial gal"}) {
    if (unit.text() != gallon.substr(0, gallon.find(' '))) continue;
    Iterator next = skip_blanks(end, last);
    if (!scan_keyword(next, last, "gal")) continue;
    unit = {first, next, gallon};
    end = next;
  }
  if (std::find(not_units.begin(), not_units.end(), unit.text()) != not_units.end()) return false;
  found = unit;
  first = end;
  return true;
}

bool scan_text(Iterator& first, Iterator last, Reading& reading, Word& text) {
  if (first == last || *first != '"') return false;
  std::string out;
  Iterator at = first + 1;
  for (; at != last && *at != '"'; ++at) {
    if (*at != '\\') {
      out += *at;
      continue;
    }
    if (at + 1 == last || (at[1] != '"' && at[1] != '\\')) {
      const Iterator end = at + 1 == last ? last : at + 2;
      return reading.refuse(messages::bad_escape, reading.span(at, end), {shown(rest(at, end))});
    }
    out += *++at;
  }
  if (at == last) return reading.refuse(messages::open_quote, reading.span(first, last));
  ++at;
  text = {std::move(out), reading.span(first, at), true};
  first = at;
  return true;
}

bool scan_name(Iterator& first, Iterator last, Reading& reading, const NameEnd& name_end,
               Word& name) {
  if (first == last) return false;
  if (*first == '"') {
    Iterator at = first;
    if (!scan_text(at, last, reading, name) || !check_name(name, reading)) return false;
    first = at;
    return true;
  }
  if (!is_letter(*first) && !is_digit(*first) && !is_wide(*first) && *first != '(') return false;
  Iterator end = first;
  Iterator last_word = first;
  while (true) {
    const Iterator word = skip_blanks(end, last);
    if (word == last || *word == '"' || (*word == ',' && name_end.comma)) break;
    const Iterator stop = std::find_if_not(word, last, in_name);
    if (stop == word && *word == '%' && !name_end.keyword.empty() && is_digit(*last_word)) {
      // a figure where a word of the language should have ended the name
      return reading.refuse(messages::expected, reading.span(last_word, end),
                            {"'" + std::string(name_end.keyword) + "'", found(last_word, last)});
    }
    if (stop == word) {
      return reading.refuse(messages::needs_quotes, reading.span(word, word + 1),
                            {shown(rest(word, word + 1))});
    }
    const std::string_view here = rest(word, stop);
    if (!name_end.keyword.empty() && here == name_end.keyword) break;
    if (word == first && (here == "of" || here == "per")) break;  // these belong to the amount
    if (name_end.bounds && word != first && only_share_left(word, last)) {
      if (rest(last_word, end) != "-" && rest(last_word, end) != "to") break;
      return reading.expected("the left end of a range", last_word, last);
    }
    if (word != end) last_word = word;
    end = stop;
  }
  if (end == first) return false;
  name = {std::string(rest(first, end)), reading.span(first, end), false};
  if (!check_name(name, reading)) return false;
  first = end;
  return true;
}

bool scan_word(Iterator& first, Iterator last, Reading& reading, Word& word) {
  const Iterator end = std::find_if_not(first, last, in_word);
  if (end == first) return false;
  word = {std::string(rest(first, end)), reading.span(first, end), false};
  if (!check_name(word, reading)) return false;
  first = end;
  return true;
}

}  // namespace sudsmark::formula
