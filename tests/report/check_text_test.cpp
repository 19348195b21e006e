// The text for people: how much of it there is, and in which order it comes.
#include <doctest/doctest.h>

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <sstream>
#include <string>
#include <vector>

#include <sudsmark/check.h>
#include <sudsmark/report.h>

#include "case_files.h"
#include "report/maker_words.h"
#include "written.h"

namespace {

namespace fs = std::filesystem;
using namespace sudsmark;
using namespace sudsmark::testing;

RunResult checked(const std::string& path, const std::string& text) {
  static const Rulesets rulesets = Rulesets::built_in();
  CheckOptions options;
  fill(find_report(Command::check, "text")->wants, options);
  options.on = std::chrono::year_month_day{std::chrono::year(2026), std::chrono::November,
                                           std::chrono::day(25)};
  options.read = [&](const std::string& name) -> std::optional<std::string> {
    const fs::path other = fs::path(path).parent_path() / fs::path(name).filename();
    return fs::is_regular_file(other) ? std::optional(file_contents(other)) : std::nullopt;
  };
  return check({path, text, true}, rulesets, options);
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> out;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) out.push_back(line);
  return out;
}

/// Lines below a heading, to the next that is not indented.
std::size_t below(const std::vector<std::string>& lines, const std::string& heading) {
  const auto at = std::find(lines.begin(), lines.end(), heading);
  if (at == lines.end()) return 0;
  const auto end = std::find_if(at + 1, lines.end(),
                                [](const std::string& line) { return !line.starts_with(' '); });
  return static_cast<std::size_t>(end - at - 1);
}

std::vector<fs::path> formulas(const std::string& folder) {
  std::vector<fs::path> out;
  for (const auto& entry : fs::directory_iterator(source_dir() / "fixtures" / folder)) {
    if (entry.path().extension() == ".formula") out.push_back(entry.path());
  }
  std::sort(out.begin(), out.end());
  return out;
}

/// The formula that README.md begins with.
std::string ebb_line() {
  const std::string manual = file_contents(source_dir() / "README.md");
  const std::string fence = "```formula ebb-line.formula\n";
  const std::size_t from = manual.find(fence) + fence.size();
  return manual.substr(from, manual.find("```", from) - from);
}

std::size_t wide(const std::vector<std::string>& lines) {
  return static_cast<std::size_t>(
      std::count_if(lines.begin(), lines.end(), [](const std::string& line) {
        const auto columns = std::count_if(line.begin(), line.end(), [](char c) {
          return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
        });
        return columns > 80;
      }));
}

}  // namespace

TEST_CASE("the formula of the manual: what must change is seen in the first lines") {
  const RunResult run = checked("ebb-line.formula", ebb_line());
  REQUIRE(run.formulas.size() == 1);
  const auto lines = lines_of(written(Command::check, "text", &run));
  CHECK(lines.size() <= 25);
  CHECK(wide(lines) == 0);
  CHECK(lines[0] == "Ebb Line    2 must change, 1 should");
  CHECK(lines[1].empty());
  CHECK(lines[2] == "must change");
  CHECK(lines[3] == "  line 21   3 % \"Sea Fig\"");
  const auto should = std::find(lines.begin(), lines.end(), "should change");
  const auto knowing = std::find(lines.begin(), lines.end(), "worth knowing");
  const auto kept = std::find_if(lines.begin(), lines.end(), [](const std::string& line) {
    return line.starts_with("kept: ");
  });
  CHECK(should < knowing);
  CHECK(knowing < kept);
  CHECK(kept < lines.end());
}

TEST_CASE("a sound demo is told in twelve lines, three of them worth knowing") {
  std::size_t demos = 0;
  for (const fs::path& path : formulas("formulas")) {
    const RunResult run = checked(path.string(), file_contents(path));
    if (run.formulas.empty()) continue;  // what the others include
    CAPTURE(path.filename().string());
    ++demos;
    const std::string text = written(Command::check, "text", &run);
    CAPTURE(text);
    const auto lines = lines_of(text);
    CHECK(lines.size() <= 12);
    CHECK(below(lines, "worth knowing") <= 3);
    CHECK(lines[0].ends_with("    nothing to change"));
    CHECK(wide(lines) == 0);
  }
  CHECK(demos >= 5);
}

TEST_CASE("sound formulas have at most three lines worth knowing") {
  for (const fs::path& path : formulas("sound")) {
    const RunResult run = checked(path.string(), file_contents(path));
    REQUIRE(run.formulas.size() == 1);
    const std::string text = written(Command::check, "text", &run);
    CAPTURE(path.filename().string());
    CAPTURE(text);
    CHECK(below(lines_of(text), "worth knowing") <= 3);
  }
}

TEST_CASE("several formulas end with one sum, and quietly only that is told which weighs") {
  RunResult run;
  run.add(checked("ebb-line.formula", ebb_line()));
  for (const fs::path& path : formulas("formulas")) {
    run.add(checked(path.string(), file_contents(path)));
  }
  CHECK(run.formulas.size() >= 6);
  CHECK(run.libraries >= 2);
  const std::string all = written(Command::check, "text", &run);
  const std::string sum = std::to_string(run.formulas.size()) + " formulas: 1 must change, " +
                          std::to_string(run.formulas.size() - 1) + " sound; " +
                          std::to_string(run.libraries) + " files are libraries\n";
  CHECK(all.find(sum) != std::string::npos);
  CHECK(all.find("broken most often: ") != std::string::npos);
  ReportOptions quiet;
  quiet.quiet = Level::error;
  const std::string heavy = written(Command::check, "text", &run, quiet);
  CHECK(heavy.find("scent-over-limit") != std::string::npos);
  CHECK(heavy.find("should change") == std::string::npos);
  CHECK(heavy.find("worth knowing") == std::string::npos);
  CHECK(heavy.find("kept: ") == std::string::npos);
  CHECK(heavy.find(sum) != std::string::npos);
}

TEST_CASE("nothing checked is said, and a file without words is an error") {
  const RunResult nothing;
  CHECK(written(Command::check, "text", &nothing) == "nothing was checked\n");
  for (const char* text : {"", "\n\n", "# a comment\n"}) {
    const RunResult run = checked("empty.formula", text);
    REQUIRE(run.problems.size() == 1);
    CHECK(run.problems.front().id == "nothing-written");
    CHECK(run.libraries == 0);
  }
}

TEST_CASE("what a maker wrote, and the first sentence of a remedy") {
  Finding finding;
  finding.subject = "Sodium lauryl sulfoacetate";
  finding.line = 14;
  finding.line_text = "  24 %      SLSA   # from the big bag";
  CHECK(report::maker_line(finding) == "24 % SLSA");
  CHECK(report::maker_name(finding) == "SLSA");
  finding.line_text = "  0.6 g per kg  blue 1 lake";
  CHECK(report::maker_name(finding) == "blue 1 lake");
  finding.line_text = "  3 - 4 %  \"Sea Fig\"";
  CHECK(report::maker_name(finding) == "Sea Fig");
  finding.line_text = "  q.s.  corn starch, fine";
  CHECK(report::maker_name(finding) == "corn starch");
  finding.line_text = "phase \"dry\"";
  CHECK(report::maker_name(finding) == "Sodium lauryl sulfoacetate");
  CHECK(report::remedy_in_short("Take less, or another. Then look again.") ==
        "take less, or another");
  CHECK(report::remedy_in_short("FFP3 or P100 where it is tipped.") ==
        "FFP3 or P100 where it is tipped");
  CHECK(report::remedy_in_short("A lake, such as FD&C Blue No. 1. It fades less.") ==
        "a lake, such as FD&C Blue No. 1");
}

namespace {

struct FirstLines {
  const char* formula;
  std::vector<const char*> words;  ///< the line to change, and what to do with it
};

/// A reader's test on paper: of each of these, whoever reads ten lines knows what to do.
const std::vector<FirstLines>& to_be_done() {
  static const std::vector<FirstLines> all{
      {"bar-monohydrate", {"60 g citric acid monohydrate", "use the anhydrous grade"}},
      {"certificate-for-candles", {"1.2 % Sea Fig", "category of this product"}},
      {"conditioner-two-in-one", {"10 % SCI", "leave the anionic"}},
      {"dry-dough", {"44 % sodium bicarbonate", "add binder"}},
      {"essential-oil-on-bare-salt", {"0.9 % Lavender oil", "polysorbate 20 or 80"}},
      {"glitter-across-the-strait", {"0.2 % plastic glitter", "mica, or cellulose glitter"}},
      {"glycerin-by-the-cup", {"12.5 % glycerin", "take liquid out"}},
      {"hardly-any-foam", {"20 % SLSA", "a larger piece for one bath"}},
      {"lead-in-the-clay", {"traces lead 20 ppm", "take a purer grade"}},
      {"milk-dough", {"40 g goat milk powder", "leave it out, or take the water out"}},
      {"old-keeper-overseas", {"0.3 % hexachlorophene", "leave the material out"}},
      {"one-constituent-in-two-scents", {"2 % fennel breeze", "take less"}},
      {"salts-fizzing-epsom", {"1100 g Epsom salt", "take sea salt or leave the salt out"}},
      {"scrub-shells", {"25 % ground walnut shell", "at most 10 %, ground fine"}},
      {"steamer-little-ones", {"30 g \"Ice\"", "take an oil without them"}}};
  return all;
}

}  // namespace

TEST_CASE("what must be done stands in the first ten lines") {
  for (const FirstLines& wanted : to_be_done()) {
    const fs::path path =
        source_dir() / "fixtures/faulty" / (std::string(wanted.formula) + ".formula");
    const RunResult run = checked(path.string(), file_contents(path));
    const auto lines = lines_of(written(Command::check, "text", &run));
    std::string first;
    for (std::size_t at = 0; at < std::min<std::size_t>(lines.size(), 10); ++at) {
      // a sentence may go on in the next line
      first += (at == 0 ? "" : " ") +
               lines[at].substr(std::min(lines[at].find_first_not_of(' '), lines[at].size()));
    }
    for (const char* const one : wanted.words) {
      CHECK_MESSAGE(first.find(one) != std::string::npos, wanted.formula, ": ", one, " in ", first);
    }
  }
}
