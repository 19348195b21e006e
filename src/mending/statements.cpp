#include "mending/statements.h"

#include <cmath>

#include "formula/print_figure.h"

namespace sudsmark::mending {
namespace {

/// What the figure has to be multiplied by.
std::optional<double> factor(const Finding& finding, double inside) {
  if (!finding.measured || !finding.limit) return std::nullopt;
  const Figure& is = *finding.measured;
  const Figure& limit = *finding.limit;
  if (is.high && limit.high && *is.high > *limit.high && *is.high > 0) {
    return *limit.high / *is.high * (1 - inside);
  }
  if (is.low && limit.low && *is.low<*limit.low&& * is.low> 0) {
    return *limit.low / *is.low * (1 + inside);
  }
  return std::nullopt;
}

/// A mass that is easily set: a twentieth of a power of ten; up or down.
double even(double grams, bool up) {
  constexpr double parts = 20;
  const double step = std::pow(10.0, std::floor(std::log10(grams))) / parts;
  constexpr double slack = 1e-9;
  const double steps = grams / step;
  return (up ? std::ceil(steps - slack) : std::floor(steps + slack)) * step;
}

}  // namespace

Facts facts_of(const blend::Blend& blend) {
  Facts out;
  if (blend.piece && !blend.piece->assumed && blend.piece->value.exact()) {
    out.piece = blend.piece->value.low;
  }
  if (blend.batch && blend.batch->value.exact()) out.batch = blend.batch->value.low;
  return out;
}

std::optional<std::string> statement_for(rules::Mend::Change change, const Finding& finding,
                                         const Facts& facts, double inside) {
  using Change = rules::Mend::Change;
  const auto by = factor(finding, inside);
  if (!by) return std::nullopt;
  // more than that is another product
  constexpr double most_piece = 2.5;
  constexpr double most_batch = 5;
  if (change == Change::piece && facts.piece) {
    if (*by > most_piece || *by < 1 / most_piece) return std::nullopt;
    constexpr double step = 5;
    const double wanted = *facts.piece * *by;
    const double grams = (*by > 1 ? std::ceil(wanted / step) : std::floor(wanted / step)) * step;
    if (!(grams > 0)) return std::nullopt;
    return "piece " + formula::printed_figure(grams, formula::measure::mass);
  }
  if (change == Change::batch && facts.batch) {
    const double wanted = *facts.batch / *by;
    if (wanted > most_batch * *facts.batch || wanted < *facts.batch / most_batch) {
      return std::nullopt;
    }
    return "scale batch to " +
           formula::printed_figure(even(wanted, *by < 1), formula::measure::mass);
  }
  return std::nullopt;
}

}  // namespace sudsmark::mending
