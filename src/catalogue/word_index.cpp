#include "catalogue/word_index.h"

#include <algorithm>
#include <tuple>

#include "catalogue/archive.h"
#include "text/hash.h"
#include "text/name.h"

namespace sudsmark::catalogue {
std::string_view WordIndex::word(const Slot& slot) const {
  const std::string_view words = words_.view();
  return slot.begin > words.size() ? std::string_view() : words.substr(slot.begin, slot.size);
}

WordIndex::Slot WordIndex::slot(std::size_t at) const {
  Slot out;
  Reader(table_.view().substr(at * slot_bytes, slot_bytes))(out);
  return out;
}

void WordIndex::clear() {
  words_ = {};
  table_ = {};
  added_.clear();
}

void WordIndex::add(std::string_view word, std::uint8_t rank, Target target) {
  constexpr std::size_t longest = 0xFFFF;
  std::string& words = words_.own;
  const std::size_t begin = words.size();
  text::append_folded(words, word);
  const std::size_t size = words.size() - begin;
  if (size == 0 || size > longest) {
    words.resize(begin);
    return;
  }
  added_.push_back({text::hash_of(std::string_view(words).substr(begin)),
                    static_cast<std::uint32_t>(begin), static_cast<std::uint16_t>(size), target,
                    rank});
}

void WordIndex::sort() {
  std::sort(added_.begin(), added_.end(), [](const Slot& a, const Slot& b) {
    return std::tie(a.hash, a.rank, a.target) < std::tie(b.hash, b.rank, b.target);
  });
  Writer table;
  for (const Slot& slot : added_) table(slot);
  table_.own = table.bytes();
  added_ = {};
}

std::vector<WordIndex::Target> WordIndex::find(std::string_view word) const {
  const std::string wanted = text::fold(word);
  const std::uint64_t hash = text::hash_of(wanted);
  std::size_t at = 0;
  for (std::size_t left = size(); left > 0;) {
    const std::size_t half = left / 2;
    const bool below = slot(at + half).hash < hash;
    at += below ? half + 1 : 0;
    left = below ? left - half - 1 : half;
  }
  std::vector<Target> targets;
  std::uint8_t rank = 0;
  for (; at < size(); ++at) {
    const Slot one = slot(at);
    if (one.hash != hash) break;
    if (this->word(one) != wanted) continue;
    if (targets.empty()) rank = one.rank;
    if (one.rank != rank) break;
    if (targets.empty() || targets.back() != one.target) targets.push_back(one.target);
  }
  return targets;
}

bool WordIndex::all_below(std::size_t size) const {
  if (table_.view().size() % slot_bytes != 0) return false;
  for (std::size_t at = 0; at < this->size(); ++at) {
    if (slot(at).target >= size) return false;
  }
  return true;
}

}  // namespace sudsmark::catalogue
