#include "catalogue/word_index.h"

#include <algorithm>
#include <tuple>

#include "text/hash.h"
#include "text/name.h"

namespace sudsmark::catalogue {
std::string_view WordIndex::word(const Slot& slot) const {
  if (slot.begin > bytes_.size()) return {};
  return std::string_view(bytes_).substr(slot.begin, slot.size);
}

void WordIndex::clear() {
  bytes_.clear();
  slots_.clear();
}

void WordIndex::add(std::string_view word, std::uint8_t rank, Target target) {
  constexpr std::size_t longest = 0xFFFF;
  const std::size_t begin = bytes_.size();
  text::append_folded(bytes_, word);
  const std::size_t size = bytes_.size() - begin;
  if (size == 0 || size > longest) {
    bytes_.resize(begin);
    return;
  }
  slots_.push_back({text::hash_of(std::string_view(bytes_).substr(begin)),
                    static_cast<std::uint32_t>(begin), static_cast<std::uint16_t>(size), target,
                    rank});
}

void WordIndex::sort() {
  std::sort(slots_.begin(), slots_.end(), [](const Slot& a, const Slot& b) {
    return std::tie(a.hash, a.rank, a.target) < std::tie(b.hash, b.rank, b.target);
  });
}

std::vector<WordIndex::Target> WordIndex::find(std::string_view word) const {
  const std::string wanted = text::fold(word);
  const std::uint64_t hash = text::hash_of(wanted);
  auto slot = std::lower_bound(slots_.begin(), slots_.end(), hash,
                               [](const Slot& a, std::uint64_t b) { return a.hash < b; });
  std::vector<Target> targets;
  std::uint8_t rank = 0;
  for (; slot != slots_.end() && slot->hash == hash; ++slot) {
    if (this->word(*slot) != wanted) continue;
    if (targets.empty()) rank = slot->rank;
    if (slot->rank != rank) break;
    if (targets.empty() || targets.back() != slot->target) targets.push_back(slot->target);
  }
  return targets;
}

bool WordIndex::all_below(std::size_t size) const {
  return std::all_of(slots_.begin(), slots_.end(),
                     [&](const Slot& slot) { return slot.target < size; });
}

}  // namespace sudsmark::catalogue
