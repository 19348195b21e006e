#include "label/claims.h"

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "formula/vocabulary.h"
#include "rules/deciders.h"
#include "text/name.h"
#include "wording/words.h"

namespace sudsmark::label {
namespace {

constexpr std::string_view table_name = "claim-words";

bool is_letter(char letter) {
  return (letter >= 'a' && letter <= 'z') || (letter & '\x80') != 0;
}

/// Whether folded text has a folded word or phrase by itself.
bool says(std::string_view text, std::string_view phrase) {
  for (std::size_t at = text.find(phrase); at != std::string_view::npos;
       at = text.find(phrase, at + 1)) {
    const std::size_t end = at + phrase.size();
    const bool begins = at == 0 || !is_letter(text[at - 1]);
    if (begins && (end == text.size() || !is_letter(text[end]))) return true;
  }
  return false;
}

/// The words of a row that a text has.
std::vector<std::string> found_in(std::string_view text, std::string_view list) {
  std::vector<std::string> out;
  std::size_t at = 0;
  while (at < list.size()) {
    const std::size_t end = std::min(list.find(',', at), list.size());
    const std::string word = text::fold(list.substr(at, end - at));
    if (!word.empty() && says(text, word)) out.push_back(word);
    at = end + 1;
  }
  return out;
}

/// Whether a claim is one of the language's words, which rules ask for by name.
bool has_rules_of_its_own(std::string_view claim) {
  const auto& words = formula::vocabulary::claims;
  return std::find(words.begin(), words.end(), claim) != words.end();
}

struct Said {
  std::string text;  ///< folded
  text::Span place;
};

/// The rule of what a word makes; none where the ruleset has no such rule.
std::optional<std::uint32_t> rule_of(const rules::Ruleset& ruleset, std::string_view makes) {
  if (makes == "medicine") return ruleset.find_rule("claim-that-makes-a-medicine");
  if (makes == "biocide") return ruleset.find_rule("claim-that-makes-a-biocide");
  if (makes == "evidence") return ruleset.find_rule("words-that-ask-for-evidence");
  return ruleset.find_rule("name-of-a-food");
}

}  // namespace

std::vector<LabelFault> claim_faults(const blend::Blend& blend, const rules::Ruleset& ruleset) {
  std::vector<LabelFault> out;
  const catalogue::Table* table = blend.catalogue->find_table(table_name);
  if (table == nullptr) return out;
  std::vector<Said> all{{text::fold(blend.name), blend.place}};
  for (const blend::StatedWord& claim : blend.claims) {
    all.push_back({text::fold(claim.text), claim.place});
  }
  for (const Said& one : all) {
    // what makes the same of it is told once
    std::map<std::uint32_t, std::vector<std::string>> found;
    for (const catalogue::Row& row : table->rows) {
      // most texts have none of the words, and then no rule has to be looked up
      const std::vector<std::string> words = found_in(one.text, table->word(row, "words"));
      if (words.empty()) continue;
      const std::string_view makes = table->word(row, "makes");
      const auto rule = rule_of(ruleset, makes);
      if (!rule || (makes == "food" && blend.looks_like_food)) continue;
      if (makes == "evidence" && has_rules_of_its_own(one.text)) continue;
      for (const std::string& word : words) found[*rule].push_back("'" + word + "'");
    }
    for (const auto& [rule, words] : found) {
      const rules::Rule& of = ruleset.rules[rule];
      out.push_back({rule,
                     Kind::fail,
                     of.otherwise,
                     rules::case_message(of, "", {{"words", wording::joined(words)}}),
                     {},
                     one.place,
                     {}});
    }
  }
  return out;
}

}  // namespace sudsmark::label
