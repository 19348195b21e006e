// How answers are judged, what hints tell, and the notebook.
#include <doctest/doctest.h>

#include <chrono>

#include <sudsmark/notebook.h>

#include "drill/thousand.h"

using namespace sudsmark;

namespace {

const Exercise& first_fault() {
  for (const Exercise& one : thousand()) {
    if (one.kind == ExerciseKind::fault) return one;
  }
  return thousand().front();
}

TEST_CASE("answers that are no answer say what can be typed") {
  for (const char* typed :
       {"", "0", "-1", "999", "3 g", "line 3", "\xFF", "99999999999999999999"}) {
    const Judged judged = judge(first_fault(), Step::line, typed);
    CHECK(judged.judgement == Judgement::not_understood);
    CHECK(judged.words.starts_with("Type the number of a line from 1 to "));
  }
  CHECK(judge(first_fault(), Step::reason, "5").judgement == Judgement::not_understood);
}

TEST_CASE("exactly the lines of the fault and the right choices count") {
  for (std::size_t at = 0; at < 100; ++at) {
    const Exercise& one = thousand()[at];
    if (one.sum) continue;
    const bool fine = judge(one, Step::line, " Fine ").judgement == Judgement::right;
    CHECK(fine == one.sound());
    for (const std::uint32_t line : one.lines) {
      CHECK(judge(one, Step::line, std::to_string(line)).judgement == Judgement::right);
    }
    for (std::size_t choice = 0; choice < one.reasons.size(); ++choice) {
      const auto judged = judge(one, Step::reason, std::to_string(choice + 1)).judgement;
      CHECK((judged == Judgement::right) == one.reasons[choice].right);
    }
    CHECK(solution_text(one).find(one.rule) != std::string::npos);
  }
}

TEST_CASE("hints tell the subject, then the section, then the line") {
  const Exercise& one = first_fault();
  const auto told = hints(one);
  REQUIRE(told.size() == 3);
  CHECK(told[0].find(one.subject) != std::string::npos);
  CHECK(told[0].find(one.title) == std::string::npos);
  CHECK(told[1].find(one.section) != std::string::npos);
  CHECK(told[2].find(std::to_string(one.lines.front())) != std::string::npos);
}

TEST_CASE("what went wrong comes back, later each time that it is found, and then no more") {
  using std::chrono::days;
  using std::chrono::sys_days;
  auto made = Notebook::read("mine.txt", "");
  REQUIRE(made);
  Notebook& notebook = *made;
  notebook.note("dye-stains", true, test_day);
  CHECK(notebook.due(sys_days(test_day) + days(100)).empty());
  notebook.note("dye-stains", false, test_day);
  CHECK(notebook.due(test_day).empty());
  std::chrono::sys_days day(test_day);
  for (const int wait : {1, 2, 4, 8, 16, 32}) {
    CHECK(notebook.due(day + days(wait - 1)).empty());
    day += days(wait);
    CHECK(notebook.due(day) == std::vector<std::string>{"dye-stains"});
    const auto again = Notebook::read("mine.txt", notebook.text());
    REQUIRE(again);
    CHECK(again->text() == notebook.text());
    notebook.note("dye-stains", true, day);
  }
  CHECK(notebook.due(day + days(1000)).empty());
}

TEST_CASE("a file that is no notebook is refused line by line") {
  const auto made = Notebook::read("mine.txt",
                                   "dye-stains box 1 due 2026-11-30\nshopping\n"
                                   "dye-stains box 9 due 2026-11-30\n"
                                   "dye-stains box 1 due 2026-02-30\n");
  CHECK_FALSE(made);
  REQUIRE(made.problems.size() == 3);
  CHECK(made.problems[0].line == 2);
  CHECK(made.problems[0].file == "mine.txt");
  CHECK(made.problems[2].line == 4);
}

}  // namespace
