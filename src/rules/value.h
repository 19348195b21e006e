// Values: what stands on the machine's stack, and what instructions make of them.
#pragma once

#include <string_view>

#include "blend/missing.h"
#include "measures/registry.h"
#include "quantity/range.h"
#include "rules/program.h"

namespace sudsmark::rules {

using blend::MissingSet;
using measures::Measured;
using quantity::Certainty;
using quantity::Range;

/// A figure, a truth or a text, and what would settle it.
struct Value {
  Range range;
  MissingSet missing;
  std::string_view text;
  bool known = true;     ///< the text is
  bool several = false;  ///< it names several, with commas and "and" between them
  Certainty truth = Certainty::no;
};

[[nodiscard]] Value figure(const Range& range, const MissingSet& missing);
[[nodiscard]] Value figure(const Measured& measured);
[[nodiscard]] Value truth(Certainty certainty, const MissingSet& missing = {});
[[nodiscard]] Value truth(bool is);
[[nodiscard]] Value text_value(std::string_view text);
/// One end of a figure's range; unknown, for the same reasons, where that end is.
[[nodiscard]] Value end_of(const Value& value, double end);
/// What nothing can be said of.
[[nodiscard]] Value unknown_value(MissingSet missing);

[[nodiscard]] Certainty denied(Certainty truth);
[[nodiscard]] Value both(const Value& a, const Value& b);
[[nodiscard]] Value either(const Value& a, const Value& b);
/// What stands where a condition cannot be told: one of two.
[[nodiscard]] Value one_of(const Value& a, const Value& b, const MissingSet& missing);

/// The smaller of two; a reason counts only if its figure can be the one.
[[nodiscard]] Value smaller(const Value& a, const Value& b);
[[nodiscard]] Value greater(const Value& a, const Value& b);

/// Whether a figure stands so to another.
[[nodiscard]] Value related(Relation relation, const Value& a, const Value& b);
[[nodiscard]] Value within(const Value& figure, const Value& low, const Value& high);
[[nodiscard]] Value same_text(const Value& a, const Value& b);

}  // namespace sudsmark::rules
