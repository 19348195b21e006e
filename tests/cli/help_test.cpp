// What the help shows: its width, its defaults, and that each of its examples is a command that
// runs.
#include <doctest/doctest.h>

#include <algorithm>
#include <sstream>
#include <string>
#include <vector>

#include "process.h"
#include "terminal.h"

namespace {

using test::Folder;
using test::run;

const std::string source = sudsmark::testing::source_dir().string();

bool holds(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

std::vector<std::string> lines(const std::string& text) {
  std::vector<std::string> out;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) out.push_back(line);
  return out;
}

std::size_t widest(const std::string& text) {
  std::size_t most = 0;
  for (const std::string& line : lines(text)) {
    most = std::max(most, line.size() - (line.ends_with('\r') ? 1 : 0));
  }
  return most;
}

/// As the short help names them.
std::vector<std::string> commands() {
  std::vector<std::string> out;
  for (const std::string& line : lines(run("help", source).out)) {
    const bool row = line.starts_with("  ") && line.size() > 2 && line[2] >= 'a' && line[2] <= 'z';
    const std::string word = row ? line.substr(2, line.find(' ', 2) - 2) : std::string();
    if (row && word != "help") out.push_back(word);
  }
  return out;
}

/// The lines of a command's help that are command lines.
std::vector<std::string> examples(const std::string& help) {
  std::vector<std::string> out;
  for (const std::string& line : lines(help.substr(help.find("Examples:")))) {
    if (line.starts_with("  sudsmark ")) out.push_back(line.substr(11));
  }
  return out;
}

/// The files that examples name: a maker's bar, a tweak of it, a folder of formulas, rules of a
/// house.
void write_files(const Folder& folder) {
  std::string bar = test::contents(source + "/fixtures/faulty/emulsifier-forgotten.formula");
  // with hardly any of it, where the map of two lines asks for it
  const std::string oil = "  1 %    rice bran oil\n";
  bar.insert(bar.find(oil) + oil.size(), "  0.2 %  polysorbate 80\n");
  folder.write("bar.formula", bar);
  folder.write("formulas/bar.formula", bar);
  folder.write("bar-for-skin.formula",
               "tweak \"For skin\" of \"bar.formula\"\n  set corn starch to 5 %\n");
  folder.write(
      "house/house.yaml",
      "subject: House rules\nedition: \"2026-11\"\nauthority: craft\nsources:\n"
      "  - { id: house-notebook, kind: common practice, title: Our notebook }\nrules: []\n");
}

TEST_CASE("every example of every help is a command that runs") {
  const auto all = commands();
  CHECK(all.size() >= 8);
  for (const std::string& command : all) {
    const std::string help = run("help " + command, source).out;
    const auto shown = examples(help);
    CHECK_MESSAGE(shown.size() >= 2, command);
    const Folder folder;
    write_files(folder);
    for (const std::string& example : shown) {
      CAPTURE(example);
      CHECK(example.starts_with(command));
      const auto ran = run(example, folder.path());
      // one of them names a folder that only its reader has
      const bool own = example.find("house/") != std::string::npos;
      CHECK_MESSAGE((own || ran.status < 2), ran.err);
    }
  }
}

TEST_CASE("a help tells defaults and when the command ends with which status") {
  for (const std::string& command : commands()) {
    const std::string help = run("help " + command, source).out;
    CAPTURE(command);
    CHECK(holds(help, "\nEnds with status 0"));
    // one command writes a card, and no report
    const bool card = command == "format";
    CHECK(
        holds(help, "--output FILE           write the " + std::string(card ? "card" : "report")));
    CHECK(holds(help, "(default: auto)") != card);
    CHECK(holds(help, "\n  --help"));
  }
  const std::string check = run("help check", source).out;
  CHECK(holds(check, "(default: warning)"));
  CHECK(holds(check, "(default: today)"));
  // words to choose from stand there once
  CHECK(check.find("never") == check.rfind("never"));
  CHECK(holds(run("help compare", source).out, "Usage: sudsmark compare [OPTIONS] [BASE] TWEAK\n"));
}

TEST_CASE("a help is as wide as the terminal, and 80 columns elsewhere") {
  for (const std::string& words : commands()) {
    const std::string help = run("help " + words, source).out;
    CAPTURE(words);
    CHECK(widest(help) <= 80);
    const auto narrow = test::run_on_terminal("help " + words, source, 52);
    CHECK(widest(narrow.seen) <= 70);  // an example is a line to copy, and stays whole
    CHECK(lines(narrow.seen).size() > lines(help).size());
  }
  CHECK(widest(test::run_on_terminal("help", source, 52).seen) <= 52);
  CHECK(widest(test::run_on_terminal("help", source, 100).seen) > 80);
}

}  // namespace
