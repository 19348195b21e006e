// The map of two lines: a grid of full checks, and the border of what is sound between its points.
#include <algorithm>
#include <cmath>
#include <utility>

#include <sudsmark/leeway.h>

#include "borders/lines.h"
#include "borders/placed.h"
#include "front/today.h"

namespace sudsmark {
namespace {

using borders::Chosen;
using borders::Placed;
using borders::Worse;
using mending::Dial;

constexpr double percent = 100;
constexpr std::size_t points = 25;  ///< along each axis

class Mapping {
 public:
  Mapping(const Placed& placed, const Dial& line, const Dial& against)
      : placed_(placed), line_(line), against_(against) {}

  LeewayMap run() {
    out_.points = points;
    out_.line = axis(line_);
    out_.against = axis(against_);
    out_.grid.assign(points * points, LeewayMap::sound);
    worse_.resize(points * points);
    for (std::size_t at = 0; at < out_.grid.size(); ++at) {
      worse_[at] = look(place(at), placed_.settings().all());
      if (!is_sound(worse_[at])) out_.grid[at] = border_of(worse_[at]);
    }
    for (std::size_t row = 0; row + 1 < points; ++row) {
      for (std::size_t column = 0; column + 1 < points; ++column) cross(row * points + column);
    }
    return std::move(out_);
  }

 private:
  using Found = std::optional<std::vector<Worse>>;

  static bool is_sound(const Found& found) { return found && found->empty(); }

  /// Far enough that what stops each line alone is on the map.
  [[nodiscard]] LeewayAxis axis(const Dial& dial) const {
    LeewayLine ends = placed_.line(dial);
    placed_.look(dial, ends);
    LeewayAxis out;
    out.material = ends.material;
    out.container = ends.container;
    out.share = dial.share * percent;
    constexpr double beyond = 0.2;
    const double span = ends.most.share - ends.least.share;
    out.low = std::max(0.0, ends.least.share - beyond * span);
    out.high = std::min(percent, ends.most.share + beyond * span);
    return out;
  }

  [[nodiscard]] LeewayPoint place(std::size_t at) const {
    const auto along = [](const LeewayAxis& axis, std::size_t step) {
      return axis.low +
             (axis.high - axis.low) * static_cast<double>(step) / static_cast<double>(points - 1);
    };
    return {along(out_.line, at % points), along(out_.against, at / points)};
  }

  [[nodiscard]] Found look(const LeewayPoint& at, const Chosen& chosen) const {
    const formula::Card& card = placed_.settings().card();
    return placed_.settings().worse({borders::set_to(card, line_, at.line / percent),
                                     borders::set_to(card, against_, at.against / percent)},
                                    chosen);
  }

  /// The border of the gravest rule that is worse at a point, made where it is the first.
  std::size_t border_of(const Found& found) {
    const std::string rule = found ? found->front().stop.rule : std::string();
    for (std::size_t at = 0; at < out_.borders.size(); ++at) {
      const auto& stop = out_.borders[at].stop;
      if ((stop ? stop->rule : std::string()) == rule) return at;
    }
    LeewayBorder& made = out_.borders.emplace_back();
    if (found) made.stop = found->front().stop;
    return out_.borders.size() - 1;
  }

  /// Where what is sound ends between two neighbours of the grid.
  [[nodiscard]] LeewayPoint crossing(std::size_t sound, std::size_t other) const {
    Chosen chosen(placed_.settings().all().size(), false);
    if (worse_[other]) {
      for (const Worse& one : *worse_[other]) chosen[one.rule] = true;
    }
    LeewayPoint in = place(sound);
    LeewayPoint out = place(other);
    constexpr int halvings = 6;
    for (int round = 0; round < halvings; ++round) {
      const LeewayPoint middle{(in.line + out.line) / 2, (in.against + out.against) / 2};
      (is_sound(look(middle, chosen)) ? in : out) = middle;
    }
    return in;
  }

  /// The border through one cell of the grid, of which `at` is the corner of least figures.
  void cross(std::size_t at) {
    const std::size_t corners[] = {at, at + 1, at + points + 1, at + points};
    std::vector<std::pair<LeewayPoint, std::size_t>> found;  // and whose border it is
    for (std::size_t side = 0; side < 4; ++side) {
      std::size_t a = corners[side];
      std::size_t b = corners[(side + 1) % 4];
      const bool sound = out_.grid[a] == LeewayMap::sound;
      if (sound == (out_.grid[b] == LeewayMap::sound)) continue;
      if (!sound) std::swap(a, b);
      found.emplace_back(crossing(a, b), out_.grid[b]);
    }
    for (std::size_t one = 0; one + 1 < found.size(); one += 2) {
      const auto& [from, of] = found[one];
      const auto& [to, of_other] = found[one + 1];
      const LeewayPoint half{(from.line + to.line) / 2, (from.against + to.against) / 2};
      if (of == of_other) {
        out_.borders[of].pieces.emplace_back(from, to);
      } else {
        out_.borders[of].pieces.emplace_back(from, half);
        out_.borders[of_other].pieces.emplace_back(half, to);
      }
    }
  }

  const Placed& placed_;
  const Dial& line_;
  const Dial& against_;
  LeewayMap out_;
  std::vector<Found> worse_;  ///< by point of the grid
};

}  // namespace

Result<LeewayMap> leeway_map(const FormulaText& formula, const Rulesets& rulesets,
                             const CheckOptions& options, const LeewayMapOptions& map_options) {
  const CheckOptions on_a_day = front::with_day(options);
  auto read = Placed::read(formula, rulesets, on_a_day, map_options.threshold);
  if (!read) return {{}, std::move(read.problems)};
  const Placed& placed = **read;
  Result<LeewayMap> out;
  const auto find = [&](const std::string& name) {
    const Dial* dial = placed.find(name);
    if (dial == nullptr) {
      out.problems.push_back(
          {formula.path, 0, 0, "'" + name + "' is no line that can be set alone", {}});
    }
    return dial;
  };
  const Dial* line = find(map_options.line);
  const Dial* against = find(map_options.against);
  if (line != nullptr && line == against) {
    out.problems.push_back({formula.path, 0, 0, "a map is of two lines, and these are one", {}});
  }
  if (!out.problems.empty()) return out;
  out.value = Mapping(placed, *line, *against).run();
  out.value->file = formula.path;
  out.value->name = placed.name();
  out.value->threshold = map_options.threshold;
  return out;
}

}  // namespace sudsmark
