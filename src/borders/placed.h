// A formula as leeway looks at it: what it says, what it makes, and its lines that can be set.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include <sudsmark/check.h>
#include <sudsmark/leeway.h>

#include "blend/blend.h"
#include "borders/outward.h"
#include "borders/settings.h"
#include "formula/card.h"
#include "mending/dials.h"
#include "mending/rounding.h"
#include "text/source.h"

namespace sudsmark::borders {

class Placed {
 public:
  /// None, with problems, if it cannot be checked. The rulesets and the options, which name a day,
  /// must outlive it.
  [[nodiscard]] static Result<std::unique_ptr<Placed>> read(const FormulaText& formula,
                                                            const Rulesets& rulesets,
                                                            const CheckOptions& options,
                                                            Level threshold);

  [[nodiscard]] const std::string& name() const { return blend_.name; }
  [[nodiscard]] const std::vector<mending::Dial>& dials() const { return dials_->all(); }
  [[nodiscard]] const Settings& settings() const { return *settings_; }
  /// The dial of that name; null where none can be set alone.
  [[nodiscard]] const mending::Dial* find(const std::string& name) const;
  /// A line as it stands; its ends are not looked for.
  [[nodiscard]] LeewayLine line(const mending::Dial& dial) const;
  /// How far it can go, each way.
  void look(const mending::Dial& dial, LeewayLine& out) const;

 private:
  Placed(formula::Card card, blend::Blend blend)
      : card_(std::move(card)), blend_(std::move(blend)) {}
  /// What an end is found to [% of the product]: no scale of the workshop shows less.
  [[nodiscard]] double fine(const mending::Dial& dial) const;

  text::Sources sources_;
  formula::Card card_;
  blend::Blend blend_;
  formula::SameName same_name_;
  std::unique_ptr<mending::Dials> dials_;
  std::unique_ptr<mending::Rounding> rounding_;
  std::unique_ptr<Settings> settings_;
};

}  // namespace sudsmark::borders
