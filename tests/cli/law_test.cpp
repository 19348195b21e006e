// The law through the whole program: markets, days, labels, colours and scents, as a maker meets
// them. The day is the one on which the tables were written, unless a test is about another.
#include <doctest/doctest.h>

#include <string>

#include "process.h"

namespace {

const std::string today = " --on 2026-11-25 ";

/// Linalyl acetate is one of the names that Regulation (EU) 2023/1545 added to the 24.
std::string with_new_name(const std::string& more = {}) {
  return "formula \"Ebb\"\n  product bath salts\n  market GB, EU\n  users adults\n" + more +
         "phase \"all\"\n  q.s. sea salt\n  1 % reed\n  1 % polysorbate 20\n"
         "fragrance \"reed\"\n  limit 3 %\n  category 9\n  4 % linalyl acetate\n  undeclared "
         "none\n";
}

bool says(const test::Ran& ran, const std::string& words) {
  return ran.out.find(words) != std::string::npos;
}

test::Ran check(const std::string& options, const std::string& formula) {
  const test::Folder folder;
  return test::run("check --format lines " + options + " -", folder.path(), formula);
}

std::string coloured(const std::string& market, const std::string& colour,
                     const std::string& own = {}) {
  return "formula \"Ebb\"\n  product bath fizzy\n  market " + market +
         "\nphase \"all\"\n  q.s. sodium bicarbonate\n  30 % citric acid\n  1 % polysorbate 80\n"
         "  0.1 % " +
         colour + "\n" + own;
}

TEST_CASE("a name of the new list: by market, by the day and by the day of first sale") {
  const std::string named = "the label has to name Linalyl Acetate";
  const std::string named_lower = "the label has to name Linalyl acetate";
  const auto asks = [&](const std::string& options, const std::string& formula) {
    const test::Ran ran = check(options, formula);
    return says(ran, named) || says(ran, named_lower);
  };
  CHECK(asks("--market EU" + today, with_new_name()));
  CHECK(asks("--market NI" + today, with_new_name()));
  CHECK_FALSE(asks("--market GB" + today, with_new_name()));
  CHECK_FALSE(asks("--market US" + today, with_new_name()));
  // sold before 31 July 2026 it may stay on the shelf with the old names until 31 July 2028
  const std::string older = with_new_name("  batch made 2024-03-01\n");
  CHECK_FALSE(asks("--market EU" + today, older));
  CHECK_FALSE(asks("--market EU --on 2028-07-30", older));
  CHECK(asks("--market EU --on 2028-08-01", older));
  CHECK_FALSE(asks("--market EU --on 2026-07-01", with_new_name()));
}

TEST_CASE("24 names to look at in Great Britain and 81 in the European Union") {
  const test::Folder folder;
  const auto label = [&](const std::string& options, const std::string& formula) {
    return test::run("label " + options + " -", folder.path(), formula);
  };
  const test::Ran both = label(today, with_new_name());
  CHECK(says(both, "24 names"));
  CHECK(says(both, "81 names"));
  const test::Ran older = label(today + "--market EU", with_new_name("  batch made 2024-03-01\n"));
  CHECK(says(older, "24 names"));
  CHECK_FALSE(says(older, "81 names"));
  const test::Ran past_the_shelf =
      label("--on 2028-08-01 --market EU", with_new_name("  batch made 2024-03-01\n"));
  CHECK(says(past_the_shelf, "81 names"));
}

TEST_CASE("a label section is held against the allergens of each market") {
  const std::string formula =
      with_new_name() + "label\n  ingredients \"Maris Sal, Parfum, Polysorbate 20\"\n";
  const test::Ran eu = check("--market EU" + today, formula);
  CHECK(says(eu, "[label-ingredient-missing]"));
  CHECK(eu.status == 1);
  // the list is checked, so nobody has to be told what it would need
  CHECK_FALSE(says(eu, "[allergen-to-declare]"));
  const test::Ran gb = check("--market GB" + today, formula);
  CHECK_FALSE(says(gb, "[label-ingredient-missing]"));
  const test::Ran explained = test::run("explain label-ingredient-missing", test::Folder().path());
  CHECK(explained.status == 0);
}

TEST_CASE("two scents that pass alone and fail together are both named, with their shares") {
  const std::string scents =
      "fragrance \"fennel breeze\"\n  limit 3.3 %\n  category 9\n  1.5 % estragole\n"
      "  undeclared none\n"
      "fragrance \"basil breeze\"\n  limit 2 %\n  category 9\n  2.5 % estragole\n"
      "  undeclared none\n";
  const auto formula = [&](const std::string& lines) {
    return "formula \"Ebb\"\n  product bath salts\nphase \"all\"\n  q.s. sea salt\n" + lines +
           "  2 % polysorbate 20\n" + scents;
  };
  const std::string only = "--only scent-over-limit --only constituent-over-limit" + today;
  // the arithmetic of a worked example: 2 % x 1.5 % and 1 % x 2.5 % make 0.055 %, over 0.05 %
  CHECK(check(only, formula("  2 % fennel breeze\n")).status == 0);
  CHECK(check(only, formula("  1 % basil breeze\n")).status == 0);
  const test::Ran both = check(only, formula("  2 % fennel breeze\n  1 % basil breeze\n"));
  CHECK(both.status == 1);
  CHECK(says(both, "error: 3 % of scent, and certificate"));
  CHECK(says(both, "0.03 % from 'fennel breeze' and 0.025 % from 'basil breeze'"));
}

TEST_CASE("what somebody bought under a name of their own is known by its number or INCI name") {
  const auto formula = [](const std::string& amount, const std::string& named) {
    return "formula \"Ebb\"\n  product shampoo bar\n  market GB\nphase \"all\"\n"
           "  q.s. SCI powder\n  " +
           amount + " our keeper\nmaterial \"our keeper\"\n  role preservative\n  form liquid\n" +
           named;
  };
  const std::string only = "--only preservative-over-limit" + today;
  const std::string inci = "  inci \"Phenoxyethanol\"\n";
  const std::string cas = "  cas 122-99-6\n";
  const std::string mixed = "  inci \"Phenoxyethanol (and) Ethylhexylglycerin\"\n";
  CHECK(check(only, formula("0.9 %", inci)).status == 0);
  CHECK(says(check(only, formula("1.2 %", inci)), "error: 1.2 % of Phenoxyethanol"));
  CHECK(says(check(only, formula("1.2 %", cas)), "error: 1.2 % of Phenoxyethanol"));
  CHECK(says(check(only, formula("1.2 %", cas + "  active 95 %\n")), "error: 1.14 % of Phenoxy"));
  CHECK(check(only, formula("0.9 %", mixed)).status == 0);
  CHECK(says(check(only, formula("1.2 %", mixed)), "it depends on the true figures"));
}

TEST_CASE("a declared name that no table knows leaves the limits open, a CAS number is a name") {
  const auto formula = [](const std::string& declared) {
    return "formula \"Ebb\"\n  product bath salts\n  market EU\nphase \"all\"\n  q.s. sea salt\n"
           "  1 % reed\n  1 % polysorbate 20\nfragrance \"reed\"\n  limit 3 %\n  category 9\n  5 "
           "% " +
           declared + "\n  undeclared none\n";
  };
  const std::string only = "--only prohibited-substance --only nameless-constituent" + today;
  for (const char* name : {"harbour accord base", "\"harbour accord base\"", "\"80-54-7\""}) {
    const test::Ran unknown = check(only, formula(name));
    CHECK(says(unknown, "the CAS number of '"));
    CHECK(says(unknown, "warning: "));
    CHECK(unknown.status == 1);
  }
  // a number that no table holds was looked up
  const test::Ran harmless = check(only, formula("68-05-3"));
  CHECK(harmless.status == 0);
  CHECK_FALSE(says(harmless, "the CAS number of"));
  const test::Ran numbered = check(only, formula("80-54-6"));
  CHECK(says(numbered, "error: 0.05 % of Butylphenyl methylpropional (from 'reed')"));
  CHECK_FALSE(says(check(only, formula("linalool")), "the CAS number of"));
}

TEST_CASE("a scent of the maker's own words may hold anything until its number is known") {
  const auto formula = [](const std::string& lines) {
    return "formula \"Ebb\"\n  product bath salts\n  market EU\n  users children under 3\n"
           "phase \"all\"\n  q.s. sea salt\n  1 % marsh oil\n  1 % polysorbate 20\n"
           "material \"marsh oil\"\n  form liquid\n" +
           lines;
  };
  const std::string only = "--only restricted-amount --only nameless-constituent" + today;
  const test::Ran oil = check(only, formula("  role scent\n  cas 90045-28-6\n"));
  CHECK(says(oil, "checks wait for: what 'marsh oil' holds undeclared"));
  CHECK(says(oil, "[nameless-constituent, restricted-amount]"));
  CHECK(says(oil, "what 'marsh oil' holds undeclared"));
  CHECK(oil.status == 1);
  const test::Ran single = check(only, formula("  role aroma chemical\n"));
  CHECK(says(single, "the CAS number of 'marsh oil'"));
  // methyl salicylate by its number, and a number that no table holds
  CHECK(says(check(only, formula("  role aroma chemical\n  cas 119-36-8\n")), "error: 1 % of"));
  CHECK(check(only, formula("  role aroma chemical\n  cas 68-05-3\n")).status == 0);
}

TEST_CASE("an oil of the maker's own may hold anything although its number names it") {
  const auto formula = [](const std::string& name, const std::string& lines) {
    return "formula \"Ebb\"\n  product bath salts\n  market EU\nphase \"all\"\n  q.s. sea salt\n"
           "  1 % " +
           name + "\n  1 % polysorbate 20\nmaterial \"" + name + "\"\n  form liquid\n" + lines;
  };
  const std::string only = "--only restricted-amount" + today;
  for (const char* role : {"scent", "essential oil", "aroma chemical"}) {
    const std::string lines = std::string("  role ") + role + "\n";
    // cypress oil, by its number, its INCI name and its name
    for (const auto& text :
         {formula("marsh oil", lines + "  cas 8013-86-3\n"),
          formula("marsh oil", lines + "  inci \"Cupressus Sempervirens Oil\"\n"),
          formula("cypress oil", lines)}) {
      const test::Ran oil = check(only, text);
      CHECK(says(oil, "what '"));
      CHECK(says(oil, "oil' holds undeclared"));
    }
    // citronellyl acetate is nothing but itself
    for (const auto& text : {formula("marsh note", lines + "  cas 150-84-5\n"),
                             formula("citronellyl acetate", lines)}) {
      CHECK_FALSE(says(check(only, text), "undeclared"));
    }
  }
}

TEST_CASE("colours by market: unlisted, without a number, certified by batch, of other fields") {
  const std::string only =
      "--only us-colour-not-found --only us-colour-certified --only colour-not-listed "
      "--only colour-outside-its-field --only us-colour-over-limit" +
      today;
  const std::string dye = "  role dye\n  form fine powder\n";
  // allowed in the European list, and without a listing in the United States
  const std::string patent = "material \"moon blue\"\n  inci \"CI 42051\"\n" + dye;
  CHECK(check(only, coloured("EU, GB", "moon blue", patent)).status == 0);
  const test::Ran us = check(only, coloured("US", "moon blue", patent));
  CHECK(us.status == 1);
  CHECK(says(us, "[us-colour-not-found]"));
  // nobody knows what it is
  const test::Ran unnamed =
      check(only, coloured("EU, US", "moon blue", "material \"moon blue\"\n" + dye));
  CHECK(unnamed.status == 1);
  CHECK(says(unnamed, "the CAS or colour index number of 'moon blue'"));
  CHECK(says(check(only, coloured("EU", "aluminium lake low strength")),
             "the CAS or colour index number"));
  const std::string no_such = "material \"moon blue\"\n  inci \"CI 99999\"\n" + dye;
  CHECK(says(check(only, coloured("EU", "moon blue", no_such)), "error: material 'moon blue'"));
  // a lake is certified, and asks for a paper; titanium dioxide needs none
  const test::Ran lake = check(only, coloured("US", "blue 1 lake"));
  CHECK(lake.status == 0);
  CHECK(says(lake,
             "papers to ask for and keep: the certificate and lot number of the batch of FD&C "
             "Blue No. 1"));
  CHECK_FALSE(says(check(only, coloured("US", "titanium dioxide")), "papers"));
  // silver is for lips and eye shadow alone since May 2026 in the EU
  const std::string silver = "material \"CI 77820\"\n  role pigment\n  form fine powder\n";
  CHECK(says(check(only, coloured("EU", "CI 77820", silver)), "[colour-outside-its-field]"));
  CHECK_FALSE(says(check(only, coloured("GB", "CI 77820", silver)), "[colour-outside-its-field]"));
  CHECK_FALSE(says(
      check("--only colour-outside-its-field --on 2026-04-01", coloured("EU", "CI 77820", silver)),
      "[colour-outside-its-field]"));
  // what is coated on mica has numbers too
  const std::string pearl =
      "material \"moon blue\"\n  inci \"Mica (and) CI 77891 (and) CI 77510\"\n  role pigment\n"
      "  form fine powder\n";
  CHECK(check(only, coloured("EU, US", "moon blue", pearl)).status == 0);
}

TEST_CASE("plastic glitter by market and day") {
  const std::string only = "--only plastic-glitter --only law-in-the-making";
  const std::string glitter = coloured("GB", "plastic glitter");
  CHECK(says(check(only + today, glitter), "which must not be in what is rinsed off"));
  CHECK_FALSE(says(check(only + " --on 2018-01-01", glitter), "must not be"));
  const test::Ran eu = check(only + " --market EU" + today, glitter);
  CHECK(eu.status == 0);
  CHECK(says(eu, "16 October 2027"));
  CHECK(check(only + " --market EU --on 2027-10-17", glitter).status == 1);
}

TEST_CASE("the option for markets reaches measures and comparisons") {
  const test::Folder folder;
  const std::string formula =
      "formula \"Ebb\"\n  product bath salts\n  market GB\n  made in \"loft\"\n"
      "workshop \"loft\"\n  room 20 m3\n  air changes 1 per hour\n"
      "phase \"all\"\n  70 % sea salt\n  30 % corn starch\n"
      "task \"tip\"\n  handles 1 kg corn starch\n  takes 10 min\n  times 1 per day\n"
      "  raises 400 mg/kg\n";
  folder.write("ebb.formula", formula);
  CHECK(says(test::run("measure ebb.formula", folder.path()), "(GB WEL)"));
  CHECK(says(test::run("measure --market US ebb.formula", folder.path()), "(US "));
  folder.write("shiny.formula", coloured("EU", "plastic glitter"));
  folder.write("plain.formula", coloured("EU", "blue 1 lake"));
  const std::string compared = "compare --on 2026-11-25 ";
  CHECK_FALSE(says(test::run(compared + "plain.formula shiny.formula", folder.path()),
                   "[plastic-glitter]"));
  CHECK(says(test::run(compared + "--market GB plain.formula shiny.formula", folder.path()),
             "[plastic-glitter]"));
}

TEST_CASE("what looks like food has to be judged, and the judgement can be kept") {
  const std::string cake =
      "formula \"Cup cake\"\n  product bath salts\n  market GB, EU\n  looks like food\n";
  const std::string rest = "phase \"all\"\n  100 % sea salt\n";
  CHECK(check("--only looks-like-food" + today, cake + rest).status == 1);
  CHECK(check("--only looks-like-food" + today,
              cake + "  allow looks-like-food because \"judged, file 7\"\n" + rest)
            .status == 0);
  CHECK(check("--only looks-like-food --market US" + today, cake + rest).status == 0);
}

}  // namespace
