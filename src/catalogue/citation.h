// Citations: where a figure, a rule or a table row comes from, and how far it can be trusted.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace sudsmark::catalogue {

/// The kind of a source, as every report shows it.
enum class SourceKind : std::uint8_t {
  published,        ///< read in print, or quoted elsewhere (then `quoted`)
  common_practice,  ///< a rule of thumb of the trade, without a source
  from_memory       ///< to be looked up before anybody leans on it
};

struct Citation {
  std::string id;
  SourceKind kind = SourceKind::from_memory;
  std::string title;
  std::string where;      ///< edition, year, clause or table
  bool quoted = false;    ///< read as quoted elsewhere, not in the source itself
  bool computed = false;  ///< worked out from the figures of the source
  friend bool operator==(const Citation&, const Citation&) = default;
};

/// Index into a Catalogue's citations.
using CitationIndex = std::uint16_t;
using Citations = std::vector<CitationIndex>;

[[nodiscard]] std::string_view kind_word(SourceKind kind);

}  // namespace sudsmark::catalogue
