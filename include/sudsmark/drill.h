// Drill: exercises for new staff. A sound card is drawn, one thing on it is broken, and the
// trainee finds the line, the reason and the mend; or it is fine; or there is a sum to do.
//
//     const auto made = sudsmark::exercise(rulesets, 7, 1, {});   // seed 7, its first
//     std::cout << sudsmark::exercise_text(*made);
//     for (const sudsmark::Step step : sudsmark::steps(*made)) {
//       std::cout << sudsmark::question_text(*made, step);
//       const auto answer = sudsmark::judge(*made, step, "7");     // what the trainee typed
//       std::cout << answer.words;
//     }
//     std::cout << sudsmark::solution_text(*made);
//
// Everything is confirmed by full checks: with the fault exactly one rule says more than it says of
// the sound card, and nothing else at any level. The same seed gives everybody the same.
#pragma once

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/results.h>
#include <sudsmark/rulesets.h>

namespace sudsmark {

/// What exercises are asked for by that have no rule.
inline const std::string sums_name = "sums";

struct DrillOptions {
  /// Ids of rules, names or subjects of rule files, `sums_name`; empty: all.
  std::vector<std::string> about;
  bool near = false;                              ///< faults near their limits
  bool always_wrong = false;                      ///< none that is fine
  std::optional<std::chrono::year_month_day> on;  ///< the day whose law holds; absent: today
};

enum class ExerciseKind : std::uint8_t {
  fault,    ///< a card with one fault
  fine,     ///< a card without any
  compare,  ///< two cards, one of which has a fault
  tweak,    ///< a card and the edits of a tweak, one of which is a fault
  sum       ///< a figure to be worked out
};

/// One of several answers to choose from.
struct Choice {
  std::string words;
  bool right = false;
};

/// A sum: its figure, how near an answer has to be, and the working line by line.
struct Sum {
  std::string kind;  ///< "emulsifier for an oil"
  std::string question;
  double answer = 0;
  double tolerance = 0;  ///< in the same unit, either way
  std::string unit;
  std::vector<std::string> working;
  /// What is given, by name: what the answer follows from.
  std::map<std::string, double> given;
};

struct Exercise {
  ExerciseKind kind = ExerciseKind::fine;
  std::uint64_t seed = 0;
  std::size_t number = 0;  ///< of the seed's exercises, from 1
  std::string subject;     ///< "Emulsifier and oil"
  std::string rule;        ///< that the fault breaks; empty: there is none
  std::string title;       ///< what that rule wants to hold
  std::string why;
  std::string remedy;
  std::string card;           ///< as it is shown, without numbers; empty of a sum
  std::string formula;        ///< of it, what is checked
  std::string sound_formula;  ///< the same without its fault
  std::string original;       ///< the model card with every amount in the middle of its window
  std::string base;           ///< of a tweak
  std::vector<std::uint32_t> lines;  ///< of `card`, from 1, that count as right; the changed first
  std::uint32_t card_lines = 0;      ///< lines of `card` that somebody could change
  std::size_t standing = 0;          ///< which of these the fault is, from 1; 0: none
  std::string section;               ///< the heading over the line
  std::string was;                   ///< the line without its fault; empty: there was none
  std::string is;                    ///< the line with it; empty: it was left out
  std::optional<Finding> finding;    ///< what the check says of it
  std::vector<Choice> reasons;       ///< four rules, one of which is broken
  std::vector<Choice> mends;         ///< changes, one of which mends it
  bool near = false;                 ///< near its limit
  std::optional<Sum> sum;
  std::vector<std::string> cautions;  ///< what can hurt, and what to do first
  [[nodiscard]] bool sound() const { return rule.empty(); }
};

/// Exercises to be printed with their solutions.
struct Handout {
  std::uint64_t seed = 0;
  std::vector<Exercise> exercises;
};

/// One exercise. None, with a problem for each word of `about` that nothing is called by, or where
/// nothing that was asked about can be made an exercise of.
[[nodiscard]] Result<Exercise> exercise(const Rulesets& rulesets, std::uint64_t seed,
                                        std::size_t number, const DrillOptions& options);

/// Rules that exercises can be about, in the order of their ids.
[[nodiscard]] std::vector<std::string> drilled_rules(const Rulesets& rulesets);

/// What is asked, in this order.
enum class Step : std::uint8_t { line, reason, mend, figure };
[[nodiscard]] std::vector<Step> steps(const Exercise& exercise);

enum class Judgement : std::uint8_t { right, wrong, not_understood };
struct Judged {
  Judgement judgement = Judgement::not_understood;
  std::string words;  ///< a line to print
};
/// Judges what somebody typed: the number of a line or of a choice, `fine`, or a figure.
[[nodiscard]] Judged judge(const Exercise& exercise, Step step, std::string_view answer);

/// The hints of an exercise, each telling more than the one before: its subject, the section, the
/// line. Of a sum its working, but for the last line.
[[nodiscard]] std::vector<std::string> hints(const Exercise& exercise);

/// The card with its lines numbered.
[[nodiscard]] std::string exercise_text(const Exercise& exercise);
/// What is asked, and what there is to choose from.
[[nodiscard]] std::string question_text(const Exercise& exercise, Step step);
/// What is wrong, why, what to change, and where that comes from.
[[nodiscard]] std::string solution_text(const Exercise& exercise);
/// The same, piece by piece.
[[nodiscard]] std::vector<SheetItem> solution_items(const Exercise& exercise);

}  // namespace sudsmark
