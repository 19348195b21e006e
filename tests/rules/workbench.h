// A workbench for tests of rules: a little catalogue, rules out of YAML, formulas out of text.
#pragma once

#include <doctest/doctest.h>

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "case_files.h"
#include "formula/assemble.h"
#include "rules/check.h"
#include "rules/layer.h"

namespace sudsmark::testing {

inline std::string rules_prelude() {
  return file_contents(testing::source_dir() / "tests/rules/prelude.yaml");
}

/// Day of all checks that do not say another.
inline constexpr rules::Day test_day{std::chrono::year(2026), std::chrono::month(11),
                                     std::chrono::day(25)};

/// A rulebook of the prelude and some files of rules.
struct Workbench {
  text::Sources sources;
  text::Diagnostics diagnostics;
  rules::Rulebook book;

  explicit Workbench(std::string_view rules, bool built_in = false) {
    const text::FileIndex file = sources.add("rules.yaml", std::string(rules));
    const text::FileIndex prelude = sources.add("prelude.yaml", rules_prelude());
    const std::vector<text::FileIndex> files{file, prelude};
    book = rules::add_layer({}, sources, files, built_in, diagnostics);
  }

  [[nodiscard]] std::string errors() const { return printed(sources, diagnostics); }

  /// Adds a user's layer.
  void add(std::string_view path, std::string_view text) {
    const std::vector<text::FileIndex> files{sources.add(std::string(path), std::string(text))};
    book = rules::add_layer(std::move(book), sources, files, false, diagnostics);
  }

  [[nodiscard]] blend::Blend mix(std::string_view formula) {
    const text::FileIndex file = sources.add("test.formula", std::string(formula));
    text::Diagnostics found;
    const auto sheet = formula::assemble(sources, file, {}, found);
    REQUIRE_MESSAGE(sheet.has_value(), printed(sources, found));
    auto blend = blend::mix(*sheet, book.catalogue, found);
    REQUIRE_MESSAGE(blend.has_value(), printed(sources, found));
    return std::move(*blend);
  }
};

/// One file of rules around a rule's keys (each line indented by four blanks).
inline std::string rule_file(std::string_view keys, std::string_view head = "authority: craft\n") {
  return "subject: Tests\n" + std::string(head) +
         "rules:\n  - id: the-rule\n    title: The rule\n" + std::string(keys);
}

/// What one rule says of one formula: "fail warning 3:3 message" a line for each subject.
struct Asked {
  std::vector<rules::Verdict> verdicts;
  blend::MissingTable missing;
  std::string text;
};

inline Asked ask(Workbench& bench, const blend::Blend& blend,
                 rules::EvaluateOptions options = {test_day, {}, {}, true}) {
  Asked asked;
  asked.verdicts = rules::evaluate(bench.book.ruleset, blend, asked.missing, options);
  for (const rules::Verdict& verdict : asked.verdicts) {
    asked.text += sudsmark::kind_word(verdict.kind);
    if (verdict.kind != sudsmark::Kind::not_applicable) {
      asked.text += ' ';
      asked.text += sudsmark::level_word(verdict.level);
      asked.text += " line " + std::to_string(bench.sources.position(verdict.place).line) + ": ";
      asked.text += verdict.message;
    } else if (!verdict.subject.empty()) {
      asked.text += " '" + std::string(verdict.subject) + "'";
    }
    if (verdict.allowed) asked.text += " [allowed: " + std::string(verdict.allowed->because) + "]";
    asked.text += '\n';
  }
  return asked;
}

/// What a rule of these keys says of a formula.
inline std::string verdict_of(std::string_view keys, std::string_view formula,
                              std::string_view head = "authority: craft\n") {
  Workbench bench(rule_file(keys, head));
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  const blend::Blend blend = bench.mix(formula);
  return ask(bench, blend).text;
}

}  // namespace sudsmark::testing
