// Labels: order, allergens, words and papers by market, and a label section held against them.
// Figures of the law are those of the table `label-points`: article 19 (1) (g) as an agency's page
// has it (below 1 % in any order), 21 CFR 701.3 (f) as the trade press has it (1 % or less), and of
// the table `declarable-allergens` (over 0.01 % in what is rinsed off).
#include <algorithm>
#include <chrono>
#include <filesystem>
#include <string>
#include <vector>

#include <sudsmark/check.h>

#include "case_files.h"
#include "label/printed.h"
#include "without_style.h"
#include "written.h"

namespace {

using namespace sudsmark;

std::chrono::year_month_day day(int year, unsigned month, unsigned of_month) {
  return {std::chrono::year(year), std::chrono::month(month), std::chrono::day(of_month)};
}

CheckOptions for_labels() {
  CheckOptions options;
  options.on = day(2026, 11, 25);
  options.label = true;
  options.verdicts = false;
  return options;
}

RunResult labelled(const std::string& text, const CheckOptions& options = for_labels()) {
  RunResult run = check({"label.formula", text}, Rulesets::built_in(), options);
  for (const Problem& problem : run.problems) FAIL(problem.message);
  REQUIRE(run.formulas.size() == 1);
  return run;
}

const MarketLabel& market(const RunResult& run, const std::string& name) {
  const auto& labels = run.formulas.front().labels;
  const auto found = std::find_if(labels.begin(), labels.end(),
                                  [&](const MarketLabel& one) { return one.market == name; });
  REQUIRE(found != labels.end());
  return *found;
}

std::string list_of(const MarketLabel& label) {
  std::string out;
  for (const LabelIngredient& one : label.ingredients) {
    out += (out.empty() ? "" : ", ") + one.name;
  }
  return out;
}

const LabelIngredient* find(const MarketLabel& label, const std::string& name) {
  const auto found = std::find_if(label.ingredients.begin(), label.ingredients.end(),
                                  [&](const LabelIngredient& one) { return one.name == name; });
  return found == label.ingredients.end() ? nullptr : &*found;
}

bool holds(const std::vector<std::string>& sentences, const std::string& part) {
  return std::any_of(sentences.begin(), sentences.end(), [&](const std::string& sentence) {
    return sentence.find(part) != std::string::npos;
  });
}

std::string head(const std::string& markets, const std::string& more = {}) {
  return "formula \"Pier Head\"\n  product bath fizzy\n  market " + markets + "\n" + more +
         "phase \"all\"\n";
}

/// A scent of which linalool is a share, and that declares all.
std::string scent(const std::string& linalool) {
  return "fragrance \"Fog Bell\"\n  limit 5 %\n  category 9\n  " + linalool +
         " linalool\n  undeclared none\n";
}

std::vector<Finding> label_findings_of(const std::string& text) {
  CheckOptions options;
  options.on = day(2026, 11, 25);
  const RunResult run = labelled(text, options);
  std::vector<Finding> out;
  for (const Finding& finding : run.formulas.front().findings) {
    const auto rule = Rulesets::built_in().rule(finding.rule);
    if (rule && rule->decided_by == "label") out.push_back(finding);
  }
  return out;
}

}  // namespace

TEST_CASE("exactly 1 % is placed by weight in Europe and free in the United States and Canada") {
  const RunResult run = labelled(head("EU, GB, US, CA") +
                                 "  98.01 % sodium bicarbonate\n  0.99 % kaolin\n"
                                 "  1 % corn starch\n");
  for (const char* name : {"EU", "GB"}) {
    const LabelIngredient* starch = find(market(run, name), "Zea Mays Starch");
    REQUIRE(starch != nullptr);
    CHECK(starch->group == LabelGroup::by_weight);
    CHECK(find(market(run, name), "Kaolin")->group == LabelGroup::any_order);
  }
  for (const char* name : {"US", "CA"}) {
    const LabelIngredient* starch = find(market(run, name), "Zea Mays Starch");
    REQUIRE(starch != nullptr);
    CHECK(starch->group == LabelGroup::any_order);
  }
  CHECK(list_of(market(run, "EU")) == "Sodium Bicarbonate, Zea Mays Starch, Kaolin");
  CHECK(market(run, "EU").doubts.empty());
}

TEST_CASE("an allergen is declared over 0.01 % and not at it") {
  // 1 % of a scent with 1 % of linalool is 0.01 % of the product
  const std::string at = head("EU") + "  99 % sodium bicarbonate\n  1 % \"Fog Bell\"\n";
  const RunResult exactly = labelled(at + scent("1 %"));
  CHECK(find(market(exactly, "EU"), "Linalool") == nullptr);
  const RunResult over = labelled(at + scent("1.01 %"));
  const LabelIngredient* linalool = find(market(over, "EU"), "Linalool");
  REQUIRE(linalool != nullptr);
  CHECK(linalool->group == LabelGroup::allergen);
  CHECK(linalool->from == std::vector<std::string>{"Fog Bell"});
  CHECK(market(over, "EU").doubts.empty());

  const RunResult perhaps = labelled(at + scent("0.5 - 2 %"));
  CHECK(find(market(perhaps, "EU"), "Linalool") != nullptr);
  CHECK(holds(market(perhaps, "EU").doubts, "'Linalool' comes to 0.005 to 0.02 %"));
}

TEST_CASE("two scents that are each below the figure add up over it") {
  const RunResult run = labelled(
      head("GB") + "  98 % sodium bicarbonate\n  1 % \"Fog Bell\"\n  1 % \"Lee Shore\"\n" +
      scent("0.6 %") +
      "fragrance \"Lee Shore\"\n  limit 5 %\n  category 9\n  0.6 % linalool\n  undeclared none\n");
  const LabelIngredient* linalool = find(market(run, "GB"), "Linalool");
  REQUIRE(linalool != nullptr);
  CHECK(linalool->from == std::vector<std::string>{"Fog Bell", "Lee Shore"});
  CHECK(find(market(run, "GB"), "Parfum")->share.high == doctest::Approx(2.0));
}

TEST_CASE(
    "24 names in Great Britain and 81 in the EU, and the list of before until the shelf day") {
  // Regulation (EU) 2023/1545: placed until 31 July 2026 by the old list, sold so until 31 July
  // 2028
  const std::string rest = "  99 % sodium bicarbonate\n  1 % \"Fog Bell\"\n" + scent("1 %");
  const RunResult today = labelled(head("GB, EU, NI, US, CA") + rest);
  CHECK(market(today, "GB").allergens_known == 24);
  CHECK(market(today, "EU").allergens_known == 81);
  CHECK(market(today, "NI").allergens_known == 81);
  CHECK(market(today, "US").allergens_known == 0);

  const RunResult old = labelled(head("GB, EU", "  batch made 2024-03-01\n") + rest);
  CHECK(market(old, "EU").allergens_known == 24);
  CHECK(market(old, "GB").allergens_known == 24);
  CHECK(old.formulas.front().batch_made == "2024-03-01");

  CheckOptions later = for_labels();
  later.on = day(2028, 8, 1);
  const RunResult shelf = labelled(head("GB, EU", "  batch made 2024-03-01\n") + rest, later);
  CHECK(market(shelf, "EU").allergens_known == 81);
}

TEST_CASE("names by market: scent, water, mixtures, colours, own materials") {
  const RunResult run =
      labelled(head("EU, US") +
               "  80 % sodium bicarbonate\n  5 % cocamidopropyl betaine\n  5 % BTMS-50\n  3 % "
               "\"reef clay\"\n"
               "  2 % \"Fog Bell\"\n  2 % blue 1 dye\n  2 % mica\n  1 % blue 1 lake\n" +
               scent("1 %") + "material \"reef clay\" like kaolin\n  inci \"Illite (nano)\"\n");
  const MarketLabel& eu = market(run, "EU");
  const MarketLabel& us = market(run, "US");
  CHECK(find(eu, "Parfum") != nullptr);
  CHECK(find(us, "Fragrance") != nullptr);
  CHECK(find(eu, "Aqua") != nullptr);
  CHECK(find(us, "Water") != nullptr);
  CHECK(find(eu, "Illite (nano)") != nullptr);
  // dye and lake stand under one index number, whatever there is of them, at the end
  CHECK(eu.ingredients.back().name == "CI 42090");
  CHECK(eu.ingredients.back().share.high == doctest::Approx(3.0));
  CHECK(find(eu, "Mica")->group == LabelGroup::by_weight);
  CHECK(find(us, "Mica")->group == LabelGroup::colour);
  CHECK(find(us, "FD&C Blue No. 1") != nullptr);
  CHECK(find(us, "FD&C Blue No. 1 Aluminum Lake") != nullptr);
  // the parts of a mixture, not its own long name
  CHECK(find(eu, "Behentrimonium Methosulfate") != nullptr);
  CHECK(find(eu, "Cetyl Alcohol") != nullptr);
}

TEST_CASE("what a range leaves open is told, and the worst case decides") {
  const RunResult run = labelled(head("GB") +
                                 "  q.s. sodium bicarbonate\n  2 - 6 % kaolin\n"
                                 "  5 % corn starch\n  0.5 - 1.5 % silica\n");
  const MarketLabel& gb = market(run, "GB");
  CHECK(list_of(gb) == "Sodium Bicarbonate, Kaolin, Zea Mays Starch, Silica");
  CHECK(
      holds(gb.doubts, "'Kaolin' (2 to 6 %) and 'Zea Mays Starch' (5 %) may stand the other way"));
  CHECK(holds(gb.doubts, "'Silica' comes to 0.5 to 1.5 %, on both sides of 1 %"));
}

TEST_CASE("a scent that declares nothing leaves every name undecided and asks for its papers") {
  const RunResult run = labelled(head("GB") +
                                 "  99 % sodium bicarbonate\n  1 % \"Mute Bell\"\n"
                                 "fragrance \"Mute Bell\"\n  limit 5 %\n  category 9\n");
  CHECK(market(run, "GB").undecided.size() == 24);
  CHECK(find(market(run, "GB"), "Linalool") == nullptr);
  CHECK(holds(market(run, "GB").doubts, "24 of the 24 declarable names cannot be decided"));
  const auto& papers = run.formulas.front().papers;
  const auto asked = [&](const std::string& paper) {
    return std::any_of(papers.begin(), papers.end(),
                       [&](const LabelPaper& one) { return one.paper == paper; });
  };
  CHECK(asked("allergen declaration of the scent"));
  CHECK_FALSE(asked("certificate of conformity to the fragrance standard"));
  CHECK(asked("safety data sheet"));
}

TEST_CASE("the caution of a foaming bath product stands in its exact words") {
  const std::string foaming = "formula \"Surf\"\n  product bubble bar\n  market US, GB\n";
  const std::string rest = "phase \"all\"\n  80 % sodium bicarbonate\n  20 % SLSA\n";
  const RunResult run = labelled(foaming + rest);
  const auto& words = market(run, "US").words;
  const auto caution = std::find_if(words.begin(), words.end(), [](const LabelWords& one) {
    return one.name == "foaming bath product";
  });
  REQUIRE(caution != words.end());
  // 21 CFR 740.17 (b)
  CHECK(
      caution->words ==
      "Caution\u2014Use only as directed. Excessive use or prolonged exposure may cause irritation "
      "to skin and urinary tract. Discontinue use if rash, redness, or itching occurs. Consult "
      "your physician if irritation persists. Keep out of reach of children.");
  CHECK(caution->exact);
  CHECK(caution->certain);
  const auto& gb = market(run, "GB").words;
  CHECK(std::none_of(gb.begin(), gb.end(),
                     [](const LabelWords& one) { return one.name == "foaming bath product"; }));
  const RunResult plain = labelled(
      "formula \"Still\"\n  product bath salts\n  market US\n"
      "phase \"all\"\n  100 % sea salt\n");
  const auto& still = market(plain, "US").words;
  CHECK(std::none_of(still.begin(), still.end(),
                     [](const LabelWords& one) { return one.name.compare(0, 7, "foaming") == 0; }));
}

TEST_CASE("a label section with each kind of fault") {
  const std::string formula =
      "formula \"Surf\"\n  product bubble bar\n  market US\nphase \"all\"\n"
      "  60 % sodium bicarbonate\n  20 % SLSA\n  15 % cream of tartar\n  4 % glycerin\n"
      "  1 % blue 1 dye\n";
  const std::string right =
      "Sodium Bicarbonate, Sodium Lauryl Sulfoacetate, Potassium Bitartrate, Glycerin, "
      "FD&C Blue No. 1";
  const std::string caution =
      "  warning \"Caution - Use only as directed. Excessive use or prolonged exposure may cause "
      "irritation to skin and urinary tract. Discontinue use if rash, redness, or itching occurs. "
      "Consult your physician if irritation persists. Keep out of reach of children. "
      "Directions: dissolve one piece in a full bath.\"\n";
  const auto with = [&](const std::string& list, const std::string& warning) {
    return label_findings_of(formula + "label\n  ingredients \"" + list + "\"\n" + warning);
  };
  CHECK(label_findings_of(formula).empty());
  CHECK(with(right, caution).empty());
  CHECK(with("INGREDIENTS: " + right + ".", caution).empty());

  // 21 CFR 740.17 (b): directions for safe use are a second duty beside the caution
  const auto undirected = with(right, caution.substr(0, caution.find(" Directions")) + "\"\n");
  REQUIRE(undirected.size() == 1);
  CHECK(undirected.front().rule == "label-caution-missing");
  CHECK(undirected.front().kind == Kind::open);
  CHECK(undirected.front().level == Level::note);

  const auto uncautioned = with(right, "  warning \"Directions: one piece a bath.\"\n");
  REQUIRE(uncautioned.size() == 1);
  CHECK(uncautioned.front().rule == "label-caution-missing");
  CHECK(uncautioned.front().level == Level::warning);
  CHECK(with(right, "  warning \"For adult use only.\"\n").empty());

  const auto missing =
      with("Sodium Bicarbonate, Sodium Lauryl Sulfoacetate, Potassium Bitartrate, FD&C Blue No. 1",
           caution);
  REQUIRE(missing.size() == 1);
  CHECK(missing.front().rule == "label-ingredient-missing");
  CHECK(missing.front().subject == "Glycerin");

  const auto extra = with(right + ", Moonlight", caution);
  REQUIRE(extra.size() == 1);
  CHECK(extra.front().rule == "label-ingredient-extra");
  CHECK(extra.front().subject == "Moonlight");

  const auto misspelt = with(
      "Sodium Bicarbonate, Sodium Lauryl Sulphoacetate, Potassium Bitartrate, Glycerin, "
      "FD&C Blue No. 1",
      caution);
  REQUIRE(misspelt.size() == 1);
  CHECK(misspelt.front().rule == "label-ingredient-misspelt");
  CHECK(misspelt.front().message.find("'Sodium Lauryl Sulfoacetate' is meant") !=
        std::string::npos);
  // the place is the name itself
  CHECK(misspelt.front().line == 11);
  CHECK(misspelt.front().column == 36);

  const auto misplaced = with(
      "Glycerin, Sodium Bicarbonate, Sodium Lauryl Sulfoacetate, Potassium Bitartrate, "
      "FD&C Blue No. 1",
      caution);
  REQUIRE(misplaced.size() == 1);
  CHECK(misplaced.front().rule == "label-ingredient-misplaced");
  CHECK(misplaced.front().subject == "Glycerin");

  const auto colour_first = with(
      "FD&C Blue No. 1, Sodium Bicarbonate, Sodium Lauryl Sulfoacetate, Potassium Bitartrate, "
      "Glycerin",
      caution);
  REQUIRE(colour_first.size() == 1);
  CHECK(colour_first.front().message.find("colour") != std::string::npos);
}

TEST_CASE("an allergen that is over its figure at worst is a question of the true figures") {
  const auto missing = [&](const std::string& linalool) {
    return label_findings_of(head("EU") + "  99 % sodium bicarbonate\n  1 % \"Fog Bell\"\n" +
                             scent(linalool) +
                             "label\n  ingredients \"Sodium Bicarbonate, Parfum\"\n");
  };
  REQUIRE(missing("2 %").size() == 1);
  CHECK(missing("2 %").front().kind == Kind::fail);
  REQUIRE(missing("0.5 - 2 %").size() == 1);
  CHECK(missing("0.5 - 2 %").front().kind == Kind::review);
  CHECK(missing("1 %").empty());
}

TEST_CASE("findings of labels can be allowed with a reason, until a day") {
  const auto allowed = [&](const std::string& until) {
    return label_findings_of(
        "formula \"Still\"\n  product bath salts\n  market GB\n"
        "  allow label-ingredient-extra because \"the shop's own name for the salt\"" +
        until +
        "\nphase \"all\"\n  100 % sea salt\n"
        "label\n  ingredients \"Maris Sal, Moon dust\"\n");
  };
  REQUIRE(allowed("").size() == 1);
  CHECK(allowed("").front().allowed == "the shop's own name for the salt");
  CHECK(allowed(" until 2027-01-01").front().allowed);
  const auto past = allowed(" until 2026-01-01");
  CHECK_FALSE(past.front().allowed);
  CHECK(past.front().message.find("allowed until 2026-01-01") != std::string::npos);
}

TEST_CASE("a label section of a formula without a market is left open") {
  const auto findings = label_findings_of(
      "formula \"Still\"\n  product bath salts\nphase \"all\"\n  100 % sea salt\n"
      "label\n  ingredients \"Maris Sal\"\n");
  REQUIRE(findings.size() == 1);
  CHECK(findings.front().rule == "label-market-unknown");
  CHECK(findings.front().kind == Kind::open);
}

TEST_CASE("a printed list falls into items, with what each may stand for") {
  const auto items =
      label::printed_items("Ingredients: Aqua (Water), 1,2-Hexanediol; Parfum/Fragrance*.");
  REQUIRE(items.size() == 3);
  CHECK(items[0].text == "Aqua (Water)");
  CHECK(items[0].offset == 13);
  CHECK(items[0].meanings == std::vector<std::string>{"aqua (water)", "aqua", "water"});
  CHECK(items[1].text == "1,2-Hexanediol");
  CHECK(items[2].meanings == std::vector<std::string>{"parfum/fragrance", "parfum", "fragrance"});
  CHECK(label::plain_words("Caution\u2014Keep out, of reach!") == "caution keep out of reach");
}

TEST_CASE("the labels of two markets, whole") {
  const std::filesystem::path folder = testing::source_dir() / "tests/golden";
  RunResult run =
      check({"two-markets.formula", testing::file_contents(folder / "two-markets.formula")},
            Rulesets::built_in(), for_labels());
  REQUIRE(run.problems.empty());
  testing::check_expected(folder / "two-markets.label.txt",
                          testing::written(Command::label, "text", &run));
  testing::check_expected(folder / "two-markets.label.json",
                          testing::written(Command::label, "json", &run));
  testing::check_expected(folder / "two-markets.label.html",
                          testing::without_style(testing::written(Command::label, "html", &run)));
}
