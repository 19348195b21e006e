// Labels as one JSON document, keys in a fixed order.
#include <sudsmark/label.h>

#include "report/json_document.h"

namespace sudsmark {
namespace {

using report::ordered_json;

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

ordered_json sources(const std::vector<SourceNote>& notes) {
  ordered_json out = ordered_json::array();
  for (const SourceNote& note : notes) {
    out.push_back({{"kind", note.kind}, {"title", note.title}, {"where", note.where}});
  }
  return out;
}

ordered_json ingredients(const MarketLabel& label) {
  ordered_json out = ordered_json::array();
  for (const LabelIngredient& one : label.ingredients) {
    out.push_back({{"name", one.name},
                   {"place", group_key(one.group)},
                   {"share", report::figure_object(one.share)},
                   {"from", one.from}});
  }
  return out;
}

ordered_json words(const MarketLabel& label) {
  ordered_json out = ordered_json::array();
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

ordered_json points(const MarketLabel& label) {
  ordered_json out = ordered_json::array();
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

ordered_json papers(const std::vector<LabelPaper>& list) {
  ordered_json out = ordered_json::array();
  for (const LabelPaper& one : list) {
    out.push_back(
        {{"paper", one.paper}, {"why", one.why}, {"about", one.about}, {"entry", one.entry}});
  }
  return out;
}

ordered_json labels(const FormulaResult& formula) {
  ordered_json out = ordered_json::array();
  for (const MarketLabel& label : formula.labels) {
    out.push_back({{"market", label.market},
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

std::string label_json(const RunResult& run, const JsonOptions& options) {
  report::JsonDocument document(options.ascii);
  document.member("tool", {{"name", "sudsmark"}, {"version", SUDSMARK_VERSION}});
  document.member("reminder", reminder);
  document.begin_list("formulas");
  for (const FormulaResult& formula : run.formulas) {
    ordered_json one{{"file", formula.file}, {"name", formula.name}, {"on", formula.on}};
    if (!formula.batch_made.empty()) one["batchMade"] = formula.batch_made;
    if (!formula.on_sale_since.empty()) one["onSaleSince"] = formula.on_sale_since;
    one["labels"] = labels(formula);
    one["papers"] = papers(formula.papers);
    document.item(one);
  }
  document.end();
  ordered_json errors = ordered_json::array();
  for (const Problem& problem : run.problems) {
    ordered_json one{{"file", problem.file}};
    if (problem.line > 0) {
      one["line"] = problem.line;
      one["column"] = problem.column;
    }
    one["message"] = problem.message;
    errors.push_back(std::move(one));
  }
  document.member("errors", errors);
  return document.finished();
}

}  // namespace sudsmark
