// Leeway as JSON: one document, keys in a fixed order.
#include <sudsmark/leeway.h>
#include <sudsmark/report.h>

#include "report/json_parts.h"

namespace sudsmark::report {
namespace {

Json end_object(const LeewayEnd& end) {
  return {{"share", number(end.share)},
          {"stopped_by", end.stopped_by ? Json(end.stopped_by->rule) : Json(nullptr)}};
}

}  // namespace

std::string leeway_json(const Leeway& leeway, const Rulesets& rulesets,
                        const ReportOptions& options) {
  JsonDocument document(options.ascii);
  begin_report(document, rulesets);
  document.begin_list("formulas");
  document.begin_item();
  document.member("file", leeway.file);
  document.member("name", leeway.name);
  document.begin_list("lines");
  for (const LeewayLine& line : leeway.lines) {
    document.item({{"material", line.material},
                   {"line", line.line},
                   {"share", figure_object(line.share)},
                   {"least", end_object(line.least)},
                   {"most", end_object(line.most)}});
  }
  return document.finished();
}

}  // namespace sudsmark::report
