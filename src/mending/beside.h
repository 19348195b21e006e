// Tweaks of a formula tried beside it, without a file.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <sudsmark/check.h>

#include "formula/assemble.h"
#include "formula/card.h"

namespace sudsmark::mending {

class Beside {
 public:
  /// The formula must outlive this.
  Beside(const FormulaText& formula, const CheckOptions& options);
  Beside(const Beside&) = delete;
  Beside& operator=(const Beside&) = delete;

  /// The formula with some edits, before it is mixed; none if that cannot be.
  [[nodiscard]] std::optional<formula::Card> card(const std::vector<std::string>& edits,
                                                  const formula::SameName& same_name) const;
  /// A full check of a tweak of the formula by some edits; none if that cannot be mixed.
  [[nodiscard]] std::optional<FormulaResult> check(const std::string& name,
                                                   const std::vector<std::string>& edits,
                                                   const Rulesets& rulesets) const;

 private:
  const FormulaText& formula_;
  CheckOptions options_;
  std::string name_;   ///< of the formula's file, without its folder
  std::string tweak_;  ///< path of what is tried
};

}  // namespace sudsmark::mending
