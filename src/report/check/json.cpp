// Verdicts, measures and composition as JSON, keys in a fixed order, as report.schema.json
// describes them: one document, or one a line for each formula.
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include <sudsmark/run_report.h>

#include "report/json_parts.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

Json source_list(const std::vector<SourceNote>& notes) {
  Json out = Json::array();
  for (const SourceNote& note : notes) {
    Json source{{"kind", note.kind}, {"title", note.title}, {"where", note.where}};
    if (note.quoted) source["read"] = "quoted";
    if (note.computed) source["computed"] = true;
    out.push_back(std::move(source));
  }
  return out;
}

Json verdict_object(const Finding& finding, const std::string& file) {
  Json out = finding_object(finding, file);
  if (finding.allowed) out["allowed"] = {{"because", *finding.allowed}};
  if (finding.met_from_memory) out["fromMemory"] = true;
  if (finding.standing != Standing::not_compared) {
    out["baseline"] = finding.standing == Standing::fresh ? "new" : "unchanged";
  }
  out["sources"] = source_list(finding.sources);
  return out;
}

void write_composition(const FormulaResult& formula, JsonDocument& document) {
  document.begin_list("composition");
  for (const CompositionRow& row : formula.composition) {
    document.item_line({{"substance", row.substance},
                        {"cas", row.cas},
                        {"inci", row.inci},
                        {"low", number(row.share.low)},
                        {"high", number(row.share.high)},
                        {"unit", row.share.unit}});
  }
  document.end();
}

void write_formula(const FormulaResult& formula, JsonDocument& document) {
  document.member("file", formula.file);
  document.member("name", formula.name);
  document.begin_list("verdicts");
  for (const Finding& finding : formula.findings) {
    document.item_line(verdict_object(finding, formula.file));
  }
  document.end();
  write_measures(formula, document);
  write_composition(formula, document);
  if (!formula.notes.empty()) document.member("notes", problem_list(formula.notes));
}

Json absent_list(const std::vector<AbsentFinding>& findings) {
  Json out = Json::array();
  for (const AbsentFinding& finding : findings) {
    out.push_back({{"file", finding.file},
                   {"rule", finding.rule},
                   {"kind", wording::kind_word(finding.kind)},
                   {"level", wording::level_word(finding.level)},
                   {"message", finding.message}});
  }
  return out;
}

class CheckJson : public RunReport {
 public:
  CheckJson(const Rulesets& rulesets, const ReportOptions& options)
      : rulesets_(rulesets), document_(options.ascii) {}

  std::string head() override {
    document_.member("tool", tool_object(rulesets_));
    document_.member("reminder", reminder);
    document_.begin_list("formulas");
    return document_.taken();
  }

  std::string piece(const OneOfRun& one) const override {
    if (one.formula == nullptr) return {};
    JsonDocument inner = document_.inner();
    inner.begin_item();
    write_formula(*one.formula, inner);
    inner.end();
    return inner.taken();
  }

  std::string join(std::string piece, const OneOfRun& one) override {
    problems_.insert(problems_.end(), one.problems->begin(), one.problems->end());
    document_.add(piece);
    return document_.taken();
  }

  std::string tail(const RunResult& rest) override {
    document_.end();
    document_.member("errors", problem_list(problems_));
    if (rest.compared) document_.member("absent", absent_list(rest.absent));
    return document_.finished();
  }

 private:
  const Rulesets& rulesets_;
  JsonDocument document_;
  std::vector<Problem> problems_;
};

/// Every formula a document of its own on a line of its own.
class CheckJsonLines : public RunReport {
 public:
  explicit CheckJsonLines(const ReportOptions& options) : ascii_(options.ascii) {}

  std::string head() override { return {}; }

  std::string piece(const OneOfRun& one) const override {
    if (one.formula == nullptr && one.problems->empty()) return {};
    JsonDocument document(ascii_, JsonDocument::Form::one_line);
    if (one.formula != nullptr) {
      write_formula(*one.formula, document);
    } else {
      document.member("file", std::string(one.file));
    }
    document.member("errors", problem_list(*one.problems));
    document.member("reminder", reminder);
    return document.finished();
  }

  std::string join(std::string piece, const OneOfRun&) override { return piece; }
  std::string tail(const RunResult&) override { return {}; }

 private:
  bool ascii_;
};

}  // namespace

std::unique_ptr<RunReport> check_json(const Rulesets& rulesets, const ReportOptions& options) {
  return std::make_unique<CheckJson>(rulesets, options);
}

std::unique_ptr<RunReport> check_json_lines(const Rulesets&, const ReportOptions& options) {
  return std::make_unique<CheckJsonLines>(options);
}

}  // namespace sudsmark::report
