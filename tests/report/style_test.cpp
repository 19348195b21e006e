// The style of messages (DEVELOPERS.md), as far as it can be tested: over all rules, and over what
// they say of every fixture.
#include <doctest/doctest.h>

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <optional>
#include <regex>
#include <string>
#include <vector>

#include <sudsmark/check.h>
#include <sudsmark/report.h>

#include "case_files.h"
#include "front/parts.h"
#include "written.h"

namespace {

namespace fs = std::filesystem;
using namespace sudsmark;
using namespace sudsmark::testing;

bool holds(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

/// "9 to 3": a range that runs down. Of "1 to 2.5 to 1" the last is a ratio, and so is "2 to 1".
bool runs_down(const std::string& text) {
  static const std::regex range(
      "(^|[^0-9.a-zA-Z-])([0-9]+(?:\\.[0-9]+)?) to ([0-9]+(?:\\.[0-9]+)?)");
  for (std::sregex_iterator at(text.begin(), text.end(), range), end; at != end; ++at) {
    if ((*at)[3] != "1" && std::stod((*at)[2]) > std::stod((*at)[3])) return true;
  }
  return false;
}

/// What is wrong with the style of some words; empty: nothing.
std::string fault(const std::string& words) {
  if (holds(words, "wanted none") || holds(words, "wanted at")) return "a wish in place of a limit";
  const std::size_t bound = words.find("upper bound");
  if (bound != std::string::npos && words.find("at least", bound) != std::string::npos) {
    return "'at least' of an upper bound";
  }
  if (holds(words, "not no ") || holds(words, "not none")) return "a double negative";
  if (runs_down(words)) return "a range that runs down";
  if (holds(words, "  ") || holds(words, " ,") || holds(words, "()")) return "a hole left empty";
  return {};
}

std::vector<fs::path> fixtures() {
  std::vector<fs::path> out;
  for (const char* folder : {"formulas", "sound", "faulty", "tweaks"}) {
    for (const auto& entry : fs::directory_iterator(source_dir() / "fixtures" / folder)) {
      if (entry.path().extension() == ".formula") out.push_back(entry.path());
    }
  }
  std::sort(out.begin(), out.end());
  return out;
}

RunResult checked(const fs::path& path, const Rulesets& rulesets, const Details& details) {
  CheckOptions options;
  fill(details, options);
  options.on = std::chrono::year_month_day{std::chrono::year(2026), std::chrono::month(11),
                                           std::chrono::day(25)};
  options.read = [&](const std::string& name) -> std::optional<std::string> {
    const fs::path other =
        fs::path(name).is_absolute() ? fs::path(name) : path.parent_path() / name;
    if (!fs::is_regular_file(other)) return std::nullopt;
    return file_contents(other);
  };
  return check({path.string(), file_contents(path), true}, rulesets, options);
}

}  // namespace

TEST_CASE("the words of every rule keep to the style") {
  const Rulesets rulesets = Rulesets::built_in();
  for (const rules::Rule& rule : front::parts(rulesets).ruleset.rules) {
    CAPTURE(rule.id);
    CHECK_FALSE(rule.words->title.ends_with('.'));
    CHECK_FALSE(holds(rule.words->title, "wanted"));
    CHECK(fault(rule.words->title) == "");
    // the text shows the first sentence of a remedy, so there is one
    CHECK(rule.words->remedy.size() > 10);
    CHECK(rule.words->remedy.ends_with('.'));
    CHECK_FALSE(holds(rule.words->remedy, ".."));
    const bool says = !rule.words->message_text.empty() || !rule.words->cases.empty();
    CHECK((says || rule.decided_by == "reading"));
    CHECK_FALSE(rule.words->message_text.ends_with('.'));
    CHECK_FALSE(holds(rule.words->message_text, "wanted"));
  }
}

TEST_CASE("what is said of every fixture keeps to the style, and says what to change") {
  const Rulesets rulesets = Rulesets::built_in();
  std::size_t said = 0;
  for (const fs::path& path : fixtures()) {
    const RunResult run = checked(path, rulesets, {.verdicts = Verdicts::in_full, .lines = true});
    for (const FormulaResult& formula : run.formulas) {
      for (const Finding& finding : formula.findings) {
        if (finding.kind == Kind::not_applicable) continue;
        ++said;
        const std::string wrong = fault(finding.message);
        CHECK_MESSAGE(wrong.empty(), finding.rule << " of " << path.filename().string() << ": "
                                                  << wrong << ": " << finding.message);
        if (finding.kind == Kind::pass) continue;
        CHECK_MESSAGE(!finding.remedy.empty(), finding.rule);
        CHECK_MESSAGE(!finding.message.empty(), finding.rule);
      }
      for (const char* word : {"text", "lines"}) {
        const std::string text = written(Command::check, word, &run, rulesets);
        CHECK_MESSAGE(!holds(text, "wanted none"), path.filename().string());
        CHECK_MESSAGE(!holds(text, "wanted at most"), path.filename().string());
      }
    }
  }
  CHECK(said > 10'000);
}
