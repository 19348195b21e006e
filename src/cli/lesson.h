// A lesson: one exercise after the other, each step asked until it is found or given up, and how it
// went by subject.
#pragma once

#include <map>
#include <string>

#include <sudsmark/drill.h>

#include "cli/trainee.h"

namespace sudsmark::cli {

/// How an exercise went.
enum class Went { found, helped, stopped, refused };

class Lesson {
 public:
  explicit Lesson(const Speech& speech) : speech_(speech) {}

  /// Shows an exercise, asks its steps and tells its solution.
  [[nodiscard]] Went ask(const Exercise& exercise, const std::string& heading);
  /// What was found without help, by subject.
  void tell_score() const;

 private:
  enum class Answered { right, given_up, stopped, refused };
  [[nodiscard]] Answered ask_step(const Exercise& exercise, Step step);
  void hint(const Exercise& exercise);

  struct Score {
    std::size_t found = 0;
    std::size_t asked = 0;
  };
  const Speech& speech_;
  std::map<std::string, Score> scores_;
  std::size_t hints_given_ = 0;
  bool helped_ = false;
};

}  // namespace sudsmark::cli
