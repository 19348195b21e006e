// Leeway: each end is what the full check of a tweak says of it.
#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>
#include <optional>
#include <string>

#include <sudsmark/compare.h>
#include <sudsmark/leeway.h>

#include "alike.h"
#include "case_files.h"
#include "property/recipes.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

namespace fs = std::filesystem;

/// Reads files of the project, and one more that is not written.
CheckOptions reading(const std::string& path, const std::string& text) {
  CheckOptions options = on_a_day();
  options.read = [path, text](const std::string& wanted) -> std::optional<std::string> {
    if (wanted == path) return text;
    if (!fs::is_regular_file(wanted)) return std::nullopt;
    return file_contents(wanted);
  };
  return options;
}

std::string plain(double value) {
  std::array<char, 64> buffer{};
  std::snprintf(buffer.data(), buffer.size(), "%.12f", value);
  return buffer.data();
}

/// What a full check says of a tweak that sets one line alone.
class Setting {
 public:
  Setting(const FormulaText& formula, const Rulesets& rulesets, Level threshold)
      : formula_(formula),
        rulesets_(rulesets),
        threshold_(threshold),
        options_(reading(formula.path, formula.text)) {
    before_ = check(formula, rulesets, options_).formulas.front();
  }

  /// The rules that are worse, or none at all where the tweak cannot be made.
  std::optional<std::vector<std::string>> worse(const LeewayLine& line, double share) const {
    // a line of a premix or a portion is set by what it is there
    const double factor = line.container.empty() ? 1 : own_share(line) / *line.share.low;
    return with("  set \"" + line.material + "\" to " + plain(share * factor) + " " + unit(line) +
                "\n");
  }

  /// The same of any edits, a line each.
  std::optional<std::vector<std::string>> with(const std::string& edits) const {
    const fs::path path(formula_.path);
    const std::string text = "tweak \"Set\" of \"" + path.filename().string() + "\"\n" + edits;
    const RunResult run =
        check({(path.parent_path() / "set.formula").string(), text}, rulesets_, options_);
    if (!run.problems.empty()) return std::nullopt;
    std::vector<std::string> out;
    for (const VerdictChange& one : differences(before_, run.formulas.front()).verdicts) {
      Comparison alone;
      alone.verdicts.push_back(one);
      if (got_worse(alone, threshold_)) out.push_back(one.rule);
    }
    return out;
  }

 private:
  /// The amount of the line as it is written, and its unit.
  [[nodiscard]] std::string written(const LeewayLine& line) const {
    std::istringstream text(formula_.text);
    std::string out;
    for (std::uint32_t at = 0; at < line.line; ++at) std::getline(text, out);
    return out;
  }
  [[nodiscard]] double own_share(const LeewayLine& line) const { return std::stod(written(line)); }
  [[nodiscard]] std::string unit(const LeewayLine& line) const {
    if (line.container.empty()) return "%";
    const std::string text = written(line);
    if (text.find(" g per kg ") != std::string::npos) return "g per kg";
    return text.find(" g ") != std::string::npos ? "g" : "%";
  }

  const FormulaText& formula_;
  const Rulesets& rulesets_;
  const Level threshold_;
  const CheckOptions options_;
  FormulaResult before_;
};

void check_end(const Setting& setting, const LeewayLine& line, bool least) {
  const LeewayEnd& end = least ? line.least : line.most;
  // nothing at all is another matter than next to nothing
  const double out = least ? -std::min(line.step, end.share / 2) : line.step;
  const std::string which = least ? " least " : " most ";
  INFO(line.material, which, end.share, " by ", end.stopped_by ? end.stopped_by->rule : "nothing");
  const auto at = setting.worse(line, end.share);
  REQUIRE(at);
  CHECK_MESSAGE(at->empty(), "worse at the end itself: ", at->empty() ? "" : at->front());
  const bool room =
      least ? end.share - out <= *line.share.low : end.share - out >= *line.share.high;
  if (room) {
    const auto inside = setting.worse(line, end.share - out);
    REQUIRE(inside);
    CHECK_MESSAGE(inside->empty(), "worse inside: ", inside->empty() ? "" : inside->front());
  }
  if (least && end.share == 0) {
    CHECK_FALSE(end.stopped_by);
    return;
  }
  // a step may be more than there is up to the whole, which no other line stands beside
  constexpr double whole = 100;
  const bool beyond = !least && end.stopped_by && end.share + out > whole;
  const auto outside = setting.worse(line, beyond ? (end.share + whole) / 2 : end.share + out);
  if (!end.stopped_by) {
    CHECK_FALSE(outside);
    return;
  }
  REQUIRE(outside);
  const bool named =
      std::find(outside->begin(), outside->end(), end.stopped_by->rule) != outside->end();
  CHECK_MESSAGE(named, "not worse outside");
}

}  // namespace

TEST_CASE("leeway: each end of each demo, by the full check a step inside and outside") {
  const Rulesets rulesets = Rulesets::built_in();
  for (const fs::path& file : of_those_alike(case_files("fixtures/formulas", ".formula"))) {
    const FormulaText formula{file.string(), file_contents(file)};
    if (formula.text.find("\nformula ") == std::string::npos) continue;
    const bool gale = file.filename() == "gale-warning.formula";
    for (const Level threshold :
         gale ? std::vector{Level::warning, Level::note} : std::vector{Level::warning}) {
      const auto made = leeway(formula, rulesets, reading(formula.path, formula.text), {threshold});
      REQUIRE(made);
      CHECK_FALSE(made->lines.empty());
      INFO(file.filename().string());
      const Setting setting(formula, rulesets, threshold);
      for (const LeewayLine& line : made->lines) {
        CHECK(line.least.share <= *line.share.low);
        CHECK(line.most.share >= *line.share.high);
        check_end(setting, line, true);
        check_end(setting, line, false);
      }
    }
  }
}

TEST_CASE("leeway of formulas made up at random: each end by the full check") {
  const Rulesets rulesets = Rulesets::built_in();
  std::size_t stopped = 0;
  for (std::uint64_t seed = 0; seed < of_those_alike(12); ++seed) {
    const Recipe made_up = recipe(seed + 700);
    const FormulaText formula{"made-up.formula", made_up.text()};
    const CheckOptions options = reading(formula.path, formula.text);
    if (check(formula, rulesets, options).formulas.empty()) continue;
    const auto made = leeway(formula, rulesets, options, {});
    REQUIRE(made);
    INFO(formula.text);
    const Setting setting(formula, rulesets, Level::warning);
    for (const LeewayLine& line : made->lines) {
      CHECK(line.least.share <= *line.share.low + 1e-9);
      CHECK(line.most.share >= *line.share.high - 1e-9);
      // a range that is set to one figure is another formula
      if (!line.container.empty() || *line.share.low != *line.share.high) continue;
      if (made_up.text().find("part") != std::string::npos) continue;
      check_end(setting, line, true);
      check_end(setting, line, false);
      stopped += line.most.stopped_by ? 1 : 0;
    }
  }
  CHECK(stopped > of_those_alike(20));
}

TEST_CASE("a map of two lines: its points and its borders by the full check") {
  const Rulesets rulesets = Rulesets::built_in();
  const fs::path file = source_dir() / "fixtures/formulas/fen-crumble.formula";
  const FormulaText formula{file.string(), file_contents(file)};
  const auto made = leeway_map(formula, rulesets, reading(formula.path, formula.text),
                               {Level::warning, "polysorbate 80", "rice bran oil"});
  REQUIRE(made);
  const Setting setting(formula, rulesets, Level::warning);
  const auto worse = [&](double line, double against) {
    return setting.with("  set polysorbate 80 to " + plain(line) + " %\n  set rice bran oil to " +
                        plain(against) + " %\n");
  };
  const auto along = [&](const LeewayAxis& axis, std::size_t step) {
    return axis.low + (axis.high - axis.low) * static_cast<double>(step) /
                          static_cast<double>(made->points - 1);
  };
  std::size_t sound = 0;
  // every seventh point, which meets all columns
  for (std::size_t at = 0; at < made->grid.size(); at += 7) {
    const auto there =
        worse(along(made->line, at % made->points), along(made->against, at / made->points));
    if (made->grid[at] == LeewayMap::sound) {
      REQUIRE(there);
      CHECK(there->empty());
      ++sound;
      continue;
    }
    const auto& stop = made->borders[made->grid[at]].stop;
    REQUIRE(stop.has_value() == there.has_value());
    if (!stop) continue;
    CHECK(std::find(there->begin(), there->end(), stop->rule) != there->end());
  }
  CHECK(sound > 10);
  REQUIRE_FALSE(made->borders.empty());
  for (const LeewayBorder& border : made->borders) {
    for (const auto& [from, to] : border.pieces) {
      const auto at_end = worse(from.line, from.against);
      REQUIRE(at_end);
      // a border's own ends are sound, or by the rule that draws it not
      const bool its = border.stop && std::find(at_end->begin(), at_end->end(),
                                                border.stop->rule) != at_end->end();
      CHECK((at_end->empty() || its));
    }
  }
  for (const char* other : {"polysorbate 80", "no such line"}) {
    const auto wrong = leeway_map(formula, rulesets, reading(formula.path, formula.text),
                                  {Level::warning, "polysorbate 80", other});
    CHECK_FALSE(wrong);
    CHECK(wrong.problems.size() == 1);
  }
}
