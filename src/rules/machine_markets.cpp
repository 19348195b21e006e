// Where the formula is sold, and what a row of a table leans on there.
#include <algorithm>

#include "rules/machine.h"
#include "rules/words.h"

namespace sudsmark::rules {

using catalogue::Citations;

Certainty Machine::sold_in(const std::vector<std::string>& markets, MissingSet& missing) {
  if (markets.empty()) return Certainty::yes;
  std::uint32_t bits = 0;
  for (const std::string& market : markets) {
    if (const auto at = find_word(info(StatedWords::market), market)) bits |= 1U << *at;
  }
  const Value sold = is_word(StatedWords::market, bits, Subject{});
  missing |= sold.missing;
  return sold.truth;
}

Citations Machine::sources(const catalogue::Row& row) {
  if (!row.likewise) return row.sources;
  MissingSet unused = 0;
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

bool Machine::leans_on_memory(const catalogue::Row& row) {
  if (!row.likewise) return from_memory(row.sources);
  MissingSet unused = 0;
  return std::any_of(row.markets.begin(), row.markets.end(), [&](const std::string& market) {
    return from_memory(row.sources_in(market)) && sold_in({market}, unused) != Certainty::no;
  });
}

bool Machine::from_memory(const Citations& sources) const {
  return !sources.empty() &&
         std::all_of(sources.begin(), sources.end(), [&](catalogue::CitationIndex at) {
           return blend_.catalogue->citations[at].kind == catalogue::SourceKind::from_memory;
         });
}

}  // namespace sudsmark::rules
