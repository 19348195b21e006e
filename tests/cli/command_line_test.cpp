// The words of a command line: which are known where, and what is said of others.
#include <doctest/doctest.h>

#include <string>

#include "process.h"

namespace {

using test::Folder;
using test::run;

const std::string sound =
    "formula \"Ebb\"\n  product bath salts\n  users adults\nphase \"all\"\n  99 % sea salt\n"
    "  1 % sodium bicarbonate\n";

bool holds(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

/// What is said of a command line that cannot be: on standard error alone, in one style.
std::string refusal(const std::string& arguments) {
  const Folder folder;
  folder.write("a.formula", sound);
  const auto ran = run(arguments, folder.path());
  CAPTURE(arguments);
  CHECK(ran.status == 2);
  CHECK(ran.out.empty());
  CHECK(ran.err.starts_with("sudsmark: error: "));
  CHECK(ran.err.find('\n') == ran.err.size() - 1);
  return ran.err;
}

TEST_CASE("without a word the program tells its commands") {
  const Folder folder;
  const auto alone = run("", folder.path());
  CHECK(alone.status == 0);
  CHECK(alone.err.empty());
  const auto help = run("help", folder.path());
  CHECK(help.status == 0);
  CHECK(help.out == alone.out);
  CHECK(help.out == run("--help", folder.path()).out);
  for (const std::string command :
       {"check", "compare", "measure", "label", "suggest", "leeway", "explain", "drill", "rules"}) {
    CHECK(holds(help.out, "\n  " + command + " "));
    const auto more = run("help " + command, folder.path());
    CHECK(more.status == 0);
    CHECK(more.out == run(command + " --help", folder.path()).out);
    CHECK(holds(more.out, "Usage: sudsmark " + command + " [OPTIONS]"));
    CHECK(holds(more.out, "Examples:\n  sudsmark " + command));
  }
  const std::string program = "'" + sudsmark::testing::program().string() + "'";
  for (const std::string words : {" --help", " help check"}) {
    const auto full = run("--version && { " + program + words + " >/dev/full; }", folder.path());
    CHECK(full.status == 2);
  }
}

TEST_CASE("an unknown command or option names the nearest") {
  CHECK(holds(refusal("chek a.formula"), "'chek' is no command; perhaps 'check'"));
  CHECK(holds(refusal("help chek"), "'chek' is no command; perhaps 'check'"));
  CHECK(holds(refusal("check --fomat json a.formula"),
              "'--fomat' is no option of check; perhaps '--format'"));
  CHECK(holds(refusal("check --fomat=json a.formula"), "'--fomat' is no option of check"));
  CHECK(holds(refusal("check --no-such"), "'--no-such' is no option of check;"));
  CHECK(holds(refusal("--no-such check a.formula"), "'--no-such' is no option of sudsmark"));
}

TEST_CASE("an option that a command would not read is none of its own") {
  for (const std::string arguments :
       {"suggest --rounded a.formula", "suggest --jobs 2 a.formula", "compare --jobs 2 a.formula",
        "measure --fail-on error a.formula", "measure --only x a.formula",
        "label --without x a.formula", "explain --on 2026-11-01 bath.ph", "rules --jobs 2",
        "drill --market EU"}) {
    CHECK(holds(refusal(arguments), "' is no option of "));
  }
  CHECK(holds(refusal("suggest --answer 2 a.formula"),
              "--answer says something only beside --write"));
  CHECK(holds(refusal("suggest --replace a.formula"), "--write"));
  CHECK(holds(refusal("suggest --swap kaolin --write b.formula a.formula"),
              "--swap does not go with --write"));
  CHECK(holds(refusal("drill --output x.txt"), "--papers"));
  CHECK(holds(refusal("rules --verify --verbose"), "--verbose"));
}

TEST_CASE("values that cannot be, and words that are missing or too many") {
  CHECK(holds(refusal("check"), "check: FILE is required; `sudsmark help check` tells more"));
  CHECK(holds(refusal("compare"), "compare: TWEAK is required"));
  CHECK(holds(refusal("compare a b c"), "compare: takes no more than [BASE] TWEAK"));
  CHECK(holds(refusal("check a.formula --only"), "--only has no RULE behind it"));
  CHECK(holds(refusal("check --bare=yes a.formula"), "--bare takes no value"));
  CHECK(
      holds(refusal("label --on 2026-11-01 --on 2026-11-02 a.formula"), "--on is given more than"));
  CHECK(holds(refusal("help check label"), "'label' is one word too many for help"));
  CHECK(holds(refusal("suggest a.formula b.formula"), "suggest"));
  CHECK(holds(refusal("check --fail-on bad a.formula"),
              "'bad' is none of 'error', 'warning' or 'note'"));
  CHECK(holds(refusal("check --jobs -1 a.formula"), "--jobs"));
  CHECK(holds(refusal("check --jobs 99999999999 a.formula"), "is no number from 0 to 1000"));
  CHECK(holds(refusal("drill --count 0"), "'0' is no number from 1 to 1000"));
  CHECK(holds(refusal("check --on 2026-02-30 a.formula"), "is no day"));
  CHECK(holds(refusal("check --on 2026-+1-01 a.formula"), "is no day"));
  CHECK(holds(refusal("check --on \" 2026-11-1\" a.formula"), "is no day"));
  CHECK(holds(refusal("check --batch lots a.formula"), "is no batch"));
  CHECK(holds(refusal("explain \"$(printf 'no\\033[31m')\""), "no\\x1B[31m"));
}

TEST_CASE("a format that a command has not is refused by naming those it has") {
  CHECK(holds(refusal("check --format yaml a.formula"),
              "known are text, lines, json, json-lines, sarif, html\n"));
  CHECK(holds(refusal("compare --format sarif a.formula"), "known are text, lines, json, html\n"));
  CHECK(holds(refusal("measure --format sarif a.formula"), "known are text, json, csv, html\n"));
  CHECK(holds(refusal("measure --sheet --format json a.formula"), "known are text, html\n"));
  CHECK(holds(refusal("label --format sarif a.formula"), "known are text, json, html\n"));
  CHECK(holds(refusal("suggest --format sarif a.formula"), "known are text, json, html\n"));
  CHECK(holds(refusal("explain --format sarif bath.ph"), "sarif"));
}

TEST_CASE("more threads than the machine gives are no error") {
  const Folder folder;
  folder.write("a.formula", sound);
  folder.write("b.formula", sound);
  CHECK(run("check --jobs 1000 a.formula b.formula", folder.path()).status == 0);
}

}  // namespace
