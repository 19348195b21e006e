// A comparison as text: what changed, then verdicts as lines in the GNU error format with causes.
#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include <sudsmark/compare.h>

#include "quantity/number.h"
#include "report/compare_words.h"
#include "report/paint.h"
#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace report {

std::string_view direction_word(Direction direction) {
  return direction == Direction::worse    ? "worse"
         : direction == Direction::better ? "better"
                                          : "undecided";
}

std::string_view amount_word(AmountKind kind) {
  switch (kind) {
    case AmountKind::added:
      return "added";
    case AmountKind::removed:
      return "removed";
    case AmountKind::raised:
      return "raised";
    case AmountKind::lowered:
      return "lowered";
    case AmountKind::swapped:
      break;
  }
  return "swapped";
}

namespace {

std::string with_sign(double by) {
  const std::string digits = quantity::printed(std::abs(by));
  return (by < 0 ? "-" : "+") + digits;
}

/// A figure with six digits, for two that look the same with three.
std::string in_detail(const Figure& figure) {
  const auto end = [](const std::optional<double>& value) {
    if (!value) return std::string("unknown");
    if (*value == 0) return std::string("0");
    const double scale = std::pow(10.0, 5 - std::floor(std::log10(std::abs(*value))));
    return quantity::machine_number(std::round(*value * scale) / scale);
  };
  std::string out = end(figure.low);
  if (end(figure.high) != out) out += " to " + end(figure.high);
  return figure.unit == "1" ? out : out + " " + figure.unit;
}

}  // namespace

std::string printed_change(const FigureChange& change) {
  const std::string unit = change.after.unit == "1" ? "" : " " + change.after.unit;
  std::string before = wording::printed(change.before);
  std::string after = wording::printed(change.after);
  if (!change.changed()) return after;
  if (before == after) {
    before = in_detail(change.before);
    after = in_detail(change.after);
  }
  std::string out = before + " -> " + after;
  if (!change.low && !change.high) return out;
  const auto end = [](const std::optional<double>& by) {
    return by ? with_sign(*by) : std::string("unknown");
  };
  std::string by = end(change.low);
  if (end(change.high) != by) by += " to " + end(change.high);
  return out + " (" + by + unit + ")";
}

std::string verdict_state(const std::optional<Finding>& finding) {
  if (!finding || finding->kind == Kind::not_applicable) return "does not apply";
  const std::string level = " (" + std::string(level_word(finding->level)) + ")";
  if (finding->allowed) return "is allowed";
  switch (finding->kind) {
    case Kind::fail:
      return "fails" + level;
    case Kind::review:
      return finding->met_from_memory ? "is met, by a limit from memory" : "may fail" + level;
    case Kind::open:
      return "is open" + level;
    default:
      return "passes";
  }
}

}  // namespace report

namespace {

using wording::harmless;

std::string padded(std::string words, std::size_t width) {
  if (words.size() < width) words.append(width - words.size(), ' ');
  return words;
}

class ComparisonText {
 public:
  ComparisonText(const Comparison& comparison, const TextOptions& options, bool only_worse)
      : of_(comparison), options_(options), only_worse_(only_worse) {}

  std::string write() {
    out_ = harmless(of_.after.file) + " (" + harmless(of_.after.name) + ") against " +
           harmless(of_.before.file) + " (" + harmless(of_.before.name) + ")\n";
    if (of_.same()) {
      out_ += "nothing changed\n";
    } else {
      if (!only_worse_) {
        add_amounts();
        add_measures();
      }
      for (const Direction way : {Direction::worse, Direction::undecided, Direction::better}) {
        if (way == Direction::better && only_worse_) continue;
        for (const VerdictChange& one : of_.verdicts) {
          if (one.direction == way) add(one);
        }
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
    const std::string subject = one.subject.empty() || (one.after && one.subject_kind == "row")
                                    ? std::string()
                                    : one.subject_kind + " '" + one.subject + "': ";
    out_ += wording::place(said.file.empty() ? of_.after.file : said.file, said.line, said.column) +
            ": " + report::painted(std::max(level, Level::note), options_.color) + ": " +
            std::string(report::direction_word(one.direction)) + ": " +
            harmless(subject + report::verdict_state(one.after) + " where it " +
                     was(report::verdict_state(one.before)) + " before");
    if (!said.message.empty() && one.after) out_ += ": " + harmless(said.message);
    out_ += " [" + one.rule + "]\n";
    add_causes(one);
  }

  /// "passed" for "passes": the same state told of the past.
  static std::string was(const std::string& state) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 5> past{
        {{"fails", "failed"},
         {"may fail", "might fail"},
         {"is ", "was "},
         {"passes", "passed"},
         {"does not apply", "did not apply"}}};
    for (const auto& [now, then] : past) {
      if (state.starts_with(now)) return std::string(then) + state.substr(now.size());
    }
    return state;
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
  const TextOptions& options_;
  bool only_worse_;
  std::string out_;
};

}  // namespace

std::string compare_text(const Comparison& comparison, const TextOptions& options,
                         bool only_worse) {
  const std::string out = ComparisonText(comparison, options, only_worse).write();
  return options.ascii ? wording::in_ascii(out) : out;
}

}  // namespace sudsmark
