// `explain` as one JSON document: a topic in parts, each with its heading, paragraphs and entries.
#include <sudsmark/report.h>

#include <optional>
#include <string>

#include "report/explain/topics.h"
#include "report/json_document.h"
#include "report/json_parts.h"
#include "wording/page.h"

namespace sudsmark::report {
namespace {

Json new_part(const std::string& heading) {
  return {{"heading", heading}, {"paragraphs", Json::array()}, {"entries", Json::array()}};
}

}  // namespace

std::string explain_json(const Topic& topic, const Rulesets& rulesets,
                         const ReportOptions& options) {
  wording::Page page;
  write_topic(topic.name, rulesets, page);
  JsonDocument document(options.ascii);
  begin_report(document, rulesets);
  document.member("topic", topic.name);
  document.begin_list("parts");
  std::optional<Json> part;
  for (const SheetItem& item : page.items()) {
    const bool heads = item.kind == SheetItem::Kind::heading;
    if (heads && part) document.item(*part);
    if (heads || !part) part = new_part(heads ? item.words : std::string());
    if (item.kind == SheetItem::Kind::paragraph) (*part)["paragraphs"].push_back(item.words);
    if (item.kind == SheetItem::Kind::entry) {
      (*part)["entries"].push_back({{"label", item.label}, {"words", item.words}});
    }
  }
  if (part) document.item(*part);
  document.end();
  return document.finished();
}

}  // namespace sudsmark::report
