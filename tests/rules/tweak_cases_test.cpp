// Forty-eight tweaks that go wrong, each with the rule that says so: the base is quiet about it and
// the tweak is not. And harmless tweaks of the same bases, which no rule over both has a word for.
#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include <sudsmark/check.h>

#include "front/parts.h"

namespace {

using namespace sudsmark;

const std::string scents =
    "fragrance \"Tide Line\"\n  limit 7.4 %\n  category 9\n  5 - 7 % linalool\n"
    "  2 - 3 % limonene\n  undeclared none\n  flash point 74 C\n"
    "fragrance \"Custard Tide\"\n  limit 2.4 %\n  category 9\n  8 - 10 % vanillin\n"
    "  undeclared none\n";

std::string workshop(const std::string& scale = "0.01 g to 500 g") {
  return "workshop \"net loft\"\n  room 34 m3\n  air changes 1.5 per hour\n  humidity 38 - 46 %\n"
         "  temperature 17 - 20 C\n  scale " +
         scale + "\n  scale 1 g to 15 kg\n  mask FFP2\n  extraction no\n" +
         "workshop \"boat shed\"\n  room 34 m3\n  humidity 60 - 66 %\n  temperature 34 - 38 C\n"
         "  scale 0.01 g to 500 g\n  scale 1 g to 15 kg\n  mask FFP2\n";
}

std::string head(const std::string& product, const std::string& more) {
  return "formula \"Base\"\n  product " + product +
         "\n  market GB, EU\n  batch 3 kg\n  piece 100 g\n  water medium\n  made in \"net "
         "loft\"\n" +
         more;
}

/// A kneaded bubble bar.
std::string bar(const std::string& more = "", const std::string& statements = "  users adults\n") {
  return head("bubble bar",
              "  forming hand moulded\n  bath 1/2 piece in 120 l at 38 C\n" + statements) +
         "phase \"dry\"\n  q.s. sodium bicarbonate\n  14 % cream of tartar\n  26 % SLSA\n"
         "  6 % corn starch\nphase \"binder\"\n  5.5 % glycerin\n  6 % cocamidopropyl betaine\n"
         "  1.5 % polysorbate 80\n  1 % rice bran oil\n  1.5 % \"Tide Line\"\n  0.1 % "
         "tocopherol\n" +
         more + scents + workshop();
}

/// A pressed one with little in it.
std::string puck(const std::string& more = "", const std::string& scale = "0.01 g to 500 g") {
  return head("bubble bar",
              "  forming pressed\n  bath 1 piece in 150 l at 38 C\n  users adults\n") +
         "phase \"dry\"\n  q.s. sodium bicarbonate\n  15 % cream of tartar\n  24 % SLSA\n"
         "  7 % corn starch\n  2.5 % glycerin\n" +
         more + scents + workshop(scale);
}

std::string fizzy(const std::string& more = "") {
  return head("bath fizzy",
              "  forming pressed\n  bath 1 piece in 150 l at 38 C\n  users adults\n") +
         "phase \"dry\"\n  q.s. sodium bicarbonate\n  28 % citric acid\n  4 % corn starch\n"
         "  1 % sweet almond oil\n  1 % polysorbate 80\n" +
         more + scents + workshop();
}

std::string hair(const std::string& isethionate = "48 %", const std::string& more = "") {
  return head("shampoo bar", "  users adults\n") + "phase \"bar\"\n  " + isethionate +
         " SCI\n  10 % sodium coco-sulfate\n  15 % cocamidopropyl betaine\n"
         "  6 % cetearyl alcohol\n  3 % stearic acid\n  3 % cocoa butter\n  1 % jojoba oil\n"
         "  0.5 % citric acid\n  1 % \"Tide Line\"\n"
         "  0.8 % phenoxyethanol and ethylhexylglycerin\n  q.s. kaolin\n" +
         more + scents + workshop();
}

struct Case {
  std::string id;    ///< T01 to T48
  std::string rule;  ///< that answers it; empty: the language refuses it
  Level level = Level::note;
  std::string base;
  std::string edits;       ///< of the tweak, with sections after them
  std::string words = "";  ///< of the refusal
};

std::vector<Case> cases() {
  constexpr Level note = Level::note;
  constexpr Level warning = Level::warning;
  constexpr Level error = Level::error;
  const std::string portions =
      "portion \"sea\", 60 %\n  1 g per kg blue 1 lake\nportion \"white\", 40 %\n"
      "  1 g per kg titanium dioxide\n";
  return {
      {"T01", "required-hlb-moved", note, bar(), "swap rice bran oil for castor oil\n"},
      {"T02", "butter-for-oil", warning, puck("  2 % olive oil\n  1.5 % polysorbate 80\n"),
       "swap olive oil for shea butter\n"},
      {"T03", "surfactant-swapped-by-grams", warning, bar(), "swap SLSA for sodium coco-sulfate\n"},
      {"T04", "liquid-foamer-came-in", warning, bar(),
       "set SLSA to 18 %\nset cocamidopropyl betaine to 14 %\n"},
      {"T05", "noodles-for-powder", warning, hair(),
       "swap SCI for \"our noodles\"\nmaterial \"our noodles\" like SCI noodles\n  active 62 %\n"},
      {"T06", "monohydrate-in-a-fizzy", warning, fizzy(),
       "swap citric acid for citric acid monohydrate\n"},
      {"T07", "acid-left-over", warning, fizzy(), "set citric acid to 45 %\n"},
      {"T08", "weak-fizz", note, fizzy(), "set citric acid to 15 %\n"},
      {"T09", "quick-acid-for-tartar", warning, bar(), "swap cream of tartar for citric acid\n"},
      {"T10", "tartar-for-quick-acid", warning, fizzy(),
       "swap citric acid for cream of tartar\nset cream of tartar to 14 %\n"},
      {"T11", "scent-over-limit", error, bar(), "set \"Tide Line\" to 8 %\n"},
      {"T12", "vanillin-browns", note, bar(), "swap \"Tide Line\" for \"Custard Tide\"\n"},
      {"T13", "batch-scaled-up", note, bar(), "scale batch to 20 kg\n"},
      {"T14", "weighing-below-the-scale", error, puck("  0.1 % blue 1 lake\n", "0.1 g to 500 g"),
       "scale batch to 200 g\n"},
      {"T15", "dose-of-a-bath-raised", warning, bar(), "piece 200 g\n"},
      {"T16", "crystal-water-in-a-fizzy", warning, fizzy(), "add 10 % epsom salt\n"},
      {"T17", "magnesium-chloride-in-a-fizzy", error, fizzy(), "add 3 % Dead Sea salt\n"},
      {"T18", "glycerol-in-a-humid-room", warning, bar(),
       "set glycerin to 9 %\nmade in \"boat shed\"\n"},
      {"T19", "watery-mist", warning, fizzy("  2 % \"isopropyl alcohol\"\n"),
       "swap \"isopropyl alcohol\" for \"isopropyl alcohol 70 %\"\n"},
      {"T20", "pieces-in-the-drain", warning, puck(), "add 3 % dried rose petals\n"},
      {"T21", "milk-in-it", warning, bar(), "add 5 % whole milk powder\n"},
      {"T22", "dye-for-lake", error, bar("  0.15 % blue 1 lake\n"),
       "swap blue 1 lake for blue 1 dye\n"},
      {"T23", "colour-without-emulsifier", warning, puck(), "add 1 % mica\n"},
      {"T24", "ultramarine-beside-acid", error, fizzy(), "add 0.2 % ultramarine\n"},
      {"T25", "emulsifier-too-fat-loving", warning, bar(), "swap polysorbate 80 for lecithin\n"},
      {"T26", "paraben-with-polysorbate", warning,
       puck("  0.2 % methylparaben\n  0.5 % polysorbate 80\n"), "set polysorbate 80 to 2.5 %\n"},
      {"T27", "cationic-in-a-foam-bath", warning, bar(), "add 3 % BTMS-50\n"},
      {"T28", "isethionate-in-a-wet-alkaline-mix", warning, hair(), "remove citric acid\n"},
      {"T29", "isethionate-above-what-was-tested", warning, hair(),
       "set SCI to 65 %\nset cocamidopropyl betaine to 5 %\n"},
      {"T30", "too-much-glucoside", warning, hair(),
       "swap cocamidopropyl betaine for decyl glucoside\n"},
      {"T31", "liquid-care-on-top", note, hair(), "add 1.5 % D-panthenol liquid\n"},
      {"T32", "starch-water-in-a-fizzy", note, fizzy(), "set corn starch to 15 %\n"},
      {"T33", "", error, bar(), "market GB, US\nadd 2 % corn flour\n", "'corn flour' can mean"},
      {"T34", "coconut-milk-and-casein", note, puck(), "add 3 % coconut milk powder\n"},
      {"T35", "pressed-citrus-oil", note, puck("  1 % polysorbate 80\n"), "add 1 % bergamot oil\n"},
      {"T36", "not-for-small-children", error, fizzy("  1 % peppermint oil\n"),
       "users children under 3\n"},
      {"T37", "antioxidant-that-is-none", warning,
       puck("  2 % hemp seed oil\n"
            "  1.5 % polysorbate 80\n  0.3 % tocopherol\n"),
       "swap tocopherol for tocopheryl acetate\n"},
      {"T38", "borax-in-it", note, fizzy(), "add 1 % borax\n"},
      {"T39", "soap-with-acid", error, fizzy(), "add 20 % soap noodles\n"},
      {"T40", "active-not-stated", warning, bar(),
       "swap SLSA for \"a foamer\"\nmaterial \"a foamer\"\n  role surfactant, anionic\n"
       "  form fine powder\n  hazards H315, H318\n"},
      {"T41", "starch-caps-in-the-press", warning, puck(),
       "set corn starch to 18 %\npiece 190 g\n"},
      {"T42", "fat-melts-in-the-room", warning, bar("  5 % cocoa butter\n"),
       "made in \"boat shed\"\n"},
      {"T43", "far-too-much-emulsifier", note, bar(), "set polysorbate 80 to 7 %\n"},
      {"T44", "fatty-acid-in-hard-water", note, bar(), "add 3 % stearic acid\nwater hard\n"},
      {"T45", "plant-colour-beside-base", warning, bar(), "add 1 % turmeric powder\n"},
      {"T46", "", error, bar(), "add 1 cup kaolin\n", "cup"},
      {"T47", "lake-dose-of-a-part", note, puck("  1 % polysorbate 80\n" + portions),
       "add 9 g per kg blue 1 lake to \"sea\"\n"},
      {"T48", "preservative-left-out", warning, hair(),
       "remove phenoxyethanol and ethylhexylglycerin\n"},
  };
}

/// Checks a tweak of some base, both as text.
RunResult checked(const std::string& base, const std::string& edits, const Rulesets& rulesets) {
  CheckOptions options;
  options.on = std::chrono::year(2026) / 11 / 25;
  options.read = [&](const std::string& path) {
    return path == "base.formula" ? std::optional(base) : std::nullopt;
  };
  RunResult run = check({"base.formula", base, false}, rulesets, options);
  if (!edits.empty()) {
    const std::string text = "tweak \"Tweak\" of \"base.formula\"\n" + edits;
    run.add(check({"tweak.formula", text, false}, rulesets, options));
  }
  return run;
}

bool says(const FormulaResult& result, const std::string& rule, Level level) {
  return std::any_of(result.findings.begin(), result.findings.end(), [&](const Finding& one) {
    return one.rule == rule && one.kind == Kind::fail && one.level == level;
  });
}

std::string told(const RunResult& run) {
  std::string out;
  for (const Problem& problem : run.problems) out += problem.message + "\n";
  for (const FormulaResult& formula : run.formulas) {
    out += formula.name + ":\n";
    for (const Finding& one : formula.findings) {
      const bool quiet = one.kind == Kind::pass || one.kind == Kind::not_applicable;
      if (!quiet) out += "  " + one.message + " [" + one.rule + "]\n";
    }
  }
  return out;
}

}  // namespace

TEST_CASE("each of the tweaks that go wrong has a rule that says so") {
  const Rulesets rulesets = Rulesets::built_in();
  const std::vector<Case> all = cases();
  REQUIRE(all.size() == 48);
  for (std::size_t at = 0; at < all.size(); ++at) {
    const Case& one = all[at];
    const std::string number = std::to_string(at + 1);
    CHECK(one.id == "T" + std::string(number.size() < 2 ? "0" : "") + number);
    const RunResult run = checked(one.base, one.edits, rulesets);
    CAPTURE(one.id);
    CAPTURE(told(run));
    if (one.rule.empty()) {
      REQUIRE(run.formulas.size() == 1);
      REQUIRE(!run.problems.empty());
      CHECK(run.problems.front().message.find(one.words) != std::string::npos);
      continue;
    }
    REQUIRE(run.formulas.size() == 2);
    CHECK(!says(run.formulas[0], one.rule, one.level));
    CHECK(says(run.formulas[1], one.rule, one.level));
  }
}

TEST_CASE("harmless tweaks: no rule over both has a word for them") {
  const Rulesets rulesets = Rulesets::built_in();
  std::set<std::string> over_both;
  for (const rules::Rule& rule : sudsmark::front::parts(rulesets).ruleset.rules) {
    if (rule.pair) over_both.insert(rule.id);
  }
  REQUIRE(over_both.size() >= 10);
  struct Harmless {
    std::string base;
    std::string edits;
  };
  const std::string bare =
      "formula \"Bare\"\n  product bubble bar\nphase \"all\"\n  20 - 30 % SLSA\n"
      "  2 - 4 % rice bran oil\n  2 % polysorbate 80\n  8 - 16 % cream of tartar\n"
      "  q.s. sodium bicarbonate\n";
  const std::vector<Harmless> all{
      {bar(), "set glycerin to 6 %\n"},
      {bar(), "swap rice bran oil for olive oil\n"},
      {bar(), "swap corn starch for tapioca starch\n"},
      {bar(), "set SLSA to 22 %\nset cocamidopropyl betaine to 7 %\n"},
      {bar(), "set \"Tide Line\" to 2 %\n"},
      {bar(), "scale batch to 6 kg\n"},
      {bar(), "scale batch to 1 kg\n"},
      {bar(), "piece 130 g\n"},
      {bar(), "piece 60 g\n"},
      {bar(), "remove cream of tartar\nadd 4 % citric acid\n"},
      {bar(), "add 2 % kaolin\n"},
      {bar("  0.2 % blue 1 lake\n"), "swap blue 1 lake for red 40 lake\n"},
      {bar("  0.2 % blue 1 lake\n"), "remove blue 1 lake\nadd 0.03 % blue 1 dye\n"},
      {bar("  0.2 % blue 1 lake\n"), "add 0.02 % red 40 dye\n"},
      {bar("  2 % shea butter\n"), "set shea butter to 3 %\n"},
      {puck(), "forming hand moulded\n"},
      {fizzy(), "set citric acid to 25 %\n"},
      {fizzy(), "set citric acid to 22 %\nadd 8 % cream of tartar\n"},
      {fizzy(), "add 2 % SLSA\n"},
      {hair(), "set cocamidopropyl betaine to 13 %\nadd 1.5 % D-panthenol liquid\n"},
      {hair(), "swap jojoba oil for sweet almond oil\n"},
      {hair("48 %", "  1 % SCI noodles\n"), "set SCI to 46 %\n"},
      {bare, "swap rice bran oil for olive oil\n"},
      {bare, "add 2 % kaolin\n"},
      {bare, "add 1 % glycerin\n"},
  };
  for (const Harmless& one : all) {
    const RunResult run = checked(one.base, one.edits, rulesets);
    CAPTURE(one.edits);
    REQUIRE_MESSAGE(run.formulas.size() == 2, told(run));
    for (const Finding& finding : run.formulas[1].findings) {
      const bool quiet = finding.kind == Kind::pass || finding.kind == Kind::not_applicable ||
                         finding.met_from_memory;
      CHECK_MESSAGE((quiet || !over_both.contains(finding.rule)),
                    finding.rule << ": " << finding.message);
    }
  }
}
