// Values: what stands on the machine's stack, and what instructions make of them.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
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

  // what the machine does most, in the place where the value stands
  /// Becomes a figure; who is exact lacks nothing.
  void be_figure(const Range& figure, const MissingSet& lacks) {
    be_blank();
    range = sane(figure);
    if (range.exact()) {
      missing.clear();
    } else {
      missing = lacks;
    }
  }
  /// Becomes a truth that is certain.
  void be_truth(bool is) {
    be_blank();
    range = 0.0;
    missing.clear();
    truth = is ? Certainty::yes : Certainty::no;
  }
  /// Becomes a truth that this and another figure come to; their doubts are its own.
  void be_relation(Certainty comes_to, const Value& other) {
    be_blank();
    range = 0.0;
    truth = comes_to;
    if (comes_to == Certainty::depends) {
      missing |= other.missing;
    } else {
      missing.clear();
    }
  }
  /// A range that arithmetic on very large figures may have left without order.
  [[nodiscard]] static Range sane(const Range& range) {
    if (std::isnan(range.low) || std::isnan(range.high)) return Range::unknown();
    constexpr double most = std::numeric_limits<double>::max();
    return {std::min(range.low, most), std::max(range.high, -most)};
  }

 private:
  void be_blank() {
    text = {};
    known = true;
    several = false;
    truth = Certainty::no;
  }
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
/// What stands where a condition cannot be told: one of two.
[[nodiscard]] Value one_of(const Value& a, const Value& b, const MissingSet& missing);

/// The smaller of two; a reason counts only if its figure can be the one.
[[nodiscard]] Value smaller(const Value& a, const Value& b);
[[nodiscard]] Value greater(const Value& a, const Value& b);

/// Whether a figure stands so to another, and as a value with what would settle it.
[[nodiscard]] Certainty related(Relation relation, const Range& a, const Range& b);
[[nodiscard]] Value related(Relation relation, const Value& a, const Value& b);
[[nodiscard]] Value within(const Value& figure, const Value& low, const Value& high);
[[nodiscard]] Value same_text(const Value& a, const Value& b);

}  // namespace sudsmark::rules
