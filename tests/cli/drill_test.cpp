// Exercises through the program: asked and answered from a pipe, printed as papers.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "process.h"
#include "where.h"

namespace {

const std::string drill = "drill --on 2026-11-28 --count 1 emulsifier-to-oil";

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t out = 0;
  for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++out;
  return out;
}

bool holds(const std::string& text, const std::string& what) {
  return text.find(what) != std::string::npos;
}

TEST_CASE("an exercise is asked, answered and explained") {
  const auto source = sudsmark::testing::source_dir();
  const auto shown = test::run(drill + " --seed 3", source, "answer\n");
  CHECK(shown.status == 0);
  CHECK(holds(shown.out, "Exercise 1 of 1, seed 3"));
  CHECK(holds(shown.out, "Found without help: 0 of 1"));
  CHECK(holds(shown.out, "not a safety assessment"));
}

TEST_CASE("help, hints in steps and every way to stop") {
  const auto source = sudsmark::testing::source_dir();
  const auto asked = test::run(drill + " --seed 3", source, "?\nhelp\nhint\nhint\nhint\nhint\nq\n");
  CHECK(count(asked.out, "ends with the score") == 2);
  CHECK(holds(asked.out, "There are no more hints"));
  for (const char* word : {"q\n", "quit\n", "enough\n", ""}) {
    const auto ended = test::run(drill, source, word);
    CHECK(ended.status == 0);
    CHECK(holds(ended.out, "Found without help: 0 of 0"));
  }
}

TEST_CASE("what went wrong is kept in a file and brought back") {
  const test::Folder folder;
  const std::string first = "drill --on 2026-11-28 --count 6 --seed 5 --notebook mine.txt";
  const auto wrong =
      test::run(first, folder.path(), "answer\nanswer\nanswer\nanswer\nanswer\nanswer\n");
  CHECK(wrong.status == 0);
  const std::string kept = test::contents(folder.path() / "mine.txt");
  CHECK(holds(kept, "box 1  due 2026-11-29"));
  const auto again = test::run("drill --on 2026-11-29 --count 1 --seed 9 --notebook mine.txt",
                               folder.path(), "q\n");
  CHECK(holds(again.out, "seen before"));
  folder.write("mine.txt", "eggs\n");
  const auto refused = test::run(first, folder.path(), "q\n");
  CHECK(refused.status == 2);
  CHECK(holds(refused.err, "mine.txt:1:1: "));
  CHECK(test::contents(folder.path() / "mine.txt") == "eggs\n");
}

TEST_CASE("papers are one text, or a folder of pages with the answers apart") {
  const test::Folder folder;
  const std::string papers = "drill --on 2026-11-28 --papers 8 --seed 4";
  const auto ran = test::run(papers, folder.path());
  CHECK(ran.status == 0);
  CHECK(count(ran.out, "Exercise ") == 16);
  CHECK(ran.out == test::run(papers, folder.path()).out);
  CHECK(test::run(papers + " --format html=class/", folder.path()).status == 0);
  for (int number = 1; number <= 8; ++number) {
    const std::string page =
        test::contents(folder.path() / "class" / ("exercise-" + std::to_string(number) + ".html"));
    CHECK(holds(page, "<h1>Exercise " + std::to_string(number) + " of 8"));
    CHECK(holds(page, "not a safety assessment"));
    CHECK_FALSE(holds(page, "src=\"http"));  // nothing is fetched
  }
  const std::string answers = test::contents(folder.path() / "class" / "answers.html");
  CHECK(count(answers, "<h2>Exercise ") == 8);
}

TEST_CASE("the course has its chapters as text and as pages") {
  const test::Folder folder;
  const auto contents = test::run("explain course", folder.path());
  CHECK(contents.status == 0);
  CHECK(holds(contents.out, "foam"));
  const auto chapter = test::run("explain course foam", folder.path());
  CHECK(chapter.status == 0);
  for (const char* part :
       {"Why it matters", "Limits, and where they come from", "first aid",
        "Where the law stops and the assessor decides", "too-much-active-matter"}) {
    CHECK(holds(chapter.out, part));
  }
  CHECK_FALSE(holds(chapter.out, "unknown"));
  CHECK(test::run("explain course --format html=course/", folder.path()).status == 0);
  CHECK(holds(test::contents(folder.path() / "course" / "index.html"), "href=\"foam.html\""));
  CHECK(holds(test::contents(folder.path() / "course" / "foam.html"), "Why it matters"));
}

TEST_CASE("wrong words end with status 2 and the nearest known") {
  const auto source = sudsmark::testing::source_dir();
  const auto ran = test::run("drill emulsifier-too-oil", source);
  CHECK(ran.status == 2);
  CHECK(holds(ran.err, "perhaps 'emulsifier-to-oil'"));
  CHECK(test::run("drill --count 0", source).status == 2);
  CHECK(test::run("drill --papers 2 --notebook x.txt", source).status == 2);
}

}  // namespace
