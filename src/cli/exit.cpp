#include "cli/exit.h"

#include <iostream>

#include <sudsmark/report.h>

#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark::cli {

void complain(std::string_view words) {
  std::cerr << "sudsmark: error: " << wording::harmless(words) << "\n";
}

Exit refused(std::string_view words) {
  complain(words);
  return Exit::unusable;
}

void remark(std::string_view words) {
  std::cerr << "sudsmark: note: " << wording::harmless(words) << "\n";
}

void tell(const std::vector<Problem>& problems, bool ascii) {
  for (const Problem& problem : problems) {
    const std::string words = problem.line > 0
                                  ? problem_lines({problem})
                                  : "sudsmark: error: " + wording::harmless(problem.file + ": ") +
                                        wording::harmless(problem.message) + "\n";
    std::cerr << (ascii ? wording::in_ascii(words) : words);
  }
}

}  // namespace sudsmark::cli
