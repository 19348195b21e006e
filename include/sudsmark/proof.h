// The proof of rules: their examples and edges run, and held against rules that were changed.
//
//     const auto run = sudsmark::change_rules(rulesets, files);
//     for (const auto& one : run.value->unnoticed) std::cout << one.of << ": " << one.change <<
//     '\n';
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include <sudsmark/rulesets.h>

namespace sudsmark {

/// Runs the examples of every rule with the edges that stand in some files. Problems if an edge
/// cannot be used.
[[nodiscard]] Result<ExampleRun> verify_examples(
    const Rulesets& rulesets, const std::vector<RulesetText>& edges,
    std::optional<std::chrono::year_month_day> on = std::nullopt);

/// How rules were changed in one place at a time, and what of it their examples noticed.
struct ChangeRun {
  struct Kind {
    std::string words;  ///< "limit moved by a tenth"
    std::size_t made = 0;
    std::size_t noticed = 0;
    std::size_t explained = 0;  ///< not noticed, for a reason that the files give
  };
  struct Unnoticed {
    std::string of;       ///< id of the rule or name of the measure
    std::string change;   ///< "expect: '30 %' a tenth higher"
    std::string because;  ///< empty: no reason is given
  };
  std::vector<Kind> kinds;
  std::vector<Unnoticed> unnoticed;
  std::vector<std::string> stale;  ///< said to go unnoticed, and noticed or never made
  std::string edges;               ///< as YAML, where they were asked for
};

struct ChangeOptions {
  std::vector<std::string> only;  ///< ids of rules; empty: all
  bool offer = false;             ///< look for edges that notice the rest
  std::optional<std::chrono::year_month_day> on;
};

/// Changes each rule in one place at a time, and asks whether its examples and edges notice.
[[nodiscard]] Result<ChangeRun> change_rules(const Rulesets& rulesets,
                                             const std::vector<RulesetText>& edges,
                                             const ChangeOptions& options = {});

}  // namespace sudsmark
