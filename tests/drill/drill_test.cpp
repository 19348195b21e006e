// Exercises out of the rules' own examples, and how answers are judged.
#include <doctest/doctest.h>

#include <algorithm>
#include <chrono>
#include <set>
#include <string>
#include <vector>

#include <sudsmark/drill.h>

using namespace sudsmark;

namespace {

DrillOptions options(std::size_t count, unsigned deal, std::vector<std::string> about = {}) {
  DrillOptions out;
  out.about = std::move(about);
  out.count = count;
  out.deal = deal;
  out.on = std::chrono::year_month_day{std::chrono::year(2026), std::chrono::November,
                                       std::chrono::day(28)};
  return out;
}

std::vector<Exercise> dealt(const DrillOptions& how) {
  auto out = exercises(Rulesets::built_in(), how);
  REQUIRE(out);
  CHECK(out.problems.empty());
  return *out;
}

std::string ids(const std::vector<Exercise>& list) {
  std::string out;
  for (const Exercise& one : list) out += one.rule + " ";
  return out;
}

TEST_CASE("a deal gives the same exercises again, another gives others") {
  const auto first = dealt(options(6, 1));
  CHECK(first.size() == 6);
  CHECK(ids(first) == ids(dealt(options(6, 1))));
  CHECK(ids(first) != ids(dealt(options(6, 2))));
  CHECK(ids(dealt(options(3, 1))) == ids({first.begin(), first.begin() + 3}));
}

TEST_CASE("every exercise can be solved, and some have nothing wrong with them") {
  std::size_t sound = 0;
  const auto all = dealt(options(1000, 1));
  CHECK(all.size() > 60);
  for (const Exercise& one : all) {
    CAPTURE(one.rule);
    CHECK(one.formula.find("\"Trial batch\"") != std::string::npos);
    sound += one.sound() ? 1 : 0;
    if (one.sound()) {
      CHECK(judge(one, " Fine ").judgement == Judgement::right);
      CHECK(judge(one, "2").judgement == Judgement::wrong);
      continue;
    }
    CHECK(one.findings.front().rule == one.rule);
    CHECK(judge(one, "fine").judgement == Judgement::wrong);
    std::set<std::uint32_t> right;
    for (const Finding& finding : one.findings) right.insert(finding.line);
    const auto lines =
        static_cast<std::uint32_t>(std::count(one.formula.begin(), one.formula.end(), '\n'));
    for (std::uint32_t line = 1; line <= lines; ++line) {
      const Judgement expected = right.contains(line) ? Judgement::right : Judgement::wrong;
      CHECK(judge(one, std::to_string(line)).judgement == expected);
    }
    CHECK(solution_text(one).find(one.rule) != std::string::npos);
  }
  CHECK(sound > 5);
  CHECK(sound < all.size() / 2);
}

TEST_CASE("exercises about a rule or a subject, and words that mean neither") {
  for (const Exercise& one : dealt(options(50, 1, {"acid and base"}))) {
    CHECK(one.subject == "Acid and base");
  }
  const auto one_rule = dealt(options(50, 1, {"emulsifier-to-oil"}));
  CHECK(ids(one_rule) == "emulsifier-to-oil ");
  const auto none = exercises(Rulesets::built_in(), options(5, 1, {"emulsifier-to-oill"}));
  CHECK_FALSE(none);
  REQUIRE(none.problems.size() == 1);
  CHECK(none.problems.front().message.find("perhaps 'emulsifier-to-oil'") != std::string::npos);
}

TEST_CASE("answers that are no answer say what can be typed") {
  const auto list = dealt(options(1, 1));
  REQUIRE(list.size() == 1);
  for (const char* typed :
       {"", "0", "-1", "999", "3 g", "line 3", "\xFF", "99999999999999999999"}) {
    const Judged judged = judge(list.front(), typed);
    CHECK(judged.judgement == Judgement::not_understood);
    CHECK(judged.words.starts_with("Type the number of a line from 1 to "));
  }
  CHECK(judge(list.front(), "hint").words.find(list.front().title) != std::string::npos);
  CHECK(judge(list.front(), "ANSWER").judgement == Judgement::shown);
  CHECK(judge(list.front(), "enough").judgement == Judgement::enough);
}

}  // namespace
