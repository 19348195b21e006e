// Tweaks: a base, an edit, and the formula that comes of it, written out.
#include <doctest/doctest.h>

#include <string>

#include "assembled.h"
#include "text/name.h"

namespace sudsmark::formula::test {
namespace {

const std::string head = "formula base\n  product bubble bar\n";
const std::string shares =
    head +
    "phase dry\n  50 % soda\n  25 % SLSA\n  15 % kaolin\nphase wet\n  8 % oil\n  2 % scent\n";

/// The lines of the tweaked formula from its first phase on, or the errors.
std::string tweaked(const std::string& base, const std::string& edits,
                    AssembleOptions options = {}) {
  const Assembled out =
      assembled({{"t.formula", "tweak t of \"b.formula\"\n" + edits}, {"b.formula", base}},
                "t.formula", options);
  if (!out.card) return out.errors;
  CHECK(out.errors.empty());
  const std::string text = print(*out.card);
  return text.substr(text.find("\nphase") + 1);
}

}  // namespace

TEST_CASE("set takes its share, and the rest is scaled to 100 %") {
  // 25 % becomes 40 %: the other 75 parts share 60 %, each times 0.8
  CHECK(tweaked(shares, "  set SLSA to 40 %\n") ==
        "phase dry\n  40 % soda\n  40 % SLSA\n  12 % kaolin\n\n"
        "phase wet\n  6.4 % oil\n  1.6 % scent\n");
}

TEST_CASE("fill takes up the difference, and nothing is scaled") {
  CHECK(tweaked(shares, "  set SLSA to 20 %\n  fill with soda\n") ==
        "phase dry\n  55 % soda\n  20 % SLSA\n  15 % kaolin\n\n"
        "phase wet\n  8 % oil\n  2 % scent\n");
}

TEST_CASE("a q.s. line of the base takes up the difference") {
  const std::string base = head + "phase dry\n  q.s. soda\n  25 % SLSA\n";
  CHECK(tweaked(base, "  set SLSA to 20 %\n") == "phase dry\n  q.s. soda\n  20 % SLSA\n");
  CHECK(tweaked(base, "  set SLSA to 20 %\n  fill with soda\n") ==
        "phase dry\n  q.s. soda\n  20 % SLSA\n");
  // another line fills: q.s. keeps the 75 % that it stood for
  CHECK(tweaked(base, "  add 5 % kaolin\n  fill with SLSA\n") ==
        "phase dry\n  75 % soda\n  20 % SLSA\n  5 % kaolin\n");
}

TEST_CASE("set on several lines sets their sum in the old proportion") {
  const std::string base = head + "phase a\n  30 % soda\n  10 % oil\nphase b\n  60 % soda\n";
  CHECK(tweaked(base, "  set soda to 45 %\n  fill with oil\n") ==
        "phase a\n  15 % soda\n  55 % oil\n\nphase b\n  30 % soda\n");
}

TEST_CASE("set on a mass and a share of one material counts both as masses") {
  const std::string base =
      head + "  batch 1 kg\nphase a\n  300 g soda\n  60 % kaolin\n  10 % soda\n";
  // 300 g and 100 g become 200 g, in the proportion 3 : 1; the rest is scaled to 800 g
  CHECK(tweaked(base, "  set soda to 200 g\n") ==
        "phase a\n  150 g soda\n  80 % kaolin\n  50 g soda\n");
}

TEST_CASE("swap keeps the amount, and nothing else changes") {
  CHECK(tweaked(shares, "  swap oil for \"almond oil\"\n") ==
        "phase dry\n  50 % soda\n  25 % SLSA\n  15 % kaolin\n\n"
        "phase wet\n  8 % \"almond oil\"\n  2 % scent\n");
  // a base that is a little off 100 %, as the language allows, is left so
  const std::string off = head + "phase dry\n  50 % soda\n  49.97 % SLSA\n";
  CHECK(tweaked(off, "  swap soda for kaolin\n") == "phase dry\n  50 % kaolin\n  49.97 % SLSA\n");
}

TEST_CASE("swap of a premix by its unit keeps the mass") {
  const std::string base = head +
                           "phase dry\n  2 bags mix\n  1 kg oil\n"
                           "premix mix makes 500 g as bag\n  100 % soda\n";
  CHECK(tweaked(base, "  swap mix for soda\n") ==
        "phase dry\n  1 kg soda\n  1 kg oil\n\n"
        "premix mix makes 500 g as bag\n  100 % soda\n");
}

TEST_CASE("swapped lines keep their amount while the rest is scaled") {
  CHECK(tweaked(shares, "  swap oil for butter\n  set SLSA to 40 %\n") ==
        "phase dry\n  38.8059701493 % soda\n  40 % SLSA\n  11.6417910448 % kaolin\n\n"
        "phase wet\n  8 % butter\n  1.55223880597 % scent\n");
}

TEST_CASE("add goes to the part that is named, or to the last phase") {
  CHECK(tweaked(shares, "  add 5 % mica to \"DRY\"\n  fill with soda\n") ==
        "phase dry\n  45 % soda\n  25 % SLSA\n  15 % kaolin\n  5 % mica\n\n"
        "phase wet\n  8 % oil\n  2 % scent\n");
  CHECK(tweaked(shares, "  add 5 % mica\n  fill with soda\n") ==
        "phase dry\n  45 % soda\n  25 % SLSA\n  15 % kaolin\n\n"
        "phase wet\n  8 % oil\n  2 % scent\n  5 % mica\n");
}

TEST_CASE("remove takes out every line of the name in the phases") {
  CHECK(tweaked(shares, "  remove kaolin\n  fill with soda\n") ==
        "phase dry\n  65 % soda\n  25 % SLSA\n\nphase wet\n  8 % oil\n  2 % scent\n");
}

TEST_CASE("masses are scaled to the batch") {
  const std::string base = head + "  batch 1 kg\nphase dry\n  600 g soda\n  400 g oil\n";
  CHECK(tweaked(base, "  set oil to 200 g\n") == "phase dry\n  800 g soda\n  200 g oil\n");
  CHECK(tweaked(base, "  set oil to 20 %\n") == "phase dry\n  800 g soda\n  20 % oil\n");
  const std::string without_batch = head + "phase dry\n  600 g soda\n  400 g oil\n";
  CHECK(tweaked(without_batch, "  set oil to 200 g\n") == "phase dry\n  800 g soda\n  200 g oil\n");
  CHECK(tweaked(without_batch, "  set oil to 20 %\n") ==
        "2:3: error: to put shares beside masses, the base must say what its batch weighs\n");
}

TEST_CASE("parts keep their total") {
  const std::string base = head + "phase dry\n  6 parts soda\n  4 parts oil\n";
  CHECK(tweaked(base, "  set oil to 1 part\n") == "phase dry\n  9 parts soda\n  1 parts oil\n");
  CHECK(tweaked(base, "  set oil to 5 %\n") ==
        "2:3: error: the tweak puts parts beside masses or shares; give it in the base's own "
        "kind\n");
}

TEST_CASE("scale batch scales masses and premix units, and comes before all other edits") {
  const std::string base = head +
                           "  batch 2 kg\nphase dry\n  1 bag mix\n  600 g soda\n  400 g oil\n"
                           "  1 g per kg lake\n"
                           "premix mix makes 1 kg as bag\n  1 kg soda\n"
                           "portion a, 100 %\n  10 g mica\n";
  CHECK(tweaked(base, "  set oil to 1 kg\n  scale batch to 6 kg\n  fill with soda\n") ==
        "phase dry\n  3 bag mix\n  2 kg soda\n  1 kg oil\n  1 g per kg lake\n\n"
        "premix mix makes 1 kg as bag\n  1 kg soda\n\n"
        "portion a, 100 %\n  30 g mica\n");
}

TEST_CASE("scale batch of shares only says what the batch weighs") {
  const Assembled out = assembled(
      {{"t.formula", "tweak t of \"b.formula\"\n  scale batch to 6 kg\n"}, {"b.formula", shares}},
      "t.formula");
  REQUIRE(out.card);
  REQUIRE(out.card->statements.batch);
  CHECK(out.card->statements.batch->value == Range(6000));
  CHECK(out.card->phases[0].lines[0].amount.value == Range(0.5));
}

TEST_CASE("doses and portions come on top and are not scaled") {
  const std::string base = head +
                           "phase dry\n  50 % soda\n  50 % oil\n  1 g per kg lake\n"
                           "portion a, 100 %\n  2 g per kg mica\n";
  CHECK(tweaked(base, "  set oil to 20 %\n  set lake to 3 g per kg\n") ==
        "phase dry\n  80 % soda\n  20 % oil\n  3 g per kg lake\n\n"
        "portion a, 100 %\n  2 g per kg mica\n");
}

TEST_CASE("an edit means a premix or a portion where the name stands only there") {
  const std::string base = head +
                           "phase dry\n  1 bag mix\n  1 kg oil\n"
                           "premix mix makes 1 kg as bag\n  600 g soda\n  400 g kaolin\n"
                           "portion a, 100 %\n  2 g per kg mica\n";
  CHECK(tweaked(base, "  set kaolin to 200 g\n  set mica to 1 g per kg\n") ==
        "phase dry\n  1 bag mix\n  1 kg oil\n\n"
        "premix mix makes 1 kg as bag\n  800 g soda\n  200 g kaolin\n\n"
        "portion a, 100 %\n  1 g per kg mica\n");
  const std::string two = base + "premix mux makes 1 kg\n  1 kg kaolin\n";
  CHECK(tweaked(two, "  set kaolin to 200 g\n") ==
        "2:3: error: 'kaolin' stands in 'mix' and in 'mux', and no phase: 'set' cannot say which "
        "is meant\n");
  CHECK(tweaked(base, "  fill with kaolin\n") ==
        "2:13: error: 'kaolin' stands in no phase: only a line of a phase can take up the "
        "difference\n");
}

TEST_CASE("ranges lean on the line that fills") {
  CHECK(tweaked(shares, "  set kaolin to 10 - 12 %\n  fill with soda\n") ==
        "phase dry\n  q.s. soda\n  25 % SLSA\n  10 - 12 % kaolin\n\n"
        "phase wet\n  8 % oil\n  2 % scent\n");
  const std::string parts = head + "phase dry\n  6 parts soda\n  4 parts oil\n";
  CHECK(tweaked(parts, "  set oil to 1 - 2 parts\n  fill with soda\n") ==
        "phase dry\n  8 - 9 parts soda\n  1 - 2 parts oil\n");
  // scaled by the middle of the range: 90 / 50 of the other lines
  CHECK(tweaked(head + "phase dry\n  50 % soda\n  50 % oil\n", "  set oil to 9 - 11 %\n") ==
        "phase dry\n  90 % soda\n  9 - 11 % oil\n");
}

TEST_CASE("a line by volume is left alone, and cannot be balanced") {
  const std::string base =
      head + "  batch 1 kg\nphase dry\n  600 g soda\n  300 g kaolin\n  100 ml milk\n";
  CHECK(tweaked(base, "  set kaolin to 150 g\n") ==
        "phase dry\n  750 g soda\n  150 g kaolin\n  0.1 l milk\n");
  CHECK(tweaked(base, "  remove milk\n") ==
        "2:3: error: a line given by volume has no mass here: give grams, or let q.s. take it "
        "up\n");
}

TEST_CASE("a tweak that asks for too much says so") {
  CHECK(tweaked(shares, "  set SLSA to 80 %\n  set oil to 30 %\n") ==
        "3:3: error: the tweak leaves nothing for the rest: the others make 110 of 100 %\n");
  CHECK(tweaked(shares, "  set SLSA to 80 %\n  fill with soda\n") ==
        "3:3: error: the tweak leaves nothing for 'soda': the others make 105 of 100 %\n");
}

TEST_CASE("names that no line has are errors with the nearest names of the base") {
  CHECK(tweaked(shares, "  set SLAS to 5 %\n  swap kaoline for mica\n  remove gold\n") ==
        "2:7: error: no line of the base names 'SLAS'; perhaps 'SLSA'\n"
        "3:8: error: no line of the base names 'kaoline'; perhaps 'kaolin'\n"
        "4:10: error: no line of the base names 'gold'\n");
}

TEST_CASE("names are equal if they are names of one thing") {
  const auto same_name = [](std::string_view name) {
    const std::string folded = text::fold(name);
    return folded == "bicarb" ? std::string("soda") : folded;
  };
  CHECK(tweaked(shares, "  set Bicarb to 100 %\n", {.same_name = same_name})
            .starts_with("phase dry\n  100 % soda\n  0 % SLSA\n"));
  // what the formula itself calls so is not looked up in the catalogue
  const std::string own = head + "phase dry\n  50 % bicarb\n  50 % soda\nmaterial bicarb\n";
  CHECK(tweaked(own, "  set bicarb to 20 %\n", {.same_name = same_name})
            .starts_with("phase dry\n  20 % bicarb\n  80 % soda\n"));
}

TEST_CASE("statements of a tweak replace the base's") {
  const Files files{
      {"b.formula", head + "  forming pressed\n  piece 85 g\n  market GB, EU\n"
                           "  keep kaolin\n  keep soda 40 - 60 %\n"
                           "  allow scale-step because \"tested\"\nphase dry\n  100 % soda\n"},
      {"t.formula",
       "tweak \"lighter\" of \"b.formula\"\n  piece 70 g\n  market US\n  keep Soda 10 - 20 %\n"
       "  looks like food\n  allow hlb because \"tested too\"\n"}};
  const Assembled out = assembled(files, "t.formula");
  CHECK(out.printed() ==
        "formula \"lighter\"\n  product bubble bar\n  forming pressed\n  market US\n  piece 70 g\n"
        "  looks like food\n  keep kaolin\n  keep Soda 10 - 20 %\n"
        "  allow scale-step because \"tested\"\n  allow hlb because \"tested too\"\n\n"
        "phase dry\n  100 % soda\n");
  REQUIRE(out.card);
  CHECK(out.card->tweaked);
  CHECK(out.at(out.card->place) == "t.formula:1:1");
  CHECK(out.card->file == 0);
}

TEST_CASE("places of changed lines point into the tweak") {
  const Assembled out = assembled(
      {{"t.formula",
        "tweak t of \"b.formula\"\n  set SLSA to 20 %\n  swap oil for butter\n  add 1 % mica\n"
        "  fill with soda\n"},
       {"b.formula", shares}},
      "t.formula");
  REQUIRE(out.card);
  const auto& dry = out.card->phases[0].lines;
  const auto& wet = out.card->phases[1].lines;
  CHECK(out.at(dry[0].place) == "t.formula:5:3");
  CHECK(out.at(dry[1].place) == "t.formula:2:3");
  CHECK(out.at(dry[1].amount.place) == "t.formula:2:15");
  CHECK(out.at(dry[2].place) == "b.formula:6:3");
  CHECK(out.at(wet[0].place) == "t.formula:3:3");
  CHECK(out.at(wet[0].name.place) == "t.formula:3:16");
  CHECK(out.at(wet[2].place) == "t.formula:4:3");
}

TEST_CASE("tweaks of tweaks apply one after the other, and includes are read once") {
  const Files files{
      {"b.formula", "include \"s.formula\"\n" + shares},
      {"s.formula", "fragrance scent\n"},
      {"one.formula", "tweak one of \"b.formula\"\n  set SLSA to 20 %\n  fill with soda\n"},
      {"two.formula",
       "include \"s.formula\"\ntweak two of \"one.formula\"\n  remove kaolin\n"
       "  fill with soda\nlabel\n  ingredients \"new\"\n"}};
  const Assembled out = assembled(files, "two.formula");
  CHECK(out.printed() ==
        "formula two\n  product bubble bar\n\nphase dry\n  70 % soda\n  20 % SLSA\n\n"
        "phase wet\n  8 % oil\n  2 % scent\n\nfragrance scent\n\nlabel\n  ingredients \"new\"\n");
}

TEST_CASE("a circle of tweaks is an error") {
  CHECK(assembled({{"a.formula", "tweak a of \"b.formula\"\n"},
                   {"b.formula", "tweak b of \"a.formula\"\n"}},
                  "a.formula")
            .errors ==
        "b.formula:1:12: error: the files go round in a circle: a.formula -> b.formula -> "
        "a.formula\n");
}

TEST_CASE("errors of the base are errors of the tweak") {
  CHECK(tweaked(shares + "  0,5 % mica\n", "  remove kaolin\n") ==
        "b.formula:10:3: error: '0,5' has a decimal comma; write 0.5\n");
}

}  // namespace sudsmark::formula::test
