// The SARIF report: version 2.1.0 of the open results format (OASIS).
//
// A result has a level only where its kind is `fail`, as the format wants it; how much a `review`
// or an `open` weighs stands in its properties.
#include <algorithm>
#include <map>
#include <string>
#include <utility>

#include <sudsmark/fixes.h>
#include <sudsmark/report.h>

#include "front/fingerprint.h"
#include "front/parts.h"
#include "report/check/sarif_law.h"
#include "report/check/sarif_rules.h"
#include "report/check/sarif_text.h"
#include "report/digest.h"
#include "report/json_document.h"
#include "report/rule_index.h"
#include "report/short_words.h"
#include "report/subject_words.h"
#include "wording/citations.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace {

using report::Json;
using report::sarif_words;

Json said(std::string_view words) {
  return {{"text", sarif_words(words)}};
}

/// The location of a file; what came from standard input has none.
Json artifact(const std::string& path) {
  if (path == "-") return {{"description", {{"text", "standard input"}}}};
  return {{"uri", report::uri_of_path(path)}};
}

Json location(const std::string& file, std::uint32_t line, std::uint32_t column) {
  Json physical{{"artifactLocation", artifact(file)}};
  if (line > 0) {
    physical["region"] = {{"startLine", line}};
    if (column > 0) physical["region"]["startColumn"] = column;
  }
  return {{"physicalLocation", std::move(physical)}};
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

class Results {
 public:
  Results(const RunResult& run, const report::SarifRules& listed, const report::SarifLaw& law,
          const report::RuleIndex& index, const ReportOptions& options,
          report::JsonDocument& document)
      : run_(run),
        rules_(listed),
        law_(law),
        index_(index),
        options_(options),
        document_(document) {}

  void write() {
    document_.begin_list("results");
    for (const Problem& problem : run_.problems) {
      if (!problem.spelling.empty()) document_.item_line(misspelt(problem));
    }
    for (const FormulaResult& formula : run_.formulas) write(formula);
    for (const AbsentFinding& finding : run_.absent) document_.item_line(absent(finding));
    document_.end();
  }

  /// What the tool had to say of its input, and the files that were named.
  void write_rest() {
    Json notices = Json::array();
    for (const Problem& problem : run_.problems) {
      notices.push_back(notification(problem, "error"));
    }
    for (const FormulaResult& formula : run_.formulas) {
      for (const Problem& note : formula.notes) {
        notices.push_back(notification(note, "note"));
      }
    }
    Json invocation{{"executionSuccessful", run_.problems.empty()}};
    if (!notices.empty()) invocation["toolExecutionNotifications"] = std::move(notices);
    document_.member_line("invocations", Json::array({std::move(invocation)}));
  }

 private:
  void write(const FormulaResult& formula) {
    for (const Finding& finding : formula.findings) {
      if (listed(finding)) document_.item_line(result(finding, formula));
    }
    if (options_.verbose || run_.compared) return;
    const report::Digest told = report::digest(formula, index_);
    for (const report::InShort& notes : told.in_short) {
      if (!left_out(*notes.of.front())) document_.item_line(result(notes, formula));
    }
    if (!told.papers.empty() && !left_out(*told.papers.front())) {
      const std::string words = "ask for " + report::papers_in_short(told.papers, index_);
      document_.item_line(gathered(*told.papers.front(), told.papers, words, formula));
    }
    for (const report::Waiting& waiting : told.waiting) {
      if (!left_out(*waiting.first)) document_.item_line(result(waiting, formula));
    }
  }

  [[nodiscard]] bool left_out(const Finding& finding) const {
    return options_.quiet && !reaches(finding, *options_.quiet);
  }

  /// What waits for one thing is one result, and so are papers, and notes under one short word;
  /// what is kept is none. Beside a baseline each stands by itself, since each has its own state
  /// there.
  [[nodiscard]] bool listed(const Finding& finding) const {
    if (left_out(finding)) return false;
    if (options_.verbose) return true;
    if (!report::has_result(finding)) return false;
    if (run_.compared || finding.allowed) return true;
    if (finding.kind == Kind::open) return false;
    const rules::Rule* rule = index_.of(finding);
    return finding.level > Level::note || rule == nullptr || rule->words->telling.in_short.empty();
  }

  /// The first of the notes, with the words and the places of all.
  Json result(const report::InShort& notes, const FormulaResult& formula) {
    const auto sure = std::find_if(notes.of.begin(), notes.of.end(),
                                   [](const Finding* note) { return note->kind == Kind::fail; });
    const Finding& first = sure == notes.of.end() ? *notes.of.front() : **sure;
    if (notes.of.size() == 1) return result(first, formula);
    return gathered(first, notes.of, report::in_short(notes), formula);
  }

  Json gathered(const Finding& first, const report::Findings& all, const std::string& words,
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

  Json result(const report::Waiting& waiting, const FormulaResult& formula) {
    Json out = result(*waiting.first, formula);
    if (waiting.checks < 2) return out;
    out["message"] = said(report::waiting_words(waiting));
    return out;
  }

  Json result(const Finding& finding, const FormulaResult& formula) {
    const rules::Rule* rule = rules_.rule(finding.rule);
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

  /// The change of spelling that mends a finding, or what could not be read.
  template <typename Found>
  Json fix(const Found& found, const std::string& file) {
    const TextEdit edit{found.line, found.column, found.end_line, found.end_column, found.spelling};
    return fix("write '" + found.spelling + "'", {edit}, file);
  }

  static Json fix(const std::string& words, const std::vector<TextEdit>& edits,
                  const std::string& file) {
    Json replacements = Json::array();
    for (const TextEdit& edit : edits) {
      replacements.push_back(
          {{"deletedRegion", region(edit)}, {"insertedContent", {{"text", edit.text}}}});
    }
    Json change{{"artifactLocation", artifact(file)}, {"replacements", std::move(replacements)}};
    return {{"description", said(words)}, {"artifactChanges", Json::array({std::move(change)})}};
  }

  template <typename Found>
  static Json region(const Found& found) {
    return {{"startLine", found.line},
            {"startColumn", found.column},
            {"endLine", found.end_line},
            {"endColumn", found.end_column}};
  }

  /// What could not be read and only has to be spelt otherwise. That it stopped the reading is told
  /// with the invocation; only a result can bring a change along.
  Json misspelt(const Problem& problem) {
    Json out{{"ruleId", report::spelling_rule}};
    put_weight(out, Kind::fail, Level::error);
    out["message"] = said(problem.message);
    Json physical{{"artifactLocation", artifact(problem.file)}, {"region", region(problem)}};
    out["locations"] = Json::array({{{"physicalLocation", std::move(physical)}}});
    out["partialFingerprints"] = {{"sudsmarkFinding/v2", fingerprint(problem)}};
    // no baseline is written while something cannot be read
    if (run_.compared) out["baselineState"] = "new";
    out["fixes"] = Json::array({fix(problem, problem.file)});
    return out;
  }

  /// The same wherever its line moves; the second of its kind in a file is told from the first.
  std::string fingerprint(const Problem& problem) {
    const std::string key = problem.file + "\n" + problem.id + "\n" + problem.message;
    return front::fingerprint_of(problem.id + "\n" + problem.message, seen_[key]++);
  }

  [[nodiscard]] static std::string message(const Finding& finding, const rules::Rule* rule) {
    std::string out = report::subject_prefix(finding.subject_kind, finding.subject);
    if (!finding.message.empty()) return out + finding.message;
    if (finding.kind == Kind::not_applicable) out += "does not apply: ";
    return out + (rule != nullptr ? rule->words->title : finding.rule);
  }

  /// Every result has its kind, and a level only what is broken: "none" is said aloud, since
  /// readers that know no kinds would take its absence for a warning.
  static void put_weight(Json& out, Kind kind, Level level) {
    out["kind"] = wording::kind_word(kind);
    out["level"] = wording::level_word(kind == Kind::fail ? level : Level::none);
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
      out[wording::figure_key(finding)] = report::short_figure(*finding.measured);
    }
    if (finding.limit) out["limit"] = report::short_figure(*finding.limit);
    if (!finding.missing.empty()) out["missing"] = finding.missing;
    Json sources = Json::array();
    for (const SourceNote& note : finding.sources) sources.push_back(wording::words(note));
    out["sources"] = std::move(sources);
    return out;
  }

  Json absent(const AbsentFinding& finding) {
    Json out{{"ruleId", finding.rule}};
    put_weight(out, finding.kind, finding.level);
    out["message"] = said(finding.message.empty() ? finding.rule : finding.message);
    out["locations"] = Json::array({location(finding.file, finding.line, 0)});
    out["partialFingerprints"] = {{"sudsmarkFinding/v2", finding.fingerprint}};
    out["baselineState"] = "absent";
    return out;
  }

  const RunResult& run_;
  const report::SarifRules& rules_;
  const report::SarifLaw& law_;
  const report::RuleIndex& index_;
  const ReportOptions& options_;
  report::JsonDocument& document_;
  std::map<std::string, int> seen_;  ///< misspelt words of a file, by what is said of them
};

}  // namespace

namespace report {

std::string check_sarif(const RunResult& run, const Rulesets& rulesets,
                        const ReportOptions& options) {
  const front::Parts& parts = front::parts(rulesets);
  const report::SarifRules listed(parts, run, options.verbose);
  const report::SarifLaw law(parts, listed.list(), run);
  const report::RuleIndex index(parts);
  report::JsonDocument document(options.ascii);
  document.member("$schema",
                  "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/"
                  "sarif-schema-2.1.0.json");
  document.member("version", "2.1.0");
  document.begin_list("runs");
  document.begin_item();
  document.begin_object("tool");
  document.begin_object("driver");
  document.member("name", "sudsmark");
  document.member("version", SUDSMARK_VERSION);
  document.member("semanticVersion", SUDSMARK_VERSION);
  document.member("informationUri", "urn:sudsmark");
  document.member("shortDescription", said("checks formulas of solid bath products"));
  document.member("fullDescription", said(reminder));
  document.member("language", "en");
  listed.write(law, document);
  if (!law.empty()) document.member("supportedTaxonomies", law.supported());
  document.end();
  document.end();
  if (!law.empty()) document.member_line("taxonomies", law.taxonomies());
  document.member("automationDetails", {{"id", "sudsmark/check/"}});
  document.member("columnKind", "unicodeCodePoints");
  Results results(run, listed, law, index, options, document);
  results.write();
  results.write_rest();
  return document.finished();
}

}  // namespace report
}  // namespace sudsmark
