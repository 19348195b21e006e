// The verdict on a formula in plain words.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/results.h>

namespace sudsmark::report {

/// The one vocabulary of text and pages: "must change", "should change", "worth knowing",
/// "depends", "not known", "kept", "allowed", "does not apply".
[[nodiscard]] std::string_view verdict_word(const Finding& finding);
/// "must change" for what is broken at that level.
[[nodiscard]] std::string_view change_word(Level level);

/// What a finding says, without what a heading such as "depends" has said already.
[[nodiscard]] std::string_view message_under_heading(const Finding& finding);

/// How much a finding weighs beside others, to sort by: its level, then whether it is broken, may
/// be, or is not known; 0 for what nobody has to look at.
[[nodiscard]] int gravity(const Finding& finding);

/// What findings come to, for people.
struct Tally {
  std::size_t must = 0;     ///< broken, at level error
  std::size_t should = 0;   ///< broken, at level warning
  std::size_t noted = 0;    ///< broken, at level note
  std::size_t perhaps = 0;  ///< may be broken
  std::size_t undecided = 0;
  std::size_t from_memory = 0;  ///< met, by a limit that nobody looked up
  std::size_t kept = 0;
  std::size_t outside = 0;  ///< do not apply
  std::size_t allowed = 0;
  std::size_t fresh = 0;  ///< new since the baseline
};
[[nodiscard]] Tally tally(const FormulaResult& formula);

/// Two to four sentences: what must change, what may be broken, what is not known.
[[nodiscard]] std::string verdict_words(const FormulaResult& formula);
/// The first of them alone.
[[nodiscard]] std::string verdict_in_short(const FormulaResult& formula);

/// Findings that could not be decided, gathered by what would decide them; those that weigh most
/// and that decide most come first.
struct Undecided {
  std::vector<std::string> missing;
  Level level = Level::none;
  std::vector<const Finding*> findings;
};
[[nodiscard]] std::vector<Undecided> undecided(const FormulaResult& formula);

/// "one", … "twelve", "13".
[[nodiscard]] std::string in_words(std::size_t count);

}  // namespace sudsmark::report
