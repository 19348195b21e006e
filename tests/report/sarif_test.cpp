// What SARIF says beyond what its schema asks for.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include <algorithm>
#include <map>
#include <set>

#include <sudsmark/baseline.h>
#include <sudsmark/fixes.h>
#include <sudsmark/report.h>

#include "estuary.h"
#include "written.h"

namespace {

using namespace sudsmark;
using namespace sudsmark::testing;
using nlohmann::json;

json log_of(const RunResult& run, const Rulesets& rulesets, bool verbose = false) {
  return json::parse(
      written(Command::check, "sarif", &run, rulesets, {verbose, false, false}))["runs"][0];
}

const json& result(const json& log, const std::string& rule) {
  for (const json& one : log["results"]) {
    if (one["ruleId"] == rule) return one;
  }
  FAIL("no result of " << rule);
  return log;
}

/// Whether the table of rules has the rule of a result, once.
bool is_listed(const json& log, const json& one) {
  const json& rules = log["tool"]["driver"]["rules"];
  return std::count_if(rules.begin(), rules.end(),
                       [&](const json& rule) { return rule["id"] == one["ruleId"]; }) == 1;
}

}  // namespace

TEST_CASE("results point to their rules, and rules tell what to do") {
  const Rulesets rulesets = estuary_rulesets();
  const json log = log_of(estuary(rulesets), rulesets, true);
  const json& rules = log["tool"]["driver"]["rules"];
  for (const json& one : log["results"]) {
    CHECK(is_listed(log, one));
    CHECK(one.contains("kind"));
    // the format: a level only where the kind is `fail`
    if (one["kind"] != "fail") CHECK(one["level"] == "none");
    const bool undecided = one["kind"] == "review" || one["kind"] == "open";
    CHECK(one["properties"].contains("level") == undecided);
    CHECK_FALSE(one["message"]["text"].get<std::string>().empty());
  }
  for (const json& rule : rules) {
    CHECK_FALSE(rule["help"]["text"].get<std::string>().empty());
    CHECK_FALSE(rule["help"]["markdown"].get<std::string>().empty());
    CHECK(rule["helpUri"] == "urn:sudsmark:rule:" + rule["id"].get<std::string>());
    CHECK_FALSE(rule["name"].get<std::string>().empty());
    CHECK(rule["defaultConfiguration"].contains("level"));
  }
}

TEST_CASE("a log tells what it is of, and carries the reminder once") {
  const Rulesets rulesets = estuary_rulesets();
  const json log = log_of(estuary(rulesets), rulesets);
  CHECK(log["automationDetails"]["id"] == "sudsmark/check/");
  const json& driver = log["tool"]["driver"];
  CHECK(driver["informationUri"] == "urn:sudsmark");
  CHECK(driver["fullDescription"]["text"].get<std::string>().find("not a safety assessment") !=
        std::string::npos);
  // rules of which nothing was found are left out, and what is kept has no result
  CHECK(driver["rules"].size() <
        log_of(estuary(rulesets), rulesets, true)["tool"]["driver"]["rules"].size());
  for (const json& one : log["results"]) CHECK(one["kind"] != "pass");
}

TEST_CASE("an allow is a suppression with its reason") {
  const Rulesets rulesets = estuary_rulesets();
  const json log = log_of(estuary(rulesets), rulesets);
  const json& allowed = result(log, "oil-is-fresh");
  REQUIRE(allowed["suppressions"].size() == 1);
  CHECK(allowed["suppressions"][0]["justification"] == "sold \"fresh\", notebook p. 3");
  CHECK(allowed["suppressions"][0]["kind"] == "inSource");
}

TEST_CASE("regions are counted in code points") {
  const Rulesets rulesets = estuary_rulesets();
  std::string text = file_contents(golden("estuary.formula"));
  // a comment does not move a column, a name of two bytes a letter does so once
  text.replace(text.find("\"Tide & Time\""), 13, "\"Tid\u00e9 & Tim\u00e9\"");
  text.replace(text.find("\"Tide & Time\""), 13, "\"Tid\u00e9 & Tim\u00e9\"");
  const RunResult run = checked("estuary.formula", text, rulesets);
  REQUIRE(run.problems.empty());
  const json log = log_of(run, rulesets);
  CHECK(log["columnKind"] == "unicodeCodePoints");
  const json& region =
      result(log, "scent-of-the-certificate")["locations"][0]["physicalLocation"]["region"];
  // 1.2 % and the name begin in column 3; the line has 26 code points
  CHECK(region["startColumn"] == 3);
  CHECK(region["endColumn"] == 27);
}

TEST_CASE("a law has a taxonomy, and its findings name their entry") {
  const Rulesets rulesets = estuary_rulesets();
  const json log = log_of(estuary(rulesets), rulesets);
  REQUIRE(log["taxonomies"].size() == 1);
  const json& taxa = log["taxonomies"][0]["taxa"];
  const json& found = result(log, "restricted-by-the-act")["taxa"][0];
  CHECK(found["id"] == "GB: Annex III 84");
  CHECK(std::count(taxa.begin(), taxa.end(), json{{"id", found["id"]}}) == 1);
  CHECK(found["toolComponent"]["name"] == "law");
  CHECK(log["tool"]["driver"]["supportedTaxonomies"][0]["name"] == "law");
}

TEST_CASE("a misspelt ingredient comes with its fix") {
  const Rulesets rulesets = estuary_rulesets(false);
  const std::string list =
      "Sodium Bicarbonate, Potassium Bitartrate, Zea Mays Starch, Glycerine, Helianthus Annuus "
      "Seed Oil, Parfum, Polysorbate 80, Linalool, CI 42090";
  const std::string text =
      file_contents(golden("estuary.formula")) + "\nlabel\n  ingredients \"" + list + "\"\n";
  const RunResult run = checked("estuary.formula", text, rulesets);
  REQUIRE(run.problems.empty());
  const json log = log_of(run, rulesets);
  const json& misspelt = result(log, "label-ingredient-misspelt");
  REQUIRE(misspelt["fixes"].size() == 1);
  const json& change = misspelt["fixes"][0]["artifactChanges"][0]["replacements"][0];
  CHECK(change["insertedContent"]["text"] == "Glycerin");
  // "  ingredients " and a quote, then the list up to the word
  const auto column = 16 + list.find("Glycerine");
  CHECK(change["deletedRegion"]["startColumn"] == column);
  CHECK(change["deletedRegion"]["endColumn"] == column + 9);
}

TEST_CASE("a rule of labels has its place in the list of rules") {
  const Rulesets rulesets = estuary_rulesets(false);
  const RunResult run = checked(
      "estuary.formula",
      file_contents(golden("estuary.formula")) + "\nlabel\n  ingredients \"Zea Mays Starch\"\n",
      rulesets);
  const json log = log_of(run, rulesets);
  const json& missing = result(log, "label-ingredient-missing");
  CHECK(is_listed(log, missing));
}

TEST_CASE("a word that is only misspelt is a result with its fix") {
  const Rulesets rulesets = Rulesets::built_in();
  const std::string text = "formula \"Caf\u00e9\"\n  product bubble bar\n  batch 0,5 Kg\n";
  const json log = log_of(checked("a.formula", text, rulesets), rulesets);
  const json& found = result(log, "spelling");
  CHECK(is_listed(log, found));
  CHECK(found["kind"] == "fail");
  CHECK(found["level"] == "error");
  CHECK(found["message"]["text"] == "'0,5' has a decimal comma; write 0.5");
  const json& change = found["fixes"][0]["artifactChanges"][0]["replacements"][0];
  CHECK(change["insertedContent"]["text"] == "0.5");
  CHECK(change["deletedRegion"] ==
        json{{"startLine", 3}, {"startColumn", 9}, {"endLine", 3}, {"endColumn", 12}});
  // what nobody can tell by its spelling brings none
  const json other =
      log_of(checked("b.formula", "formula \"B\"\n  batch 2 cups\n", rulesets), rulesets);
  for (const json& one : other["results"]) CHECK(one["ruleId"] != "spelling");
  CHECK(other["invocations"][0]["toolExecutionNotifications"].size() > 0);
}

TEST_CASE("what mends a finding is a fix, an edit a replacement") {
  const Rulesets rulesets = estuary_rulesets();
  const RunResult run = estuary(rulesets);
  const std::string rule = "scent-of-the-certificate";
  Finding mended;
  mended.rule = rule;
  for (const Finding& finding : run.formulas.front().findings) {
    if (finding.rule == rule) mended.subject = finding.subject;
  }
  Fixes fixes;
  fixes.of[run.formulas.front().file] = {
      {"set \"{it}\" to 1 %", {{14, 3, 14, 8, "1 %"}, {15, 1, 16, 1, ""}}, {mended}}};
  ReportOptions look;
  look.fixes = &fixes;
  const json log = json::parse(written(Command::check, "sarif", &run, rulesets, look))["runs"][0];
  for (const json& one : log["results"]) CHECK(one.contains("fixes") == (one["ruleId"] == rule));
  REQUIRE(result(log, rule)["fixes"].size() == 1);
  const json& fix = result(log, rule)["fixes"][0];
  CHECK(fix["description"]["text"] == "set \"{{it}}\" to 1 %");
  const json& change = fix["artifactChanges"][0];
  CHECK(change["artifactLocation"]["uri"] == run.formulas.front().file);
  REQUIRE(change["replacements"].size() == 2);
  CHECK(change["replacements"][0]["insertedContent"]["text"] == "1 %");
  CHECK(change["replacements"][1]["deletedRegion"] ==
        json{{"startLine", 15}, {"startColumn", 1}, {"endLine", 16}, {"endColumn", 1}});
}

TEST_CASE("fingerprints stay when lines move, comments change or files are moved about") {
  const Rulesets rulesets = estuary_rulesets();
  const auto prints = [&](const std::string& path, const std::string& text) {
    std::multiset<std::string> out;
    const RunResult run = checked(path, text, rulesets);
    REQUIRE(run.formulas.size() == 1);
    const json log = log_of(run, rulesets);
    for (const json& one : log["results"]) {
      out.insert(one["partialFingerprints"]["sudsmarkFinding/v2"].get<std::string>());
    }
    return out;
  };
  const std::string text = file_contents(golden("estuary.formula"));
  const auto before = prints("estuary.formula", text);
  CHECK(before.size() > 5);
  CHECK(before.size() == std::set<std::string>(before.begin(), before.end()).size());
  std::string moved = "# one more line\n\n" + text;
  moved.insert(moved.find("\nphase"), "\n\n# and another");
  const std::size_t line = moved.find('\n', moved.find("2.5 - 4 %"));
  moved.insert(line, "   # what it is for");
  CHECK(prints("elsewhere/estuary.formula", moved) == before);
  std::string changed = text;
  changed.replace(changed.find("2.5 - 4 %"), 9, "2.5 - 6 %");
  // an amount that makes it better or worse leaves it the same finding
  CHECK(prints("estuary.formula", changed) == before);
  // misspelt words too
  const auto spelling = [&](const std::string& of) {
    return result(log_of(checked("a.formula", of, rulesets), rulesets),
                  "spelling")["partialFingerprints"];
  };
  CHECK(spelling("formula \"A\"\n  batch 0,5 kg\n") ==
        spelling("\n\nformula \"A\"\n  batch   0,5 kg # new\n"));
}

TEST_CASE("results of a baseline are new, unchanged or absent") {
  const Rulesets rulesets = estuary_rulesets();
  std::string text = file_contents(golden("estuary.formula"));
  text.replace(text.find("2.5 - 4 %"), 9, "2.5 - 5 %");
  const auto marked = with_baseline(checked("estuary.formula", "\n" + text, rulesets),
                                    file_contents(golden("estuary.baseline.json")));
  REQUIRE(marked);
  const RunResult& run = *marked;
  const json log = log_of(run, rulesets);
  std::map<std::string, int> states;
  for (const json& one : log["results"]) {
    if (one.contains("suppressions")) continue;  // what is allowed is in no baseline
    ++states[one["baselineState"].get<std::string>()];
    CHECK((one["baselineState"] == "unchanged") == (one["ruleId"] != "glycerin-window"));
  }
  CHECK(states["new"] == 1);
  CHECK(states["absent"] == 0);
  CHECK(states["unchanged"] > 3);
}

TEST_CASE("what could not be read is a notification") {
  const Rulesets rulesets = estuary_rulesets();
  const RunResult run = checked("a.formula", "formula \"A\"\n  batch 0,5 kg\n", rulesets);
  const json log = log_of(run, rulesets);
  const json& invocation = log["invocations"][0];
  CHECK(invocation["executionSuccessful"] == false);
  const json& first = invocation["toolExecutionNotifications"][0];
  CHECK(first["level"] == "error");
  CHECK(first["locations"][0]["physicalLocation"]["artifactLocation"]["uri"] == "a.formula");
}
