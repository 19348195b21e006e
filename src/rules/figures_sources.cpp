// What a row of a table leans on: it may have other sources in one market than in another.
#include <algorithm>

#include "catalogue/catalogue.h"
#include "rules/figures.h"
#include "rules/words.h"

namespace sudsmark::rules {

using catalogue::Citations;

Citations Figures::sources(const catalogue::Row& row) {
  if (!row.likewise) return row.sources;
  MissingSet unused;
  Citations out;
  std::vector<std::string> own;
  for (const std::string& market : row.markets) {
    if (!row.is_likewise(market)) own.push_back(market);
  }
  if (sold_in(own, unused) != Certainty::no) out = row.sources;
  if (sold_in(row.likewise->markets, unused) == Certainty::no) return out;
  for (const catalogue::CitationIndex source : row.likewise->sources) {
    if (std::find(out.begin(), out.end(), source) == out.end()) out.push_back(source);
  }
  return out;
}

bool Figures::leans_on_memory(const catalogue::Row& row) {
  if (!row.likewise) return from_memory(row.sources);
  // where no market is stated it may be any of them
  const bool stated = words_[static_cast<std::size_t>(StatedWords::market)].stated;
  const std::uint32_t said = words_[static_cast<std::size_t>(StatedWords::market)].bits;
  return std::any_of(row.markets.begin(), row.markets.end(), [&](const std::string& market) {
    if (!from_memory(row.sources_in(market))) return false;
    const auto at = find_word(info(StatedWords::market), market);
    return !stated || (at && (said >> *at & 1U) != 0);
  });
}

bool Figures::from_memory(const Citations& sources) const {
  return !sources.empty() &&
         std::all_of(sources.begin(), sources.end(), [&](catalogue::CitationIndex index) {
           return blend_.catalogue->citations[index].kind == catalogue::SourceKind::from_memory;
         });
}

}  // namespace sudsmark::rules
