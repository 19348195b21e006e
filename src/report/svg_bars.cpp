#include "report/svg_bars.h"

#include <algorithm>

#include "wording/code_points.h"
#include "wording/margin.h"
#include "wording/words.h"

namespace sudsmark::report {
using namespace wording;

namespace {

constexpr double bars_width = 340;
constexpr double row = 30;
constexpr std::size_t letters = 52;  ///< of a line, the name and the figure at its end

double least(const Bar& bar) {
  return std::max(bar.figure.low.value_or(0), 0.0);
}
double greatest(const Bar& bar) {
  return std::max(bar.figure.high.value_or(100), least(bar));
}

/// The bars that are drawn: past `most`, the last one stands for all the others.
std::vector<Bar> drawn(const std::vector<Bar>& bars, std::size_t most) {
  if (bars.size() <= most) return bars;
  std::vector<Bar> out(bars.begin(), bars.begin() + static_cast<std::ptrdiff_t>(most) - 1);
  Bar rest{std::to_string(bars.size() - out.size()) + " others", {0.0, 0.0, "%"}};
  for (std::size_t at = out.size(); at < bars.size(); ++at) {
    *rest.figure.low += least(bars[at]);
    *rest.figure.high = std::min(*rest.figure.high + greatest(bars[at]), 100.0);
  }
  out.push_back(std::move(rest));
  return out;
}

}  // namespace

void draw_bars(Markup& page, const std::vector<Bar>& all, const std::string& id,
               const std::string& title, std::size_t most) {
  const std::vector<Bar> bars = drawn(all, most);
  double longest = 1e-9;
  for (const Bar& bar : bars) longest = std::max(longest, greatest(bar));
  const double height = row * static_cast<double>(bars.size()) + 4;
  page.open("svg", {{"class", "bars"},
                    {"viewBox", "0 0 " + coordinate(bars_width) + " " + coordinate(height)},
                    {"role", "img"},
                    {"aria-labelledby", id + "-title " + id + "-words"}});
  page.element("title", {{"id", id + "-title"}}, title);
  std::string words;
  for (const Bar& bar : bars) {
    words += (words.empty() ? "" : "; ") + bar.name + " " + shown(bar.figure);
  }
  page.element("desc", {{"id", id + "-words"}}, words);
  const auto across = [&](double share) { return (bars_width - 2) * share / longest; };
  double top = 0;
  for (const Bar& bar : bars) {
    const std::size_t taken = shown(bar.figure).size() + 2;
    page.element("text", {{"x", "1"}, {"y", coordinate(top + 14)}},
                 shortened(harmless(bar.name), letters - std::min(taken, letters / 2)));
    page.element(
        "text",
        {{"x", coordinate(bars_width - 1)}, {"y", coordinate(top + 14)}, {"text-anchor", "end"}},
        shown(bar.figure));
    const std::string y = coordinate(top + 19);
    const double certain = across(least(bar));
    page.empty("rect", {{"class", "track"},
                        {"x", "1"},
                        {"y", coordinate(top + 21.5)},
                        {"width", coordinate(bars_width - 2)},
                        {"height", "1"}});
    page.empty("rect", {{"class", "certain"},
                        {"x", "1"},
                        {"y", y},
                        {"width", coordinate(certain)},
                        {"height", "6"}});
    const double more = across(greatest(bar)) - certain;
    if (more > 0.05) {
      page.empty("rect", {{"class", "perhaps"},
                          {"x", coordinate(1 + certain)},
                          {"y", y},
                          {"width", coordinate(more)},
                          {"height", "6"}});
    }
    top += row;
  }
  page.close();
}

}  // namespace sudsmark::report
