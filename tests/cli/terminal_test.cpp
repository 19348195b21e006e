// What the program does on a terminal and nowhere else: colour, width, progress.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "alike.h"
#include "process.h"
#include "terminal.h"

namespace {

const std::string source = sudsmark::testing::source_dir().string();
const std::string formula = " --on 2026-11-25 fixtures/formulas/fen-crumble.formula";

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

/// The longest of its lines, colours left out.
std::size_t widest(const std::string& text) {
  std::size_t most = 0;
  std::size_t used = 0;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text[at] == '\x1b') {
      while (at < text.size() && text[at] != 'm') ++at;
    } else if (text[at] == '\n') {
      most = std::max(most, used);
      used = 0;
    } else if (text[at] != '\r' && (static_cast<unsigned char>(text[at]) & 0xC0U) != 0x80U) {
      ++used;
    }
  }
  return std::max(most, used);
}

}  // namespace

TEST_CASE("colour on a terminal, unless NO_COLOR or a word on the command line says otherwise") {
  setenv("TERM", "xterm", 1);  // whatever the tests themselves run on
  CHECK(holds(test::run_on_terminal("check" + formula, source, 100).seen, "\x1b[36mworth knowing"));
  CHECK_FALSE(
      holds(test::run_on_terminal("check --color never" + formula, source, 100).seen, "\x1b["));
  setenv("NO_COLOR", "1", 1);
  CHECK_FALSE(holds(test::run_on_terminal("check" + formula, source, 100).seen, "\x1b["));
  CHECK(holds(test::run_on_terminal("check --color always" + formula, source, 100).seen, "\x1b["));
  unsetenv("NO_COLOR");
  const std::string tweak =
      " --on 2026-11-25 --bare --rules tests/golden tests/golden/estuary-tweak.formula";
  CHECK(holds(test::run_on_terminal("compare" + tweak, source, 100).seen, "\x1b[1;33mwarning"));
  CHECK_FALSE(
      holds(test::run_on_terminal("compare --color never" + tweak, source, 100).seen, "\x1b["));
  setenv("TERM", "dumb", 1);
  CHECK_FALSE(holds(test::run_on_terminal("check" + formula, source, 100).seen, "\x1b["));
  setenv("TERM", "xterm", 1);
  // known to every command, also to those that have nothing to colour
  for (const char* command : {"measure", "label"}) {
    CHECK(test::run(command + (" --color never" + formula), source).status == 0);
  }
  CHECK(test::run("explain --color never bath.ph", source).status == 0);
  CHECK(test::run("rules --color never", source).status == 0);
  const test::Folder folder;
  const std::string file = (folder.path() / "report.txt").string();
  test::run_on_terminal("check --output '" + file + "'" + formula, source, 100);
  CHECK(holds(test::contents(file), "dust that burns: "));
  CHECK_FALSE(holds(test::contents(file), "\x1b["));
}

TEST_CASE("lines are folded to the terminal, and nowhere else") {
  for (const std::string& command :
       {"check" + formula, "label" + formula, "measure" + formula,
        std::string("explain emulsifier-to-oil"), std::string("rules"),
        std::string("compare --bare --rules tests/golden tests/golden/estuary-tweak.formula")}) {
    CAPTURE(command);
    const auto ran = test::run_on_terminal(command, source, 64);
    CHECK(ran.status < 2);
    CHECK(widest(ran.seen) <= 64);
    const std::size_t piped = widest(test::run(command, source).out);
    CHECK(piped > 64);
    // what a check finds has a page's width where there is no terminal
    if (command.starts_with("check")) CHECK(piped <= 80);
  }
  // other formats stand as they are
  CHECK(widest(test::run_on_terminal("check --format json" + formula, source, 64).seen) > 200);
}

TEST_CASE(
    "progress is told on a terminal when the work is long and its results go elsewhere, and leaves "
    "nothing behind") {
  using namespace std::chrono_literals;
  const std::string salts =
      "formula \"Ebb\"\n  product bath salts\n  users adults\nphase \"all\"\n  100 % sea salt\n";
  const std::string command = "check --jobs 1 -" + formula;
  // longer than the second after which work is long, and than the program takes to begin
  const auto pause = sudsmark::testing::sanitized ? 6000ms : 1300ms;
  const test::Folder folder;
  const std::string aside = command + " > '" + (folder.path() / "report.txt").string() + "'";
  const auto slow = test::run_on_terminal(aside, source, 100, salts, pause);
  CHECK(slow.status == 0);
  CHECK(slow.seen.starts_with("\rchecked 1 of 2 formulas"));
  CHECK(slow.seen.ends_with("\r\x1b[K"));
  CHECK(holds(test::contents(folder.path() / "report.txt"), "dust that burns: "));
  // where the results themselves come by, they are the progress
  CHECK_FALSE(holds(test::run_on_terminal(command, source, 100, salts, pause).seen, "checked "));
  const auto quick = test::run_on_terminal(aside, source, 100, salts);
  CHECK(quick.status == 0);
  CHECK_FALSE(holds(quick.seen, "checked"));
}
