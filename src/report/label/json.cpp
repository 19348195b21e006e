// Labels as one JSON document, keys in a fixed order.
#include <sudsmark/report.h>

#include "report/json_parts.h"

namespace sudsmark {
namespace {

using report::Json;

const char* group_key(LabelGroup group) {
  switch (group) {
    case LabelGroup::by_weight:
      return "byWeight";
    case LabelGroup::any_order:
      return "anyOrder";
    case LabelGroup::allergen:
      return "allergen";
    case LabelGroup::colour:
      return "colour";
  }
  return "";
}

Json sources(const std::vector<SourceNote>& notes) {
  Json out = Json::array();
  for (const SourceNote& note : notes) {
    out.push_back({{"kind", note.kind}, {"title", note.title}, {"where", note.where}});
  }
  return out;
}

Json ingredients(const MarketLabel& label) {
  Json out = Json::array();
  for (const LabelIngredient& one : label.ingredients) {
    out.push_back({{"name", one.name},
                   {"place", group_key(one.group)},
                   {"share", report::figure_object(one.share)},
                   {"from", one.from}});
  }
  return out;
}

Json words(const MarketLabel& label) {
  Json out = Json::array();
  for (const LabelWords& one : label.words) {
    out.push_back({{"name", one.name},
                   {"words", one.words},
                   {"exact", one.exact},
                   {"certain", one.certain},
                   {"condition", one.condition},
                   {"entry", one.entry},
                   {"sources", sources(one.sources)}});
  }
  return out;
}

Json points(const MarketLabel& label) {
  Json out = Json::array();
  for (const LabelPoint& one : label.points) {
    out.push_back({{"name", one.name},
                   {"what", one.what},
                   {"small", one.small},
                   {"condition", one.condition},
                   {"entry", one.entry},
                   {"sources", sources(one.sources)}});
  }
  return out;
}

Json papers(const std::vector<LabelPaper>& list) {
  Json out = Json::array();
  for (const LabelPaper& one : list) {
    out.push_back(
        {{"paper", one.paper}, {"why", one.why}, {"about", one.about}, {"entry", one.entry}});
  }
  return out;
}

/// The list as one line that can be copied onto a pack.
std::string list_to_print(const MarketLabel& label) {
  std::string out;
  for (const LabelIngredient& one : label.ingredients) {
    out += (out.empty() ? "Ingredients: " : ", ") + one.name;
  }
  return out;
}

Json labels(const FormulaResult& formula) {
  Json out = Json::array();
  for (const MarketLabel& label : formula.labels) {
    out.push_back({{"market", label.market},
                   {"list", list_to_print(label)},
                   {"ingredients", ingredients(label)},
                   {"allergensKnown", label.allergens_known},
                   {"undecided", label.undecided},
                   {"doubts", label.doubts},
                   {"words", words(label)},
                   {"points", points(label)},
                   {"duties", papers(label.duties)}});
  }
  return out;
}

}  // namespace

namespace report {

std::string label_json(const RunResult& run, const Rulesets& rulesets,
                       const ReportOptions& options) {
  JsonDocument document(options.ascii);
  begin_report(document, rulesets);
  document.begin_list("formulas");
  for (const FormulaResult& formula : run.formulas) {
    Json one{{"file", formula.file}, {"name", formula.name}, {"on", formula.on}};
    if (!formula.batch_made.empty()) one["batchMade"] = formula.batch_made;
    if (!formula.on_sale_since.empty()) one["onSaleSince"] = formula.on_sale_since;
    if (!formula.against_making.empty()) one["againstMaking"] = formula.against_making;
    one["labels"] = labels(formula);
    one["papers"] = papers(formula.papers);
    document.item(one);
  }
  document.end();
  document.member("errors", problem_list(run.problems));
  return document.finished();
}

}  // namespace report
}  // namespace sudsmark
