// Heading 5: what the product is for, how it is used, and which words go with it.
#include <algorithm>
#include <array>

#include "dossier/gathering.h"
#include "wording/words.h"

namespace sudsmark::dossier {
namespace {

/// Of what a formula states, that which is about its use; the workshop is none of it.
bool of_use(const std::string& name) {
  constexpr std::array<std::string_view, 9> all{
      "forming",    "market", "piece", "in one bath", "water of a bath", "warmth of the bath",
      "in one use", "water",  "users"};
  return std::find(all.begin(), all.end(), name) != all.end();
}

struct AskedWords {
  std::string words;
  std::vector<std::string> markets;
};

/// The words that are due on a label, each once with the markets that ask for them.
std::vector<AskedWords> words_of(const FormulaResult& checked) {
  std::vector<AskedWords> out;
  for (const MarketLabel& label : checked.labels) {
    for (const LabelWords& one : label.words) {
      if (!one.certain) continue;
      const std::string said = one.words + " [" + one.entry + "]";
      const auto known = std::find_if(out.begin(), out.end(),
                                      [&](const AskedWords& asked) { return asked.words == said; });
      if (known == out.end()) {
        out.push_back({said, {label.market}});
      } else if (known->markets.back() != label.market) {
        known->markets.push_back(label.market);
      }
    }
  }
  return out;
}

}  // namespace

void add_use(const Gathering& to) {
  to.entry(5, "kind of product", to.blend.product->name + ". " + to.blend.product->about);
  for (const Particular& one : to.checked.particulars) {
    if (!of_use(one.name)) continue;
    to.entry(5, one.name, one.words + (one.assumed ? " (assumed of its kind)" : ""));
  }
  for (const auto& [words, markets] : words_of(to.checked)) {
    to.entry(5, "words that the law asks for", wording::joined(markets) + ": " + words);
  }
  if (!to.blend.states_age()) {
    to.question({5,
                 Answerer::maker,
                 "For whom is it: adults, children over 3, children under 3?",
                 "Under 3 the law wants an assessment of its own; write `users`.",
                 {},
                 std::max<std::size_t>(1, to.waiting_for("users"))});
  }
  if (to.blend.looks_like_food) {
    to.entry(5, "look", "it could be taken for something to eat, as the formula says.");
  }
}

}  // namespace sudsmark::dossier
