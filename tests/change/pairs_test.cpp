// Rules over a tweak and its base in a comparison: what fails is worse, the edit is named, and what
// the base changed of a base of its own is not told again.
#include <doctest/doctest.h>

#include <map>
#include <string>
#include <vector>

#include <sudsmark/compare.h>

using namespace sudsmark;

namespace {

const std::string marsh =
    "formula \"Marsh\"\n  product bubble bar\n  batch 3 kg\n  piece 100 g\n"
    "  bath 1/2 piece in 120 l at 38 C\n  water medium\n  forming hand moulded\n"
    "phase \"all\"\n  q.s. sodium bicarbonate\n  12 % cream of tartar\n  24 % SLSA\n"
    "  6 % corn starch\n  6 % glycerin\n  5 % cocamidopropyl betaine\n  2 % polysorbate 80\n"
    "  2 % rice bran oil\n";

const std::string unsaid =
    "formula \"Unsaid\"\n  product bubble bar\nphase \"all\"\n  q.s. sodium bicarbonate\n"
    "  10 - 16 % cream of tartar\n  20 - 28 % SLSA\n  1 - 3 % rice bran oil\n"
    "  0.2 % blue 1 lake\n  2 % Secret\n  1 % polysorbate 80\nfragrance \"Secret\"\n"
    "  1 - 2 % linalool\n";

using Files = std::map<std::string, std::string>;

CheckOptions options(const Files& files) {
  CheckOptions out;
  out.on = std::chrono::year(2026) / 11 / 25;
  out.read = [files](const std::string& path) -> std::optional<std::string> {
    const auto found = files.find(path);
    return found == files.end() ? std::nullopt : std::optional(found->second);
  };
  return out;
}

Comparison compared(const Files& files, const std::string& from, const std::string& to) {
  auto comparison = compare({from, files.at(from), false}, {to, files.at(to), false},
                            Rulesets::built_in(), options(files));
  for (const Problem& problem : comparison.problems) MESSAGE(problem.message);
  REQUIRE(comparison);
  return std::move(*comparison);
}

const VerdictChange* change_of(const Comparison& comparison, const std::string& rule) {
  for (const VerdictChange& change : comparison.verdicts) {
    if (change.rule == rule) return &change;
  }
  return nullptr;
}

std::string tweak(const std::string& edits, const std::string& of = "marsh.formula") {
  return "tweak \"Other\" of \"" + of + "\"\n" + edits;
}

}  // namespace

TEST_CASE("what a pair rule finds is worse, and its edit is named among innocent ones") {
  struct Guilty {
    std::string rule;
    std::string edit;
    std::string words;
  };
  const std::vector<Guilty> all{
      {"required-hlb-moved", "swap rice bran oil for castor oil",
       "swap rice bran oil for castor oil"},
      {"surfactant-swapped-by-grams", "swap SLSA for sodium coco-sulfate",
       "swap SLSA for sodium coco-sulfate"},
      {"batch-scaled-up", "scale batch to 30 kg", "scale batch to 30 kg"},
      {"dose-of-a-bath-raised", "piece 180 g", "piece 180 g"},
      {"quick-acid-for-tartar", "swap cream of tartar for citric acid",
       "swap cream of tartar for citric acid"},
      {"butter-for-oil", "swap rice bran oil for shea butter",
       "swap rice bran oil for shea butter"},
  };
  for (const Guilty& one : all) {
    const Files files{{"marsh.formula", marsh},
                      {"other.formula", tweak("  add 0.4 % kaolin\n  " + one.edit +
                                              "\n  set glycerin to 5.8 %\n  users adults\n")}};
    const Comparison comparison = compared(files, "marsh.formula", "other.formula");
    CAPTURE(one.rule);
    const VerdictChange* change = change_of(comparison, one.rule);
    REQUIRE(change != nullptr);
    CHECK(change->direction == Direction::worse);
    CHECK(!change->before);
    REQUIRE(change->after);
    CHECK(change->after->kind == Kind::fail);
    REQUIRE(change->causes.size() == 1);
    REQUIRE(change->causes.front().size() == 1);
    CHECK(comparison.edits[change->causes.front().front()].words == one.words);
  }
}

TEST_CASE("two formulas in full are held against each other as well") {
  std::string other = marsh;
  other.replace(other.find("rice bran oil"), 13, "castor oil");
  other.replace(other.find("6 % glycerin"), 12, "5 % glycerin");
  const Files files{{"marsh.formula", marsh}, {"other.formula", other}};
  const Comparison comparison = compared(files, "marsh.formula", "other.formula");
  const VerdictChange* change = change_of(comparison, "required-hlb-moved");
  REQUIRE(change != nullptr);
  REQUIRE(change->causes.size() == 1);
  REQUIRE(change->causes.front().size() == 1);
  CHECK(comparison.edits[change->causes.front().front()].words.find("castor oil") !=
        std::string::npos);
  // the other way round, castor oil was there and rice bran oil came
  CHECK(change_of(compared(files, "other.formula", "marsh.formula"), "required-hlb-moved") !=
        nullptr);
}

TEST_CASE("two edits that only together move what a pair rule looks at are both named") {
  const Files files{{"marsh.formula", marsh},
                    {"other.formula", tweak("  piece 130 g\n  set glycerin to 5.8 %\n"
                                            "  bath 0.65 piece in 120 l at 38 C\n")}};
  const Comparison comparison = compared(files, "marsh.formula", "other.formula");
  const VerdictChange* change = change_of(comparison, "dose-of-a-bath-raised");
  REQUIRE(change != nullptr);
  REQUIRE(change->causes.size() == 1);
  CHECK(change->causes.front().size() == 2);
}

TEST_CASE("a formula beside itself: nothing changed, whatever it does not say") {
  for (const std::string& formula : {marsh, unsaid}) {
    const Files files{{"a.formula", formula}};
    CHECK(compared(files, "a.formula", "a.formula").same());
  }
}

TEST_CASE("what the base changed of its own base is no part of the comparison") {
  const Files files{
      {"marsh.formula", marsh},
      {"castor.formula", tweak("  swap rice bran oil for castor oil\n")},
      {"more.formula", tweak("  set glycerin to 5.8 %\n", "castor.formula")},
  };
  CHECK(change_of(compared(files, "castor.formula", "more.formula"), "required-hlb-moved") ==
        nullptr);
  RunResult run = check({"more.formula", files.at("more.formula"), false}, Rulesets::built_in(),
                        options(files));
  run.add(check({"castor.formula", files.at("castor.formula"), false}, Rulesets::built_in(),
                options(files)));
  REQUIRE(run.formulas.size() == 2);
  const auto castor_found = [](const FormulaResult& formula) {
    for (const Finding& finding : formula.findings) {
      if (finding.rule == "required-hlb-moved" && finding.kind == Kind::fail) return true;
    }
    return false;
  };
  // a check asks a tweak beside its own base, which is the nearest
  CHECK(!castor_found(run.formulas[0]));
  CHECK(castor_found(run.formulas[1]));
}

TEST_CASE("a base that makes nothing by itself is said so, and its tweak is checked") {
  std::string broken = marsh;
  broken.replace(broken.find("6 % corn starch"), 15, "6 % plum stones");
  const Files files{{"marsh.formula", broken},
                    {"other.formula", tweak("  swap plum stones for corn starch\n")}};
  RunResult run = check({"other.formula", files.at("other.formula"), false}, Rulesets::built_in(),
                        options(files));
  CHECK(run.problems.empty());
  REQUIRE(run.formulas.size() == 1);
  REQUIRE(run.formulas.front().notes.size() == 1);
  const Problem& note = run.formulas.front().notes.front();
  CHECK(note.file == "other.formula");
  CHECK(note.line == 1);
  CHECK(
      note.message.starts_with("what it changes is not looked at, since its base does not stand "
                               "by itself: 'plum stones' is not a material"));
}
