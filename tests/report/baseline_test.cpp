#include <sudsmark/baseline.h>
#include <sudsmark/report.h>

#include "estuary.h"
#include "front/fingerprint.h"

namespace {

using namespace sudsmark;
using namespace sudsmark::testing;

Finding finding(const std::string& rule, Kind kind, Level level, const std::string& line) {
  Finding out;
  out.rule = rule;
  out.kind = kind;
  out.level = level;
  out.message = rule + " is told";
  out.line = 1;
  out.line_text = line;
  return out;
}

RunResult run_of(std::vector<Finding> findings, const std::string& file = "a.formula") {
  front::add_fingerprints(findings);
  RunResult run;
  FormulaResult formula;
  formula.file = file;
  formula.findings = std::move(findings);
  run.formulas.push_back(std::move(formula));
  return run;
}

std::vector<Standing> standings(const RunResult& run) {
  std::vector<Standing> out;
  for (const Finding& one : run.formulas.front().findings) out.push_back(one.standing);
  return out;
}

RunResult marked(const RunResult& run, const std::string& baseline) {
  const auto out = with_baseline(run, baseline);
  REQUIRE(out);
  return *out;
}

}  // namespace

TEST_CASE("a line is the same without its comment and its spacing") {
  CHECK(front::bare_line("  3 %\tkaolin   # white") == "3 % kaolin");
  CHECK(front::bare_line("3 % kaolin\r") == "3 % kaolin");
  CHECK(front::bare_line("\xEF\xBB\xBF"
                         "formula \"A # B\"  ") == "formula \"A # B\"");
  CHECK(front::bare_line(R"(allow x because "a \" # b" # c)") == R"(allow x because "a \" # b")");
  CHECK(front::bare_line("# all comment") == "");
}

TEST_CASE("a fingerprint does not hang on where the line stands, and hangs on what it says") {
  const auto print = [](const std::string& text) {
    std::vector<Finding> list{finding("too-wet", Kind::fail, Level::warning, text)};
    front::add_fingerprints(list);
    return list.front().fingerprint;
  };
  CHECK(print("3 % glycerin") == print("   3 %  glycerin  # more"));
  CHECK(print("3 % glycerin") == print("4.5 %  glycerin"));
  CHECK(print("3 % glycerin") != print("3 % sorbitol"));
  CHECK(print("3 % glycerin").size() == 16);
  std::vector<Finding> twins{finding("too-wet", Kind::fail, Level::warning, "3 % glycerin"),
                             finding("too-wet", Kind::fail, Level::warning, "3 % glycerin")};
  front::add_fingerprints(twins);
  CHECK(twins[0].fingerprint != twins[1].fingerprint);
  std::vector<Finding> kept{finding("too-wet", Kind::pass, Level::none, "3 % glycerin")};
  front::add_fingerprints(kept);
  CHECK(kept.front().fingerprint.empty());
}

TEST_CASE("only what is not in the baseline counts") {
  const RunResult before = run_of({finding("too-wet", Kind::fail, Level::warning, "3 % glycerin"),
                                   finding("too-dry", Kind::open, Level::note, "1 kg batch"),
                                   finding("no-scent", Kind::review, Level::error, "1 % Sea Fig")});
  const std::string baseline = baseline_text(before);
  const RunResult same = marked(before, baseline);
  CHECK(standings(same) ==
        std::vector<Standing>{Standing::unchanged, Standing::unchanged, Standing::unchanged});
  CHECK_FALSE(reaches(same, Level::note));
  CHECK(same.absent.empty());

  const RunResult changed =
      marked(run_of({finding("too-wet", Kind::fail, Level::warning, "4 % sorbitol"),
                     finding("too-dry", Kind::open, Level::note, "1 kg batch")}),
             baseline);
  CHECK(standings(changed) == std::vector<Standing>{Standing::fresh, Standing::unchanged});
  CHECK(reaches(changed, Level::warning));
  REQUIRE(changed.absent.size() == 2);
}

TEST_CASE("what weighs more than in the baseline is new") {
  const std::string baseline =
      baseline_text(run_of({finding("too-wet", Kind::review, Level::warning, "3 % glycerin"),
                            finding("too-dry", Kind::fail, Level::note, "1 kg batch"),
                            finding("no-scent", Kind::fail, Level::error, "1 % Sea Fig")}));
  const RunResult run =
      marked(run_of({finding("too-wet", Kind::fail, Level::warning, "3 % glycerin"),
                     finding("too-dry", Kind::fail, Level::warning, "1 kg batch"),
                     finding("no-scent", Kind::open, Level::warning, "1 % Sea Fig")}),
             baseline);
  CHECK(standings(run) ==
        std::vector<Standing>{Standing::fresh, Standing::fresh, Standing::better});
}

TEST_CASE("what lies further from its limit is new, and what is nearer is better") {
  const auto scent = [](double share) {
    Finding one = finding("too-strong", Kind::fail, Level::error, "3 % Sea Fig");
    one.measured = Figure{share, share, "%"};
    one.limit = Figure{std::nullopt, 2.4, "%"};
    return run_of({one});
  };
  const std::string baseline = baseline_text(scent(3));
  CHECK(standings(marked(scent(3), baseline)) == std::vector<Standing>{Standing::unchanged});
  const RunResult nearer = marked(scent(2.9), baseline);
  CHECK(standings(nearer) == std::vector<Standing>{Standing::better});
  CHECK_FALSE(reaches(nearer, Level::error));
  const RunResult further = marked(scent(3.1), baseline);
  CHECK(standings(further) == std::vector<Standing>{Standing::fresh});
  CHECK(reaches(further, Level::error));
}

TEST_CASE("paths are those from the folder of the baseline") {
  const auto found = [](const std::string& path) {
    return run_of({finding("x", Kind::fail, Level::error, "l")}, path);
  };
  const std::string baseline = baseline_text(found("bars/a.formula"), "bars/base.json");
  CHECK(baseline.find("\"file\":\"a.formula\"") != std::string::npos);
  const auto same = with_baseline(found("a.formula"), baseline, "base.json");
  REQUIRE(same);
  CHECK(standings(*same) == std::vector<Standing>{Standing::unchanged});
  CHECK(same.problems.empty());
}

TEST_CASE("a baseline that knows no file of the run says so, and marks all as new") {
  const auto found = [](const std::string& path) {
    return run_of({finding("x", Kind::fail, Level::error, "l")}, path);
  };
  const std::string baseline = baseline_text(found("bars/a.formula"), "base.json");
  const auto other = with_baseline(found("a.formula"), baseline, "base.json");
  REQUIRE(other);
  CHECK(standings(*other) == std::vector<Standing>{Standing::fresh});
  REQUIRE(other.problems.size() == 1);
  CHECK(other.problems.front().message.find("'bars/a.formula'") != std::string::npos);
  CHECK(with_baseline(run_of({}, "a.formula"), baseline, "base.json").problems.empty());
}

TEST_CASE("a baseline knows a file however its path is typed, and no other") {
  const std::string baseline =
      baseline_text(run_of({finding("x", Kind::fail, Level::error, "l")}, "./mixes//a.formula"));
  const RunResult same =
      marked(run_of({finding("x", Kind::fail, Level::error, "l")}, "mixes/a.formula"), baseline);
  CHECK(standings(same) == std::vector<Standing>{Standing::unchanged});
  const RunResult other =
      marked(run_of({finding("x", Kind::fail, Level::error, "l")}, "mixes/b.formula"), baseline);
  CHECK(standings(other) == std::vector<Standing>{Standing::fresh});
  CHECK(other.absent.empty());  // a.formula was not looked at
}

TEST_CASE("what is allowed is in no baseline") {
  Finding allowed = finding("x", Kind::fail, Level::error, "l");
  allowed.allowed = "tried";
  const RunResult run = run_of({allowed});
  CHECK(baseline_text(run).find("\"rule\"") == std::string::npos);
}

TEST_CASE("what is no baseline is refused, with a word of why") {
  for (const std::string text :
       {"", "{", "[]", "{\"baseline\": 2}", "{\"baseline\": 1, \"findings\": []}",
        "{\"baseline\": 2, \"findings\": [{}]}",
        "{\"baseline\": 2, \"findings\": [{\"file\": \"a\", \"rule\": \"b\", \"kind\": \"pass\", "
        "\"level\": \"error\", \"fingerprint\": \"0\"}]}",
        "{\"baseline\": 2, \"findings\": [{\"file\": \"a\", \"rule\": \"b\", \"kind\": \"fail\", "
        "\"level\": \"error\", \"line\": -1, \"fingerprint\": \"0\"}]}"}) {
    CAPTURE(text);
    const RunResult run = run_of({finding("x", Kind::fail, Level::error, "l")});
    const auto refused = with_baseline(run, text);
    CHECK_FALSE(refused);
    REQUIRE(refused.problems.size() == 1);
    CHECK_FALSE(refused.problems.front().message.empty());
  }
}

TEST_CASE("what somebody adds to a baseline is passed over, and what is none is told") {
  const RunResult run = run_of({finding("soft", Kind::fail, Level::warning, "3 % kaolin")});
  const std::string text = baseline_text(run);
  const auto with = [&text](const std::string& before, const std::string& after) {
    std::string out = text;
    return out.replace(out.find(before), before.size(), after);
  };
  const auto why = [&run](const std::string& baseline) {
    const auto out = with_baseline(run, baseline);
    return out.problems.empty() ? std::string() : out.problems.front().message;
  };
  for (const std::string& more : {
           with("{", R"({"by": {"findings": [1, {"a": 1}], "baseline": 9}, "list": [[], {}], )"),
           with("{\"file\"", R"({"more": [1, [2], {"rule": "x"}], "rule2": null, "file")"),
       }) {
    CAPTURE(more);
    CHECK(standings(marked(run, more)) == std::vector{Standing::unchanged});
  }
  CHECK(why(with("\"findings\": [", R"("findings": [7, )")) == "finding 1 of it is not whole");
  CHECK(why(with("\"findings\": [", R"("findings": [[{}], )")) == "finding 1 of it is not whole");
  CHECK(why(with("\"baseline\": 2", "\"baseline\": [2]")) == "it is a baseline of another version");
  CHECK(why(with("\"baseline\": 2", "\"basis\": 2")) == "it is no baseline of sudsmark");
  CHECK(why("[]") == "it is no baseline of sudsmark");
  CHECK(why("2") == "it is no baseline of sudsmark");
  CHECK(why("{\"baseline\": 2, \"findings\": [") == "it is no JSON");
  CHECK(why("{\"a\":" + std::string(5'000'000, '[')) == "its brackets stand more than 64 deep");
}
