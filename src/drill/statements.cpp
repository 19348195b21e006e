#include "drill/statements.h"

#include <algorithm>
#include <set>

#include "drill/sheet.h"
#include "quantity/number.h"
#include "rules/words.h"

namespace sudsmark::drill {
namespace {

std::string first_word(std::string_view statement) {
  return std::string(statement.substr(0, statement.find(' ')));
}

/// Each figure of a statement smaller and larger.
void vary_figures(const std::string& statement, std::set<std::string>& out) {
  constexpr std::string_view digits = "0123456789.";
  for (std::size_t at = statement.find(' '); at < statement.size();) {
    at = statement.find_first_of(digits, at);
    if (at == std::string::npos) return;
    const std::size_t end = std::min(statement.find_first_not_of(digits, at), statement.size());
    const auto figure = quantity::read_number(statement.substr(at, end - at));
    for (const double factor : {0.5, 0.7, 0.9, 1.2, 1.5, 2.0, 3.0}) {
      if (!figure) break;
      std::string other = statement;
      other.replace(at, end - at, quantity::machine_number(rounded(*figure * factor)));
      out.insert(std::move(other));
    }
    at = end;
  }
}

/// A list between quotes with one thing left out, or two neighbours exchanged.
void vary_list(const std::string& statement, std::set<std::string>& out) {
  const std::size_t open = statement.find('"');
  const std::size_t close = statement.rfind('"');
  if (open == std::string::npos || close == open) return;
  std::vector<std::string> things;
  std::string_view rest = std::string_view(statement).substr(open + 1, close - open - 1);
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find(", "), rest.size());
    things.emplace_back(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 2, rest.size()));
  }
  if (things.size() < 3) return;
  const auto joined = [&](const std::vector<std::string>& list) {
    std::string words = statement.substr(0, open + 1);
    for (const std::string& thing : list) words += (&thing == list.data() ? "" : ", ") + thing;
    return words + statement.substr(close);
  };
  for (std::size_t at = 0; at < things.size(); ++at) {
    std::vector<std::string> fewer = things;
    fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(at));
    out.insert(joined(fewer));
    if (at == 0) continue;
    std::vector<std::string> exchanged = things;
    std::swap(exchanged[at - 1], exchanged[at]);
    out.insert(joined(exchanged));
  }
}

/// The words that the language knows for it.
void vary_words(const std::string& word, std::set<std::string>& out) {
  for (const rules::StatedInfo& info : rules::stated_words()) {
    const bool same = info.name == word || info.name.ends_with("." + word);
    if (!same) continue;
    for (const std::string_view known : info.known) out.insert(word + " " + std::string(known));
  }
}

}  // namespace

std::vector<std::string> said_otherwise(const std::string& statement,
                                        const rules::Training& training) {
  const std::string word = first_word(statement);
  std::set<std::string> out;
  for (const rules::Breakage& other : training.breakages) {
    if (first_word(other.becomes) == word) out.insert(other.becomes);
  }
  for (const rules::ModelCard& card : training.cards) {
    for (const Section& section : read_sheet(card.formula).sections) {
      for (const Line& line : section.lines) {
        if (first_word(line.words) == word) out.insert(line.words);
      }
    }
  }
  vary_figures(statement, out);
  vary_list(statement, out);
  vary_words(word, out);
  out.erase(statement);
  return {out.begin(), out.end()};
}

}  // namespace sudsmark::drill
