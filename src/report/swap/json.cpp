// What could stand in a material's place, as JSON: one document, keys in a fixed order.
#include <string>

#include <sudsmark/report.h>
#include <sudsmark/suggest.h>

#include "report/json_parts.h"

namespace sudsmark::report {

std::string swap_json(const Swaps& swaps, const Rulesets& rulesets, const ReportOptions& options) {
  JsonDocument document(options.ascii);
  begin_report(document, rulesets);
  document.member("formula", {{"file", swaps.before.file}, {"name", swaps.before.name}});
  document.member("inPlaceOf", swaps.name);
  document.member("roles", swaps.roles);
  document.member("considered", swaps.considered);
  document.begin_list("choices");
  for (const SwapChoice& one : swaps.choices) {
    document.item(Json{{"material", one.name},
                       {"differs", one.differs},
                       {"distance", number(one.distance)},
                       {"worse", one.worse},
                       {"undecided", one.undecided},
                       {"better", one.better},
                       {"verdicts", verdict_change_list(one.comparison)}});
  }
  document.end();
  document.member("errors", Json::array());
  return document.finished();
}

}  // namespace sudsmark::report
