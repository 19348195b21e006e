// Notebook: what a trainee got wrong, and when it comes back. A plain text file, one line a rule:
//
//     emulsifier-to-oil  box 2  due 2026-12-01
//
// What was found without help moves to the next box and comes back later; what was not goes back to
// the first. The days double from box to box (spaced repetition with boxes: common practice).
#pragma once

#include <chrono>
#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/results.h>

namespace sudsmark {

class Notebook {
 public:
  /// Reads the file's text; each line that is none of these is a problem, and there is no notebook.
  [[nodiscard]] static Result<Notebook> read(std::string_view path, std::string_view text);

  /// Rules that are due on a day, those longest due first.
  [[nodiscard]] std::vector<std::string> due(std::chrono::year_month_day on) const;
  /// Notes how an exercise about a rule went. A rule that was never wrong is not noted.
  void note(const std::string& rule, bool found, std::chrono::year_month_day on);
  /// The file's text.
  [[nodiscard]] std::string text() const;

 private:
  struct Entry {
    std::string rule;
    unsigned box = 1;
    std::chrono::year_month_day due;
  };
  std::vector<Entry> entries_;
};

}  // namespace sudsmark
