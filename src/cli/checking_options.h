// Options that several commands have, each group with what it means.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <sudsmark/check.h>

#include "cli/inputs.h"
#include "cli/options.h"

namespace sudsmark::cli {

/// `--rules`, `--bare`.
struct RulesOptions {
  std::vector<std::string> rules;  ///< folders or files of a user's rulesets
  bool bare = false;

  void declare(Options& options);
  /// What is named, read; none, told on standard error, if some of it cannot be.
  [[nodiscard]] std::optional<std::vector<RulesetText>> read(Inputs& inputs) const;
  /// The built-in rulesets with texts; none, told on standard error, if one cannot be used.
  [[nodiscard]] std::optional<Rulesets> with(const std::vector<RulesetText>& texts,
                                             bool ascii) const;
  /// Both. Errors are told on standard error.
  [[nodiscard]] std::optional<Rulesets> load(Inputs& inputs, bool ascii) const;
};

/// `--on`.
struct DayOption {
  std::string on;  ///< as typed: "2026-11-01"; empty: today

  void declare(Options& options);
  /// Whether it is a day; what is none is told on standard error.
  [[nodiscard]] bool read_into(std::optional<std::chrono::year_month_day>& day) const;
};

/// `--market`, `--on`, `--batch`, `--allow-outside`: how formulas are taken.
struct FormulaOptions {
  std::vector<std::string> markets;
  DayOption day;
  std::string batch;  ///< as typed: "6kg"; empty: what the formulas state
  bool allow_outside = false;

  void declare(Options& options);
  [[nodiscard]] bool read_into(CheckOptions& options) const;
};

/// `--rounded`.
struct RoundedOption {
  bool rounded = false;

  void declare(Options& options);
};

/// `--fail-on`, `--only`, `--without`.
struct VerdictOptions {
  std::string fail_on = "warning";
  std::vector<std::string> only;
  std::vector<std::string> without;

  void declare(Options& options);
  void read_into(CheckOptions& options) const;
  [[nodiscard]] Level threshold() const;
};

/// Whether options fit the rulesets; an unknown rule or market is told on standard error.
[[nodiscard]] bool fits(const CheckOptions& options, const Rulesets& rulesets);

}  // namespace sudsmark::cli
