// A map of two lines as JSON: the grid, and where the sound region ends.
#include <sudsmark/leeway.h>
#include <sudsmark/report.h>

#include "report/json_parts.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

Json axis_object(const LeewayAxis& axis) {
  Json out{{"material", axis.material}};
  if (!axis.container.empty()) out["in"] = axis.container;
  out["share"] = number(axis.share);
  out["low"] = number(axis.low);
  out["high"] = number(axis.high);
  out["unit"] = "%";
  return out;
}

Json point(const LeewayPoint& at) {
  return Json::array({number(at.line), number(at.against)});
}

}  // namespace

std::string leeway_map_json(const LeewayMap& map, const Rulesets& rulesets,
                            const ReportOptions& options) {
  JsonDocument document(options.ascii);
  begin_report(document, rulesets);
  document.member("formula", {{"file", map.file}, {"name", map.name}});
  document.member("threshold", wording::level_word(map.threshold));
  document.member("line", axis_object(map.line));
  document.member("against", axis_object(map.against));
  document.begin_list("borders");
  for (const LeewayBorder& border : map.borders) {
    Json item{{"rule", border.stop ? Json(border.stop->rule) : Json(nullptr)}};
    item["pieces"] = Json::array();
    for (const auto& [from, to] : border.pieces) {
      item["pieces"].push_back(Json::array({point(from), point(to)}));
    }
    document.item_line(item);
  }
  document.end();
  document.begin_list("grid");
  for (std::size_t row = 0; row < map.points; ++row) {
    Json line = Json::array();
    for (std::size_t at = 0; at < map.points; ++at) {
      const std::size_t border = map.grid[row * map.points + at];
      line.push_back(border == LeewayMap::sound ? Json(nullptr) : Json(border));
    }
    document.item_line(line);
  }
  document.end();
  return document.finished();
}

}  // namespace sudsmark::report
