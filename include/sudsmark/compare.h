// Comparing: what a tweak changes of its base, or one formula of another, and which of its edits
// changed which verdict.
//
//     const auto base = sudsmark::base_of(tweak, options);  // of a tweak alone
//     const auto made = sudsmark::compare(*base, tweak, rulesets, options);
//     const auto* text = sudsmark::find_report(sudsmark::Command::compare, "text");
//     if (made) std::cout << text->write(&*made, rulesets, {});
//
// `differences` compares two results that a caller has already, without causes.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include <sudsmark/check.h>
#include <sudsmark/results.h>
#include <sudsmark/rulesets.h>

namespace sudsmark {

/// How much of a figure there is more, end by end; an end that is not known on both sides is
/// absent.
struct FigureChange {
  Figure before;
  Figure after;
  std::optional<double> low;   ///< after less before, of the low ends
  std::optional<double> high;  ///< the same of the high ends
  [[nodiscard]] bool changed() const;
};

enum class AmountKind : std::uint8_t { added, removed, raised, lowered, swapped };

/// A material that there is more or less of. Swapped: `name` came in the place of `old_name`.
struct AmountChange {
  AmountKind kind = AmountKind::raised;
  std::string name;
  std::string old_name;
  FigureChange share;                  ///< % as supplied
  std::optional<FigureChange> active;  ///< % of active matter, where either has any
};

struct MeasureChange {
  std::string name;
  FigureChange figure;
};

enum class Direction : std::uint8_t {
  worse,
  better,
  undecided,  ///< decided before, and no longer
};

/// Something that the tweak changes and that can be left out: an edit, a statement, a line.
struct TweakEdit {
  std::string words;
  std::string file;
  std::uint32_t line = 0;
  std::uint32_t column = 0;
};

/// A verdict that is not what it was. One side is absent where the rule does not apply there.
struct VerdictChange {
  Direction direction = Direction::worse;
  std::string rule;
  std::string subject_kind;
  std::string subject;
  int which = 0;  ///< of several alike in all that
  std::optional<Finding> before;
  std::optional<Finding> after;
  /// Smallest sets of edits (indices into Comparison::edits) that change it on their own, with the
  /// others left out. Empty where none was looked for.
  std::vector<std::vector<std::size_t>> causes;
};

struct Comparison {
  FormulaResult before;
  FormulaResult after;
  std::vector<TweakEdit> edits;         ///< what the causes are among
  std::vector<AmountChange> amounts;    ///< what changed, in the order of the ingredients
  std::vector<MeasureChange> measures;  ///< all of them, changed or not
  std::vector<VerdictChange> verdicts;  ///< the gravest first, then in the order of rules
  /// Whether anything is different that a reader of both reports could tell.
  [[nodiscard]] bool same() const;
};

/// Compares two results, which want CheckOptions::measures and ::particulars. No causes.
[[nodiscard]] Comparison differences(FormulaResult before, FormulaResult after);

/// The base that a tweak names, read; none, with a problem, if the file is no tweak or its base
/// cannot be read.
[[nodiscard]] Result<FormulaText> base_of(const FormulaText& tweak, const CheckOptions& options);

/// Checks and compares both, and finds the causes by switching single edits on, then pairs, then
/// groups: the edits of the tweak where `base` is its base, else the lines that differ.
[[nodiscard]] Result<Comparison> compare(const FormulaText& base, const FormulaText& tweak,
                                         const Rulesets& rulesets, const CheckOptions& options);

/// Whether any verdict got worse, or is newly undecided, and now weighs as much as a level.
[[nodiscard]] bool got_worse(const Comparison& comparison, Level level);

/// Marks a finding of a check of the tweak as unchanged where it is no worse than its base's, else
/// as new, as a baseline does.
void refer_to(const FormulaResult& base, FormulaResult& tweak);

}  // namespace sudsmark
