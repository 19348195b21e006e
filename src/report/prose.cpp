#include "report/prose.h"

#include <algorithm>

#include "quantity/unit.h"

namespace sudsmark::report {
namespace {

bool is_letter_or_digit(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// Whether `word` stands at a place and ends there.
bool stands(std::string_view words, std::size_t at, std::string_view word) {
  if (words.substr(at, word.size()) != word) return false;
  const std::size_t end = at + word.size();
  return end == words.size() || !is_letter_or_digit(words[end]);
}

/// Whether a unit comes next, which stays on the line of its figure.
bool begins_with_unit(std::string_view words) {
  const std::string_view word = words.substr(0, words.find(' '));
  return quantity::find_unit(word.substr(0, word.find_last_not_of(".,;:)") + 1)).has_value();
}

bool opens(std::string_view words, std::size_t at) {
  return at == 0 || std::string_view(" ([\"").find(words[at - 1]) != std::string_view::npos;
}

}  // namespace

std::string typeset(std::string_view words) {
  std::string out;
  for (std::size_t at = 0; at < words.size(); ++at) {
    const char before = at > 0 ? words[at - 1] : ' ';
    if (words[at] == ' ' && is_digit(before) && begins_with_unit(words.substr(at + 1))) {
      out += "\u00A0";
    } else if (words[at] == '\'') {
      out += opens(words, at) ? "\u2018" : "\u2019";
    } else if (!is_letter_or_digit(before) && stands(words, at, "m3")) {
      out += "m\u00B3";
      ++at;
    } else if (before == ' ' && at > 1 && is_digit(words[at - 2]) && stands(words, at, "C")) {
      out += "\u00B0C";
    } else {
      out += words[at];
    }
  }
  return out;
}

void write_prose(Markup& page, std::string_view words) {
  while (!words.empty()) {
    const std::size_t from = words.find('`');
    const std::size_t to = from == std::string_view::npos ? from : words.find('`', from + 1);
    if (to == std::string_view::npos) break;
    page.text(typeset(words.substr(0, from)));
    page.element("code", words.substr(from + 1, to - from - 1));
    words.remove_prefix(to + 1);
  }
  page.text(typeset(words));
}

void prose_element(Markup& page, std::string_view tag, std::initializer_list<Attribute> attributes,
                   std::string_view words) {
  page.open(tag, attributes);
  write_prose(page, words);
  page.close();
}

std::string capital(std::string words) {
  const bool symbol = words.size() > 1 && words[1] >= 'A' && words[1] <= 'Z';  // pH
  if (!words.empty() && words[0] >= 'a' && words[0] <= 'z' && !symbol) {
    words[0] = static_cast<char>(words[0] - 'a' + 'A');
  }
  return words;
}

std::string uncapital(std::string words) {
  const auto is_capital = [](char c) { return c >= 'A' && c <= 'Z'; };
  const bool word = words.size() > 1 && words[1] >= 'a' && words[1] <= 'z' &&
                    std::none_of(words.begin() + 1, words.end(), is_capital);
  if (word && is_capital(words[0])) {
    words[0] = static_cast<char>(words[0] - 'A' + 'a');
  }
  return words;
}

}  // namespace sudsmark::report
