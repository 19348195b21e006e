// `format` as a process: to standard output, to a file, and as a check.
#include <doctest/doctest.h>

#include <string>

#include "process.h"

namespace {

const std::string untidy =
    "formula \"Ebb\"\nproduct bath salts\nphase \"all\"\n99 % sea salt\n1 % sodium bicarbonate\n";
const std::string tidy =
    "formula \"Ebb\"\n  product   bath salts\nphase \"all\"\n  99 %      sea salt\n"
    "  1 %       sodium bicarbonate\n";

}  // namespace

TEST_CASE("a card set in columns, and a check that asks whether it is") {
  const test::Folder folder;
  folder.write("bar.formula", untidy);
  folder.write("set.formula", tidy);
  const auto shown = test::run("format bar.formula", folder.path());
  CHECK(shown.status == 0);
  CHECK(shown.out == tidy);
  CHECK(test::run("format -", folder.path(), untidy).out == tidy);
  CHECK(test::run("format --output new.formula bar.formula", folder.path()).status == 0);
  CHECK(test::contents(folder.path() / "new.formula") == tidy);

  const auto found = test::run("format --check bar.formula", folder.path());
  CHECK(found.status == 1);
  CHECK(found.out.empty());
  CHECK(found.err.find("bar.formula: not tidy") != std::string::npos);
  const auto fine = test::run("format --check set.formula", folder.path());
  CHECK(fine.status == 0);
  CHECK(fine.err.empty());
}

TEST_CASE("a card that cannot be read is told of, and none is written over itself") {
  const test::Folder folder;
  folder.write("bad.formula", "formula \"x\"\n  product bath salts\n  batch 0,6 kg\n");
  folder.write("bar.formula", untidy);
  const auto bad = test::run("format bad.formula", folder.path());
  CHECK(bad.status == 2);
  CHECK(bad.out.empty());
  CHECK(bad.err.starts_with("bad.formula:3:"));
  CHECK(test::run("format --output bar.formula bar.formula", folder.path()).status == 2);
  CHECK(test::contents(folder.path() / "bar.formula") == untidy);
}
