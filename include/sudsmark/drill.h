// Drill: exercises for new staff. What is wrong with a formula, and which line would you change?
//
//     for (const auto& exercise : *sudsmark::exercises(rulesets, {})) {
//       std::cout << sudsmark::exercise_text(exercise);
//       const auto answer = sudsmark::judge(exercise, "7");  // what the trainee typed
//       std::cout << answer.words << sudsmark::solution_text(exercise);
//     }
//
// The formulas are the examples that every rule carries, so that a workshop's own rules become
// exercises too. The whole check decides what is right, never the example's author alone.
#pragma once

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/results.h>
#include <sudsmark/rulesets.h>

namespace sudsmark {

struct DrillOptions {
  std::vector<std::string> about;  ///< ids of rules, or names of rule files; empty: all
  std::size_t count = 5;           ///< most exercises
  unsigned deal = 1;               ///< other numbers deal other exercises; the same one the same
  std::optional<std::chrono::year_month_day> on;  ///< the day whose law holds; absent: today
};

struct Exercise {
  std::string subject;  ///< "Emulsifier and oil"
  std::string rule;     ///< whose example it is
  std::string title;    ///< what that rule wants to hold
  std::string why;
  std::string remedy;
  std::string formula;  ///< as written
  /// What is wrong with it at level warning or above, and what that rule says. Empty: nothing is.
  std::vector<Finding> findings;
  [[nodiscard]] bool sound() const { return findings.empty(); }
};

/// Exercises to be printed with their solutions.
struct Handout {
  std::vector<Exercise> exercises;
};

/// Exercises in the order of the deal: about one in four of them has nothing wrong with it. None,
/// with a problem for each word of `about` that nothing is called by.
[[nodiscard]] Result<std::vector<Exercise>> exercises(const Rulesets& rulesets,
                                                      const DrillOptions& options);

enum class Judgement : std::uint8_t {
  right,
  wrong,        ///< another line, or something and nothing mixed up
  hint_wanted,  ///< asked for a hint: `words` is one
  shown,        ///< gave up: to be shown the solution
  enough,       ///< wants to stop
  not_understood
};

struct Judged {
  Judgement judgement = Judgement::not_understood;
  std::string words;  ///< a line to print; empty: nothing to say
};

/// Judges what somebody typed: the number of a line, `fine`, `hint`, `answer` or `enough`.
[[nodiscard]] Judged judge(const Exercise& exercise, std::string_view answer);

/// The formula with its lines numbered, and what is asked.
[[nodiscard]] std::string exercise_text(const Exercise& exercise, std::size_t number,
                                        std::size_t of);
/// What is wrong, why, what to change, and where that comes from.
[[nodiscard]] std::string solution_text(const Exercise& exercise);

}  // namespace sudsmark
