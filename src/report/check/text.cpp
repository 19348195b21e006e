// The text report, for people: what must change first, then what should, what is worth knowing,
// what is not known, and one line for what is kept.
#include <algorithm>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include <sudsmark/run_report.h>

#include "report/check/text_sum.h"
#include "report/digest.h"
#include "report/maker_words.h"
#include "report/paint.h"
#include "report/short_words.h"
#include "report/subject_words.h"
#include "report/text_lines.h"
#include "report/verdict_words.h"
#include "wording/citations.h"
#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

using wording::harmless;
using wording::joined;

constexpr std::size_t indent = 2;
constexpr std::size_t inner = 4;

class CheckText {
 public:
  CheckText(const FormulaResult& formula, const RuleIndex& rules, const ReportOptions& options)
      : formula_(formula),
        rules_(rules),
        options_(options),
        digest_(digest(formula, rules, options.verbose)),
        lines_(options.columns) {}

  /// `alone`: no other formula is told of beside it, so that its file goes without saying.
  std::string write(bool alone) {
    const std::string head = harmless(formula_.name) + "    " + sum_of(formula_);
    if (alone) {
      lines_.whole(head);
    } else {
      lines_.headed(head, harmless(formula_.file));
    }
    lines_.gap();
    for (const auto& [level, group] :
         {std::pair(Level::error, &digest_.must), std::pair(Level::warning, &digest_.should)}) {
      const std::string word(change_word(level));
      write_group(word, level, Kind::fail, *group);
      write_group("depends, and perhaps " + word, level, Kind::review, *group);
    }
    write_noted();
    write_waiting();
    write_allowed();
    write_kept();
    return lines_.take();
  }

 private:
  [[nodiscard]] bool left_out(const Finding& finding) const {
    return options_.quiet && !reaches(finding, *options_.quiet);
  }

  void heading(std::string_view words, Level level) {
    lines_.whole(painted(level, words, options_.color));
  }

  void write_group(std::string_view word, Level level, Kind kind, const Findings& group) {
    bool first = true;
    for (const Finding* finding : group) {
      if (finding->kind != kind || left_out(*finding)) continue;
      if (first) heading(word, level);
      first = false;
      write_finding(*finding);
    }
  }

  /// "line 21   3 % "Sea Fig"": what the maker would change.
  void write_line(const Finding& finding) {
    if (finding.line == 0) return;
    const bool elsewhere = finding.file != formula_.file;
    lines_.cut(indent, "line " + std::to_string(finding.line) +
                           (elsewhere ? " of " + harmless(finding.file) : std::string()) + "   " +
                           maker_line(finding));
  }

  /// A label's subject is told; of all others the line above is the subject.
  static std::string sentence(const Finding& finding) {
    const bool told = finding.line == 0 || finding.subject_kind == "label";
    return (told ? subject_prefix(finding.subject_kind, finding.subject) : std::string()) +
           std::string(message_under_heading(finding));
  }

  void write_finding(const Finding& finding) {
    write_line(finding);
    const std::size_t in = finding.line == 0 ? indent : inner;
    lines_.folded(in, harmless(sentence(finding)));
    if (options_.verbose && !finding.sources.empty()) {
      lines_.folded(in, harmless(wording::words(finding.sources)));
    }
    const rules::Rule* rule = rules_.of(finding);
    const std::string remedy = rule == nullptr    ? finding.remedy
                               : options_.verbose ? rule->words->remedy
                                                  : remedy_in_short(rule->words->remedy);
    lines_.edged(in, harmless(remedy), finding.rule);
  }

  void write_noted() {
    const bool quiet = options_.quiet && *options_.quiet > Level::note;
    if (quiet || (digest_.noted.empty() && digest_.in_short.empty() && formula_.notes.empty())) {
      return;
    }
    heading(change_word(Level::note), Level::note);
    for (std::size_t at = 0; at < digest_.noted.size();) at = write_alike(at);
    std::string words;
    for (const InShort& one : digest_.in_short) {
      words += (words.empty() ? "" : " · ") + in_short(one);
    }
    if (!words.empty()) lines_.folded(indent, words);
    for (const Problem& note : formula_.notes) {
      const std::string line = note.line > 0 ? " (" + std::to_string(note.line) + ")" : "";
      lines_.folded(indent, harmless(note.message) + line);
    }
  }

  /// Notes of one rule, told once; the index of the next.
  std::size_t write_alike(std::size_t at) {
    const Finding& first = *digest_.noted[at];
    if (options_.verbose) {
      write_finding(first);
      return at + 1;
    }
    Findings alike;
    std::vector<std::string> others;
    while (at < digest_.noted.size() && digest_.noted[at]->rule == first.rule) {
      const Finding& one = *digest_.noted[at++];
      alike.push_back(&one);
      const bool told = one.subject == first.subject ||
                        std::find(others.begin(), others.end(), one.subject) != others.end();
      if (!told) others.push_back(one.subject);
    }
    const bool of_material = first.subject_kind == "material" && first.line > 0;
    std::string words = of_material
                            ? maker_name(first) + ": " + first.message
                            : subject_prefix(first.subject_kind, first.subject) + first.message;
    if (!others.empty()) words += "; the same of " + joined(others);
    lines_.edged(indent, harmless(words) + lines_of(alike), first.rule);
    return at;
  }

  void write_waiting() {
    std::vector<const Waiting*> told;
    for (const Waiting& one : digest_.waiting) {
      if (!left_out(*one.first)) told.push_back(&one);
    }
    const bool papers = !digest_.papers.empty() && !options_.quiet;
    const std::string asked = "ask for " + papers_in_short(digest_.papers, rules_);
    if (told.empty()) {
      if (papers)
        lines_.folded(0, painted(Level::note, "not known", options_.color) + ": " + asked);
      return;
    }
    heading("not known", Level::note);
    for (const Waiting* one : told) write_waiting(*one);
    if (papers) lines_.folded(indent, asked);
  }

  void write_waiting(const Waiting& one) {
    constexpr std::size_t most_rules = 2;
    const std::string words =
        (one.level > Level::note ? "find out: " + waited_for(one) : waiting_words(one)) +
        lines_of({one.first});
    std::string rules;
    for (std::size_t at = 0; at < std::min(one.rules.size(), most_rules); ++at) {
      rules += (at == 0 ? "" : ", ") + one.rules[at];
    }
    lines_.edged(indent, harmless(words), rules);
  }

  void write_allowed() {
    if (digest_.allowed.empty() || options_.quiet) return;
    heading("allowed", Level::note);
    for (const Finding* finding : digest_.allowed) {
      write_line(*finding);
      lines_.folded(inner, "because \"" + harmless(*finding->allowed) + "\"");
      lines_.edged(inner, harmless(sentence(*finding)), finding->rule);
    }
  }

  void write_kept() {
    if (options_.quiet) return;
    std::string words = "kept: " + std::to_string(digest_.kept);
    if (digest_.from_memory > 0) {
      words += ", " + std::to_string(digest_.from_memory) + " of them by a limit from memory";
    }
    lines_.folded(0, words + against_baseline());
    if (!options_.verbose) return;
    for (const Finding& finding : formula_.findings) {
      if (verdict_word(finding) != "kept") continue;
      lines_.edged(
          indent,
          harmless(subject_prefix(finding.subject_kind, finding.subject) + finding.message) +
              lines_of({&finding}),
          finding.rule);
    }
  }

  [[nodiscard]] std::string against_baseline() const {
    std::string out;
    const auto add = [&](Standing standing, const char* words) {
      const auto count =
          std::count_if(formula_.findings.begin(), formula_.findings.end(),
                        [&](const Finding& finding) { return finding.standing == standing; });
      if (count > 0) out += (out.empty() ? "; " : ", ") + std::to_string(count) + words;
    };
    add(Standing::fresh, " new or worse");
    add(Standing::better, " better");
    add(Standing::unchanged, " as in the baseline");
    return out;
  }

  const FormulaResult& formula_;
  const RuleIndex& rules_;
  const ReportOptions& options_;
  Digest digest_;
  TextLines lines_;
};

bool told(const FormulaResult& formula, const ReportOptions& options) {
  return !options.quiet ||
         std::any_of(formula.findings.begin(), formula.findings.end(),
                     [&](const Finding& finding) { return reaches(finding, *options.quiet); });
}

class Text : public RunReport {
 public:
  Text(const Rulesets& rulesets, const ReportOptions& options)
      : rules_(front::parts(rulesets)), options_(options) {}

  std::string head() override { return {}; }

  std::string piece(const OneOfRun& one) const override {
    if (one.formula == nullptr || !told(*one.formula, options_)) return {};
    return in_bytes(CheckText(*one.formula, rules_, options_).write(one.alone) + "\n");
  }

  std::string join(std::string piece, const OneOfRun& one) override {
    if (one.formula != nullptr) sum_.add(*one.formula);
    return piece;
  }

  std::string tail(const RunResult& rest) override { return in_bytes(sum_.words(rest, options_)); }

 private:
  [[nodiscard]] std::string in_bytes(std::string words) const {
    if (options_.ascii) words = wording::in_ascii(words);
    return words;
  }

  RuleIndex rules_;
  ReportOptions options_;
  Sum sum_;
};

}  // namespace

std::unique_ptr<RunReport> check_text(const Rulesets& rulesets, const ReportOptions& options) {
  return std::make_unique<Text>(rulesets, options);
}

}  // namespace sudsmark::report
