#include "mending/statements.h"

#include <algorithm>
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

/// "bath 30 g in 40 l at 37 C".
std::string bath(double grams, const Facts& facts, std::optional<double> warmth) {
  std::string out = "bath " + formula::printed_figure(grams, formula::measure::mass) + " in " +
                    formula::printed_figure(*facts.volume, formula::measure::volume);
  if (warmth) out += " at " + formula::printed_figure(*warmth, formula::measure::temperature);
  return out;
}

/// As much warmth as is allowed.
std::optional<std::string> bath_at_limit(const Finding& finding, const Facts& facts) {
  if (!facts.dose || !facts.volume || !facts.warmth || !finding.limit || !finding.limit->high) {
    return std::nullopt;
  }
  return bath(*facts.dose, facts, std::floor(std::min(*facts.warmth, *finding.limit->high)));
}

/// Less of the product in a bath: easily weighed, or a spoon of it.
std::optional<std::string> bath_with_dose(double by, const Facts& facts) {
  if (!facts.dose || !facts.volume || !(by < 1)) return std::nullopt;
  constexpr double large = 20;
  const double step = *facts.dose * by >= large ? 5 : 1;
  const double grams = std::floor(*facts.dose * by / step) * step;
  if (!(grams > 0)) return std::nullopt;
  return bath(grams, facts, facts.warmth);
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
  const auto stated = [](const std::optional<blend::Stated>& one) {
    const bool known = one && !one->assumed && one->value.exact();
    return known ? std::optional(one->value.low) : std::nullopt;
  };
  out.batch = stated(blend.batch);
  out.dose = stated(blend.dose);
  out.volume = stated(blend.bath_volume);
  out.warmth = stated(blend.bath_temperature);
  if (!blend.workshop) return out;
  for (const blend::Scale& scale : blend.workshop->scales) {
    out.step = std::min(out.step.value_or(scale.step), scale.step);
  }
  return out;
}

std::optional<std::string> statement_for(rules::Mend::Change change, const Finding& finding,
                                         const Facts& facts, double inside) {
  using Change = rules::Mend::Change;
  if (change == Change::warmth) return bath_at_limit(finding, facts);
  const auto by = factor(finding, inside);
  if (!by) return std::nullopt;
  if (change == Change::dose) return bath_with_dose(*by, facts);
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
