// Verdicts, measures and composition as JSON: one document, or a line for each formula, keys in a
// fixed order, as the schemas beside the reports describe them.
//
// What is kept is listed by the ids of its rules, and what waits for one thing is one verdict, as
// in the text: `--verbose` lists every verdict by itself.
#include <algorithm>
#include <array>
#include <string>
#include <utility>
#include <vector>

#include <sudsmark/report.h>

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
    const Digest told = digest(formula, rules_);
    for (const Finding& finding : formula.findings) {
      if (listed(finding)) document_.item_line(verdict(finding, formula.file));
    }
    if (!options_.verbose) {
      for (const Waiting& waiting : told.waiting) write_waiting(waiting, formula.file);
    }
    document_.end();
    if (!options_.verbose) write_kept(formula);
    document_.begin_object("measures");
    for (const MeasureResult& measure : formula.measures) {
      document_.member_line(
          measure.name, options_.verbose ? measure_object(measure) : figure_object(measure.figure));
    }
    document_.end();
    write_composition(formula);
    if (!formula.notes.empty()) document_.member("notes", problem_list(formula.notes));
  }

 private:
  /// What waits for one thing and is no paper is gathered, and what is kept is told by its rule.
  [[nodiscard]] bool listed(const Finding& finding) const {
    if (options_.quiet && !reaches(finding, *options_.quiet)) return false;
    if (options_.verbose || finding.allowed) return true;
    if (finding.kind == Kind::open) return finding.paper && finding.level <= Level::note;
    return finding.kind != Kind::pass && finding.kind != Kind::not_applicable &&
           !finding.met_from_memory;
  }

  Json verdict(const Finding& finding, const std::string& file) const {
    Json out = finding_object(finding, file);
    if (finding.allowed) out["allowed"] = {{"because", *finding.allowed}};
    if (finding.met_from_memory) out["fromMemory"] = true;
    if (finding.standing != Standing::not_compared) {
      out["baseline"] = baseline_word(finding.standing);
    }
    const rules::Rule* rule = rules_.of(finding);
    out["title"] = rule == nullptr ? finding.rule : rule->title;
    out["remedy"] = rule == nullptr ? finding.remedy : rule->remedy;
    out["sources"] = source_list(finding.sources);
    return out;
  }

  void write_waiting(const Waiting& waiting, const std::string& file) {
    if (options_.quiet && !reaches(*waiting.first, *options_.quiet)) return;
    Json out = verdict(*waiting.first, file);
    if (waiting.checks > 1) {
      out["checks"] = waiting.checks;
      out["rules"] = waiting.rules;
    }
    document_.item_line(out);
  }

  void write_kept(const FormulaResult& formula) {
    std::vector<std::string> ids;
    for (const Finding& finding : formula.findings) {
      const bool kept = (finding.kind == Kind::pass || finding.met_from_memory) && !finding.allowed;
      if (kept && (ids.empty() || ids.back() != finding.rule)) ids.push_back(finding.rule);
    }
    document_.member_line("kept", ids);
  }

  void write_composition(const FormulaResult& formula) {
    document_.begin_list("composition");
    for (const CompositionRow& row : formula.composition) {
      document_.item_line({{"substance", row.substance},
                           {"cas", row.cas},
                           {"inci", row.inci},
                           {"low", number(row.share.low)},
                           {"high", number(row.share.high)},
                           {"unit", row.share.unit}});
    }
    document_.end();
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

}  // namespace

std::string check_json(const RunResult& run, const Rulesets& rulesets,
                       const ReportOptions& options) {
  const RuleIndex rules(front::parts(rulesets));
  JsonDocument document(options.ascii);
  begin_report(document, rulesets);
  VerdictCounts counts;
  for (const FormulaResult& formula : run.formulas) counts.add(formula);
  Json whole = counts.object();
  whole["formulas"] = run.formulas.size();
  document.member_line("counts", whole);
  document.begin_list("formulas");
  for (const FormulaResult& formula : run.formulas) {
    document.begin_item();
    FormulaJson(rules, options, document).write(formula);
    document.end();
  }
  document.end();
  document.member("errors", problem_list(run.problems));
  if (run.compared) document.member("absent", absent_list(run.absent));
  return document.finished();
}

std::string check_json_lines(const RunResult& run, const Rulesets& rulesets,
                             const ReportOptions& options) {
  const RuleIndex rules(front::parts(rulesets));
  std::string out;
  for (const FormulaResult& formula : run.formulas) {
    JsonDocument line(options.ascii, JsonDocument::Shape::line);
    FormulaJson(rules, options, line).write(formula);
    line.member("errors", Json::array());
    line.member("reminder", reminder);
    out += line.finished();
  }
  // what could not be read has its lines too, each file once
  for (auto first = run.problems.begin(); first != run.problems.end();) {
    const auto next = std::find_if(first, run.problems.end(), [&](const Problem& problem) {
      return problem.file != first->file;
    });
    JsonDocument line(options.ascii, JsonDocument::Shape::line);
    line.member("file", first->file);
    line.member("errors", problem_list({first, next}));
    line.member("reminder", reminder);
    out += line.finished();
    first = next;
  }
  return out;
}

}  // namespace sudsmark::report
