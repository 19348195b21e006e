// `compare` through the program: exit statuses, a tweak alone, both formats, batches.
#include <doctest/doctest.h>

#include <string>

#include "process.h"
#include "squeezed.h"

namespace {

const std::string ebb =
    "formula \"Ebb\"\n  product bath fizzy\n  batch 1 kg\nphase \"all\"\n"
    "  64 % sodium bicarbonate\n  34 % citric acid\n  1 % rice bran oil\n  1 % polysorbate 80\n";
const std::string oilier =
    "tweak \"Ebb, oilier\" of \"ebb.formula\"\n  set rice bran oil to 6 %\n  piece 90 g\n";
const std::string same = "tweak \"Ebb again\" of \"ebb.formula\"\n  set rice bran oil to 1 %\n";

TEST_CASE("compare: 1 where the tweak is worse at the threshold, 0 where not, 2 for unreadable") {
  const test::Folder folder;
  folder.write("ebb.formula", ebb);
  folder.write("oilier.formula", oilier);
  folder.write("same.formula", same);
  folder.write("bad.formula", "tweak \"Bad\" of \"ebb.formula\"\n  set rice bran oil to 6,5 %\n");
  const std::string rule = " --only emulsifier-to-oil";
  const auto worse = test::run("compare ebb.formula oilier.formula" + rule, folder.path());
  CHECK(worse.status == 1);
  CHECK(worse.out.find("[emulsifier-to-oil]\n    caused by set rice bran oil to 6 % "
                       "(oilier.formula:2:3)\n") != std::string::npos);
  const auto alone = test::run("compare oilier.formula" + rule, folder.path());
  CHECK(alone.status == 1);
  CHECK(alone.out == worse.out);
  CHECK(test::run("compare oilier.formula --fail-on error" + rule, folder.path()).status == 0);
  CHECK(test::run("compare oilier.formula ebb.formula" + rule, folder.path()).status == 0);
  const auto nothing = test::run("compare same.formula", folder.path());
  CHECK(nothing.status == 0);
  CHECK(nothing.out.find("nothing changed\n") != std::string::npos);
  CHECK(nothing.out.find("not a safety assessment") != std::string::npos);
  CHECK(test::run("compare ebb.formula", folder.path()).status == 2);
  CHECK(test::run("compare ebb.formula bad.formula", folder.path()).status == 2);
  CHECK(test::run("compare ebb.formula none.formula", folder.path()).status == 2);
  CHECK(test::run("compare", folder.path()).status == 2);
  CHECK(test::run("compare --format sarif oilier.formula", folder.path()).status == 2);
}

TEST_CASE("compare: JSON names the edits by their number; the same on every run") {
  const test::Folder folder;
  folder.write("ebb.formula", ebb);
  folder.write("oilier.formula", oilier);
  const std::string command = "compare --format json --only emulsifier-to-oil oilier.formula";
  const auto ran = test::run(command, folder.path());
  CHECK(ran.status == 1);
  for (const char* part : {"\"direction\": \"worse\"", "\"words\": \"set rice bran oil to 6 %\"",
                           "\"kind\": \"raised\"", "\"emulsifier.to_oil\"", "\"reminder\""}) {
    CHECK_MESSAGE(ran.out.find(part) != std::string::npos, part);
  }
  CHECK(test::run(command, folder.path()).out == ran.out);
}

TEST_CASE("with the base as reference only what got worse counts and is told") {
  const test::Folder folder;
  const std::string oily =
      "formula \"Slick\"\n  product bath fizzy\nphase \"all\"\n  60 % sodium bicarbonate\n"
      "  34 % citric acid\n  6 % rice bran oil\n";
  folder.write("oily.formula", oily);
  folder.write("tweak.formula", "tweak \"Slick two\" of \"oily.formula\"\n  piece 90 g\n");
  folder.write("ebb.formula", ebb);
  folder.write("oilier.formula", oilier);
  const std::string check = "check --only emulsifier-to-oil ";
  CHECK(test::run(check + "tweak.formula", folder.path()).status == 1);
  CHECK(test::run(check + "--base-as-reference tweak.formula", folder.path()).status == 0);
  CHECK(test::run(check + "--base-as-reference oilier.formula", folder.path()).status == 1);
  // no tweak has no base: everything counts
  CHECK(test::run(check + "--base-as-reference oily.formula", folder.path()).status == 1);
  const auto brief = test::run("compare --base-as-reference oilier.formula", folder.path());
  CHECK(brief.out.find("measures (") == std::string::npos);
  CHECK(brief.out.find("[emulsifier-to-oil]") != std::string::npos);
}

TEST_CASE("a tweak beside its base: what changed counts in a check, and once") {
  const test::Folder folder;
  folder.write("ebb.formula", ebb);
  folder.write("sour.formula",
               "tweak \"Ebb, sour\" of \"ebb.formula\"\n"
               "  swap citric acid for cream of tartar\n");
  folder.write("milder.formula",
               "tweak \"Ebb, sour, milder\" of \"sour.formula\"\n  users adults\n");
  const std::string check = "check --only tartar-for-quick-acid ";
  const auto sour = test::run(check + "--format lines sour.formula", folder.path());
  CHECK(sour.status == 1);
  CHECK(sour.out.find("sour.formula:2:3: warning: cream of tartar came in for a quick acid: ") ==
        0);
  CHECK(test::run(check + "ebb.formula", folder.path()).status == 0);
  CHECK(test::run(check + "milder.formula", folder.path()).status == 0);
  CHECK(test::run(check + "--base-as-reference sour.formula", folder.path()).status == 1);
  CHECK(test::run(check + "--base-as-reference milder.formula", folder.path()).status == 0);
  CHECK(test::run("compare --only tartar-for-quick-acid sour.formula", folder.path()).status == 1);
  // an allow takes the weight off, as off any rule of the craft
  folder.write("allowed.formula",
               "tweak \"Ebb, sour\" of \"ebb.formula\"\n"
               "  swap citric acid for cream of tartar\n"
               "  allow tartar-for-quick-acid because \"it is meant to be slow\"\n");
  CHECK(test::run(check + "allowed.formula", folder.path()).status == 0);
}

TEST_CASE("another batch by an option") {
  const test::Folder folder;
  folder.write("ebb.formula", ebb);
  const auto measured = test::run("measure --batch 6kg ebb.formula", folder.path());
  CHECK(measured.status == 0);
  CHECK(test::squeezed(measured.out).find(" 6000 g batch.mass\n") != std::string::npos);
  CHECK(test::run("measure --batch '6000 g' ebb.formula", folder.path()).out == measured.out);
  for (const char* wrong : {"six", "6", "0kg", "6l", "-6kg", "kg"}) {
    const auto ran =
        test::run(std::string("measure --batch=") + wrong + " ebb.formula", folder.path());
    CHECK_MESSAGE(ran.status == 2, wrong);
  }
}

}  // namespace
