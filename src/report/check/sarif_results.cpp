#include "report/check/sarif_results.h"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include <sudsmark/fixes.h>

#include "report/check/sarif_rules.h"
#include "report/check/sarif_text.h"
#include "report/digest.h"
#include "report/short_words.h"
#include "report/subject_words.h"
#include "wording/citations.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

Json said(std::string_view words) {
  return {{"text", sarif_words(words)}};
}

/// The location of a file; what came from standard input has none.
Json artifact(const std::string& path) {
  if (path == "-") return {{"description", {{"text", "standard input"}}}};
  return {{"uri", uri_of_path(path)}};
}

Json location(const std::string& file, std::uint32_t line, std::uint32_t column) {
  Json physical{{"artifactLocation", artifact(file)}};
  if (line > 0) {
    physical["region"] = {{"startLine", line}};
    if (column > 0) physical["region"]["startColumn"] = column;
  }
  return {{"physicalLocation", std::move(physical)}};
}

template <typename Found>
Json region(const Found& found) {
  return {{"startLine", found.line},
          {"startColumn", found.column},
          {"endLine", found.end_line},
          {"endColumn", found.end_column}};
}

Json fix(const std::string& words, const std::vector<TextEdit>& edits, const std::string& file) {
  Json replacements = Json::array();
  for (const TextEdit& edit : edits) {
    replacements.push_back(
        {{"deletedRegion", region(edit)}, {"insertedContent", {{"text", edit.text}}}});
  }
  Json change{{"artifactLocation", artifact(file)}, {"replacements", std::move(replacements)}};
  return {{"description", said(words)}, {"artifactChanges", Json::array({std::move(change)})}};
}

/// The change of spelling that mends a finding, or what could not be read.
template <typename Found>
Json fix(const Found& found, const std::string& file) {
  const TextEdit edit{found.line, found.column, found.end_line, found.end_column, found.spelling};
  return fix("write '" + found.spelling + "'", {edit}, file);
}

/// Every result has its kind, and a level only what is broken: "none" is said aloud, since
/// readers that know no kinds would take its absence for a warning.
void put_weight(Json& out, Kind kind, Level level) {
  out["kind"] = wording::kind_word(kind);
  out["level"] = wording::level_word(kind == Kind::fail ? level : Level::none);
}

/// The results of one formula.
class FormulaResults {
 public:
  FormulaResults(const RuleIndex& rules, const SarifLaw& law, const ReportOptions& options,
                 bool compared, JsonDocument& document)
      : rules_(rules), law_(law), options_(options), compared_(compared), document_(document) {}

  void write(const FormulaResult& formula) {
    for (const Finding& finding : formula.findings) {
      if (listed(finding)) document_.item_line(result(finding, formula));
    }
    if (options_.verbose || compared_) return;
    const Digest told = digest(formula, rules_);
    for (const InShort& notes : told.in_short) {
      if (!left_out(*notes.of.front())) document_.item_line(result(notes, formula));
    }
    if (!told.papers.empty() && !left_out(*told.papers.front())) {
      const std::string words = "ask for " + papers_in_short(told.papers, rules_);
      document_.item_line(gathered(*told.papers.front(), told.papers, words, formula));
    }
    for (const Waiting& waiting : told.waiting) {
      if (!left_out(*waiting.first)) document_.item_line(result(waiting, formula));
    }
  }

 private:
  [[nodiscard]] bool left_out(const Finding& finding) const {
    return options_.quiet && !reaches(finding, *options_.quiet);
  }

  /// What waits for one thing is one result, and so are papers, and notes under one short word;
  /// what is kept is none. Beside a baseline each stands by itself, since each has its own state
  /// there.
  [[nodiscard]] bool listed(const Finding& finding) const {
    if (left_out(finding)) return false;
    if (options_.verbose) return true;
    if (!has_result(finding)) return false;
    if (compared_ || finding.allowed) return true;
    if (finding.kind == Kind::open) return false;
    const rules::Rule* rule = rules_.of(finding);
    return finding.level > Level::note || rule == nullptr || rule->words->telling.in_short.empty();
  }

  /// The first of the notes, with the words and the places of all.
  Json result(const InShort& notes, const FormulaResult& formula) {
    const auto sure = std::find_if(notes.of.begin(), notes.of.end(),
                                   [](const Finding* note) { return note->kind == Kind::fail; });
    const Finding& first = sure == notes.of.end() ? *notes.of.front() : **sure;
    if (notes.of.size() == 1) return result(first, formula);
    return gathered(first, notes.of, in_short(notes), formula);
  }

  Json gathered(const Finding& first, const Findings& all, const std::string& words,
                const FormulaResult& formula) {
    Json out{{"ruleId", first.rule}};
    const bool fails = first.kind == Kind::fail;
    put_weight(out, first.kind, first.level);
    if (!fails) out["properties"] = {{"level", wording::level_word(first.level)}};
    out["message"] = said(words);
    out["locations"] = Json::array({place(first, formula)});
    std::vector<std::uint32_t> lines{first.line};
    Json related = Json::array();
    for (const Finding* note : all) {
      if (std::find(lines.begin(), lines.end(), note->line) != lines.end()) continue;
      lines.push_back(note->line);
      related.push_back(
          location(note->file.empty() ? formula.file : note->file, note->line, note->column));
    }
    if (!related.empty()) out["relatedLocations"] = std::move(related);
    out["partialFingerprints"] = {{"sudsmarkFinding/v2", first.fingerprint}};
    return out;
  }

  Json result(const Waiting& waiting, const FormulaResult& formula) {
    Json out = result(*waiting.first, formula);
    if (waiting.checks < 2) return out;
    out["message"] = said(waiting_words(waiting));
    return out;
  }

  Json result(const Finding& finding, const FormulaResult& formula) {
    const rules::Rule* rule = rules_.of(finding);
    Json out{{"ruleId", finding.rule}};
    put_weight(out, finding.kind, finding.level);
    out["message"] = said(message(finding, rule));
    out["locations"] = Json::array({place(finding, formula)});
    if (!finding.fingerprint.empty()) {
      out["partialFingerprints"] = {{"sudsmarkFinding/v2", finding.fingerprint}};
    }
    if (finding.allowed) {
      out["suppressions"] = Json::array(
          {{{"kind", "inSource"}, {"status", "accepted"}, {"justification", *finding.allowed}}});
    }
    if (finding.standing != Standing::not_compared) {
      out["baselineState"] = finding.standing == Standing::fresh    ? "new"
                             : finding.standing == Standing::better ? "updated"
                                                                    : "unchanged";
    }
    if (rule != nullptr) {
      Json taxa = law_.taxa(*rule, finding);
      if (!taxa.empty()) out["taxa"] = std::move(taxa);
    }
    Json changes = Json::array();
    if (!finding.spelling.empty() && finding.line > 0) {
      changes.push_back(fix(finding, finding.file.empty() ? formula.file : finding.file));
    }
    if (options_.fixes != nullptr) add_fixes(finding, formula.file, changes);
    if (!changes.empty()) out["fixes"] = std::move(changes);
    Json more = properties(finding);
    if (more.size() > 0) out["properties"] = std::move(more);
    return out;
  }

  /// What `suggest` found that mends it.
  void add_fixes(const Finding& finding, const std::string& file, Json& to) const {
    const auto found = options_.fixes->of.find(file);
    if (found == options_.fixes->of.end()) return;
    for (const Fix& one : found->second) {
      const bool mends = std::any_of(one.mends.begin(), one.mends.end(), [&](const Finding& other) {
        return other.rule == finding.rule && other.subject == finding.subject;
      });
      if (mends) to.push_back(fix(one.words, one.edits, file));
    }
  }

  [[nodiscard]] static std::string message(const Finding& finding, const rules::Rule* rule) {
    std::string out = subject_prefix(finding.subject_kind, finding.subject);
    if (!finding.message.empty()) return out + finding.message;
    if (finding.kind == Kind::not_applicable) out += "does not apply: ";
    return out + (rule != nullptr ? rule->words->title : finding.rule);
  }

  /// The place of the line; what it is about stands in the message, and the line in the file.
  [[nodiscard]] Json place(const Finding& finding, const FormulaResult& formula) const {
    const std::string& file = finding.file.empty() ? formula.file : finding.file;
    Json out = location(file, finding.line, finding.column);
    const bool onwards =
        std::pair(finding.end_line, finding.end_column) > std::pair(finding.line, finding.column);
    if (finding.line == 0 || !onwards) return out;
    if (options_.verbose && !finding.line_text.empty()) {
      out["physicalLocation"]["contextRegion"] = {{"startLine", finding.line},
                                                  {"snippet", {{"text", finding.line_text}}}};
    }
    Json& region = out["physicalLocation"]["region"];
    if (finding.end_line > finding.line) region["endLine"] = finding.end_line;
    region["endColumn"] = finding.end_column;
    return out;
  }

  [[nodiscard]] Json properties(const Finding& finding) {
    Json out = Json::object();
    if (finding.kind == Kind::review || finding.kind == Kind::open) {
      out["level"] = wording::level_word(finding.level);
    }
    if (finding.met_from_memory) out["fromMemory"] = true;
    // the message has the figure and its limit, and names what is missing
    if (!options_.verbose) return out;
    if (finding.measured) {
      out[wording::figure_key(finding)] = short_figure(*finding.measured);
    }
    if (finding.limit) out["limit"] = short_figure(*finding.limit);
    if (!finding.missing.empty()) out["missing"] = finding.missing;
    Json sources = Json::array();
    for (const SourceNote& note : finding.sources) sources.push_back(wording::words(note));
    out["sources"] = std::move(sources);
    return out;
  }

  const RuleIndex& rules_;
  const SarifLaw& law_;
  const ReportOptions& options_;
  bool compared_;  ///< with a baseline
  JsonDocument& document_;
};

}  // namespace

void write_results(const FormulaResult& formula, bool compared, const RuleIndex& rules,
                   const SarifLaw& law, const ReportOptions& options, JsonDocument& document) {
  FormulaResults(rules, law, options, compared, document).write(formula);
}

Json misspelt_result(const Problem& problem, const std::string& fingerprint, bool compared) {
  Json out{{"ruleId", spelling_rule}};
  put_weight(out, Kind::fail, Level::error);
  out["message"] = said(problem.message);
  Json physical{{"artifactLocation", artifact(problem.file)}, {"region", region(problem)}};
  out["locations"] = Json::array({{{"physicalLocation", std::move(physical)}}});
  out["partialFingerprints"] = {{"sudsmarkFinding/v2", fingerprint}};
  // no baseline is written while something cannot be read
  if (compared) out["baselineState"] = "new";
  out["fixes"] = Json::array({fix(problem, problem.file)});
  return out;
}

Json absent_result(const AbsentFinding& finding) {
  Json out{{"ruleId", finding.rule}};
  put_weight(out, finding.kind, finding.level);
  out["message"] = said(finding.message.empty() ? finding.rule : finding.message);
  out["locations"] = Json::array({location(finding.file, finding.line, 0)});
  out["partialFingerprints"] = {{"sudsmarkFinding/v2", finding.fingerprint}};
  out["baselineState"] = "absent";
  return out;
}

Json notification(const Problem& problem, std::string_view level) {
  Json places = Json::array();
  if (!problem.file.empty()) {
    places.push_back(location(problem.file, problem.line, problem.column));
  }
  for (const Problem::Place& also : problem.also) {
    places.push_back(location(also.file, also.line, also.column));
  }
  return {{"level", level}, {"message", said(problem.message)}, {"locations", std::move(places)}};
}

}  // namespace sudsmark::report
