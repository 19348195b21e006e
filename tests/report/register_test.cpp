// The register of reports: every command has some, and each gets what it wants.
#include <array>
#include <set>

#include <sudsmark/compare.h>
#include <sudsmark/drill.h>
#include <sudsmark/suggest.h>

#include "estuary.h"
#include "written.h"

namespace {

using namespace sudsmark;
using namespace sudsmark::testing;

constexpr std::array all{Command::check,  Command::compare,    Command::measure, Command::sheet,
                         Command::label,  Command::dossier,    Command::suggest, Command::swap,
                         Command::leeway, Command::leeway_map, Command::explain, Command::rules,
                         Command::drill};

}  // namespace

TEST_CASE("every command has reports, text first, and each word once") {
  for (const Command command : all) {
    const auto list = reports(command);
    REQUIRE_FALSE(list.empty());
    CHECK(list.front().word == "text");
    std::set<std::string_view> words;
    for (const Report& report : list) {
      CHECK(words.insert(report.word).second);
      CHECK(static_cast<bool>(report.write));
      // what a check finds keeps to the columns it is told by itself
      CHECK(report.folds == (report.word == "text" && command != Command::check));
      CHECK(find_report(command, report.word) == &report);
    }
    CHECK(find_report(command, "no-such") == nullptr);
  }
  CHECK(static_cast<bool>(find_report(Command::check, "html")->begin_overview));
  CHECK_FALSE(static_cast<bool>(find_report(Command::check, "sarif")->begin_overview));
}

TEST_CASE("what reports want is put together, and asked for") {
  const Report& text = *find_report(Command::check, "text");
  ReportOptions look;
  CHECK(text.wanted(look).verdicts == Verdicts::to_read);
  look.verbose = true;
  CHECK(text.wanted(look).verdicts == Verdicts::in_full);
  CheckOptions options;
  fill(text.wants, options);
  CHECK(options.verdicts);
  CHECK(options.only_to_read);
  CHECK_FALSE(options.measures);
  fill(text.wants | find_report(Command::check, "sarif")->wants, options);
  CHECK_FALSE(options.only_to_read);
  CHECK_FALSE(options.passes_in_full);
  CHECK(options.lines);
  fill(text.wants | find_report(Command::check, "html")->wants, options);
  CHECK(options.passes_in_full);
  CHECK(options.measures);
  CHECK(options.curves);
  CHECK(options.particulars);
  CHECK(options.lines);
  fill(find_report(Command::sheet, "html")->wants, options);
  CHECK(options.sheet);
  CHECK_FALSE(options.verdicts);
  fill(find_report(Command::label, "json")->wants, options);
  CHECK(options.label);
}

TEST_CASE("a name that something is called by, and the nearest to one that is none") {
  const Rulesets rulesets = Rulesets::built_in();
  const auto topic = find_topic("base.bath.ph", rulesets);
  REQUIRE(topic);
  CHECK(written(Command::explain, "text", &*topic, rulesets).find("bath.ph") != std::string::npos);
  CHECK(topic.problems.empty());
  const auto unknown = find_topic("bath.phh", rulesets);
  CHECK_FALSE(unknown);
  REQUIRE(unknown.problems.size() == 1);
  CHECK(unknown.problems.front().message.find("perhaps 'bath.ph'") != std::string::npos);
  CHECK(written(Command::rules, "text", &rulesets, rulesets).find("screening checks") !=
        std::string::npos);
}

TEST_CASE("a handout has every exercise with its solution") {
  const Rulesets rulesets = Rulesets::built_in();
  Handout handout;
  handout.seed = 7;
  for (std::size_t number = 1; number <= 2; ++number) {
    auto one = exercise(rulesets, handout.seed, number, {});
    REQUIRE(one);
    handout.exercises.push_back(*one);
  }
  REQUIRE(handout.exercises.size() == 2);
  const std::string text = written(Command::drill, "text", &handout, rulesets);
  CHECK(text.find("Exercise 2 of 2") != std::string::npos);
  CHECK(text.find("Exercise 1 of 2") != std::string::npos);
}
