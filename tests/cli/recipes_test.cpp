// The recipes for CI are run as they stand in src/report/ci.md, in a folder with a formula that is
// sound and one that is not.
#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>
#include <map>
#include <sstream>
#include <string>

#include "process.h"
#include "where.h"

namespace {

constexpr const char* sound =
    "formula \"Calm\"\n  product bath salts\n  users adults\nphase \"all\"\n  100 % sea salt\n";
constexpr const char* faulty =
    "formula \"Foul\"\n  product bath fizzy\n  market GB\nphase \"all\"\n  q.s. sodium "
    "bicarbonate\n"
    "  30 % citric acid\n  1 % ultramarine\n";

/// The blocks of shell by their names.
std::map<std::string, std::string> recipes() {
  const auto path = sudsmark::testing::source_dir() / "src/report/ci.md";
  std::map<std::string, std::string> out;
  std::istringstream stream(test::contents(path));
  std::string name;
  for (std::string line; std::getline(stream, line);) {
    if (line.starts_with("```")) {
      name = name.empty() && line.starts_with("```sh ") ? line.substr(6) : std::string();
    } else if (!name.empty()) {
      out[name] += line + "\n";
    }
  }
  return out;
}

/// A folder of formulas, and the program called by its name.
class Desk {
 public:
  Desk() {
    folder_.write("formulas/calm.formula", sound);
    folder_.write("formulas/foul.formula", faulty);
    const std::string program = sudsmark::testing::program().string();
    folder_.write("bin/sudsmark", "#!/bin/sh\nexec '" + program + "' \"$@\"\n");
    std::filesystem::permissions(folder_.path() / "bin/sudsmark",
                                 std::filesystem::perms::owner_all);
  }

  test::Ran run(const std::string& script) {
    folder_.write("recipe.sh", "PATH=\"$PWD/bin:$PATH\"\n" + script);
    return test::run_command("/bin/sh recipe.sh", folder_.path());
  }

  [[nodiscard]] std::string contents(const std::string& name) const {
    return test::contents(folder_.path() / name);
  }

 private:
  test::Folder folder_;
};

bool there(Desk& desk, const std::string& tool) {
  const bool found = desk.run("command -v " + tool + " >/dev/null\n").status == 0;
  if (!found && std::getenv("SUDSMARK_SKIP_NOTHING") != nullptr) FAIL(tool << " is not installed");
  if (!found) MESSAGE("skipped: " << tool << " is not installed");
  return found;
}

bool holds(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("recipes: a step, a baseline, a SARIF file") {
  auto recipe = recipes();
  Desk desk;
  const test::Ran step = desk.run(recipe["step"]);
  CHECK(step.status == 1);
  CHECK(holds(step.out, "formulas/foul.formula:7:3: error: "));
  CHECK(holds(step.out, "[ultramarine-beside-acid]"));
  CHECK_FALSE(holds(step.out, "calm"));
  CHECK_FALSE(holds(step.out, ": note: "));

  const test::Ran baseline = desk.run("set -e\n" + recipe["baseline"]);
  CHECK(baseline.status == 0);
  // the amount changes for the worse
  const test::Ran worse = desk.run(
      "sed -i 's/1 % ultramarine/2 % ultramarine/; s/30 % citric/60 % citric/' "
      "formulas/foul.formula\nsudsmark check --quiet --baseline baseline.json formulas\n");
  CHECK(worse.status == 1);

  CHECK(desk.run("set -e\n" + recipe["sarif"]).status == 0);
  CHECK(holds(desk.contents("formulas.sarif"), "ultramarine-beside-acid"));
  CHECK_FALSE(holds(desk.contents("formulas.sarif"), "\"fixes\""));
  CHECK(desk.run("set -e\n" + recipe["fixes"]).status == 0);
  CHECK(holds(desk.contents("formulas.sarif"), "\"fixes\""));
  CHECK_FALSE(desk.run("echo nothing >formulas/odd.formula\nset -e\n" + recipe["sarif"]).status ==
              0);
}

TEST_CASE("recipes: a hook before each commit") {
  Desk desk;
  if (!there(desk, "git")) return;
  const std::string hook = recipes()["pre-commit"];
  const test::Ran ran = desk.run(
      "set -e\ngit init -q .\ngit config user.email a@b.example\ngit config user.name maker\n"
      "cat >.git/hooks/pre-commit <<'HOOK'\n" +
      hook +
      "HOOK\nchmod +x .git/hooks/pre-commit\n"
      "git add formulas/calm.formula\ngit commit -q -m calm >/dev/null 2>&1 && echo went\n"
      "git add formulas/foul.formula\ngit commit -q -m foul >/dev/null 2>&1 || echo stayed\n");
  CHECK_MESSAGE(ran.out == "went\nstayed\n", ran.out << ran.err);
}

TEST_CASE("recipes: questions to the JSON") {
  auto recipe = recipes();
  Desk desk;
  if (!there(desk, "jq")) return;
  CHECK(holds(desk.run(recipe["must-change"]).out,
              "formulas/foul.formula\t7\tultramarine-beside-acid\n"));
  const std::string counts = desk.run(recipe["counts"]).out;
  CHECK(holds(counts, "Calm\t0\t0\t"));
  CHECK(holds(counts, "Foul\t1\t"));
  CHECK(holds(desk.run(recipe["rules"]).out, "1 ultramarine-beside-acid\n"));
  CHECK(desk.run(recipe["line-by-line"]).out == "formulas/foul.formula\n");
}
