#include <sudsmark/report.h>

#include "cli/commands.h"
#include "cli/run.h"
#include "text/name.h"

namespace sudsmark::cli {

Exit explain(const Arguments& arguments) {
  const auto rulesets = load_rulesets(arguments);
  if (!rulesets) return Exit::unusable;
  std::string name;
  for (const std::string& word : arguments.names) name += (name.empty() ? "" : " ") + word;
  std::vector<std::string> near;
  const std::string text = sudsmark::explain(name, *rulesets, near);
  if (!text.empty()) return deliver(arguments, text, Exit::fine);
  complain("'" + name + "' is no rule, measure, material or kind of product" +
           (near.empty() ? "" : "; perhaps " + text::listed(near)));
  return Exit::unusable;
}

}  // namespace sudsmark::cli
