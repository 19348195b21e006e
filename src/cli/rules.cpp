#include <iostream>

#include <sudsmark/report.h>

#include "cli/commands.h"
#include "cli/run.h"

namespace sudsmark::cli {

Exit rules(const Arguments& arguments) {
  const auto rulesets = load_rulesets(arguments);
  if (!rulesets) return Exit::unusable;
  if (!arguments.verify) {
    return deliver(arguments, rules_overview(*rulesets, arguments.verbose), Exit::fine);
  }
  const auto [ran, problems] = verify_examples(*rulesets);
  tell(problems, arguments.ascii);
  const std::string words = std::to_string(ran) + " examples ran, " +
                            std::to_string(problems.size()) +
                            (problems.size() == 1 ? " does" : " do") + " not do as they should\n";
  return deliver(arguments, words, problems.empty() ? Exit::fine : Exit::found);
}

}  // namespace sudsmark::cli
