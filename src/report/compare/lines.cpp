// What a tweak makes worse or leaves open, one verdict a line in the GNU error format. What gets
// better has no line.
#include <algorithm>
#include <string>

#include <sudsmark/compare.h>
#include <sudsmark/report.h>

#include "report/compare_words.h"
#include "report/paint.h"
#include "report/subject_words.h"
#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

std::string line(const VerdictChange& change, const std::string& file, bool color) {
  const Finding& now = *change.after;
  return wording::place(now.file.empty() ? file : now.file, now.line, now.column) + ": " +
         painted(std::max(now.level, Level::note), color) + ": " +
         wording::harmless(subject_prefix(change.subject_kind, change.subject) + now.message +
                           " (before: " + verdict_state(change.before) + ")") +
         " [" + change.rule + "]\n";
}

}  // namespace

std::string compare_lines(const Comparison& comparison, const Rulesets&,
                          const ReportOptions& options) {
  std::string out;
  for (const VerdictChange& change : comparison.verdicts) {
    if (change.direction == Direction::better || !change.after) continue;
    out += line(change, comparison.after.file, options.color);
  }
  out += reminder;
  out += '\n';
  return options.ascii ? wording::in_ascii(out) : out;
}

}  // namespace sudsmark::report
