// `suggest` as a process: its statuses, and the tweak file that it writes and is read back.
#include <doctest/doctest.h>

#include <string>

#include "process.h"

namespace {

const std::string reed =
    "formula \"Reed\"\n  product bubble bar\n  batch 2 kg\n  keep SLSA\nphase \"all\"\n"
    "  q.s. sodium bicarbonate\n  22 % SLSA\n  3 % glycerin\n  0.6 % polysorbate 80\n"
    "  1.5 % rice bran oil\n  2.5 % \"Fox Fern\"\nfragrance \"Fox Fern\"\n  limit 3 %\n"
    "  category 9\n  undeclared none\nworkshop \"loft\"\n  scale 0.1 g to 3 kg\n";
const std::string only = " --only emulsifier-to-oil,scent-over-limit";

TEST_CASE("suggest: 0 with an answer or nothing to mend, 1 without, 2 for what cannot be read") {
  const test::Folder folder;
  folder.write("reed.formula", reed);
  const auto made = test::run("suggest reed.formula" + only, folder.path());
  CHECK(made.status == 0);
  CHECK(made.err.empty());
  CHECK(made.out.find("12 g -> 21.1 g  (0.6 % -> 1.055 %)") != std::string::npos);
  CHECK(made.out.find("not a safety assessment") != std::string::npos);
  CHECK(test::run("suggest -" + only, folder.path(), reed).status == 0);
  const auto sound = test::run("suggest --only scent-over-limit reed.formula", folder.path());
  CHECK(sound.status == 0);
  CHECK(sound.out.find("nothing to mend at level warning or above") != std::string::npos);
  std::string pinned = reed;
  for (const char* name : {"polysorbate 80", "rice bran oil", "\"Fox Fern\""}) {
    pinned.replace(pinned.find("  keep SLSA"), 0, std::string("  keep ") + name + "\n");
  }
  folder.write("pinned.formula", pinned);
  const auto none = test::run("suggest pinned.formula" + only, folder.path());
  CHECK(none.status == 1);
  CHECK(none.out.find("cannot all hold\n") != std::string::npos);
  CHECK(none.out.find("  keep polysorbate 80\n") != std::string::npos);
  folder.write("bad.formula", "formula \"Bad\"\n  batch 2,5 kg\n");
  CHECK(test::run("suggest bad.formula", folder.path()).status == 2);
  CHECK(test::run("suggest none.formula", folder.path()).status == 2);
  CHECK(test::run("suggest", folder.path()).status == 2);
  CHECK(test::run("suggest --format sarif reed.formula", folder.path()).status == 2);
  const auto json = test::run("suggest --format json reed.formula" + only, folder.path());
  CHECK(json.status == 0);
  for (const char* part :
       {"\"inShort\": \"raise polysorbate 80\"", "\"mended\": true", "\"edits\"", "\"reminder\""}) {
    CHECK_MESSAGE(json.out.find(part) != std::string::npos, part);
  }
  CHECK(test::run("suggest --format json reed.formula" + only, folder.path()).out == json.out);
}

TEST_CASE("check: --fixes brings answers into SARIF, and is refused without it") {
  const test::Folder folder;
  folder.write("reed.formula", reed);
  const std::string check = "check reed.formula" + only;
  const auto plain = test::run(check + " --format sarif", folder.path());
  CHECK(plain.status == 1);
  CHECK(plain.out.find("\"fixes\"") == std::string::npos);
  const auto fixed = test::run(check + " --format sarif --fixes", folder.path());
  CHECK(fixed.status == 1);
  CHECK(fixed.err.empty());
  for (const char* part : {"\"fixes\"", "\"set polysorbate 80 to 1.055 %\"", "\"1.055 % \""}) {
    CHECK_MESSAGE(fixed.out.find(part) != std::string::npos, part);
  }
  CHECK(test::run(check + " --fixes", folder.path()).status == 2);
  CHECK(test::run(check + " --format json --fixes", folder.path()).status == 2);
  CHECK(test::run(check + " --fixes --format sarif=out.sarif", folder.path()).status == 1);
}

TEST_CASE("suggest: what is written reads back, checks clean, and names its reasons") {
  const test::Folder folder;
  folder.write("reed.formula", reed);
  const std::string write = "suggest --write mended.formula reed.formula" + only;
  CHECK(test::run("check reed.formula" + only, folder.path()).status == 1);
  CHECK(test::run(write, folder.path()).status == 0);
  const std::string written = test::contents(folder.path() / "mended.formula");
  CHECK(written.find(
            "tweak \"Reed, mended\" of \"reed.formula\"\n  set polysorbate 80 to 1.055 %\n") !=
        std::string::npos);
  CHECK(written.find("# mends emulsifier-to-oil: ") != std::string::npos);
  const auto checked = test::run("check mended.formula" + only, folder.path());
  CHECK(checked.status == 0);
  CHECK(checked.err.empty());
  // and it is a formula like any other
  CHECK(test::run("suggest mended.formula" + only, folder.path()).status == 0);
}

TEST_CASE("suggest: nothing is written over, out of the folder, or without an answer") {
  const test::Folder folder;
  folder.write("reed.formula", reed);
  folder.write("mine.formula", "do not touch");
  const std::string write = "suggest reed.formula" + only + " --write ";
  CHECK(test::run(write + "mine.formula", folder.path()).status == 2);
  CHECK(test::contents(folder.path() / "mine.formula") == "do not touch");
  CHECK(test::run(write + "reed.formula --replace", folder.path()).status == 2);
  CHECK(test::contents(folder.path() / "reed.formula") == reed);
  CHECK(test::run(write + "mine.formula --replace --answer 2", folder.path()).status == 0);
  CHECK(test::contents(folder.path() / "mine.formula").find("tweak") != std::string::npos);
  CHECK(test::run("check mine.formula" + only, folder.path()).status == 0);
  CHECK(test::run(write + "other.formula --answer 9", folder.path()).status == 2);
  CHECK(test::run("suggest - --write other.formula" + only, folder.path(), reed).status == 2);
  const auto sound = "suggest --only scent-over-limit reed.formula --write other.formula";
  CHECK(test::run(sound, folder.path()).status == 2);
  std::filesystem::create_directories(folder.path() / "below");
  CHECK(test::run(write + "below/other.formula", folder.path()).status == 2);
  CHECK_FALSE(std::filesystem::exists(folder.path() / "other.formula"));
  CHECK_FALSE(std::filesystem::exists(folder.path() / "below/other.formula"));
}

TEST_CASE("suggest: another batch has the same shares and other weighings") {
  const test::Folder folder;
  folder.write("reed.formula", reed);
  const auto made =
      test::run("suggest --batch 6kg --write big.formula reed.formula" + only, folder.path());
  CHECK(made.status == 0);
  CHECK(made.out.find("36 g -> 63.2 g  (0.6 % -> 1.0533 %)") != std::string::npos);
  CHECK(test::contents(folder.path() / "big.formula").find("  scale batch to 6 kg\n") !=
        std::string::npos);
  CHECK(test::run("check big.formula" + only, folder.path()).status == 0);
  const auto check = test::run("check --batch 6kg reed.formula" + only, folder.path());
  CHECK(check.status == 1);
  CHECK(check.out == test::run("check reed.formula" + only, folder.path()).out);
  const auto compared =
      test::run("compare --batch 6kg reed.formula big.formula" + only, folder.path());
  CHECK(compared.status == 0);
}

TEST_CASE("suggest: substitutes of a material") {
  const test::Folder folder;
  folder.write("reed.formula", reed);
  const auto made = test::run("suggest --swap 'rice bran oil' reed.formula", folder.path());
  CHECK(made.status == 0);
  CHECK(made.out.find("in the place of Rice bran oil (oil)") != std::string::npos);
  // oils of the same required HLB come first, and a difference is said in figures
  CHECK(made.out.find("no difference is known") != std::string::npos);
  std::string castor = reed;
  castor.replace(castor.find("rice bran oil"), 13, "castor oil");
  folder.write("castor.formula", castor);
  const auto unlike = test::run("suggest --swap 'castor oil' castor.formula", folder.path());
  CHECK(unlike.status == 0);
  CHECK(unlike.out.find("required HLB 13 instead of 14") != std::string::npos);
  const auto wrong = test::run("suggest --swap 'shea butter' reed.formula", folder.path());
  CHECK(wrong.status == 2);
  CHECK(wrong.err.find("does not stand in the formula") != std::string::npos);
  CHECK(test::run("suggest --swap SLSA --write x.formula reed.formula", folder.path()).status == 2);
}

}  // namespace
