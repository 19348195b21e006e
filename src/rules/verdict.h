// Verdicts: what a rule says of a formula, in the words of the open results format SARIF 2.1.0.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/results.h>

#include "blend/missing.h"
#include "catalogue/citation.h"
#include "catalogue/table.h"
#include "quantity/range.h"
#include "text/source.h"

namespace sudsmark::rules {

/// A figure of a verdict: base units and the unit in which it is printed. An infinite end of a
/// limit is no limit on that side.
struct Quantity {
  quantity::Range value;
  std::string_view unit = "1";
};

/// An `allow` of the formula that covers a verdict.
struct Allowed {
  std::string_view because;
  text::Span place;
};

/// What one rule says of one subject. Its words point into the ruleset, the catalogue and the
/// blend, which must outlive it.
struct Verdict {
  std::uint32_t rule = 0;  ///< index into the ruleset's rules
  Kind kind = Kind::not_applicable;
  Level level = Level::none;
  std::string message;  ///< without place, level and id; empty for notApplicable
  text::Span place;
  std::string_view
      subject_kind;          ///< "portion", "material", "premix", "task", "row"; empty: the product
  std::string_view subject;  ///< its name
  std::optional<Quantity> measured;
  bool bound = false;  ///< see measures::Measure::bound
  std::optional<Quantity> limit;
  blend::MissingSet missing;     ///< into the checked formula's MissingTable
  catalogue::Citations sources;  ///< the rule's, or the row's where the rule goes over a table
  std::optional<Allowed> allowed;
  bool paper = false;                   ///< open because a paper shows it, and nothing else does
  bool met_from_memory = false;         ///< would be a pass if the limit were not from memory
  const catalogue::Row* row = nullptr;  ///< of the table, where the rule goes over one
};

}  // namespace sudsmark::rules
