// Problems in the GNU error format.
#include <sudsmark/report.h>

#include "wording/words.h"

namespace sudsmark {
using wording::harmless;

std::string problem_lines(const std::vector<Problem>& problems) {
  std::string out;
  for (const Problem& problem : problems) {
    out += wording::place(problem.file, problem.line, problem.column) +
           ": error: " + harmless(problem.message) + "\n";
    for (const Problem::Place& also : problem.also) {
      out +=
          wording::place(also.file, also.line, also.column) + ": note: the other place is here\n";
    }
  }
  return out;
}

}  // namespace sudsmark
