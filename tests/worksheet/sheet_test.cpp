// Whole bench sheets, and what a person must find on them. SUDSMARK_RENEW=1 writes them anew.
#include <sudsmark/report.h>

#include "estuary.h"
#include "written.h"

namespace {

using namespace sudsmark;
using namespace sudsmark::testing;

std::string sheet_of(const std::string& path, const std::string& text) {
  CheckOptions options;
  options.verdicts = false;
  options.sheet = true;
  RunResult run = check({path, text}, Rulesets::built_in(), options);
  for (const Problem& problem : run.problems) FAIL(problem.message);
  return written(Command::sheet, "text", &run);
}

bool says(const std::string& text, const std::string& words) {
  // a sheet is folded, and a sentence may break anywhere
  std::string flat;
  for (const char letter : text) {
    const bool blank = letter == ' ' || letter == '\n';
    if (!blank) {
      flat += letter;
    } else if (!flat.empty() && flat.back() != ' ') {
      flat += ' ';
    }
  }
  return flat.find(words) != std::string::npos;
}

TEST_CASE("the sheet for twenty bags of a dry mix") {
  const std::string sheet =
      sheet_of("twenty-bags.formula", file_contents(golden("twenty-bags.formula")));
  check_expected(golden("twenty-bags.sheet.txt"), sheet);
  // band, bound, cautions, first aid
  CHECK(says(sheet, "approach 3 of 4, containment, by COSHH Essentials"));
  CHECK(says(sheet, "upper bound of the 8 hour mean"));
  CHECK(says(sheet, "Closed goggles"));
  CHECK(says(sheet, "Rinse with plenty of water for at least 15 minutes"));
  CHECK(says(sheet, "Call a poison centre or a doctor at once"));
  CHECK(says(sheet, "Moisten spilt powder before it is swept"));
  CHECK(says(sheet, "Fill 20 bags with 997 g of the mix each"));
  CHECK(says(sheet, "Assigned factors in Great Britain, as quoted: FFP1 4, FFP2 10, FFP3 20"));
}

TEST_CASE("a tenth of a gram on a scale of tenths: refused, with the way out in grams") {
  const std::string sheet =
      sheet_of("tenth-of-a-gram.formula", file_contents(golden("tenth-of-a-gram.formula")));
  check_expected(golden("tenth-of-a-gram.sheet.txt"), sheet);
  CHECK(says(sheet, "! Not weighable as it is: one step of the scale is 100 % of 'blue 1 dye'"));
  CHECK(says(sheet, "Dilution of 'blue 1 dye' in 'sodium bicarbonate'"));
  CHECK(says(sheet, "that is 0.1 g of blue 1 dye"));
}

TEST_CASE("a sheet has no line that is wider than the paper, and no name forges one") {
  const std::string sheet = sheet_of(
      "wide.formula",
      "formula \"Wide\"\n  product bubble bar\n  batch 1 kg\nworkshop \"loft\"\n"
      "  scale 0.1 g to 3 kg\n"
      "phase \"a phase with a name that goes on and on until nobody wants to read it any more, and "
      "then some\"\n  700 g sodium bicarbonate\n  300 g \"a foamer that is called so that it "
      "would never fit on a bench sheet of paper\"\n"
      "material \"a foamer that is called so that it would never fit on a bench sheet of paper\" "
      "like SLSA\n");
  CHECK(says(sheet, "300.0 g"));
  for (const char letter : sheet)
    CHECK((letter == '\n' || static_cast<unsigned char>(letter) >= 32));
}

TEST_CASE("what can bring on asthma wants the tightest mask, and checks of the lungs") {
  const std::string sheet = sheet_of(
      "flour.formula",
      "formula \"Flour\"\n  product bubble bar\n  market GB\n  batch 10 kg\nphase \"all\"\n"
      "  q.s. sodium bicarbonate\n  10 % wheat flour\n  20 % SLSA\n  2 % cocoa butter\n");
  CHECK(says(sheet, "FFP3 or P100 (FFP2 and N95 are not enough)"));
  CHECK(says(sheet, "checks of their lungs are due by law"));
  CHECK(says(sheet, "no water into hot fat"));
  CHECK(says(sheet, "Sore skin is the likeliest harm here"));
  CHECK(says(sheet, "Nobody alone in the house"));
  CHECK(says(sheet, "Sacks of 25 kg"));
  CHECK(says(sheet, "COSHH"));
}

TEST_CASE("an oxidiser has words and a place, and what nobody knows is never nothing") {
  const std::string sheet = sheet_of(
      "oxygen.formula",
      "formula \"Oxygen\"\n  product bath fizzy\n  batch 2 kg\n  made in \"shed\"\n"
      "workshop \"shed\"\n  room 20 m3\n  air changes 0.5 per hour\n"
      "phase \"a\"\n  q.s. sodium bicarbonate\n  12.8 % oxygen powder\n  25 % citric acid\n"
      "  1.5 % isopropyl alcohol, dries off\n"
      "material \"oxygen powder\"\n  role base\n  form granules\n  hazards H272, H302, H318\n"
      "task \"tip\"\n  handles 1 kg oxygen powder\n  takes 10 min\n  times 1 per day\n  in 20 l\n");
  CHECK(says(sheet, "H272 feeds a fire"));
  CHECK(says(sheet, "never in a tight jar"));
  CHECK(says(sheet, "No oxidiser into any vacuum cleaner"));
  CHECK_FALSE(says(sheet, "at least 0 mg/m3"));
  CHECK(says(sheet, "of Isopropyl alcohol dries off"));
  // nothing is known of what that powder takes as a base
  CHECK(says(sheet, "how much of the room it fills is not known"));
}

TEST_CASE("a fizzy that gets wet is told as gas in the room") {
  const std::string sheet =
      sheet_of("wet.formula",
               "formula \"Wet\"\n  product bath fizzy\n  batch 10 kg\n  made in \"shed\"\n"
               "workshop \"shed\"\n  room 20 m3\n  air changes 0.5 per hour\n"
               "phase \"a\"\n  70 % sodium bicarbonate\n  30 % citric acid\n");
  CHECK(says(sheet, "carbon dioxide could come to 5.7"));
}

TEST_CASE("a formula that says little still gets a sheet, and it asks for the rest") {
  const std::string sheet = sheet_of("little.formula",
                                     "formula \"Little\"\n  product bath salts\nphase \"all\"\n"
                                     "  90 % sea salt\n  10 % sodium bicarbonate\n");
  CHECK(says(sheet, "none is stated (`scale` of the workshop)"));
  CHECK(says(sheet, "not stated (`batch`)"));
  CHECK(says(sheet, "None is stated. A `task`"));
}

}  // namespace
