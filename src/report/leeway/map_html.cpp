// A map of two lines as a page: the sound region, and its borders with the rules that draw them.
#include <algorithm>
#include <string>

#include <sudsmark/leeway.h>
#include <sudsmark/report.h>

#include "front/parts.h"
#include "report/html_page.h"
#include "report/leeway/map_words.h"
#include "report/prose.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

constexpr double map_width = 420;
constexpr double height = 340;
constexpr double left = 46;
constexpr double right = 410;
constexpr double top = 12;
constexpr double bottom = 300;

class MapPicture {
 public:
  MapPicture(Markup& page, const LeewayMap& map) : page_(page), map_(map) {}

  void draw() {
    page_.open("svg", {{"class", "map"},
                       {"viewBox", "0 0 " + coordinate(map_width) + " " + coordinate(height)},
                       {"role", "img"},
                       {"aria-labelledby", "map-title map-words"}});
    page_.element("title", {{"id", "map-title"}},
                  map_.line.material + " against " + map_.against.material);
    page_.element("desc", {{"id", "map-words"}}, words());
    draw_cells();
    draw_frame();
    for (std::size_t at = 0; at < map_.borders.size(); ++at) draw_border(at);
    const std::string x = coordinate(across(map_.line.share));
    page_.empty("path", {{"class", "point"},
                         {"d", "M" + x + " " + coordinate(upwards(map_.against.share) - 6) +
                                   "l5.5 6l-5.5 6l-5.5 -6z"}});
    page_.close();
  }

 private:
  [[nodiscard]] double across(double share) const {
    const double span = map_.line.high - map_.line.low;
    return left + (right - left) * (span > 0 ? (share - map_.line.low) / span : 0);
  }
  [[nodiscard]] double upwards(double share) const {
    const double span = map_.against.high - map_.against.low;
    return bottom - (bottom - top) * (span > 0 ? (share - map_.against.low) / span : 0);
  }

  [[nodiscard]] std::string words() const {
    std::string out = "to the right " + axis_words(map_.line) + "; upwards " +
                      axis_words(map_.against) + "; the sound region ends where";
    for (std::size_t at = 0; at < map_.borders.size(); ++at) {
      out += std::string(at == 0 ? " " : "; ") + letter_of(at) + ": " +
             border_words(map_.borders[at]) + " is worse";
    }
    return out;
  }

  /// A square around each sound point of the grid.
  void draw_cells() {
    const double wide = (right - left) / static_cast<double>(map_.points - 1);
    const double high = (bottom - top) / static_cast<double>(map_.points - 1);
    for (std::size_t at = 0; at < map_.grid.size(); ++at) {
      if (map_.grid[at] != LeewayMap::sound) continue;
      const double x = left + wide * static_cast<double>(at % map_.points);
      const std::size_t row = at / map_.points;
      const double y = bottom - high * static_cast<double>(row);
      const double from = std::max(left, x - wide / 2);
      const double over = std::max(top, y - high / 2);
      page_.empty("rect", {{"class", "sound"},
                           {"x", coordinate(from)},
                           {"y", coordinate(over)},
                           {"width", coordinate(std::min(right, x + wide / 2) - from)},
                           {"height", coordinate(std::min(bottom, y + high / 2) - over)}});
    }
  }

  void label(double x, double y, const std::string& words, std::string_view anchor) {
    page_.element(
        "text", {{"x", coordinate(x)}, {"y", coordinate(y)}, {"text-anchor", std::string(anchor)}},
        words);
  }

  void draw_frame() {
    page_.empty("rect", {{"class", "frame"},
                         {"x", coordinate(left)},
                         {"y", coordinate(top)},
                         {"width", coordinate(right - left)},
                         {"height", coordinate(bottom - top)}});
    label(left, bottom + 15, map_share(map_.line.low) + " %", "start");
    label(right, bottom + 15, map_share(map_.line.high) + " %", "end");
    label((left + right) / 2, bottom + 32, map_.line.material, "middle");
    label(left - 4, bottom, map_share(map_.against.low) + " %", "end");
    label(left - 4, top + 9, map_share(map_.against.high) + " %", "end");
  }

  void draw_border(std::size_t at) {
    const LeewayBorder& border = map_.borders[at];
    if (border.pieces.empty()) return;
    std::string path;
    for (const auto& [from, to] : border.pieces) {
      path += "M" + coordinate(across(from.line)) + " " + coordinate(upwards(from.against)) + "L" +
              coordinate(across(to.line)) + " " + coordinate(upwards(to.against));
    }
    page_.empty("path", {{"class", border.stop ? "border" : "border full"}, {"d", path}});
    const LeewayPoint& middle = border.pieces[border.pieces.size() / 2].first;
    label(across(middle.line) + 5, upwards(middle.against) - 5, std::string(1, letter_of(at)),
          "start");
  }

  Markup& page_;
  const LeewayMap& map_;
};

}  // namespace

std::string leeway_map_html(const LeewayMap& map, const Rulesets& rulesets,
                            const ReportOptions& options) {
  Markup page(options.ascii);
  open_page(page, map.line.material + " against " + map.against.material + " in " + map.name);
  write_masthead(page, "sudsmark leeway", options.overview);
  page.open("main");
  page.element("h1", map.name);
  page.element("p", "Where " + map.line.material + " and " + map.against.material +
                        " are sound together, at level " +
                        std::string(wording::level_word(map.threshold)) +
                        " or above. The diamond is the formula.");
  page.open("figure", {{"class", "wide"}});
  MapPicture(page, map).draw();
  page.element("figcaption", "To the right " + axis_words(map.line) + "; upwards " +
                                 axis_words(map.against) + ". Shaded: both are sound.");
  page.close();
  page.element("h2", "What the borders are");
  page.open("ul");
  for (std::size_t at = 0; at < map.borders.size(); ++at) {
    const LeewayBorder& border = map.borders[at];
    page.open("li");
    page.element("b", std::string(1, letter_of(at)));
    page.text(" ");
    write_prose(page, border.stop ? border.stop->title + ": " + border.stop->message
                                  : border_words(border));
    if (border.stop) {
      page.text(" ");
      page.element("code", border.stop->rule);
    }
    page.close();
  }
  page.close();
  page.close();
  write_foot(page, editions(front::parts(rulesets)));
  return page.finished();
}

}  // namespace sudsmark::report
