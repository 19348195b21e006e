// The SARIF report: version 2.1.0 of the open results format (OASIS).
//
// A result has a level only where its kind is `fail`, as the format wants it; how much a `review`
// or an `open` weighs stands in its properties. Results leave formula by formula, so the rules and
// the entries of the law that they name stand behind them.
#include <map>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include <sudsmark/run_report.h>

#include "front/fingerprint.h"
#include "front/parts.h"
#include "report/check/sarif_law.h"
#include "report/check/sarif_results.h"
#include "report/check/sarif_rules.h"
#include "report/check/sarif_text.h"
#include "report/json_document.h"
#include "report/rule_index.h"

namespace sudsmark::report {
namespace {

class CheckSarif : public RunReport {
 public:
  CheckSarif(const Rulesets& rulesets, const ReportOptions& options)
      : options_(options),
        index_(front::parts(rulesets)),
        rules_(front::parts(rulesets), options.verbose),
        law_(front::parts(rulesets)),
        document_(options.ascii) {}

  std::string head() override {
    document_.member("$schema",
                     "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/"
                     "sarif-schema-2.1.0.json");
    document_.member("version", "2.1.0");
    document_.begin_list("runs");
    document_.begin_item();
    document_.member("automationDetails", {{"id", "sudsmark/check/"}});
    document_.member("columnKind", "unicodeCodePoints");
    document_.begin_list("results");
    return document_.taken();
  }

  std::string piece(const OneOfRun& one) const override {
    if (one.formula == nullptr) return {};
    JsonDocument inner = document_.inner();
    write_results(*one.formula, one.compared, index_, law_, options_, inner);
    return inner.taken();
  }

  std::string join(std::string piece, const OneOfRun& one) override {
    problems_.insert(problems_.end(), one.problems->begin(), one.problems->end());
    if (one.formula != nullptr) {
      rules_.note(*one.formula);
      law_.note(*one.formula, index_);
      for (const Problem& note : one.formula->notes) notes_.push_back(notification(note, "note"));
    }
    document_.add(piece);
    return document_.taken();
  }

  std::string tail(const RunResult& rest) override {
    for (const Problem& problem : problems_) {
      if (problem.spelling.empty()) continue;
      rules_.note(spelling_rule);
      document_.item_line(misspelt_result(problem, fingerprint(problem), rest.compared));
    }
    for (const AbsentFinding& finding : rest.absent) {
      rules_.note(finding.rule);
      document_.item_line(absent_result(finding));
    }
    document_.end();
    law_.list(rules_.listed());
    write_tool();
    if (!law_.empty()) document_.member_line("taxonomies", law_.taxonomies());
    write_invocation();
    return document_.finished();
  }

 private:
  /// The same wherever its line moves; the second of its kind in a file is told from the first.
  std::string fingerprint(const Problem& problem) {
    const std::string key = problem.file + "\n" + problem.id + "\n" + problem.message;
    return front::fingerprint_of(problem.id + "\n" + problem.message, seen_[key]++);
  }

  void write_tool() {
    document_.begin_object("tool");
    document_.begin_object("driver");
    document_.member("name", "sudsmark");
    document_.member("version", SUDSMARK_VERSION);
    document_.member("semanticVersion", SUDSMARK_VERSION);
    document_.member("informationUri", "urn:sudsmark");
    document_.member("shortDescription", {{"text", "checks formulas of solid bath products"}});
    document_.member("fullDescription", {{"text", sarif_words(reminder)}});
    document_.member("language", "en");
    rules_.write(law_, document_);
    if (!law_.empty()) document_.member("supportedTaxonomies", law_.supported());
    document_.end();
    document_.end();
  }

  void write_invocation() {
    Json notices = Json::array();
    for (const Problem& problem : problems_) notices.push_back(notification(problem, "error"));
    for (Json& note : notes_) notices.push_back(std::move(note));
    Json invocation{{"executionSuccessful", problems_.empty()}};
    if (!notices.empty()) invocation["toolExecutionNotifications"] = std::move(notices);
    document_.member_line("invocations", Json::array({std::move(invocation)}));
  }

  ReportOptions options_;
  RuleIndex index_;
  SarifRules rules_;
  SarifLaw law_;
  JsonDocument document_;
  std::vector<Problem> problems_;
  std::vector<Json> notes_;          ///< that formulas could be read in spite of
  std::map<std::string, int> seen_;  ///< misspelt words of a file, by what is said of them
};

}  // namespace

std::unique_ptr<RunReport> check_sarif(const Rulesets& rulesets, const ReportOptions& options) {
  return std::make_unique<CheckSarif>(rulesets, options);
}

}  // namespace sudsmark::report
