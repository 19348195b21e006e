// A comparison as text: what changed, then verdicts as lines in the GNU error format with causes.
#include <algorithm>
#include <utility>

#include <sudsmark/compare.h>
#include <sudsmark/report.h>

#include "report/compare_words.h"
#include "report/paint.h"
#include "report/subject_words.h"
#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace {

using wording::harmless;

std::string padded(std::string words, std::size_t width) {
  if (words.size() < width) words.append(width - words.size(), ' ');
  return words;
}

class ComparisonText {
 public:
  ComparisonText(const Comparison& comparison, const ReportOptions& options)
      : of_(comparison), options_(options), only_worse_(options.only_worse) {}

  std::string write() {
    out_ = harmless(of_.after.file) + " (" + harmless(of_.after.name) + ") against " +
           harmless(of_.before.file) + " (" + harmless(of_.before.name) + ")\n";
    if (of_.same()) {
      out_ += "nothing changed\n";
    } else {
      out_ += harmless(report::worse_in_words(of_)) + "\n";
      for (const Direction way : {Direction::worse, Direction::undecided, Direction::better}) {
        if (way == Direction::better && only_worse_) continue;
        for (const VerdictChange& one : of_.verdicts) {
          if (one.direction == way) add(one);
        }
      }
      if (!only_worse_) {
        add_amounts();
        add_measures();
      }
      add_counts();
    }
    return out_ + reminder + "\n";
  }

 private:
  void add_amounts() {
    out_ += of_.amounts.empty() ? "ingredients: unchanged\n" : "ingredients\n";
    for (const AmountChange& one : of_.amounts) {
      out_ += "  " + padded(std::string(report::amount_word(one.kind)), 9);
      if (one.kind == AmountKind::swapped) {
        out_ += harmless(one.old_name) + " for " + harmless(one.name) + ": ";
      } else {
        out_ += harmless(one.name) + ": ";
      }
      switch (one.kind) {
        case AmountKind::added:
          out_ += wording::printed(one.share.after);
          break;
        case AmountKind::removed:
          out_ += wording::printed(one.share.before);
          break;
        default:
          out_ += report::printed_change(one.share);
      }
      if (one.active) out_ += "; active matter " + report::printed_change(*one.active);
      out_ += "\n";
    }
  }

  void add_measures() {
    std::size_t still = 0;
    std::string lines;
    for (const MeasureChange& one : of_.measures) {
      const bool changed = one.figure.changed();
      still += changed ? 0 : 1;
      if (changed || options_.verbose) {
        lines += "  " + padded(one.name, 24) + " " + report::printed_change(one.figure) + "\n";
      }
    }
    out_ += "measures (" + std::to_string(still) + " unchanged)\n" + lines;
  }

  void add(const VerdictChange& one) {
    const Finding& said = one.after ? *one.after : *one.before;
    const bool lighter = one.direction == Direction::better;
    const Level level = lighter || !one.after ? Level::note : one.after->level;
    // a row that is no longer asked about has no words that would name it
    const bool gone = !one.after && !one.subject.empty();
    const std::string subject = gone ? report::named_subject(one.subject_kind, one.subject) + ": "
                                     : report::subject_prefix(one.subject_kind, one.subject);
    out_ += wording::place(said.file.empty() ? of_.after.file : said.file, said.line, said.column) +
            ": " + report::painted(std::max(level, Level::note), options_.color) + ": " +
            std::string(report::direction_word(one.direction)) + ": " +
            harmless(subject + report::verdict_state(one.after) +
                     " (before: " + report::verdict_state(one.before) + ")");
    if (!said.message.empty() && one.after) out_ += ": " + harmless(said.message);
    out_ += " [" + one.rule + "]\n";
    const std::string pair = report::before_and_after(one);
    if (!pair.empty()) out_ += "    " + pair + "\n";
    add_causes(one);
  }

  void add_causes(const VerdictChange& one) {
    if (one.causes.empty()) {
      if (!of_.edits.empty())
        out_ += "    no cause found: there are too many edits to try them all\n";
      return;
    }
    if (one.causes.front().empty()) {
      out_ += "    caused by what the tweak's file brings beside its edits\n";
      return;
    }
    bool first = true;
    for (const std::vector<std::size_t>& cause : one.causes) {
      const bool alone = cause.size() == 1;
      out_ +=
          std::string(first ? "    caused by " : "    or by ") + (alone               ? ""
                                                                  : cause.size() == 2 ? "both "
                                                                                      : "all of ");
      for (std::size_t at = 0; at < cause.size(); ++at) {
        const TweakEdit& edit = of_.edits[cause[at]];
        if (at > 0) out_ += at + 1 == cause.size() ? " and " : ", ";
        out_ +=
            harmless(edit.words) + " (" + wording::place(edit.file, edit.line, edit.column) + ")";
      }
      out_ += "\n";
      first = false;
    }
  }

  void add_counts() {
    const auto count = [&](Direction way) {
      return std::to_string(std::count_if(of_.verdicts.begin(), of_.verdicts.end(),
                                          [&](const auto& one) { return one.direction == way; }));
    };
    out_ += harmless(of_.after.file) + ": " + count(Direction::worse) + " worse, " +
            count(Direction::undecided) + " newly undecided, " + count(Direction::better) +
            " better\n";
  }

  const Comparison& of_;
  const ReportOptions& options_;
  bool only_worse_;
  std::string out_;
};

}  // namespace

namespace report {

std::string compare_text(const Comparison& comparison, const Rulesets&,
                         const ReportOptions& options) {
  const std::string out = ComparisonText(comparison, options).write();
  return options.ascii ? wording::in_ascii(out) : out;
}

}  // namespace report
}  // namespace sudsmark
