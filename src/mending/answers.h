// Answers: choices as a tweak that is rounded, checked in full and told in figures.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include <sudsmark/suggest.h>

#include "mending/beside.h"
#include "mending/choices.h"
#include "mending/edits.h"
#include "mending/rounding.h"

namespace sudsmark::mending {

/// An answer and where it stands among the others.
struct Ready {
  SuggestedChange change;
  int left = 0;  ///< how heavy what it leaves is
  bool removes = false;
  bool slips = false;  ///< a rule is not asked any more, and nothing came in for what went
  std::size_t rank = 0;
};

/// What leaves least comes first; what takes a material out, last; else by remedy and size.
[[nodiscard]] bool comes_before(const Ready& a, const Ready& b);

/// What does all that another answer does, and more, and leaves no less, goes; so does, where the
/// first keeps its rules, what only makes them not be asked.
void drop_larger(std::vector<Ready>& answers);

/// Findings that weigh something at a level or above.
[[nodiscard]] bool weighs(const Finding& finding, Level threshold);
[[nodiscard]] std::map<VerdictKey, const Finding*> by_key(const std::vector<Finding>& findings);

/// What is asked for.
struct Request {
  const FormulaText& formula;
  const Rulesets& rulesets;
  const CheckOptions& options;
  const SuggestOptions& suggest;
  bool as_weighed = false;  ///< an answer has to pass as it is weighed too
};

class Answering {
 public:
  /// `so_far` holds what is broken and what amounts do not mend. All must outlive it.
  Answering(const Request& request, const Suggestion& so_far, const Dials& dials)
      : request_(request), so_far_(so_far), dials_(dials) {}

  /// Rounds, checks, and leaves a little more room where the rounding breaks something.
  [[nodiscard]] std::optional<Ready> made(const Choice& choice, const Aim& aim,
                                          const Rounding& rounding,
                                          const std::vector<Brought>& brought) const;
  /// An answer that is no part of the formula. `left` are the verdicts that it does not mend.
  [[nodiscard]] std::optional<Ready> beyond(const std::string& words,
                                            const std::set<VerdictKey>& left,
                                            std::size_t rank) const;
  /// An answer that changes a statement alone. `rank` is where it stands in its
  /// rule's list.
  [[nodiscard]] std::optional<Ready> stated(const std::string& statement, std::size_t rank) const;

 private:
  /// False if the full check finds broken what the answer should mend or keep; `fails` says what.
  bool check(const Choice& choice, const Aim* aim, SuggestedChange& out,
             std::set<VerdictKey>& fails) const;
  bool fill(const Mended& mended, const Choice& choice, const Turns& turns, const Aim& aim,
            const std::vector<Brought>& brought, SuggestedChange& out,
            std::set<VerdictKey>& fails) const;
  [[nodiscard]] static bool shifts_too_far(const Choice& choice, const Aim& aim,
                                           const Comparison& comparison);
  [[nodiscard]] bool slips(const Choice& choice, const Aim& aim,
                           const Comparison& comparison) const;
  [[nodiscard]] bool swaps_out(const Aim& aim, const Trialled& verdict) const;
  void add_amounts(const Choice& choice, const Turns& turns, const Aim& aim,
                   const std::vector<Brought>& brought, SuggestedChange& out) const;
  [[nodiscard]] bool was_broken(const Finding& finding) const;
  [[nodiscard]] bool is_unmendable(const Finding& finding) const;
  [[nodiscard]] Ready placed(SuggestedChange change, const Choice& choice) const;

  Request request_;
  const Suggestion& so_far_;
  const Dials& dials_;  ///< of the formula as it is
};

}  // namespace sudsmark::mending
