#include "formula/meant.h"

#include <algorithm>
#include <cstdint>
#include <vector>

#include "text/name.h"

namespace sudsmark::formula {
namespace {

std::vector<std::string> statement_words(Section section) {
  std::vector<std::string> words;
  for (const StatementWord& one : statements_of(section)) words.emplace_back(one.full);
  return words;
}

Section next(Section section) {
  return static_cast<Section>(static_cast<std::uint8_t>(section) + 1);
}

}  // namespace

std::string known_statements(Section section) {
  return text::series(statement_words(section), "and");
}

std::string section_hint(Section section, std::string_view word, bool with_statements) {
  std::vector<std::string> words;
  if (with_statements) {
    words = statement_words(section);
    for (const StatementWord& one : statements_of(section)) {
      if (one.full != one.word && text::edit_distance(word, one.word, 1) <= 1) {
        return nearest_hint(one.full, words);
      }
    }
  }
  for (auto at = Section::formula; at <= Section::tweak; at = next(at)) {
    words.emplace_back(section_word(at));
  }
  words.emplace_back("include");
  return nearest_hint(word, words);
}

std::string only_statement(Section section, std::string_view word) {
  const std::vector<std::string> near = text::nearest(word, statement_words(section));
  const auto parts = [](std::string_view of) {
    return std::count_if(of.begin(), of.end(), [](char c) { return c == ' ' || c == '_'; });
  };
  return near.size() == 1 && parts(near.front()) == parts(word) ? near.front() : std::string();
}

std::optional<Section> nearest_section(Section open, std::string_view word, std::size_t limit) {
  std::size_t least = limit + 1;
  for (const StatementWord& one : statements_of(open)) {
    least = std::min(least, text::edit_distance(word, one.word, limit));
  }
  std::optional<Section> nearest;
  for (auto at = Section::formula; at <= Section::tweak; at = next(at)) {
    const std::size_t distance = text::edit_distance(word, section_word(at), limit);
    if (distance < least) {
      least = distance;
      nearest = at;
    }
  }
  return nearest;
}

}  // namespace sudsmark::formula
