// Suggestions as text: what is broken, then each answer as a short bench card with what it trades.
#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include <sudsmark/report.h>
#include <sudsmark/suggest.h>

#include "quantity/number.h"
#include "report/compare_words.h"
#include "report/subject_words.h"
#include "report/suggest/suggest_words.h"
#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark {
namespace {

using wording::harmless;

std::string padded(std::string words, std::size_t width) {
  const std::size_t wide = words.size();
  if (wide < width) words.append(width - wide, ' ');
  return words;
}

/// Grams to the last digit that a scale shows.
std::string weighed(const Figure& figure) {
  const auto end = [](const std::optional<double>& value) {
    return value ? quantity::machine_number(std::round(*value * 1e4) / 1e4)
                 : std::string("unknown");
  };
  std::string out = end(figure.low);
  if (end(figure.high) != out) out += " to " + end(figure.high);
  return out + " " + figure.unit;
}

std::string counted(std::size_t count, const std::string& one, const std::string& more) {
  return std::to_string(count) + " " + (count == 1 ? one : more);
}

class SuggestionText {
 public:
  explicit SuggestionText(const Suggestion& of, const ReportOptions& options)
      : of_(of), options_(options) {}

  std::string write() {
    const std::string level(wording::level_word(of_.threshold));
    out_ = harmless(of_.before.file) + " (" + harmless(of_.before.name) + ")\n";
    if (of_.broken.empty()) {
      out_ += "nothing to mend at level " + level + " or above\n";
    } else {
      out_ += "to mend\n";
      for (const Finding& finding : of_.broken) add(finding, "  ");
      for (std::size_t at = 0; at < of_.answers.size(); ++at) add(at);
      if (of_.answers.empty() || !of_.blocked.empty()) add_none();
      add_remedies("not mended by amounts", of_.unmendable);
      add_remedies("without a change of amounts", of_.otherwise);
      if (of_.answers.empty() && of_.unmendable.empty()) {
        add_remedies("what else may help", of_.broken);
      } else {
        add_remedies("what else may help", of_.blocked);
      }
      for (const std::string& words : of_.fixed) out_ += "not moved: " + harmless(words) + "\n";
    }
    out_ += std::string(reminder) + "\n";
    return options_.ascii ? wording::in_ascii(out_) : out_;
  }

 private:
  void add(const Finding& finding, const std::string& indent) {
    out_ +=
        indent +
        wording::place(finding.file.empty() ? of_.before.file : finding.file, finding.line,
                       finding.column) +
        ": " + std::string(wording::level_word(finding.level)) + ": " +
        harmless(report::subject_prefix(finding.subject_kind, finding.subject) + finding.message) +
        " [" + finding.rule + "]\n";
  }

  void add(std::size_t at) {
    const SuggestedChange& answer = of_.answers[at];
    out_ += "answer " + std::to_string(at + 1) + " of " + std::to_string(of_.answers.size()) +
            ": " + harmless(report::in_short(answer)) + "\n";
    std::size_t width = 0;
    for (const SuggestedAmount& one : answer.amounts) width = std::max(width, name_of(one).size());
    for (const SuggestedAmount& one : answer.amounts) {
      out_ += "  " + padded(name_of(one), width + 2) + amounts(one) + "\n";
    }
    add_trades(answer);
    if (answer.outside) {
      out_ += "  no change of the formula, so there is no tweak of it\n";
    } else if (answer.rounding_breaks) {
      out_ += "  as computed: rounded to what the scales show it would not pass\n";
    } else {
      out_ += "  rounded to " + answer.rounded_to + ", and checked in full after that: ";
      out_ += answer.left.empty()
                  ? "nothing is left at level " + std::string(wording::level_word(of_.threshold)) +
                        " or above\n"
                  : counted(answer.left.size(), "finding is", "findings are") + " left\n";
    }
    for (const Finding& finding : answer.left) {
      out_ += "  left: " + harmless(finding.message) + " [" + finding.rule + "]\n";
    }
  }

  static std::string name_of(const SuggestedAmount& one) {
    return harmless(one.container.empty() ? one.name : one.name + " in " + one.container);
  }

  static std::string amounts(const SuggestedAmount& one) {
    FigureChange share;
    share.before = one.was;
    share.after = one.is;
    std::string out;
    if (one.was_mass && one.is_mass) {
      out =
          weighed(*one.was_mass) + " -> " + (one.removed ? "none" : weighed(*one.is_mass)) + "  (";
    }
    std::string was = weighed(one.was);
    std::string is = weighed(one.is);
    out += was + " -> " + (one.removed ? "none" : is);
    if (one.was_mass && one.is_mass) out += ")";
    if (one.removed) out += ", taken out altogether";
    if (!one.out_of.empty()) out += ", in place of " + harmless(one.out_of);
    if (one.added && one.out_of.empty()) out += ", new";
    if (one.fills) out += ", fills up";
    return out;
  }

  void add_trades(const SuggestedChange& answer) {
    for (const report::Trade& one : report::trades(answer)) {
      out_ += "  " + padded(one.name, 20) + report::printed_change(one.figure) + "\n";
    }
    for (const VerdictChange& one : answer.comparison.verdicts) {
      const bool worse = one.direction != Direction::better;
      const std::string state = report::verdict_state(one.after);
      const std::string subject = harmless(report::of_subject(one.subject_kind, one.subject));
      if (!worse && !options_.verbose && !was_broken(one)) continue;
      out_ += std::string("  ") +
              (!worse       ? "better: "
               : one.before ? "worse: "
                            : "then: ") +
              one.rule + subject + " " + state;
      if (worse && one.after && !one.after->message.empty()) {
        out_ += ": " + harmless(one.after->message);
      }
      out_ += "\n";
    }
  }

  [[nodiscard]] bool was_broken(const VerdictChange& one) const {
    return one.before && one.before->level >= of_.threshold && one.before->kind != Kind::pass;
  }

  void add_remedies(const std::string& heading, const std::vector<Finding>& findings) {
    std::set<std::string> told;
    for (const Finding& one : findings) {
      if (!told.insert(one.rule).second) continue;
      if (told.size() == 1) out_ += heading + "\n";
      std::string words = one.remedy;
      for (const std::string& missing : one.missing) words += " It needs " + missing + ".";
      out_ += "  " + one.rule + ": " + harmless(words) + "\n";
    }
  }

  void add_none() {
    if (!of_.blocked.empty() && !of_.answers.empty()) {
      out_ += "left as it is: with the total kept, these cannot all hold\n";
      add_conflict();
      return;
    }
    const bool some = of_.broken.size() > of_.unmendable.size();
    if (!some) {
      out_ += "no change of amounts mends this\n";
    } else if (of_.conflict.empty()) {
      out_ += "no change of amounts was found that mends this and breaks nothing else\n";
    } else {
      out_ += "no change of amounts mends this: with the total kept, these cannot all hold\n";
      add_conflict();
    }
  }

  void add_conflict() {
    for (const Conflicting& one : of_.conflict) {
      out_ += "  " + harmless(one.words) + (one.rule.empty() ? "" : " [" + one.rule + "]") + "\n";
    }
  }

  const Suggestion& of_;
  const ReportOptions& options_;
  std::string out_;
};

}  // namespace

namespace report {

std::string suggest_text(const Suggestion& suggestion, const Rulesets&,
                         const ReportOptions& options) {
  return SuggestionText(suggestion, options).write();
}

}  // namespace report
}  // namespace sudsmark
