#include "report/svg_chart.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "quantity/number.h"
#include "text/utf8.h"
#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark::report {
using namespace wording;

namespace {

constexpr double chart_width = 340;
constexpr double height = 236;
constexpr double left = 34;
constexpr double right = chart_width - 8;
constexpr double top = 22;
constexpr double bottom = height - 36;
constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double letter = 6.2;  // as wide as letters are on average, in the widest of fonts
constexpr std::size_t longest_name = 44;

/// A step of 1, 2 or 5 times a power of ten that makes about so many of a span.
double round_step(double span, double wanted) {
  const double rough = span / wanted;
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  for (const double factor : {1.0, 2.0, 5.0}) {
    if (rough <= factor * power) return factor * power;
  }
  return 10 * power;
}

struct Span {
  double low = infinity;
  double high = -infinity;
  void take(double value) {
    if (!std::isfinite(value)) return;
    low = std::min(low, value);
    high = std::max(high, value);
  }
};

class Drawing {
 public:
  Drawing(Markup& page, const Chart& chart) : page_(page), chart_(chart) {
    for (const ChartSeries& series : chart.series) {
      for (const CurvePoint& point : series.points) {
        x_.take(point.x);
        if (point.low) y_.take(*point.low);
        if (point.high) y_.take(*point.high);
      }
    }
    for (const ChartLine& line : chart.lines) y_.take(line.at);
    if (!(x_.low < x_.high)) x_ = {0, 1};
    if (!(y_.low <= y_.high)) y_ = {0, 1};
    if (chart.from_nothing) y_.low = std::min(y_.low, 0.0);
    const double span = y_.high > y_.low ? y_.high - y_.low : 1.0;
    step_ = round_step(span, 5);
    y_.high = step_ * std::ceil(y_.high / step_ + 0.15);
    y_.low = chart.from_nothing ? y_.low : step_ * std::floor(y_.low / step_ - 0.15);
  }

  void draw() {
    page_.open("svg", {{"class", "chart"},
                       {"viewBox", "0 0 " + coordinate(chart_width) + " " + coordinate(height)},
                       {"role", "img"},
                       {"aria-labelledby", chart_.id + "-title " + chart_.id + "-words"}});
    page_.element("title", {{"id", chart_.id + "-title"}}, chart_.title);
    page_.element("desc", {{"id", chart_.id + "-words"}}, described());
    now();
    axes();
    for (const ChartSeries& series : chart_.series) band(series);
    for (const ChartSeries& series : chart_.series) edges(series);
    lines();
    rings();
    names();
    page_.close();
  }

 private:
  [[nodiscard]] double x(double value) const {
    const double share = std::clamp((value - x_.low) / (x_.high - x_.low), 0.0, 1.0);
    return left + (right - left) * (chart_.reversed ? 1 - share : share);
  }
  [[nodiscard]] double y(double value) const {
    const double share = std::clamp((value - y_.low) / (y_.high - y_.low), 0.0, 1.0);
    return bottom - (bottom - top) * share;
  }

  [[nodiscard]] std::string described() const {
    std::string out = chart_.upwards + " against " + chart_.across + ".";
    for (const ChartSeries& series : chart_.series) {
      if (series.points.empty()) continue;
      const CurvePoint& first = series.points.front();
      const CurvePoint& last = series.points.back();
      out += " " + series.name + ": from " + at_point(first) + " to " + at_point(last) + ".";
    }
    for (const ChartLine& line : chart_.lines) {
      out += " " + line.name + ": " + quantity::printed(line.at) + ".";
    }
    if (chart_.now) out += " " + chart_.now_name + ": " + printed(*chart_.now) + ".";
    return out;
  }

  [[nodiscard]] static std::string at_point(const CurvePoint& point) {
    return printed(Figure{point.low, point.high, "1"}) + " at " + quantity::printed(point.x);
  }

  void text(double at_x, double at_y, std::string_view words, std::string_view anchor,
            std::string_view of = "") {
    page_.element("text",
                  {{"class", std::string(of)},
                   {"x", coordinate(at_x)},
                   {"y", coordinate(at_y)},
                   {"text-anchor", std::string(anchor)}},
                  words);
  }

  void line(std::string_view of, double x1, double y1, double x2, double y2) {
    page_.empty("line", {{"class", std::string(of)},
                         {"x1", coordinate(x1)},
                         {"y1", coordinate(y1)},
                         {"x2", coordinate(x2)},
                         {"y2", coordinate(y2)}});
  }

  void axes() {
    for (double at = y_.low; at <= y_.high + step_ * 1e-6; at += step_) {
      const double clean = std::abs(at) < step_ * 1e-6 ? 0.0 : at;
      line("grid", left, y(clean), right, y(clean));
      text(left - 5, y(clean) + 3.5, quantity::printed(clean), "end");
    }
    const double step = round_step(x_.high - x_.low, 5);
    for (double at = step * std::ceil(x_.low / step - 1e-9); at <= x_.high + step * 1e-6;
         at += step) {
      const double clean = std::abs(at) < step * 1e-6 ? 0.0 : at;
      line("tick", x(clean), bottom, x(clean), bottom + 4);
      text(x(clean), bottom + 15, quantity::printed(clean), "middle");
    }
    line("axis", left, bottom, right, bottom);
    text(0, 10, chart_.upwards, "start", "axis-name");
    text(right, height - 5, chart_.across, "end", "axis-name");
  }

  void now() {
    if (!chart_.now || !chart_.now->low || !chart_.now->high) return;
    const double from = std::min(x(*chart_.now->low), x(*chart_.now->high));
    const double to = std::max(x(*chart_.now->low), x(*chart_.now->high));
    page_.empty("rect", {{"class", "now"},
                         {"x", coordinate(from - 1)},
                         {"y", coordinate(top)},
                         {"width", coordinate(to - from + 2)},
                         {"height", coordinate(bottom - top)}});
    const bool far = to > right - 70;
    const double at = far ? from - 4 : to + 4;
    const double wide = letter * static_cast<double>(chart_.now_name.size());
    text(at, bottom - 5, chart_.now_name, far ? "end" : "start");
    taken_.push_back({far ? at - wide : at, bottom - 14, far ? at : at + wide, bottom - 2});
  }

  void band(const ChartSeries& series) {
    std::string forth;
    std::string back;
    bool wide = false;
    for (const CurvePoint& point : series.points) {
      if (!point.low && !point.high) continue;
      const double low = point.low ? y(*point.low) : bottom;
      const double high = point.high ? y(*point.high) : top;
      wide = wide || low - high > 0.4;
      const std::string across = coordinate(x(point.x)) + ",";
      forth += across + coordinate(high) + " ";
      back.insert(0, across + coordinate(low) + " ");
    }
    if (!wide) return;
    back.pop_back();
    page_.empty("polygon", {{"class", "band"}, {"points", forth + back}});
  }

  void edges(const ChartSeries& series) {
    const std::string of = series.dashed ? "curve dashed" : "curve";
    std::string low;
    std::string high;
    for (const CurvePoint& point : series.points) {
      const std::string across = coordinate(x(point.x)) + ",";
      if (point.low) low += across + coordinate(y(*point.low)) + " ";
      if (point.high) high += across + coordinate(y(*point.high)) + " ";
    }
    for (std::string* points : {&low, &high}) {
      if (points->empty() || (points == &high && high == low)) continue;
      points->pop_back();
      page_.empty("polyline", {{"class", of}, {"points", *points}});
    }
  }

  struct Box {
    double left, top, right, bottom;
  };
  struct Place {
    double x, y;
    std::string_view anchor;
  };

  /// Lines that fall upon each other become one with both names.
  [[nodiscard]] std::vector<ChartLine> merged() const {
    std::vector<ChartLine> out;
    for (const ChartLine& one : chart_.lines) {
      const auto same = std::find_if(out.begin(), out.end(), [&](const ChartLine& other) {
        return one.at_end == other.at_end && std::abs(y(other.at) - y(one.at)) < 1.5;
      });
      if (same == out.end()) {
        out.push_back(one);
      } else {
        same->name += "; " + one.name;
        same->limit = same->limit || one.limit;
      }
    }
    return out;
  }

  void lines() {
    const std::vector<ChartLine> all = merged();
    for (const ChartLine& one : all) {
      const double from = one.at_end ? right - (right - left) / 3 : left;
      line(one.limit ? "limit" : "aside", from, y(one.at), right, y(one.at));
      across_.push_back(y(one.at));
    }
    for (const ChartLine& one : all) {
      const double at = y(one.at);
      const double middle = (left + right) / 2;
      if (one.at_end) {
        name(one.name, {{right - 3, at - 3, "end"}, {right - 3, at + 10, "end"}});
        continue;
      }
      name(one.name, {{left + 3, at - 3, "start"},
                      {right - 3, at - 3, "end"},
                      {left + 3, at + 10, "start"},
                      {right - 3, at + 10, "end"},
                      {middle, at - 3, "middle"},
                      {middle, at + 10, "middle"}});
    }
  }

  void rings() {
    if (!chart_.marks_end) return;
    for (const ChartSeries& series : chart_.series) {
      if (series.points.empty()) continue;
      const CurvePoint& end = chart_.reversed ? least(series) : series.points.back();
      const double high = end.high ? y(*end.high) : top;
      const double low = end.low ? y(*end.low) : bottom;
      constexpr double room = 4;
      page_.empty("rect", {{"class", "ring"},
                           {"x", coordinate(x(end.x) - room)},
                           {"y", coordinate(high - room)},
                           {"width", coordinate(2 * room)},
                           {"height", coordinate(low - high + 2 * room)},
                           {"rx", coordinate(room)}});
    }
  }

  static const CurvePoint& least(const ChartSeries& series) {
    return *std::min_element(series.points.begin(), series.points.end(),
                             [](const CurvePoint& a, const CurvePoint& b) { return a.x < b.x; });
  }

  void names() {
    if (chart_.series.size() < 2) return;
    for (const ChartSeries& series : chart_.series) {
      std::vector<Place> places;
      for (const double along : {1.0, 0.0, 0.75, 0.25, 0.5}) {
        if (series.points.empty()) continue;
        const auto at =
            static_cast<std::size_t>(along * static_cast<double>(series.points.size() - 1));
        const CurvePoint& point = series.points[at];
        const std::string_view anchor = along == 1.0 ? "end" : along == 0.0 ? "start" : "middle";
        const double x_at = std::clamp(x(point.x), left + 3, right - 3);
        if (point.high) places.push_back({x_at, y(*point.high) - 5, anchor});
        if (point.low) places.push_back({x_at, y(*point.low) + 12, anchor});
      }
      name(series.name, places);
    }
  }

  /// Writes a name at the first of the places where it covers nothing.
  void name(const std::string& whole, const std::vector<Place>& places) {
    if (places.empty()) return;
    const std::string words = shortened(harmless(whole), longest_name);
    const double wide = letter * static_cast<double>(sudsmark::text::count_code_points(words));
    const auto box = [&](const Place& place) {
      const double from = place.anchor == "start" ? place.x
                          : place.anchor == "end" ? place.x - wide
                                                  : place.x - wide / 2;
      return Box{from, place.y - 9, from + wide, place.y + 3};
    };
    const auto free = std::find_if(places.begin(), places.end(),
                                   [&](const Place& place) { return is_free(box(place)); });
    const Place& chosen = free == places.end() ? places.front() : *free;
    taken_.push_back(box(chosen));
    text(chosen.x, chosen.y, words, chosen.anchor);
  }

  [[nodiscard]] bool is_free(const Box& box) const {
    if (box.top < top - 2 || box.bottom > bottom || box.left < left || box.right > right + 1) {
      return false;
    }
    const auto inside = [&](double at) { return at > box.top && at < box.bottom; };
    if (std::any_of(across_.begin(), across_.end(), inside)) return false;
    for (const Box& other : taken_) {
      const bool apart = box.right < other.left || other.right < box.left ||
                         box.bottom < other.top || other.bottom < box.top;
      if (!apart) return false;
    }
    return std::none_of(chart_.series.begin(), chart_.series.end(),
                        [&](const ChartSeries& series) { return crosses(series, box); });
  }

  /// Whether an edge of a series runs through a box or close by.
  [[nodiscard]] bool crosses(const ChartSeries& series, const Box& box) const {
    constexpr int steps = 12;  // of a straight piece
    constexpr double near = 4;
    const auto through = [&](std::optional<double> from, std::optional<double> to, double x_from,
                             double x_to) {
      if (!from || !to) return false;
      for (int step = 0; step <= steps; ++step) {
        const double share = static_cast<double>(step) / steps;
        const double at_x = x_from + (x_to - x_from) * share;
        const double at_y = y(*from) + (y(*to) - y(*from)) * share;
        if (at_x > box.left - near && at_x < box.right + near && at_y > box.top - 1 &&
            at_y < box.bottom + 1) {
          return true;
        }
      }
      return false;
    };
    for (std::size_t at = 1; at < series.points.size(); ++at) {
      const CurvePoint& from = series.points[at - 1];
      const CurvePoint& to = series.points[at];
      if (through(from.low, to.low, x(from.x), x(to.x)) ||
          through(from.high, to.high, x(from.x), x(to.x))) {
        return true;
      }
    }
    return false;
  }

  Markup& page_;
  const Chart& chart_;
  Span x_;
  Span y_;
  double step_ = 1;
  std::vector<double> across_;  ///< heights of the lines
  std::vector<Box> taken_;      ///< by names
};

}  // namespace

void draw_chart(Markup& page, const Chart& chart) {
  Drawing(page, chart).draw();
}

}  // namespace sudsmark::report
