// Where a figure of the workshop comes from, so that it can be shown beside the figure.
//
// Each constant names its source in a comment; where a result goes on to a reader, it carries a
// `Provenance`. `Standing` says how far a figure can be trusted: one that is only recalled may
// warn, and may never reassure.
#pragma once

#include <cstdint>
#include <string_view>

namespace sudsmark::science {

/// How a figure was come by.
enum class Standing : std::uint8_t {
  read,      ///< in the source's own text
  quoted,    ///< as another text quotes the source
  recalled,  ///< from memory: to be looked up before anybody leans on it
  practice   ///< rule of thumb of the trade, or a plain definition of this program
};

struct Provenance {
  std::string_view id;     ///< short name, lower case with hyphens
  std::string_view title;  ///< what it is
  std::string_view where;  ///< edition, clause or table; may be empty
  Standing standing = Standing::recalled;
  bool computed = false;  ///< worked out from the figures of the source
};

/// Two sources that do not say the same, and which of them was followed.
struct Disagreement {
  std::string_view about;
  std::string_view followed;
  std::string_view set_aside;
};

}  // namespace sudsmark::science
