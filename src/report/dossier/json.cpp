// The dossier as one JSON document, keys in a fixed order.
#include <sudsmark/report.h>

#include "report/json_document.h"
#include "report/json_parts.h"

namespace sudsmark {
namespace {

using report::Json;

Json sources(const std::vector<SourceNote>& notes) {
  Json out = Json::array();
  for (const SourceNote& note : notes) {
    out.push_back({{"kind", note.kind},
                   {"title", note.title},
                   {"where", note.where},
                   {"quoted", note.quoted},
                   {"computed", note.computed}});
  }
  return out;
}

Json cells(const std::vector<DossierCell>& row) {
  Json out = Json::array();
  for (const DossierCell& one : row) {
    out.push_back(one.figure ? report::figure_object(*one.figure) : Json(one.words));
  }
  return out;
}

Json heading_object(const DossierHeading& heading) {
  Json entries = Json::array();
  for (const DossierEntry& one : heading.entries) {
    entries.push_back(
        {{"what", one.what}, {"words", one.words}, {"sources", sources(one.sources)}});
  }
  Json tables = Json::array();
  for (const DossierTable& table : heading.tables) {
    Json rows = Json::array();
    for (const auto& row : table.rows) rows.push_back(cells(row));
    tables.push_back({{"caption", table.caption}, {"columns", table.columns}, {"rows", rows}});
  }
  return {{"number", heading.number},
          {"title", heading.title},
          {"entries", entries},
          {"tables", tables}};
}

Json question_object(const DossierQuestion& one) {
  return {{"heading", one.heading},   {"who", answerer_word(one.who)},
          {"question", one.question}, {"why", one.why},
          {"about", one.about},       {"decides", one.decides}};
}

}  // namespace

namespace report {

std::string dossier_json(const Dossier& dossier, const Rulesets& rulesets,
                         const ReportOptions& options) {
  JsonDocument document(options.ascii);
  begin_report(document, rulesets);
  document.member("file", dossier.checked.file);
  document.member("name", dossier.checked.name);
  document.member("on", dossier.checked.on);
  document.begin_list("partA");
  for (const DossierHeading& one : dossier.part_a) document.item(heading_object(one));
  document.end();
  document.begin_list("questions");
  for (const DossierQuestion& one : dossier.questions) document.item(question_object(one));
  document.end();
  document.member("partB", {{"text", nullptr}, {"why", dossier.part_b}});
  return document.finished();
}

}  // namespace report
}  // namespace sudsmark
