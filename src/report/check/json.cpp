// Verdicts, measures and composition as JSON: one document, or a line for each formula, keys in a
// fixed order, as the schemas beside the reports describe them.
//
// What is kept is counted, what waits for one thing is one verdict, as in the text, and so are
// notes of one rule, the others under `also`: `--verbose` lists every verdict by itself.
#include <algorithm>
#include <array>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include <sudsmark/run_report.h>

#include "measures/registry.h"
#include "report/digest.h"
#include "report/json_parts.h"
#include "report/rule_index.h"
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

const char* baseline_word(Standing standing) {
  switch (standing) {
    case Standing::fresh:
      return "new";
    case Standing::better:
      return "updated";
    case Standing::not_compared:
    case Standing::unchanged:
      break;
  }
  return "unchanged";
}

/// Counts of the verdicts of one formula, or of all of them.
class VerdictCounts {
 public:
  void add(const FormulaResult& formula) {
    const wording::Counts of = wording::count(formula);
    for (std::size_t kind = 0; kind < kinds_.size(); ++kind) kinds_[kind] += of.kinds[kind];
    allowed_ += of.allowed;
    for (const Finding& finding : formula.findings) {
      if (finding.kind == Kind::fail && !finding.allowed) {
        ++broken_[static_cast<std::size_t>(finding.level)];
      }
    }
  }

  [[nodiscard]] Json object() const {
    const auto kind = [&](Kind one) { return kinds_[static_cast<std::size_t>(one)]; };
    const auto level = [&](Level one) { return broken_[static_cast<std::size_t>(one)]; };
    return {{"error", level(Level::error)}, {"warning", level(Level::warning)},
            {"note", level(Level::note)},   {"pass", kind(Kind::pass)},
            {"fail", kind(Kind::fail)},     {"review", kind(Kind::review)},
            {"open", kind(Kind::open)},     {"notApplicable", kind(Kind::not_applicable)},
            {"allowed", allowed_}};
  }

 private:
  std::array<std::size_t, 5> kinds_{};   ///< by Kind
  std::array<std::size_t, 4> broken_{};  ///< failures by Level
  std::size_t allowed_ = 0;
};

class FormulaJson {
 public:
  FormulaJson(const RuleIndex& rules, const ReportOptions& options, JsonDocument& document)
      : rules_(rules), options_(options), document_(document) {}

  /// The members of a formula's object.
  void write(const FormulaResult& formula) {
    VerdictCounts counts;
    counts.add(formula);
    document_.member("file", formula.file);
    document_.member("name", formula.name);
    document_.member_line("counts", counts.object());
    document_.begin_list("verdicts");
    write_verdicts(formula);
    if (!options_.verbose) {
      const Digest told = digest(formula, rules_);
      for (const Waiting& waiting : told.waiting) write_waiting(waiting, formula.file);
    }
    document_.end();
    write_measures(formula);
    write_composition(formula);
    if (!formula.notes.empty()) document_.member("notes", problem_list(formula.notes));
  }

 private:
  /// What waits for one thing and is no paper is gathered, and what is kept is counted.
  [[nodiscard]] bool listed(const Finding& finding) const {
    if (options_.quiet && !reaches(finding, *options_.quiet)) return false;
    if (options_.verbose || finding.allowed) return true;
    // beside a baseline each has its own state
    if (finding.kind == Kind::open && finding.standing != Standing::not_compared) return true;
    if (finding.kind == Kind::open) return finding.paper && finding.level <= Level::note;
    return finding.kind != Kind::pass && finding.kind != Kind::not_applicable &&
           !finding.met_from_memory;
  }

  void write_verdicts(const FormulaResult& formula) {
    const Finding* first = nullptr;
    Json of_first;
    for (const Finding& finding : formula.findings) {
      if (!listed(finding)) continue;
      if (first != nullptr && repeats(*first, finding)) {
        Json also;
        put_occasion(also, finding, formula.file);
        of_first["also"].push_back(std::move(also));
        continue;
      }
      if (first != nullptr) document_.item_line(of_first);
      first = &finding;
      of_first = verdict(finding, formula.file);
    }
    if (first != nullptr) document_.item_line(of_first);
  }

  /// Whether a finding is one more note of the rule of another.
  [[nodiscard]] bool repeats(const Finding& first, const Finding& finding) const {
    const auto plain = [](const Finding& one) {
      return one.kind == Kind::fail && one.level == Level::note && !one.allowed &&
             one.standing == Standing::not_compared;
    };
    return !options_.verbose && first.rule == finding.rule && plain(first) && plain(finding);
  }

  Json verdict(const Finding& finding, const std::string& file) const {
    Json out = finding_object(finding, file);
    if (finding.allowed) out["allowed"] = {{"because", *finding.allowed}};
    if (finding.met_from_memory) out["fromMemory"] = true;
    if (finding.standing != Standing::not_compared) {
      out["baseline"] = baseline_word(finding.standing);
    }
    const rules::Rule* rule = rules_.of(finding);
    out["title"] = rule == nullptr ? finding.rule : rule->words->title;
    out["remedy"] = rule == nullptr ? finding.remedy : rule->words->remedy;
    out["sources"] = source_list(finding.sources);
    return out;
  }

  void write_waiting(const Waiting& waiting, const std::string& file) {
    if (options_.quiet && !reaches(*waiting.first, *options_.quiet)) return;
    if (waiting.first->standing != Standing::not_compared) return;
    Json out = verdict(*waiting.first, file);
    if (waiting.checks > 1) {
      out["checks"] = waiting.checks;
      out["rules"] = waiting.rules;
    }
    document_.item_line(out);
  }

  /// On one line without their words, and without what rules work out on the way to a verdict:
  /// there are hundreds in every formula.
  void write_measures(const FormulaResult& formula) {
    if (options_.verbose) return report::write_measures(formula, document_);
    Json all = Json::object();
    for (const MeasureResult& measure : formula.measures) {
      if (measures::find(measure.name)) all.add_member(measure.name, short_figure(measure.figure));
    }
    document_.member_line("measures", all);
  }

  void write_composition(const FormulaResult& formula) {
    Json all = Json::array();
    for (const CompositionRow& row : formula.composition) {
      all.push_back({{"substance", row.substance},
                     {"cas", row.cas},
                     {"inci", row.inci},
                     {"low", figure_number(row.share.low)},
                     {"high", figure_number(row.share.high)},
                     {"unit", row.share.unit}});
    }
    document_.member_line("composition", all);
  }

  const RuleIndex& rules_;
  const ReportOptions& options_;
  JsonDocument& document_;
};

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
      : rulesets_(rulesets),
        rules_(front::parts(rulesets)),
        options_(options),
        document_(options.ascii) {}

  std::string head() override {
    begin_report(document_, rulesets_);
    document_.begin_list("formulas");
    return document_.taken();
  }

  std::string piece(const OneOfRun& one) const override {
    if (one.formula == nullptr) return {};
    JsonDocument inner = document_.inner();
    inner.begin_item();
    FormulaJson(rules_, options_, inner).write(*one.formula);
    inner.end();
    return inner.taken();
  }

  std::string join(std::string piece, const OneOfRun& one) override {
    problems_.insert(problems_.end(), one.problems->begin(), one.problems->end());
    if (one.formula != nullptr) {
      counts_.add(*one.formula);
      ++formulas_;
    }
    document_.add(piece);
    return document_.taken();
  }

  std::string tail(const RunResult& rest) override {
    document_.end();
    Json whole = counts_.object();
    whole["formulas"] = formulas_;
    document_.member_line("counts", whole);
    document_.begin_list("errors");
    for (const Problem& problem : problems_) document_.item_line(problem_object(problem));
    document_.end();
    if (rest.compared) document_.member("absent", absent_list(rest.absent));
    return document_.finished();
  }

 private:
  const Rulesets& rulesets_;
  RuleIndex rules_;
  ReportOptions options_;
  JsonDocument document_;
  VerdictCounts counts_;
  std::size_t formulas_ = 0;
  std::vector<Problem> problems_;
};

/// Every formula a document of its own on a line of its own; what could not be read has one too.
class CheckJsonLines : public RunReport {
 public:
  CheckJsonLines(const Rulesets& rulesets, const ReportOptions& options)
      : rules_(front::parts(rulesets)), options_(options) {}

  std::string head() override { return {}; }

  std::string piece(const OneOfRun& one) const override {
    if (one.formula == nullptr && one.problems->empty()) return {};
    JsonDocument document(options_.ascii, JsonDocument::Form::one_line);
    if (one.formula != nullptr) {
      FormulaJson(rules_, options_, document).write(*one.formula);
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
  RuleIndex rules_;
  ReportOptions options_;
};

}  // namespace

std::unique_ptr<RunReport> check_json(const Rulesets& rulesets, const ReportOptions& options) {
  return std::make_unique<CheckJson>(rulesets, options);
}

std::unique_ptr<RunReport> check_json_lines(const Rulesets& rulesets,
                                            const ReportOptions& options) {
  return std::make_unique<CheckJsonLines>(rulesets, options);
}

}  // namespace sudsmark::report
