// The registry of measures that are computed in C++: a name, a unit, a meaning, a source, and a
// function of a blend. (Measures made of other measures are written in the rulesets.)
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "blend/blend.h"
#include "blend/missing.h"
#include "quantity/unit.h"

namespace sudsmark::measures {

using blend::MissingSet;
using quantity::Range;
using text::Span;

/// A figure in base units, and what would have to be known to narrow it.
struct Measured {
  Range value = Range::unknown();
  MissingSet missing;
};

/// How a figure came about, gathered only where somebody asks: one short clause after the other.
using Trace = std::vector<std::string>;

/// What a measure looks at: the blend and one part of it (the whole product, a portion, a premix,
/// or what a task handles).
struct View {
  const blend::Blend* blend = nullptr;
  const blend::Part* part = nullptr;
  const blend::Task* task = nullptr;  ///< with a view of a task
  blend::MissingTable* missing = nullptr;
  Trace* trace = nullptr;  ///< null: nobody asks
};

struct Measure {
  std::string_view name;  ///< "emulsifier.to_oil"
  std::string_view unit;  ///< in which it is printed
  std::string_view meaning;
  std::string_view source;
  Measured (*compute)(const View& view);
  /// The line that a maker would change to move the figure; nowhere if there is none.
  Span (*place)(const View& view);
  /// What a new member of staff should know of it: what it assumes, what it does not say.
  std::string_view about = {};
  /// Its figure is an upper bound of what it is about, and no figure of it: reports say so.
  bool bound = false;
};

using MeasureIndex = std::uint16_t;

/// A measure of a view. Its low end never stands above its high end.
[[nodiscard]] Measured computed(const Measure& measure, const View& view);

/// All measures, in the order in which they are listed.
[[nodiscard]] std::span<const Measure> all();
/// Index of a measure; none if there is no such measure.
[[nodiscard]] std::optional<MeasureIndex> find(std::string_view name);
/// Dimension of a measure's unit.
[[nodiscard]] quantity::Dimension dimension(const Measure& measure);

}  // namespace sudsmark::measures
