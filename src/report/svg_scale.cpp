#include "report/svg_scale.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <vector>

#include "quantity/number.h"

namespace sudsmark::report {
namespace {

constexpr double scale_width = 300;
constexpr double height = 42;
constexpr double left = 6;
constexpr double right = scale_width - 6;
constexpr double middle = 21;
constexpr double infinity = std::numeric_limits<double>::infinity();

/// Figures to places from left to right.
class Axis {
 public:
  explicit Axis(const std::vector<Figure>& figures) {
    std::vector<double> ends;
    for (const Figure& figure : figures) {
      if (figure.low) ends.push_back(*figure.low);
      if (figure.high) ends.push_back(*figure.high);
    }
    if (ends.empty()) ends.push_back(0);
    low_ = *std::min_element(ends.begin(), ends.end());
    high_ = *std::max_element(ends.begin(), ends.end());
    // from nothing on, unless that would press all there is to see into a corner
    const bool zoom = high_ - low_ < 0.3 * std::abs(high_) && high_ > low_;
    const bool from_nothing = low_ >= 0 && !zoom;
    if (from_nothing) low_ = 0;
    const double span = high_ > low_ ? high_ - low_ : std::max(std::abs(high_), 1.0);
    high_ += 0.18 * span;
    if (!from_nothing) low_ -= 0.18 * span;
  }

  [[nodiscard]] double at(double value) const {
    if (value == infinity) return right;
    if (value == -infinity) return left;
    return left + (right - left) * std::clamp((value - low_) / (high_ - low_), 0.0, 1.0);
  }

 private:
  double low_ = 0;
  double high_ = 1;
};

void rectangle(Markup& page, std::string_view of, double from, double to, double top,
               double bottom) {
  page.empty("rect", {{"class", std::string(of)},
                      {"x", coordinate(from)},
                      {"y", coordinate(top)},
                      {"width", coordinate(std::max(to - from, 0.0))},
                      {"height", coordinate(bottom - top)}});
}

void line(Markup& page, std::string_view of, double x1, double y1, double x2, double y2) {
  page.empty("line", {{"class", std::string(of)},
                      {"x1", coordinate(x1)},
                      {"y1", coordinate(y1)},
                      {"x2", coordinate(x2)},
                      {"y2", coordinate(y2)}});
}

void label(Markup& page, double x, double y, const std::string& words, std::string_view anchor) {
  page.element("text",
               {{"x", coordinate(x)}, {"y", coordinate(y)}, {"text-anchor", std::string(anchor)}},
               words);
}

std::string_view anchor_at(double x) {
  return x < left + 24 ? "start" : x > right - 24 ? "end" : "middle";
}

void draw_limit(Markup& page, const Axis& axis, const Figure& limit) {
  const double from = axis.at(limit.low.value_or(-infinity));
  const double to = axis.at(limit.high.value_or(infinity));
  rectangle(page, "allowed", from, to, middle - 7, middle + 7);
  line(page, "axis", left, middle, right, middle);
  const bool both = limit.low && limit.high;
  const bool near = both && to - from < 60;
  const auto end = [&](double x, double value, std::string_view anchor) {
    line(page, "limit", x, middle - 10, x, middle + 10);
    label(page, x, height - 1, quantity::printed(value), anchor);
  };
  if (both && *limit.low == *limit.high) {
    end(from, *limit.low, anchor_at(from));
    return;
  }
  if (limit.low) end(from, *limit.low, near ? "end" : anchor_at(from));
  if (limit.high) end(to, *limit.high, near ? "start" : anchor_at(to));
}

/// An arrow head where a figure goes on without a known end.
void arrow(Markup& page, double x, double direction) {
  const std::string points = coordinate(x) + "," + coordinate(middle) + " " +
                             coordinate(x - 7 * direction) + "," + coordinate(middle - 5) + " " +
                             coordinate(x - 7 * direction) + "," + coordinate(middle + 5);
  page.empty("polygon", {{"class", "measured"}, {"points", points}});
}

void draw_measured(Markup& page, const Axis& axis, const Figure& measured, const Figure& limit) {
  const double low = measured.low.value_or(-infinity);
  const double high = measured.high.value_or(infinity);
  const double from = axis.at(low);
  const double to = axis.at(high);
  const double least = limit.low.value_or(-infinity);
  const double most = limit.high.value_or(infinity);
  // what looks like a point is drawn as one
  if (measured.low && measured.high && to - from < 2) {
    const bool outside = low < least || low > most;
    const std::string x = coordinate(from);
    page.empty("path", {{"class", outside ? "point outside" : "point"},
                        {"d", "M" + x + " " + coordinate(middle - 6) + "l5.5 6l-5.5 6l-5.5 -6z"}});
  } else {
    rectangle(page, "measured", from, to, middle - 3, middle + 3);
    if (low < least) {
      rectangle(page, "outside", from, std::min(to, axis.at(least)), middle - 5, middle + 5);
    }
    if (high > most) {
      rectangle(page, "outside", std::max(from, axis.at(most)), to, middle - 5, middle + 5);
    }
    if (measured.low) line(page, "end", from, middle - 6, from, middle + 6);
    if (measured.high) line(page, "end", to, middle - 6, to, middle + 6);
    if (!measured.low) arrow(page, left, -1);
    if (!measured.high) arrow(page, right, 1);
  }
  const double center = (from + to) / 2;
  Figure shown = measured;
  std::string words = shown.low && shown.high ? quantity::printed(*shown.low)
                      : shown.low             ? "from " + quantity::printed(*shown.low)
                                              : "up to " + quantity::printed(*shown.high);
  if (shown.low && shown.high) {
    const std::string upper = quantity::printed(*shown.high);
    if (upper != words) words += " to " + upper;
  }
  label(page, center, 9, words, anchor_at(center));
}

}  // namespace

void draw_scale(Markup& page, const Figure& measured, const Figure& limit, const std::string& words,
                Tone tone, const std::vector<Figure>& beside) {
  std::vector<Figure> figures{measured, limit};
  figures.insert(figures.end(), beside.begin(), beside.end());
  const Axis axis(figures);
  page.open("svg", {{"class", tone == Tone::loud      ? "scale"
                              : tone == Tone::perhaps ? "scale maybe"
                                                      : "scale quiet"},
                    {"viewBox", "0 0 " + coordinate(scale_width) + " " + coordinate(height)},
                    {"role", "img"},
                    {"aria-label", words}});
  draw_limit(page, axis, limit);
  if (measured.low || measured.high) draw_measured(page, axis, measured, limit);
  page.close();
}

void draw_hatching(Markup& page) {
  page.open("svg", {{"class", "unseen"},
                    {"width", "0"},
                    {"height", "0"},
                    {"aria-hidden", "true"},
                    {"focusable", "false"}});
  page.open("defs");
  for (const std::string_view of : {"hatch", "hatch-outside", "hatch-maybe", "hatch-quiet"}) {
    page.open("pattern", {{"id", std::string(of)},
                          {"width", "5"},
                          {"height", "5"},
                          {"patternUnits", "userSpaceOnUse"},
                          {"patternTransform", "rotate(45)"}});
    page.empty("rect", {{"class", std::string(of) + "-ground"}, {"width", "5"}, {"height", "5"}});
    page.empty("line", {{"class", std::string(of) + "-stroke"},
                        {"x1", "1"},
                        {"y1", "0"},
                        {"x2", "1"},
                        {"y2", "5"}});
    page.close();
  }
  page.close();
  page.close();
}

}  // namespace sudsmark::report
