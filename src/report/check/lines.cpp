// One finding a line in the GNU error format, in the order of the file, for editors and CI; what
// could not be decided is gathered by what is missing. Nothing that is kept has a line.
#include <algorithm>
#include <map>
#include <memory>
#include <tuple>
#include <utility>
#include <vector>

#include <sudsmark/run_report.h>

#include "report/paint.h"
#include "report/subject_words.h"
#include "wording/citations.h"
#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace {

using report::painted;
using wording::harmless;
using wording::joined;

/// One line of the report before it is put in its place.
struct Line {
  std::string file;
  std::uint32_t line = 0;
  std::uint32_t column = 0;
  Level level = Level::note;
  std::string words;
};

std::string ids(const std::vector<std::string>& rules) {
  std::string out = "[";
  for (std::size_t at = 0; at < rules.size(); ++at) out += (at == 0 ? "" : ", ") + rules[at];
  return out + "]";
}

/// What waits for one thing is much: two name it.
std::vector<std::string> first_of(std::vector<std::string> rules) {
  constexpr std::size_t most = 2;
  rules.resize(std::min(rules.size(), most));
  return rules;
}

std::string with_subject(const Finding& finding) {
  return report::subject_prefix(finding.subject_kind, finding.subject);
}

class CheckLines {
 public:
  CheckLines(const FormulaResult& formula, const ReportOptions& options)
      : formula_(formula), options_(options) {}

  std::string write() {
    for (const Finding& finding : formula_.findings) add(finding);
    add_rows();
    add_gathered();
    add_papers();
    for (const Problem& note : formula_.notes) {
      if (options_.quiet) break;
      lines_.push_back({note.file, note.line, note.column, Level::note, note.message});
    }
    std::stable_sort(lines_.begin(), lines_.end(), [](const Line& a, const Line& b) {
      return std::tie(a.file, a.line, a.column) < std::tie(b.file, b.line, b.column);
    });
    std::string out;
    for (const Line& line : lines_) {
      out += wording::place(line.file, line.line, line.column) + ": " +
             painted(line.level, options_.color) + ": " + harmless(line.words) + "\n";
    }
    return out;
  }

 private:
  /// Found before already, and only told to those who want to hear all.
  [[nodiscard]] bool known_before(const Finding& finding) const {
    return finding.standing == Standing::unchanged && !options_.verbose;
  }

  void add(const Finding& finding) {
    if (known_before(finding)) return;
    if (options_.quiet && !reaches(finding, *options_.quiet)) return;
    if (finding.allowed) {
      push(finding, Level::note,
           "allowed because \"" + *finding.allowed + "\": " + finding.message);
      return;
    }
    switch (finding.kind) {
      case Kind::fail:
        if (gathers(finding)) {
          gather_alike(finding);
        } else {
          push(finding, finding.level, finding.message);
        }
        break;
      case Kind::review:
        if (finding.met_from_memory) break;
        if (gathers(finding)) {
          gather_alike(finding);
        } else {
          push(finding, finding.level, finding.message);
        }
        break;
      case Kind::open:
        if (finding.paper && !options_.verbose && finding.level == Level::note) {
          papers_.push_back(&finding);
        } else if (options_.verbose || finding.missing.empty()) {
          push(finding, finding.level, finding.message);
        } else {
          gather(finding);
        }
        break;
      case Kind::pass:
      case Kind::not_applicable:
        break;
    }
  }

  void push(const Finding& finding, Level level, const std::string& message) {
    std::string words = with_subject(finding) + message;
    if (options_.verbose) {
      if (!finding.sources.empty()) words += " (" + wording::words(finding.sources) + ")";
      if (finding.kind == Kind::fail && !finding.remedy.empty()) words += " " + finding.remedy;
    }
    words += " " + ids({finding.rule});
    lines_.push_back({finding.file, finding.line, finding.column, level, std::move(words)});
  }

  struct Gathered {
    const Finding* first = nullptr;
    Level level = Level::note;
    std::vector<std::string> rules;
    std::size_t count = 0;
  };

  void gather(const Finding& finding) {
    Gathered& gathered = gathered_[finding.missing];
    if (gathered.first == nullptr) gathered.first = &finding;
    // the heaviest of them says where to write it
    if (finding.level > gathered.level) gathered.first = &finding;
    gathered.level = std::max(gathered.level, finding.level);
    gathered.count += 1 + finding.alike_left_out;
    if (std::find(gathered.rules.begin(), gathered.rules.end(), finding.rule) ==
        gathered.rules.end()) {
      gathered.rules.push_back(finding.rule);
    }
  }

  /// Notes of one rule on several rows of a table, and general cautions on several materials.
  [[nodiscard]] bool gathers(const Finding& finding) const {
    const bool caution = finding.subject_kind == "material" && !finding.measured;
    return !options_.verbose && finding.level == Level::note &&
           (finding.subject_kind == "row" || caution);
  }

  /// What is alike is told once.
  void gather_alike(const Finding& finding) {
    for (auto& [first, others, perhaps] : rows_) {
      const bool alike = first->rule == finding.rule && first->kind == finding.kind &&
                         (finding.subject_kind == "row" || first->message == finding.message);
      if (!alike) continue;
      const bool told = first->subject == finding.subject ||
                        std::find(others.begin(), others.end(), finding.subject) != others.end();
      if (!told) others.push_back(finding.subject);
      return;
    }
    rows_.push_back({&finding, {}, {}});
  }

  /// What may have to be told joins what has to be.
  void join_perhaps() {
    for (Alike& one : rows_) {
      if (one.first->kind != Kind::review || one.first->subject_kind != "row") continue;
      const auto sure = std::find_if(rows_.begin(), rows_.end(), [&](const Alike& other) {
        return other.first != nullptr && other.first->kind == Kind::fail &&
               other.first->rule == one.first->rule;
      });
      if (sure == rows_.end()) continue;
      sure->perhaps = std::move(one.others);
      sure->perhaps.insert(sure->perhaps.begin(), one.first->subject);
      one.first = nullptr;
    }
  }

  void add_rows() {
    join_perhaps();
    for (const auto& [first, others, perhaps] : rows_) {
      if (first == nullptr) continue;
      std::string message = with_subject(*first) + first->message;
      if (!others.empty() && first->subject_kind == "row") {
        message += "; the same of " + joined(others);
      } else if (!others.empty()) {
        message = "material '" + first->subject + "' and " + std::to_string(others.size()) +
                  " more: " + first->message;
      }
      if (!perhaps.empty()) {
        message += "; perhaps " + joined(perhaps) + " too";
      }
      message += " " + ids({first->rule});
      lines_.push_back({first->file, first->line, first->column, first->level, std::move(message)});
    }
  }

  void add_gathered() {
    for (const auto& [missing, gathered] : gathered_) {
      const Finding& first = *gathered.first;
      std::string words;
      if (gathered.count == 1) {
        // what is not known names what it is not known of, as a rule
        const bool named = joined(missing).find("'" + first.subject + "'") != std::string::npos;
        words = (named ? std::string() : with_subject(first)) + first.message;
      } else {
        const std::string rules = std::to_string(gathered.count) + " checks";
        words = rules + " wait for: " + joined(missing);
      }
      words += " " + ids(first_of(gathered.rules));
      lines_.push_back({first.file, first.line, first.column, gathered.level, std::move(words)});
    }
  }

  /// Papers are no alarm: one line has them all.
  void add_papers() {
    if (papers_.empty()) return;
    std::vector<std::string> papers;
    std::vector<std::string> rules;
    const auto once = [](std::vector<std::string>& list, const std::string& word) {
      if (std::find(list.begin(), list.end(), word) == list.end()) list.push_back(word);
    };
    for (const Finding* finding : papers_) {
      for (const std::string& paper : finding->missing) once(papers, paper);
      once(rules, finding->rule);
    }
    std::string words = "papers to ask for and keep: ";
    for (std::size_t at = 0; at < papers.size(); ++at) words += (at == 0 ? "" : "; ") + papers[at];
    lines_.push_back({formula_.file, 0, 0, Level::note, words + " " + ids(rules)});
  }

  const FormulaResult& formula_;
  const ReportOptions& options_;
  std::vector<Line> lines_;
  std::map<std::vector<std::string>, Gathered> gathered_;
  struct Alike {
    const Finding* first = nullptr;
    std::vector<std::string> others;   ///< of which the same is true
    std::vector<std::string> perhaps;  ///< of which it may be
  };
  std::vector<Alike> rows_;
  std::vector<const Finding*> papers_;
};

class Lines : public RunReport {
 public:
  explicit Lines(const ReportOptions& options) : options_(options) {}

  std::string head() override { return {}; }

  std::string piece(const OneOfRun& one) const override {
    if (one.formula == nullptr) return {};
    return in_bytes(CheckLines(*one.formula, options_).write());
  }

  std::string join(std::string piece, const OneOfRun&) override { return piece; }
  std::string tail(const RunResult&) override { return in_bytes(std::string(reminder) + "\n"); }

 private:
  [[nodiscard]] std::string in_bytes(std::string words) const {
    if (options_.ascii) words = wording::in_ascii(words);
    return words;
  }

  ReportOptions options_;
};

}  // namespace

namespace report {

std::unique_ptr<RunReport> check_lines(const Rulesets&, const ReportOptions& options) {
  return std::make_unique<Lines>(options);
}

}  // namespace report
}  // namespace sudsmark
