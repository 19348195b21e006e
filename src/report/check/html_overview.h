// Many formulas at a glance: their sum, the rules that most of them break, and each by gravity.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/results.h>

#include "front/parts.h"
#include "report/check/text_sum.h"
#include "report/markup.h"
#include "report/rule_index.h"

namespace sudsmark::report {

/// Takes in formula by formula, and keeps a line of each.
class AtAGlance {
 public:
  AtAGlance(const front::Parts& parts, bool ascii) : parts_(parts), rules_(parts), ascii_(ascii) {}

  /// `address` of the formula's own page.
  void add(const FormulaResult& formula, const std::string& address);
  /// "Twelve formulas, checked".
  [[nodiscard]] std::string title() const;
  /// Nothing where no formula came.
  void write(Markup& page);

 private:
  /// In the order in which formulas are told.
  enum class Gravest : std::uint8_t { nothing, unknown, depends, should_change, must_change };
  struct Line {
    Gravest gravest = Gravest::nothing;
    std::size_t findings = 0;  ///< of that gravity
    std::string markup;
  };

  [[nodiscard]] static Gravest gravest(const Finding& finding);
  [[nodiscard]] static std::string_view heading_of(Gravest gravest);
  void write_sum(Markup& page) const;

  const front::Parts& parts_;
  RuleIndex rules_;
  bool ascii_;
  Sum sum_;
  std::vector<Line> lines_;
};

}  // namespace sudsmark::report
