// What somebody typed, held against what a check found.
#include <algorithm>
#include <charconv>

#include <sudsmark/drill.h>

#include "text/name.h"

namespace sudsmark {
namespace {

std::size_t lines_of(std::string_view formula) {
  const auto ends = static_cast<std::size_t>(std::count(formula.begin(), formula.end(), '\n'));
  return ends + (formula.empty() || formula.back() == '\n' ? 0 : 1);
}

/// Without the blanks around it.
std::string_view bare(std::string_view answer) {
  const std::size_t first = answer.find_first_not_of(" \t\r");
  if (first == std::string_view::npos) return {};
  return answer.substr(first, answer.find_last_not_of(" \t\r") + 1 - first);
}

Judged judge_line(const Exercise& exercise, std::size_t line) {
  const std::string here = "line " + std::to_string(line);
  if (exercise.sound()) {
    return {Judgement::wrong, "No: nothing is wrong with " + here + ", nor with another."};
  }
  const auto at = std::find_if(exercise.findings.begin(), exercise.findings.end(),
                               [&](const Finding& one) { return one.line == line; });
  if (at == exercise.findings.end()) {
    return {Judgement::wrong, "No, a change of " + here + " would not mend it. Look again."};
  }
  return {Judgement::right, "Yes, " + here + "."};
}

}  // namespace

Judged judge(const Exercise& exercise, std::string_view answer) {
  const std::string word = text::fold(answer);
  if (word == "enough") return {Judgement::enough, {}};
  if (word == "answer") return {Judgement::shown, {}};
  if (word == "hint") {
    return {Judgement::hint_wanted, "Ask yourself whether this holds: " + exercise.title +
                                        ". It is about " + exercise.subject + "."};
  }
  if (word == "fine") {
    return exercise.sound()
               ? Judged{Judgement::right, "Yes, nothing is wrong with it."}
               : Judged{Judgement::wrong, "No, something is wrong with it. Look again."};
  }
  std::size_t line = 0;
  const std::string_view typed = bare(answer);
  const auto [end, error] = std::from_chars(typed.data(), typed.data() + typed.size(), line);
  const bool number = error == std::errc() && end == typed.data() + typed.size();
  if (!number || line == 0 || line > lines_of(exercise.formula)) {
    return {Judgement::not_understood, "Type the number of a line from 1 to " +
                                           std::to_string(lines_of(exercise.formula)) +
                                           ", or fine, hint, answer or enough."};
  }
  return judge_line(exercise, line);
}

}  // namespace sudsmark
