// The program's manners: exit statuses, options, standard input, output files, many files.
#include <doctest/doctest.h>

#include <string>

#include "process.h"

namespace {

const std::string sound =
    "formula \"Ebb\"\n  product bath salts\n  users adults\nphase \"all\"\n  99 % sea salt\n"
    "  1 % sodium bicarbonate\n";
const std::string oily =
    "formula \"Slick\"\n  product bath fizzy\nphase \"all\"\n  60 % sodium bicarbonate\n"
    "  34 % citric acid\n  6 % rice bran oil\n";

TEST_CASE("exit statuses: 0 fine, 1 found, 2 unusable") {
  const test::Folder folder;
  folder.write("sound.formula", sound);
  folder.write("oily.formula", oily);
  folder.write("bad.formula",
               "formula \"x\"\n  product bath salts\nphase \"a\"\n  0,6 g sea salt\n");
  CHECK(test::run("check sound.formula", folder.path()).status == 0);
  CHECK(test::run("check oily.formula", folder.path()).status == 1);
  CHECK(test::run("check bad.formula", folder.path()).status == 2);
  CHECK(test::run("check missing.formula", folder.path()).status == 2);
  CHECK(test::run("check", folder.path()).status == 2);
  CHECK(test::run("check --no-such sound.formula", folder.path()).status == 2);
  CHECK(test::run("check --on 2026-02-30 sound.formula", folder.path()).status == 2);
  CHECK(test::run("check --only no-such-rule sound.formula", folder.path()).status == 2);
  CHECK(test::run("--help", folder.path()).status == 0);
  CHECK(test::run("--version", folder.path()).out.starts_with("sudsmark "));
}

TEST_CASE("every file that can be read is checked, whatever is wrong with another") {
  const test::Folder folder;
  folder.write("a/bad.formula",
               "formula \"x\"\n  product bath salts\nphase \"a\"\n  1 tsp sea salt\n");
  folder.write("a/oily.formula", oily);
  const auto ran = test::run("check --format lines a", folder.path());
  CHECK(ran.status == 2);
  CHECK(ran.err.starts_with("a/bad.formula:4:"));
  CHECK(ran.out.find("a/oily.formula:") != std::string::npos);
}

TEST_CASE("where nothing could be read, nothing is printed but why") {
  const test::Folder folder;
  for (const std::string command : {"label", "measure", "measure --sheet"}) {
    const auto ran = test::run(command + " missing.formula", folder.path());
    CHECK(ran.status == 2);
    CHECK(ran.out.empty());
    CHECK(ran.err == "sudsmark: error: missing.formula: cannot be read: no such file\n");
  }
}

TEST_CASE("standard input, output file, the reminder") {
  const test::Folder folder;
  const auto piped = test::run("check -", folder.path(), sound);
  CHECK(piped.status == 0);
  CHECK(piped.out.find("not a safety assessment") != std::string::npos);
  const auto written = test::run("check --output report.txt -", folder.path(), sound);
  CHECK(written.status == 0);
  CHECK(written.out.empty());
  CHECK(test::contents(folder.path() / "report.txt") == piped.out);
  const auto nowhere = test::run("check --output no/such/folder/r.txt -", folder.path(), sound);
  CHECK(nowhere.status == 2);
}

TEST_CASE("the same bytes for any number of jobs, in the order of the arguments") {
  const test::Folder folder;
  std::string names;
  for (int at = 0; at < 40; ++at) {
    const std::string name = "f" + std::to_string(at) + ".formula";
    folder.write(name, at % 2 == 0 ? sound : oily);
    names = name + " " + names;
  }
  const auto one = test::run("check --jobs 1 " + names, folder.path());
  const auto many = test::run("check --jobs 7 " + names, folder.path());
  CHECK(one.status == 1);
  CHECK(one.out == many.out);
  const auto json = test::run("check --format json --jobs 1 " + names, folder.path());
  CHECK(json.out == test::run("check --format json --jobs 5 " + names, folder.path()).out);
}

TEST_CASE("a threshold, one rule alone, one rule left out") {
  const test::Folder folder;
  folder.write("oily.formula", oily);
  CHECK(test::run("check --fail-on error --only emulsifier-to-oil oily.formula", folder.path())
            .status == 0);
  CHECK(test::run("check --only emulsifier-to-oil oily.formula", folder.path()).status == 1);
  const auto without = test::run("check --without emulsifier-to-oil oily.formula", folder.path());
  CHECK(without.out.find("emulsifier-to-oil") == std::string::npos);
}

TEST_CASE("a user's rules add and replace; --bare leaves the built-in ones out") {
  const test::Folder folder;
  folder.write("sound.formula", sound);
  folder.write(
      "own/house.yaml",
      "subject: House rules\nauthority: craft\n"
      "sources:\n  - { id: house, kind: common practice, title: the house }\n"
      "rules:\n  - id: salt-first\n    title: Salt first\n    expect: share(salt) >= 99.5 %\n"
      "    message: \"{share(salt)} of salt\"\n    why: So we do.\n    remedy: More salt.\n"
      "    sources: [house]\n");
  const auto added = test::run("check --format lines --rules own sound.formula", folder.path());
  CHECK(added.status == 1);
  CHECK(added.out.find("[salt-first]") != std::string::npos);
  const auto bare = test::run("check --bare --rules own sound.formula", folder.path());
  CHECK(bare.out.find("    1 should change\n") != std::string::npos);
  CHECK(bare.out.find("kept: 0\n") != std::string::npos);
  folder.write("broken/house.yaml", "rules:\n  - id: x\n    expct: oils > 1\n");
  const auto broken = test::run("check --rules broken sound.formula", folder.path());
  CHECK(broken.status == 2);
  CHECK(broken.err.find("broken/house.yaml:3:5: error: ") != std::string::npos);
}

TEST_CASE(
    "explain: rules, measures, materials, kinds of product, and the nearest of what is none") {
  const test::Folder folder;
  for (const char* name : {"emulsifier-to-oil", "bath.ph", "slsa", "bubble bar", "measures"}) {
    const auto ran = test::run(std::string("explain ") + name, folder.path());
    CHECK_MESSAGE(ran.status == 0, name);
    CHECK(ran.out.find("not a safety assessment") != std::string::npos);
  }
  const auto wrong = test::run("explain emulsifier-to-oyl", folder.path());
  CHECK(wrong.status == 2);
  CHECK(wrong.err.find("'emulsifier-to-oil'") != std::string::npos);
  // two limits, told apart (bath.ph), and never seven as neutral
  const auto ph = test::run("explain bath.ph", folder.path());
  CHECK(ph.out.find("bath.ph_aired") != std::string::npos);
  CHECK(ph.out.find("6.80") != std::string::npos);
}

TEST_CASE("the built-in rules' own examples all do as they should") {
  const test::Folder folder;
  const auto ran = test::run("rules --verify", folder.path());
  CHECK_MESSAGE(ran.status == 0, ran.err);
}

}  // namespace
