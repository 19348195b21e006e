// Suggesting: the smallest changes that mend what a check finds broken.
//
//     const auto made = sudsmark::suggest(formula, rulesets, options, {});
//     const auto* text = sudsmark::find_report(sudsmark::Command::suggest, "text");
//     if (made) std::cout << text->write(&*made, rulesets, {});
//
// A suggestion moves what a broken rule is about and the fill, keeps the total, moves nothing that
// a `keep` pins, and breaks no rule that passed. Where the rule names a material that would mend
// it, that one is added or stands in another's place; where it names the piece or the batch, that
// is changed. Where it names a scale, a mask or a paper, that is an answer too, without a tweak. No
// line leaves what is usual of its material, what makes the product stays, and
// scent, preservative, colour and foamer never serve as fill. Each answer has been rounded to the
// scales at hand and checked in full after that, as the tweak file that it can be written to. Where
// there is none, the smallest set of rules and `keep`s that cannot hold together is named.
//
// The search is bounded by the number of trials, not by a clock, so that every run ends alike:
// about four hundred for a formula of up to twenty lines and fewer for a longer one, and a hundred
// more for each of at most six materials that are tried. Over the faulty fixtures the longest takes
// six seconds, most take under one.
//
// `swaps` ranks what could stand in the place of a material.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include <sudsmark/check.h>
#include <sudsmark/compare.h>
#include <sudsmark/results.h>
#include <sudsmark/rulesets.h>

namespace sudsmark {

struct SuggestOptions {
  Level threshold = Level::warning;  ///< findings at this level or above are mended
  std::size_t most = 4;              ///< answers
  bool problems = false;  ///< fill SuggestedChange::problem and Suggestion::conflict_problem
};

/// What becomes of one line, or of all lines of one name.
struct SuggestedAmount {
  std::string name;
  std::string container;           ///< premix or portion; empty: phases
  Figure was;                      ///< % of the product as supplied
  Figure is;                       ///< the same, after rounding
  std::optional<Figure> was_mass;  ///< g in this batch (in one making of a premix)
  std::optional<Figure> is_mass;
  bool leads = false;    ///< it mends; the others make room or keep other rules
  bool removed = false;  ///< it is taken out
  bool added = false;    ///< it comes in
  std::string out_of;    ///< it comes in the place of this material
  bool fills = false;    ///< q.s. or chosen for it: it takes up what the others leave
};

/// One answer.
struct SuggestedChange {
  std::vector<SuggestedAmount> amounts;  ///< those that change, what leads first
  std::vector<std::string> edits;        ///< as a tweak writes them
  double size = 0;                       ///< the sum of weighted changes, before rounding
  Comparison comparison;                 ///< before and after, by full checks
  std::vector<Finding> left;             ///< what it does not mend, at the threshold or above
  std::vector<std::string> statements;   ///< that it changes: "piece 80 g"
  /// It is no part of the formula, so no tweak says it: a scale, a mask, a paper to ask for. It has
  /// no edits, and its comparison is of the formula with itself.
  bool outside = false;
  /// What was rounded to: "the steps of the scales", "0.01 %".
  std::string rounded_to;
  bool rounding_breaks = false;  ///< no rounding would pass: the amounts are as computed
  std::string problem;           ///< the last linear problem, in the LP format
};

/// A rule or a `keep` that cannot hold together with the others of its set.
struct Conflicting {
  std::string rule;  ///< empty: a `keep`
  std::string words;
  std::string remedy;   ///< of the rule
  std::size_t row = 0;  ///< of Suggestion::conflict_problem
};

struct Suggestion {
  FormulaResult before;
  FormulaText formula;
  Level threshold = Level::warning;
  std::vector<Finding> broken;           ///< at the threshold or above
  std::vector<SuggestedChange> answers;  ///< what the remedies name first, then the smallest
  std::vector<Finding> unmendable;       ///< that amounts alone do not mend
  std::vector<Finding> blocked;          ///< that they would, but for other rules or `keep`s
  /// That amounts mend only by a detour, such as leaving a material out: their remedies come first.
  std::vector<Finding> otherwise;
  std::vector<Conflicting> conflict;  ///< of what is blocked, or where there is no answer
  std::string conflict_problem;       ///< them alone with the total kept, in the LP format
  /// Lines that could not be moved, and why.
  std::vector<std::string> fixed;
  /// Whether all that is broken is mended by a change of the formula, or nothing is.
  [[nodiscard]] bool mended() const;
};

/// None, with problems, if the formula cannot be checked.
[[nodiscard]] Result<Suggestion> suggest(const FormulaText& formula, const Rulesets& rulesets,
                                         const CheckOptions& options,
                                         const SuggestOptions& suggest_options);

/// An answer as a tweak of the formula at a path (relative to the tweak's folder), with its reasons
/// in comments. `batch` is what CheckOptions asked for.
[[nodiscard]] std::string suggested_tweak(const Suggestion& suggestion, std::size_t answer,
                                          const std::string& base_path,
                                          std::optional<double> batch);

/// A material in the place of another, gram for gram.
struct SwapChoice {
  std::string name;
  std::vector<std::string> differs;  ///< in words: "required HLB 7 instead of 6"
  double distance = 0;               ///< how much those come to
  std::size_t worse = 0;             ///< verdicts
  std::size_t undecided = 0;
  std::size_t better = 0;
  Comparison comparison;
};

struct Swaps {
  FormulaResult before;
  std::string name;                 ///< of the material that is to go
  std::vector<std::string> roles;   ///< that the others share
  std::size_t considered = 0;       ///< materials of the same role
  std::vector<SwapChoice> choices;  ///< those that change least first
};

/// None, with a problem, if the formula does not hold that material or cannot be checked.
[[nodiscard]] Result<Swaps> swaps(const FormulaText& formula, const std::string& name,
                                  const Rulesets& rulesets, const CheckOptions& options);

}  // namespace sudsmark
