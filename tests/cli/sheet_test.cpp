// `measure --sheet` and `--rounded` through the program.
#include <doctest/doctest.h>

#include <string>

#include "process.h"
#include "squeezed.h"

namespace {

const std::string fizzy =
    "formula \"Gale\"\n  product bath fizzy\n  forming pressed\n  batch 1 kg\n"
    "workshop \"loft\"\n  scale 0.1 g to 3 kg\n"
    "phase \"all\"\n  660 g sodium bicarbonate\n  339.74 g citric acid\n  0.26 g blue 1 dye\n";

TEST_CASE("measure --sheet prints a bench sheet, and text alone") {
  const test::Folder folder;
  folder.write("gale.formula", fizzy);
  const auto ran = test::run("measure --sheet gale.formula", folder.path());
  CHECK(ran.status == 0);
  // what forbids it comes first, and names the material
  CHECK(ran.out.find("Not to be made as it is: a check finds what forbids it.\n"
                     "  line 10: Blue 1 dye: each step of the scale is 38.5 % of it") <
        ran.out.find("\nBench sheet: Gale\n"));
  CHECK(ran.out.find("\nBench sheet: Gale\n") != std::string::npos);
  CHECK(ran.out.find("Dilution of 'blue 1 dye' in 'sodium bicarbonate'") != std::string::npos);
  CHECK(ran.out.find("not a safety assessment") != std::string::npos);
  CHECK(ran.out.find("composition") == std::string::npos);
  CHECK(test::run("measure --sheet --format json gale.formula", folder.path()).status == 2);
  CHECK(test::run("measure --sheet none.formula", folder.path()).status == 2);
  const auto ascii = test::run("measure --sheet --ascii gale.formula", folder.path());
  for (const char letter : ascii.out) CHECK(static_cast<unsigned char>(letter) < 0x80);
}

TEST_CASE("--rounded takes every mass as the scale shows it") {
  const test::Folder folder;
  folder.write("gale.formula", fizzy);
  const auto stated = test::run("measure gale.formula", folder.path());
  const auto rounded = test::run("measure --rounded gale.formula", folder.path());
  CHECK(test::squeezed(stated.out).find(" 0.26 g weighing.smallest\n") != std::string::npos);
  CHECK(test::squeezed(rounded.out).find(" 0.3 g weighing.smallest\n") != std::string::npos);
  CHECK(test::run("check --rounded --fail-on error --only weighing-too-coarse gale.formula",
                  folder.path())
            .status == 0);
}

}  // namespace
