// Every sum worked out once more, by formulas that stand here.
#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <map>
#include <string>

#include "drill/thousand.h"

using namespace sudsmark;

namespace {

using Given = std::map<std::string, double>;

// Molar masses: citric acid C6H8O7 192.124 g/mol, sodium bicarbonate NaHCO3 84.006 g/mol (NIST
// Chemistry WebBook, SRD 69).
const std::map<std::string, std::function<double(const Given&)>>& formulas() {
  static const std::map<std::string, std::function<double(const Given&)>> all{
      {"emulsifier", [](const Given& g) { return (g.at("oil") + g.at("scent")) * g.at("ratio"); }},
      {"bicarbonate", [](const Given& g) { return 3 * 84.006 / 192.124 * g.at("citric"); }},
      {"active", [](const Given& g) { return g.at("powder") / g.at("batch") * g.at("strength"); }},
      {"scent", [](const Given& g) { return g.at("limit") * 10 * g.at("batch"); }},
      {"smallest", [](const Given& g) { return 100 * g.at("step") / g.at("error"); }},
      {"pieces",
       [](const Given& g) {
         return std::floor((1 - g.at("loss") / 100) * 1000 * g.at("batch") / g.at("piece") + 1e-6);
       }},
      {"dilution", [](const Given& g) { return g.at("dye") * (100 / g.at("strength") - 1); }},
      {"in the bath",
       [](const Given& g) { return 10 * g.at("share") * g.at("piece") / g.at("litres"); }},
      {"wet to dry",
       [](const Given& g) { return g.at("ratio") * g.at("powders") - g.at("butter"); }}};
  return all;
}

TEST_CASE("every sum is right, and its working ends with its answer") {
  DrillOptions options;
  options.on = test_day;
  options.about = {sums_name};
  std::map<std::string, int> seen;
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    const auto made = exercise(built_in(), seed, 1, options);
    REQUIRE(made);
    REQUIRE(made->sum);
    const Sum& sum = *made->sum;
    CAPTURE(sum.kind);
    CAPTURE(sum.question);
    ++seen[sum.kind];
    REQUIRE(formulas().contains(sum.kind));
    const double answer = formulas().at(sum.kind)(sum.given);
    CHECK(sum.answer == doctest::Approx(answer).epsilon(0.0005));
    CHECK(sum.answer > 0);
    CHECK(sum.tolerance > 0);
    CHECK(sum.tolerance < sum.answer);
    REQUIRE(sum.working.size() >= 2);
    const std::string right = std::to_string(answer);
    CHECK(judge(*made, Step::figure, right).judgement == Judgement::right);
    CHECK(judge(*made, Step::figure, right + " " + sum.unit).judgement == Judgement::right);
    CHECK(judge(*made, Step::figure, std::to_string(answer * 1.2 + 1)).judgement ==
          Judgement::wrong);
    CHECK(judge(*made, Step::figure, "a lot").judgement == Judgement::not_understood);
    // each figure that is given stands in the question
    for (const auto& given : sum.given) {
      std::string words = std::to_string(given.second);
      words.erase(words.find_last_not_of('0') + 1);
      if (words.back() == '.') words.pop_back();
      CAPTURE(given.first);
      CHECK(sum.question.find(words) != std::string::npos);
    }
  }
  CHECK(seen.size() == formulas().size());
}

}  // namespace
