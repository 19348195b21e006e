// Figures and where they come from, as plain values.
#pragma once

#include <optional>
#include <string>

namespace sudsmark {

/// A figure that lies between two ends.
struct Figure {
  std::optional<double> low;
  std::optional<double> high;
  std::string unit;
};

/// Where a rule or figure comes from.
struct SourceNote {
  std::string kind;  ///< "published", "common practice", "from memory"
  std::string title;
  std::string where;
  bool quoted = false;
  bool computed = false;
};

}  // namespace sudsmark
