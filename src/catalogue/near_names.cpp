#include "catalogue/near_names.h"

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <utility>

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

/// How near, the less the nearer; none if it is another name.
std::optional<int> nearness(const Words& name, const Words& known) {
  constexpr std::size_t telling_letters = 3;
  if (known.empty() || run_together(name).size() < telling_letters) return std::nullopt;
  if (begins(name, known)) return 0;
  if (all_in(name, known)) return 1;
  if (slips(name, known)) return 2;
  if (text::edit_distance(run_together(name), run_together(known), 1) <= 1 &&
      name.front().front() == known.front().front()) {
    return 2;
  }
  const bool longer =
      name.size() == known.size() + 1 && std::equal(known.begin(), known.end(), name.begin(), slip);
  return longer ? std::optional<int>(3) : std::nullopt;
}

/// Whether it is worth a closer look, in its raw spelling: most names are not.
bool may_be_near(const Words& name, std::string_view offered) {
  constexpr std::size_t letters = 3;
  const std::string folded = text::fold(offered);
  return !folded.empty() && (folded.front() == name.front().front() ||
                             folded.find(name.front().substr(0, letters)) != std::string::npos);
}

}  // namespace

std::vector<std::string> near_names(std::string_view name, const std::vector<Offer>& offers) {
  constexpr std::size_t longest = 200;
  constexpr std::size_t most = 3;
  if (name.size() > longest) return {};
  const Words words = name_words(name);
  // of each owner the nearest of its words, the first of those that are equally near
  std::map<std::size_t, std::pair<int, std::size_t>> best;
  for (std::size_t at = 0; !words.empty() && at < offers.size(); ++at) {
    if (!may_be_near(words, offers[at].word)) continue;
    if (const auto found = nearness(words, name_words(offers[at].word))) {
      const std::pair candidate(*found, at);
      const auto [known, added] = best.emplace(offers[at].owner, candidate);
      if (!added) known->second = std::min(known->second, candidate);
    }
  }
  std::vector<std::tuple<int, std::size_t, std::size_t>> near;
  for (const auto& [owner, found] : best) {
    near.emplace_back(found.first, offers[found.second].word.size(), found.second);
  }
  std::sort(near.begin(), near.end());
  std::vector<std::string> names;
  for (const auto& [how_near, size, at] : near) {
    if (names.size() == most) break;
    std::string word(offers[at].word);
    if (std::find(names.begin(), names.end(), word) == names.end()) {
      names.push_back(std::move(word));
    }
  }
  return names;
}

}  // namespace sudsmark::catalogue
