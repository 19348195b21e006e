#include "rules/interner.h"

#include <cstring>

namespace sudsmark::rules {
namespace {

template <typename Number>
void append(std::string& key, Number number) {
  char bytes[sizeof number];
  std::memcpy(bytes, &number, sizeof number);
  key.append(bytes, sizeof number);
}

std::string key_of(const quantity::Range& value) {
  std::string key = "f";
  append(key, value.low);
  append(key, value.high);
  return key;
}
std::string key_of(char kind, std::string_view words) {
  return kind + std::string(words);
}
std::string key_of(char kind, const std::vector<std::uint16_t>& numbers) {
  std::string key(1, kind);
  for (const std::uint16_t number : numbers) append(key, number);
  return key;
}
std::string key_of(const Named& things) {
  return key_of('n', things.word);
}
std::string key_of(const Pick* begin, const Pick* end, bool aroma) {
  std::string key = aroma ? "a" : "p";
  for (const Pick* pick = begin; pick != end; ++pick) {
    append(key, pick->code);
    append(key, pick->bits);
  }
  return key;
}
std::string key_of(const Sum& sum) {
  std::string key = "+";
  append(key, sum.kind);
  append(key, sum.selection);
  return key;
}

}  // namespace

Interner::Interner(Pool& pool) : pool_(pool) {
  const auto know = [this](std::string key, std::size_t at) {
    known_.emplace(std::move(key), static_cast<std::uint32_t>(at));
  };
  for (std::size_t at = 0; at < pool.figures.size(); ++at) know(key_of(pool.figures[at]), at);
  for (std::size_t at = 0; at < pool.texts.size(); ++at) know(key_of('t', pool.texts[at]), at);
  for (std::size_t at = 0; at < pool.traits.size(); ++at) know(key_of('r', pool.traits[at]), at);
  for (std::size_t at = 0; at < pool.lists.size(); ++at) know(key_of('l', pool.lists[at]), at);
  for (std::size_t at = 0; at < pool.named.size(); ++at) know(key_of(pool.named[at]), at);
  for (std::size_t at = 0; at < pool.selections.size(); ++at) {
    const Selection& one = pool.selections[at];
    know(key_of(pool.picks.data() + one.begin, pool.picks.data() + one.end, one.aroma), at);
  }
  for (std::size_t at = 0; at < pool.sums.size(); ++at) know(key_of(pool.sums[at]), at);
}

std::uint32_t Interner::place(std::string key, std::size_t next, bool& fresh) {
  const auto [found, added] = known_.emplace(std::move(key), static_cast<std::uint32_t>(next));
  fresh = added;
  return found->second;
}

std::uint32_t Interner::figure(const quantity::Range& value) {
  bool fresh = false;
  const std::uint32_t at = place(key_of(value), pool_.figures.size(), fresh);
  if (fresh) pool_.figures.push_back(value);
  return at;
}

std::uint32_t Interner::text(std::string_view words) {
  bool fresh = false;
  const std::uint32_t at = place(key_of('t', words), pool_.texts.size(), fresh);
  if (fresh) pool_.texts.emplace_back(words);
  return at;
}

std::uint32_t Interner::trait(std::string_view word) {
  bool fresh = false;
  const std::uint32_t at = place(key_of('r', word), pool_.traits.size(), fresh);
  if (fresh) pool_.traits.emplace_back(word);
  return at;
}

std::uint32_t Interner::list(const std::vector<std::uint16_t>& products) {
  bool fresh = false;
  const std::uint32_t at = place(key_of('l', products), pool_.lists.size(), fresh);
  if (fresh) pool_.lists.push_back(products);
  return at;
}

std::uint32_t Interner::named(const Named& things) {
  bool fresh = false;
  const std::uint32_t at = place(key_of(things), pool_.named.size(), fresh);
  if (fresh) pool_.named.push_back(things);
  return at;
}

std::uint32_t Interner::selection(const std::vector<Pick>& picks, bool aroma) {
  bool fresh = false;
  const std::uint32_t at = place(key_of(picks.data(), picks.data() + picks.size(), aroma),
                                 pool_.selections.size(), fresh);
  if (!fresh) return at;
  Selection made;
  made.aroma = aroma;
  made.begin = static_cast<std::uint32_t>(pool_.picks.size());
  for (const Pick& pick : picks) {
    const bool of_row = pick.code == PickCode::subject || pick.code == PickCode::beside;
    made.subject = made.subject || of_row;
  }
  pool_.picks.insert(pool_.picks.end(), picks.begin(), picks.end());
  made.end = static_cast<std::uint32_t>(pool_.picks.size());
  pool_.selections.push_back(made);
  return at;
}

std::uint32_t Interner::sum(SumKind kind, std::uint32_t selection) {
  const Sum sum{kind, selection};
  bool fresh = false;
  const std::uint32_t at = place(key_of(sum), pool_.sums.size(), fresh);
  if (fresh) pool_.sums.push_back(sum);
  return at;
}

}  // namespace sudsmark::rules
