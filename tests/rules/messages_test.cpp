// Every message of the rules room is shown by a test: by a file of `cases`, or by one of those here
// that take more than one file of rules, or a formula.
#include <doctest/doctest.h>

#include "messages_shown.h"
#include "proof/verified.h"
#include "rules/questions.h"
#include "rules/workbench.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

constexpr std::string_view one_rule =
    "    expect: oils <= 1 %\n    message: \"{oils}\"\n    otherwise: note\n";

std::string formula_with(std::string_view lines) {
  return "formula \"test\"\n product bubble bar\nphase \"all\"\n" + std::string(lines) +
         " q.s. bicarb\n";
}

std::string of_many(std::string_view head, std::string_view item, int count) {
  std::string text(head);
  for (int number = 0; number < count; ++number) {
    std::string one(item);
    one.replace(one.find('#'), 1, std::to_string(number));
    text += one;
  }
  return text;
}

/// What cannot be read in a whole layer.
std::string layer_lines(std::string_view below, std::string_view above) {
  Workbench bench(below);
  bench.add("mine.yaml", above);
  return bench.errors();
}

std::string built_in_lines() {
  return Workbench(rule_file(one_rule), true).errors();
}

std::string allow_lines() {
  Workbench bench(rule_file(one_rule));
  const blend::Blend blend = bench.mix(
      "formula \"test\"\n product bubble bar\n allow the-rul because \"so\"\nphase \"all\"\n"
      " 1 % sweet oil\n q.s. bicarb\n");
  text::Diagnostics found;
  rules::check_allows(bench.book.ruleset, blend, found);
  return printed(bench.sources, found);
}

/// What `verify` says of examples, each in the place of the rule.
std::string verify_lines() {
  const auto block = [](std::string_view key, std::string_view formula) {
    std::string out = "      " + std::string(key) + ":\n        - |\n          ";
    for (const char c : formula) out += c == '\n' ? std::string("\n          ") : std::string(1, c);
    return out + "\n";
  };
  const std::string faulty = rule_file(std::string(one_rule) + "    examples:\n" +
                                       block("passes", "formula \"e\"\n product nothing\n") +
                                       block("fails", formula_with(" 0.5 % sweet oil\n")));
  const std::string pair = rule_file(
      "    expect: oils <= base.oils\n    message: m\n    examples:\n      passes:\n"
      "        - base: |\n            formula \"e\"\n             product nothing\n"
      "          tweak: |\n            set bicarb 5 %\n");
  std::string out;
  for (const std::string& rules : {faulty, pair}) {
    Workbench bench(rules);
    REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
    for (const auto& finding : verify(bench).findings) {
      // a finding of an example has a sentence and no id
      for (const std::string_view id :
           {"example-unreadable", "base-unreadable", "example-wrong", "example-missing"}) {
        out += "1:1 " + std::string(id) + " " + finding.message + "\n";
      }
    }
  }
  return out;
}

/// What is said of exercises that nobody could set.
std::string training_lines() {
  std::string out;
  for (const char* const breakage :
       {"{ rule: no-such, cards: [No Such] }",
        "{ rule: no-such, add: '1 % kaolin', under: phase, cards: [No Such] }"}) {
    Workbench bench("subject: s\nauthority: craft\nbreakages:\n  - " + std::string(breakage) +
                    "\n");
    out += bench.errors();
  }
  return out;
}

/// What is said of too many rules over too many tasks.
std::string question_lines() {
  Workbench bench("subject: s\nauthority: craft\n" +
                  of_many("rules:\n",
                          "  - { id: r#, title: t, message: m, each: task, expect: 'task.mass <= 1 "
                          "kg' }\n",
                          501));
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  const blend::Blend blend =
      bench.mix(of_many("formula \"t\"\n product bubble bar\nphase \"all\"\n q.s. bicarb\n",
                        "task \"t#\"\n handles 1 kg bicarb\n takes 1 min\n", 400));
  text::Diagnostics found;
  rules::check_questions(bench.book.ruleset, blend, {}, found);
  text::Diagnostics none;
  std::vector<bool> chosen(bench.book.ruleset.rules.size(), true);
  chosen[0] = false;
  rules::check_questions(bench.book.ruleset, blend, chosen, none);
  CHECK(none.empty());
  return printed(bench.sources, found);
}

}  // namespace

TEST_CASE("every message of the rules room is shown") {
  std::string lines = expected_lines("tests/rules/cases");
  lines += layer_lines("measures:\n  fat: oils\n", "measures:\n  fat: mass(oil)\n");
  lines += layer_lines(
      rule_file("    each: row of scent-limits\n    expect: share <= limit\n    message: m\n"),
      "tables:\n  - id: scent-limits\n    title: Mine\n    columns:\n"
      "      - { name: most, unit: \"%\" }\n    rows:\n"
      "      - { name: B, substance: Borax, most: 1 %, source: book }\n");
  lines += built_in_lines();
  lines += allow_lines();
  lines += verify_lines();
  lines += question_lines();
  lines += training_lines();
  lines += Workbench(of_many("measures:\n", "  m#: oils\n", 2'001)).errors();
  {
    Workbench bench("measures:\n  fat: oils\n");
    const text::FileIndex first = bench.sources.add("a.yaml", "measures:\n  more: oils\n");
    const text::FileIndex second = bench.sources.add("b.yaml", "measures:\n  more: scent\n");
    const std::vector<text::FileIndex> files{first, second};
    bench.book =
        rules::add_layer(std::move(bench.book), bench.sources, files, false, bench.diagnostics);
    lines += bench.errors();
  }
  check_all_shown(source_dir() / "src/rules/messages.h", lines);
}

TEST_CASE("a walk over messages finds one that nobody shows") {
  const Declared message{"some", "wrong-kind", "expected {0}, found {1}"};
  CHECK(shows("1:2 wrong-kind expected a list, found a text", message));
  CHECK_FALSE(shows("1:2 wrong-kind expected a list", message));
  CHECK_FALSE(shows("1:2 other-kind expected a list, found a text", message));
  const Declared whole{"whole", "empty", "nothing here"};
  CHECK(shows("1:1 empty nothing here; see 2:2", whole));
  CHECK_FALSE(shows("1:1 empty nothing here at all", whole));
}
