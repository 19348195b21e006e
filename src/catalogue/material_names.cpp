#include "catalogue/material_names.h"

#include <algorithm>
#include <iterator>
#include <optional>
#include <utility>

#include "catalogue/name_words.h"
#include "text/name.h"

namespace sudsmark::catalogue {
namespace {

using Targets = MaterialNames::Targets;
using Words = std::vector<std::string>;

void add_key(WordIndex& index, const Words& words, std::uint8_t rank, WordIndex::Target target) {
  const std::string sorted = any_order(words);
  const std::string together = run_together(words);
  index.add(sorted, rank, target);
  if (together != sorted) index.add(together, rank, target);
}

/// Essential oils are called without "essential", and often without "oil".
void add_oil_names(WordIndex& index, Words words, WordIndex::Target target) {
  if (!words.empty() && words.back() == "oil") words.pop_back();
  if (!words.empty() && words.back() == "essential") words.pop_back();
  if (words.empty()) return;
  add_key(index, words, rank::stem, target);
  words.emplace_back("oil");
  add_key(index, words, rank::name, target);
  words.insert(words.end() - 1, "essential");
  add_key(index, words, rank::name, target);
}

/// Whether a share of it is what the material is bought for: "SLES 70%".
bool has_strength(const Material& material, double share) {
  constexpr double nearly_all = 0.98;
  if (material.contents.empty()) return share >= nearly_all && share <= 1;
  return std::any_of(material.contents.begin(), material.contents.end(), [&](const Content& item) {
    return item.active && item.share.low <= share && share <= item.share.high;
  });
}

bool has_form(const Material& material, unsigned forms) {
  return (forms >> static_cast<unsigned>(material.form) & 1U) != 0;
}

Targets in_both(const Targets& a, const Targets& b) {
  Targets both;
  std::set_intersection(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(both));
  return both;
}

Targets in_either(const Targets& a, const Targets& b) {
  Targets either;
  std::set_union(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(either));
  return either;
}

/// What two texts that stand for one thing mean together.
Targets agreed(const Targets& a, const Targets& b) {
  Targets both = in_both(a, b);
  return both.empty() ? in_either(a, b) : both;
}

/// The name without the text of its first brackets, and that text; none if it has none, or if they
/// stand in a word, as in chemical names.
std::optional<std::pair<std::string, std::string>> at_brackets(std::string_view name) {
  const std::size_t open = name.find('(');
  if (open == std::string_view::npos || (open > 0 && name[open - 1] != ' ')) return std::nullopt;
  const std::size_t close = name.find(')', open);
  if (close == std::string_view::npos) return std::nullopt;
  return std::pair(std::string(name.substr(0, open)) + std::string(name.substr(close + 1)),
                   std::string(name.substr(open + 1, close - open - 1)));
}

}  // namespace

void MaterialNames::index(const Shelf<Material>& materials) {
  for (WordIndex* index : {&exact_, &keys_, &endings_}) index->clear();
  for (std::size_t at = 0; at < materials.size(); ++at) {
    const Material& material = materials[at];
    const auto target = static_cast<WordIndex::Target>(at);
    const bool oil = (material.roles & bit(Role::essential_oil)) != 0;
    const auto add = [&](std::string_view word) {
      const Words words = name_words(word);
      exact_.add(word, rank::name, target);
      add_key(keys_, words, rank::name, target);
      if (oil) add_oil_names(keys_, words, target);
    };
    add(material.name);
    for (const Synonym& synonym : material.synonyms) add(synonym.word);
    exact_.add(material.inci, rank::inci, target);
    for (const std::uint32_t number : material.colour_index) {
      exact_.add("CI " + std::to_string(number), rank::number, target);
    }
    add_key(keys_, name_words(material.inci), rank::inci, target);
    for (const std::string& cas : material.cas) exact_.add(cas, rank::number, target);
    for (const std::string& ending : material.endings) {
      add_key(endings_, name_words(ending), rank::name, target);
    }
  }
  for (WordIndex* index : {&exact_, &keys_, &endings_}) index->sort();
}

Targets MaterialNames::find(std::string_view name, const Shelf<Material>& materials) const {
  constexpr std::size_t longest = 200;  // nobody writes more; signs without end would cost time
  Targets found = exact_.find(name);
  if (name.size() > longest) return found;
  if (found.empty()) found = by_words(name, materials);
  if (found.empty()) found = by_parts(name, materials);
  if (found.empty()) found = without_origin(name, materials);
  if (found.empty()) found = by_ending(name, materials);
  return found;
}

Targets MaterialNames::by_key(const Words& words) const {
  if (words.empty()) return {};
  Targets found = keys_.find(any_order(words));
  if (found.empty()) found = keys_.find(run_together(words));
  return found;
}

Targets MaterialNames::by_words(std::string_view name, const Shelf<Material>& materials) const {
  const Words words = name_words(name);
  Targets found = by_key(words);
  if (!found.empty()) return found;

  Words bare;
  std::optional<double> share;
  unsigned forms = ~0U;
  for (const std::string& word : words) {
    if (const auto stated = strength(word)) {
      if (share) return {};
      share = stated;
    } else if (const unsigned named = forms_of_word(word)) {
      forms &= named;
    } else {
      bare.push_back(word);
    }
  }
  Words formed = words;
  std::erase_if(formed, [](const std::string& word) { return strength(word).has_value(); });
  const auto fits = [&](WordIndex::Target target, bool of_form) {
    return (!share || has_strength(materials[target], *share)) &&
           (!of_form || has_form(materials[target], forms));
  };
  for (const bool of_form : {false, true}) {
    found = by_key(of_form ? bare : formed);
    std::erase_if(found, [&](WordIndex::Target target) { return !fits(target, of_form); });
    if (!found.empty()) return found;
  }
  return {};
}

Targets MaterialNames::without_origin(std::string_view name,
                                      const Shelf<Material>& materials) const {
  std::string rest;
  bool any = false;
  for (const std::string& word : name_words(name)) {
    const bool origin = names_origin(word);
    any = any || origin;
    if (!origin) rest += word + " ";
  }
  return any ? by_words(rest, materials) : Targets();
}

Targets MaterialNames::of_part(std::string_view part, const Shelf<Material>& materials) const {
  Targets found = exact_.find(text::fold(part));
  return found.empty() ? by_words(part, materials) : found;
}

Targets MaterialNames::by_parts(std::string_view name, const Shelf<Material>& materials) const {
  if (const auto parts = at_brackets(name)) {
    const auto& [outside, bracketed] = *parts;
    const Targets inside = of_part(bracketed, materials);
    Targets found = find(outside, materials);
    if (found.empty()) return found;
    if (!inside.empty()) return agreed(found, inside);
    if (!tells_nothing(bracketed)) found.clear();
    return found;
  }
  for (const std::string_view between : {"/", " - "}) {
    const std::size_t stroke = name.find(between);
    if (stroke == std::string_view::npos) continue;
    const Targets before = of_part(name.substr(0, stroke), materials);
    if (before.empty()) continue;
    const Targets behind = find(name.substr(stroke + between.size()), materials);
    if (!behind.empty()) return agreed(before, behind);
  }
  return {};
}

Targets MaterialNames::by_ending(std::string_view name, const Shelf<Material>& materials) const {
  const Words words = name_words(name);
  for (std::size_t left = 1; left < words.size(); ++left) {
    const auto from = static_cast<std::ptrdiff_t>(left);
    Targets found = endings_.find(any_order(Words(words.begin() + from, words.end())));
    if (!found.empty()) return found;
    // "mica blue", "fragrance oil lavender": shades and scents also stand behind
    found = endings_.find(any_order(Words(words.begin(), words.end() - from)));
    std::erase_if(found, [&](WordIndex::Target target) {
      return (materials[target].roles & (bit(Role::colour) | bit(Role::scent))) == 0;
    });
    if (!found.empty()) return found;
  }
  return {};
}

bool MaterialNames::all_below(std::size_t size) const {
  return exact_.all_below(size) && keys_.all_below(size) && endings_.all_below(size);
}

}  // namespace sudsmark::catalogue
