#include "catalogue/near_names.h"

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <utility>

#include "catalogue/catalogue.h"
#include "catalogue/name_words.h"
#include "text/name.h"

namespace sudsmark::catalogue {
namespace {

using Words = std::vector<std::string>;

/// Whether one word is a slip of the other.
bool slip(const std::string& a, const std::string& b) {
  if (a == b) return true;
  constexpr std::size_t short_word = 4;
  constexpr std::size_t long_word = 10;
  const std::size_t least = std::min(a.size(), b.size());
  if (least < short_word || a.front() != b.front()) return false;
  return text::edit_distance(a, b, 2) <= (least < long_word ? 1U : 2U);
}

bool begins(const Words& name, const Words& known) {
  if (known.size() < name.size()) return false;
  for (std::size_t at = 0; at < name.size(); ++at) {
    const bool last = at + 1 == name.size();
    if (last ? !known[at].starts_with(name[at]) : known[at] != name[at]) return false;
  }
  return true;
}

bool all_in(const Words& some, const Words& all) {
  return std::all_of(some.begin(), some.end(), [&](const std::string& word) {
    return std::find(all.begin(), all.end(), word) != all.end();
  });
}

bool slips(const Words& name, const Words& known) {
  return name.size() == known.size() && std::equal(name.begin(), name.end(), known.begin(), slip);
}

/// An unknown name in the spelling of `name_words`.
struct Unknown {
  Words words;
  std::string together;
};

/// How near, the less the nearer; none if it is another name.
std::optional<int> nearness(const Unknown& name, const Words& known, std::string_view together) {
  constexpr std::size_t telling_letters = 3;
  if (known.empty() || name.together.size() < telling_letters) return std::nullopt;
  if (begins(name.words, known)) return 0;
  if (all_in(name.words, known)) return 1;
  if (slips(name.words, known)) return 2;
  if (text::edit_distance(name.together, together, 1) <= 1 &&
      name.words.front().front() == known.front().front()) {
    return 2;
  }
  const bool longer = name.words.size() == known.size() + 1 &&
                      std::equal(known.begin(), known.end(), name.words.begin(), slip);
  return longer ? std::optional<int>(3) : std::nullopt;
}

/// Whether it is worth a closer look, in its raw spelling: most names are not.
bool may_be_near(const Words& name, const std::string& folded) {
  constexpr std::size_t letters = 3;
  const std::string_view first = name.front();
  return !folded.empty() && (folded.front() == first.front() ||
                             folded.find(first.substr(0, letters)) != std::string::npos);
}

}  // namespace

NearNames::NearNames(const std::vector<Offer>& offers) {
  known_.reserve(offers.size());
  for (const Offer& offer : offers)
    known_.push_back({offer, text::fold(offer.word), false, {}, {}});
}

void NearNames::spell(Known& known) {
  if (known.spelled) return;
  known.words = name_words(known.offer.word);
  known.together = run_together(known.words);
  known.spelled = true;
}

std::vector<std::string> NearNames::to(std::string_view name) {
  constexpr std::size_t longest = 200;
  constexpr std::size_t most = 3;
  if (name.size() > longest) return {};
  Unknown unknown{name_words(name), {}};
  if (unknown.words.empty()) return {};
  unknown.together = run_together(unknown.words);
  // of each owner the nearest of its words, the first of those that are equally near
  std::map<std::size_t, std::pair<int, std::size_t>> best;
  for (std::size_t at = 0; at < known_.size(); ++at) {
    Known& known = known_[at];
    if (!may_be_near(unknown.words, known.folded)) continue;
    spell(known);
    if (const auto found = nearness(unknown, known.words, known.together)) {
      const std::pair candidate(*found, at);
      const auto [owner, added] = best.emplace(known.offer.owner, candidate);
      if (!added) owner->second = std::min(owner->second, candidate);
    }
  }
  std::vector<std::tuple<int, std::size_t, std::size_t>> near;
  for (const auto& [owner, found] : best) {
    near.emplace_back(found.first, known_[found.second].offer.word.size(), found.second);
  }
  std::sort(near.begin(), near.end());
  std::vector<std::string> names;
  for (const auto& [how_near, size, at] : near) {
    if (names.size() == most) break;
    std::string word(known_[at].offer.word);
    if (std::find(names.begin(), names.end(), word) == names.end()) {
      names.push_back(std::move(word));
    }
  }
  return names;
}

NearNames near_materials(const Catalogue& catalogue) {
  std::vector<Offer> offers;
  for (std::size_t at = 0; at < catalogue.materials.size(); ++at) {
    const Material& material = catalogue.materials[at];
    if ((material.roles & bit(Role::controlled)) != 0) continue;
    offers.push_back({material.name, at});
    for (const Synonym& synonym : material.synonyms) offers.push_back({synonym.word, at});
    if (!material.inci.empty()) offers.push_back({material.inci, at});
  }
  return NearNames(offers);
}

NearNames near_substances(const Catalogue& catalogue) {
  std::vector<Offer> offers;
  for (std::size_t at = 0; at < catalogue.substances.size(); ++at) {
    const Substance& substance = catalogue.substances[at];
    if ((substance.roles & bit(Role::controlled)) != 0) continue;
    offers.push_back({substance.name, at});
    for (const std::string& word : substance.synonyms) offers.push_back({word, at});
    if (!substance.inci.empty()) offers.push_back({substance.inci, at});
  }
  return NearNames(offers);
}

}  // namespace sudsmark::catalogue
