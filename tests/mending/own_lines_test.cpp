// Answers on the maker's own lines: what stays stands as it stood, and the text comes to the same.
#include <doctest/doctest.h>

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include <sudsmark/fixes.h>

#include "case_files.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

/// Where a line and a column (in code points) stand in a text.
std::size_t offset(const std::string& text, std::uint32_t line, std::uint32_t column) {
  std::size_t at = 0;
  while (--line > 0) at = text.find('\n', at) + 1;
  const auto goes_on = [&] { return (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U; };
  while (--column > 0) {
    do ++at;
    while (at < text.size() && goes_on());
  }
  return at;
}

std::string edited(std::string text, const std::vector<TextEdit>& edits) {
  for (auto one = edits.rbegin(); one != edits.rend(); ++one) {
    const std::size_t begin = offset(text, one->line, one->column);
    text.replace(begin, offset(text, one->end_line, one->end_column) - begin, one->text);
  }
  return text;
}

CheckOptions on_a_day() {
  CheckOptions options;
  options.on = std::chrono::year_month_day{std::chrono::year(2026), std::chrono::November,
                                           std::chrono::day(25)};
  options.particulars = true;
  return options;
}

std::vector<Fix> fixes(const std::string& text, const Rulesets& rulesets,
                       const CheckOptions& options = on_a_day()) {
  auto found = fixes_of({"slip.formula", text}, rulesets, options, Level::warning);
  for (const Problem& problem : found.problems) FAIL(problem.message);
  REQUIRE(found);
  return std::move(*found);
}

/// By one rule of the house, with what mends it.
Rulesets ruled(const std::string& expect, const std::string& mends) {
  const auto out = Rulesets::built_in().with(
      {{"house.yaml",
        "subject: House rules\nauthority: craft\n"
        "sources:\n  - { id: house, kind: common practice, title: the house }\nrules:\n"
        "  - id: held\n    title: held\n    expect: " +
            expect +
            "\n    otherwise: warning\n    message: \"not so\"\n    why: So we do.\n"
            "    remedy: Other amounts.\n    mends: [" +
            mends + "]\n    sources: [house]\n"}},
      true);
  for (const Problem& problem : out.problems) FAIL(problem.message);
  return *out;
}

/// The text with the first fix.
std::string mended(const std::string& text, const Rulesets& rulesets) {
  const std::vector<Fix> found = fixes(text, rulesets);
  REQUIRE_FALSE(found.empty());
  return edited(text, found.front().edits);
}

const std::string head = "formula \"Slip\"  # of the harbour\n  product bubble bar\n";

}  // namespace

TEST_CASE("an amount changes where it stands, and columns and remarks stay") {
  const std::string text = head +
                           "phase \"all\"\n  q.s.      sodium bicarbonate\n"
                           "  4 %       \"Caf\u00e9\"   # too much?\n"
                           "fragrance \"Caf\u00e9\"\n  limit 6 %\n  category 9\n";
  const std::string out = mended(text, ruled("scent <= 3 %", "{ lower: scent }"));
  const std::size_t amount = text.find("4 %");
  CHECK(out.size() == text.size());
  CHECK(out.substr(0, amount) == text.substr(0, amount));
  CHECK(out.substr(amount + 10) == text.substr(amount + 10));
  CHECK(out != text);
}

TEST_CASE("without q.s. the line that takes the rest is written out") {
  const std::string text = head + "phase \"all\"\n  90 % sodium bicarbonate\n  10 % of kaolin\n";
  CHECK(mended(text, ruled("supplied(clay) <= 4 %", "{ lower: clay }")) ==
        head + "phase \"all\"\n  96.2 % sodium bicarbonate\n  3.8 % of kaolin\n");
}

TEST_CASE("a line goes, and another comes in below its phase") {
  const std::string text =
      head + "phase \"all\"\n  q.s. sodium bicarbonate\n  4 % talc  # from the old book\n";
  CHECK(mended(text, ruled("not holds(talc)", "{ lower: talc }")) ==
        head + "phase \"all\"\n  q.s. sodium bicarbonate\n");
  const std::string dry = head + "phase \"all\"\n  q.s.  sodium bicarbonate\n  2 %   SLSA";
  const std::string out = mended(dry, ruled("supplied(starch) >= 5 %", "{ add: Corn starch }"));
  CHECK(out.starts_with(dry + "\n  "));
  CHECK(out.find("Corn starch") != std::string::npos);
}

TEST_CASE("what its own lines cannot say is left to a tweak") {
  const Rulesets rulesets = ruled("supplied(clay) <= 4 %", "{ lower: clay }");
  CheckOptions options = on_a_day();
  const std::string lines = "phase \"all\"\n  90 % sodium bicarbonate\n  10 % kaolin\n";
  options.read = [&](const std::string& path) -> std::optional<std::string> {
    if (path == "base.formula") return head + lines;
    return std::nullopt;
  };
  CHECK(fixes("tweak \"Other\" of \"base.formula\"\n  piece 80 g\n", rulesets, options).empty());
  options.batch = 500;
  CHECK(fixes(head + "  batch 1 kg\n" + lines, rulesets, options).empty());
}

TEST_CASE("faulty formulas: what is mended is mended in their own text, and nothing new breaks") {
  const Rulesets rulesets = Rulesets::built_in();
  std::size_t said = 0;
  std::size_t number = 0;
  for (const auto& path : case_files("fixtures/faulty", ".formula")) {
    if (number++ % 4 != 0) continue;  // the others are alike
    const std::string text = file_contents(path);
    const CheckOptions options = on_a_day();
    for (const Fix& fix : fixes(text, rulesets, options)) {
      CHECK_MESSAGE(!fix.mends.empty(), path.string());
      CHECK_FALSE(fix.words.empty());
      ++said;
      const RunResult run = check({"slip.formula", edited(text, fix.edits)}, rulesets, options);
      REQUIRE_MESSAGE(run.formulas.size() == 1, path.string());
      for (const Finding& finding : run.formulas.front().findings) {
        const bool broken =
            finding.kind == Kind::fail && !finding.allowed && finding.level >= Level::warning;
        const bool meant = std::any_of(fix.mends.begin(), fix.mends.end(), [&](const auto& one) {
          return one.rule == finding.rule && one.subject == finding.subject;
        });
        CHECK_MESSAGE(!(broken && meant), path.string(), ": ", fix.words);
      }
    }
  }
  CHECK(said > 20);
}
