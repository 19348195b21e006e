// Leeway: how far each line of a formula can go down and up before a verdict gets worse, and which
// one stops it.
//
//     const auto made = sudsmark::leeway(formula, rulesets, options, {});
//     const auto* text = sudsmark::find_report(sudsmark::Command::leeway, "text");
//     if (made) std::cout << text->write(&*made, rulesets, {});
//
// A line is moved as a tweak moves it that says `set MATERIAL to …` and nothing more: where there
// is a q.s., that takes up the difference, else all other lines of the recipe are scaled. Shares
// are per cent of the product as supplied, as such a tweak writes them. A verdict is worse where it
// weighs more than that of the formula itself, at the level that is asked for or above; rules that
// hold a tweak against its base are asked too.
//
// The search looks outward from where the line stands, in steps that grow, and halves the first
// step in which a verdict gets worse. What is sound again further out is therefore not told, and a
// rule that is broken only within one step and mended beyond it is passed over. Each end has been
// checked: it is sound itself, and beyond it by less than the step of the scale the verdict is
// worse.
//
// `leeway_map` moves two lines at once, each to the share that a tweak of two `set`s would say.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <sudsmark/check.h>
#include <sudsmark/results.h>
#include <sudsmark/rulesets.h>

namespace sudsmark {

struct LeewayOptions {
  Level threshold = Level::warning;  ///< verdicts below it stop nothing
};

/// A verdict that is worse than it was.
struct LeewayStop {
  std::string rule;
  std::string title;
  Kind kind = Kind::fail;
  Level level = Level::warning;
  std::string subject_kind;
  std::string subject;
  std::string message;  ///< a little beyond
};

/// How far a line can go one way.
struct LeewayEnd {
  double share = 0;  ///< % of the product as supplied
  /// What is worse beyond; absent: nothing is, down to none of it or up to where no room is left.
  std::optional<LeewayStop> stopped_by;
};

/// A line, or all lines of one name in the phases, which keep their proportion.
struct LeewayLine {
  std::string material;   ///< as written
  std::string container;  ///< premix or portion; empty: phases
  std::uint32_t line = 0;
  std::string file;  ///< that the line stands in
  Figure share;      ///< % of the product as supplied
  LeewayEnd least;
  LeewayEnd most;
  double step = 0;  ///< of the scale that suits it [% of the product]
};

struct Leeway {
  std::string file;
  std::string name;
  Level threshold = Level::warning;
  std::vector<LeewayLine> lines;  ///< in the order of the formula
  /// Lines that cannot be set alone, and why.
  std::vector<std::string> fixed;
  /// Rules that the formula breaks already at the threshold or above: they stop nothing.
  std::vector<std::string> broken;
};

/// A line of a map, and how far the map goes.
struct LeewayAxis {
  std::string material;
  std::string container;
  double share = 0;  ///< where it stands [% of the product as supplied]
  double low = 0;    ///< of the map [%]
  double high = 0;
};

struct LeewayPoint {
  double line = 0;     ///< %
  double against = 0;  ///< %
};

/// Where the sound region ends by one rule: pieces of a line, each within a cell of the map.
struct LeewayBorder {
  std::optional<LeewayStop> stop;  ///< absent: beyond it there is no room for both
  std::vector<std::pair<LeewayPoint, LeewayPoint>> pieces;
};

/// Two lines set at once. Every point of a grid over both axes has been checked; where the region
/// ends between two of them has been found by halving.
struct LeewayMap {
  std::string file;
  std::string name;
  Level threshold = Level::warning;
  LeewayAxis line;
  LeewayAxis against;
  std::size_t points = 0;  ///< of the grid along each axis
  /// By row from the least `against`, and within it from the least `line`: the border's rule that
  /// is worse there, as an index into `borders`; `sound` where nothing is.
  std::vector<std::size_t> grid;
  std::vector<LeewayBorder> borders;
  static constexpr std::size_t sound = static_cast<std::size_t>(-1);
};

struct LeewayMapOptions {
  Level threshold = Level::warning;
  std::string line;     ///< a name of the formula
  std::string against;  ///< another
};

/// None, with problems, if the formula cannot be checked, or does not hold both lines.
[[nodiscard]] Result<LeewayMap> leeway_map(const FormulaText& formula, const Rulesets& rulesets,
                                           const CheckOptions& options,
                                           const LeewayMapOptions& map_options);

/// None, with problems, if the formula cannot be checked.
[[nodiscard]] Result<Leeway> leeway(const FormulaText& formula, const Rulesets& rulesets,
                                    const CheckOptions& options,
                                    const LeewayOptions& leeway_options);

}  // namespace sudsmark
