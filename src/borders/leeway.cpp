// Leeway of every line.
#include <sudsmark/leeway.h>

#include <algorithm>
#include <tuple>
#include <utility>

#include "borders/placed.h"
#include "front/today.h"

namespace sudsmark {

Result<Leeway> leeway(const FormulaText& formula, const Rulesets& rulesets,
                      const CheckOptions& options, const LeewayOptions& leeway_options) {
  const CheckOptions on_a_day = front::with_day(options);
  auto read = borders::Placed::read(formula, rulesets, on_a_day, leeway_options.threshold);
  if (!read) return {{}, std::move(read.problems)};
  const borders::Placed& placed = **read;
  Leeway out;
  out.file = formula.path;
  out.name = placed.name();
  out.threshold = leeway_options.threshold;
  out.broken = placed.settings().broken();
  for (const mending::Dial& dial : placed.dials()) {
    if (dial.fills) {
      out.fixed.push_back("'" + dial.name.text + "' takes up what the others leave");
      continue;
    }
    out.lines.push_back(placed.line(dial));
    placed.look(dial, out.lines.back());
  }
  // in the order of the formula, what it includes last
  std::stable_sort(out.lines.begin(), out.lines.end(),
                   [&](const LeewayLine& a, const LeewayLine& b) {
                     const auto place = [&](const LeewayLine& one) {
                       return std::tuple(one.file != out.file, one.file, one.line);
                     };
                     return place(a) < place(b);
                   });
  return {std::move(out), {}};
}

}  // namespace sudsmark
