// Exercises through the program: asked and answered from a pipe, printed as a handout.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "process.h"
#include "where.h"

namespace {

const std::string drill = "drill --on 2026-11-28 emulsifier-to-oil";

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t out = 0;
  for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++out;
  return out;
}

TEST_CASE("an exercise is asked, answered and explained") {
  const auto source = sudsmark::testing::source_dir();
  const auto shown = test::run(drill, source, "answer\n");
  CHECK(shown.status == 0);
  CHECK(shown.out.find("Exercise 1 of 1: Emulsifier and oil") != std::string::npos);
  CHECK(shown.out.find("Found without help: 0 of 1.") != std::string::npos);
  CHECK(shown.out.find("sudsmark explain emulsifier-to-oil") != std::string::npos);
  CHECK(shown.out.find("not a safety assessment") != std::string::npos);
  // three wrong lines, and the solution comes by itself
  const auto wrong = test::run(drill, source, "1\n1\n1\n");
  CHECK(count(wrong.out, "Look again.") == 3);
  CHECK(wrong.out.find("  why  ") != std::string::npos);
  // nothing to read ends it
  const auto silent = test::run(drill, source, "");
  CHECK(silent.status == 0);
  CHECK(silent.out.find("Found without help: 0 of 0.") != std::string::npos);
}

TEST_CASE("a handout has every exercise with its solution") {
  const auto source = sudsmark::testing::source_dir();
  const auto ran = test::run("drill --on 2026-11-28 --answers --count 8", source);
  CHECK(ran.status == 0);
  CHECK(count(ran.out, "Exercise ") == 8);
  CHECK(count(ran.out, "\n  rule  ") == 8);
  CHECK(ran.out == test::run("drill --on 2026-11-28 --answers --count 8", source).out);
}

TEST_CASE("wrong words end with status 2 and the nearest known") {
  const auto source = sudsmark::testing::source_dir();
  const auto ran = test::run("drill emulsifier-too-oil", source);
  CHECK(ran.status == 2);
  CHECK(ran.err.find("perhaps 'emulsifier-to-oil'") != std::string::npos);
  CHECK(test::run("drill --count 0", source).status == 2);
}

}  // namespace
