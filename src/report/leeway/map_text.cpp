// A map of two lines as text: a letter where a rule is worse, a point where all is sound.
#include <algorithm>
#include <cmath>

#include <sudsmark/leeway.h>
#include <sudsmark/report.h>

#include "report/leeway/map_words.h"
#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

using wording::harmless;

/// The point of the grid that is nearest to where an axis stands.
std::size_t nearest(const LeewayAxis& axis, std::size_t points) {
  if (!(axis.high > axis.low)) return 0;
  const double along = (axis.share - axis.low) / (axis.high - axis.low);
  return static_cast<std::size_t>(std::clamp(std::round(along * static_cast<double>(points - 1)),
                                             0.0, static_cast<double>(points - 1)));
}

std::string at_right(std::string words, std::size_t width) {
  if (words.size() < width) words.insert(0, width - words.size(), ' ');
  return words;
}

}  // namespace

std::string leeway_map_text(const LeewayMap& map, const Rulesets&, const ReportOptions& options) {
  std::string out = harmless(map.file) + " (" + harmless(map.name) + ")\n";
  out += "where both are sound, at level " + std::string(wording::level_word(map.threshold)) +
         " or above\n";
  out += "  upwards " + harmless(axis_words(map.against)) + "; to the right " +
         harmless(axis_words(map.line)) + "\n\n";
  constexpr std::size_t of_number = 9;
  const std::size_t here_row = nearest(map.against, map.points);
  const std::size_t here = nearest(map.line, map.points);
  for (std::size_t up = map.points; up-- > 0;) {
    const bool named = up == 0 || up + 1 == map.points;
    const double share = up == 0 ? map.against.low : map.against.high;
    out += named ? at_right(map_share(share) + " %", of_number) : std::string(of_number, ' ');
    for (std::size_t at = 0; at < map.points; ++at) {
      const std::size_t border = map.grid[up * map.points + at];
      const bool stands = up == here_row && at == here;
      out += ' ';
      out += stands ? '@' : border == LeewayMap::sound ? '.' : letter_of(border);
    }
    out += '\n';
  }
  const std::string low = map_share(map.line.low) + " %";
  const std::string high = map_share(map.line.high) + " %";
  out += std::string(of_number + 1, ' ') + low + at_right(high, 2 * map.points - low.size() - 1);
  out += "\n\n  @  the formula\n  .  sound\n";
  for (std::size_t at = 0; at < map.borders.size(); ++at) {
    const LeewayBorder& border = map.borders[at];
    out += std::string("  ") + letter_of(at) + "  worse there: " + harmless(border_words(border));
    if (border.stop) out += " [" + border.stop->rule + "]";
    out += '\n';
  }
  out += std::string(reminder) + "\n";
  return options.ascii ? wording::in_ascii(out) : out;
}

}  // namespace sudsmark::report
