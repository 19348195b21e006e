// The text report, for people: what must change first, then what should, what is worth knowing,
// what is not known, and one line for what is kept.
#include <algorithm>
#include <memory>
#include <string>
#include <vector>

#include <sudsmark/run_report.h>

#include "report/check/text_sum.h"
#include "report/digest.h"
#include "report/maker_words.h"
#include "report/paint.h"
#include "report/prose.h"
#include "report/subject_words.h"
#include "report/text_lines.h"
#include "report/verdict_words.h"
#include "wording/citations.h"
#include "wording/code_points.h"
#include "wording/margin.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

using wording::harmless;
using wording::joined;

constexpr std::size_t indent = 2;
constexpr std::size_t inner = 4;

/// " (21)", " (21, 24)": their lines, each once.
std::string lines_of(const Findings& findings) {
  std::vector<std::uint32_t> lines;
  for (const Finding* finding : findings) {
    if (finding->line > 0) lines.push_back(finding->line);
  }
  std::sort(lines.begin(), lines.end());
  lines.erase(std::unique(lines.begin(), lines.end()), lines.end());
  std::string out;
  for (const std::uint32_t line : lines) out += (out.empty() ? " (" : ", ") + std::to_string(line);
  return out.empty() ? out : out + ")";
}

std::string once_joined(const Findings& findings, std::size_t most) {
  std::vector<std::string> things;
  for (const Finding* finding : findings) {
    for (const std::string& thing : finding->missing) {
      if (std::find(things.begin(), things.end(), thing) == things.end()) things.push_back(thing);
    }
  }
  if (things.size() <= most) return joined(things);
  const std::size_t more = things.size() - most + 1;
  things.resize(most - 1);
  things.push_back(std::to_string(more) + " more");
  return joined(things);
}

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
    write_group(change_word(Level::error), Level::error, digest_.must);
    write_group(change_word(Level::warning), Level::warning, digest_.should);
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

  void write_group(std::string_view word, Level level, const Findings& group) {
    bool first = true;
    for (const Finding* finding : group) {
      if (left_out(*finding)) continue;
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
           finding.message;
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
                               : options_.verbose ? rule->remedy
                                                  : remedy_in_short(rule->remedy);
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

  /// "goggles: SLSA (14), citric acid (16)".
  static std::string in_short(const InShort& one) {
    std::vector<std::string> named;
    Findings unnamed;
    Findings of = one.of;
    std::stable_partition(of.begin(), of.end(),
                          [](const Finding* finding) { return finding->kind == Kind::fail; });
    for (const Finding* finding : of) {
      std::string name = name_of(*finding);
      if (name.empty()) name = figure_of(*finding);
      if (name.empty()) {
        unnamed.push_back(finding);
        continue;
      }
      if (finding->kind == Kind::review) name = "perhaps " + name;
      if (finding->subject_kind != "row") name += lines_of({finding});
      if (std::find(named.begin(), named.end(), name) == named.end()) named.push_back(name);
    }
    std::string out = one.words + lines_of(unnamed);
    for (std::size_t at = 0; at < named.size(); ++at) out += (at == 0 ? ": " : ", ") + named[at];
    return out;
  }

  /// What a short word is said of; empty where its line says it well enough.
  static std::string name_of(const Finding& finding) {
    if (finding.subject_kind == "material") return maker_name(finding);
    if (finding.subject_kind == "row") return harmless(uncapital(finding.subject));
    return {};
  }

  /// The figure of the whole product beside its limit, where it tells something: "0.36, at least
  /// 0.5".
  static std::string figure_of(const Finding& finding) {
    const bool whole = finding.subject.empty() && !finding.bound;
    if (!whole || wording::nothing_to_show(finding)) return {};
    if (finding.limit->high == 0.0) return {};
    const std::string shown = wording::shown(*finding.measured);
    const std::string limit = wording::wanted(*finding.limit);
    return limit.find(shown) == std::string::npos ? shown + ", " + limit : std::string();
  }

  void write_waiting() {
    std::vector<const Waiting*> told;
    for (const Waiting& one : digest_.waiting) {
      if (!left_out(*one.first)) told.push_back(&one);
    }
    const bool papers = !digest_.papers.empty() && !options_.quiet;
    const std::string asked = "papers to ask for and keep: " + papers_in_short();
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
    constexpr std::size_t most_things = 3;
    constexpr std::size_t most_rules = 2;
    std::string words = one.level > Level::note ? "find out: " : "";
    words += std::to_string(one.checks) +
             (one.checks == 1 ? " check waits for: " : " checks wait for: ");
    words += one.missing.empty() ? one.first->message : once_joined({one.first}, most_things);
    words += lines_of({one.first});
    std::string rules;
    for (std::size_t at = 0; at < std::min(one.rules.size(), most_rules); ++at) {
      rules += (at == 0 ? "" : ", ") + one.rules[at];
    }
    lines_.edged(indent, harmless(words), rules);
  }

  /// Materials and substances of which a paper is asked; the label command has the papers in full.
  [[nodiscard]] std::string papers_in_short() const {
    std::vector<std::string> named;
    for (const Finding* finding : digest_.papers) {
      const std::string name = name_of(*finding);
      std::string words = name.empty() ? once_joined({finding}, 1) : "of " + name;
      words = words.substr(0, words.find(": ")) + lines_of({finding});
      if (std::find(named.begin(), named.end(), words) == named.end()) named.push_back(words);
    }
    constexpr std::size_t most = 2;
    if (named.size() > most) {
      const std::size_t more = named.size() - most;
      named.resize(most);
      named.push_back(std::to_string(more) + " more (`sudsmark label` lists them)");
    }
    return joined(named);
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
    return options_.ascii ? wording::in_ascii(words) : words;
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
