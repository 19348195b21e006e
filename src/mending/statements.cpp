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

/// As much warmth as is allowed, and no more than is usual.
std::optional<std::string> bath_at_limit(const Finding& finding, const Facts& facts) {
  if (!facts.dose || !facts.volume || !facts.warmth || !finding.limit || !finding.limit->high) {
    return std::nullopt;
  }
  constexpr double usual = 40;  // C; common practice
  const double warmth = std::min({*facts.warmth, *finding.limit->high, usual});
  return bath(*facts.dose, facts, std::floor(warmth));
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

std::vector<std::string> statements_for(rules::Mend::Change change, const Finding& finding,
                                        const Facts& facts, double inside) {
  using Change = rules::Mend::Change;
  const auto alone = [](std::optional<std::string> one) {
    return one ? std::vector<std::string>{std::move(*one)} : std::vector<std::string>{};
  };
  if (change == Change::warmth) return alone(bath_at_limit(finding, facts));
  const auto by = factor(finding, inside);
  if (!by) return {};
  if (change == Change::dose) {
    // a pH goes with the dose by no straight line: then a half or a third of it
    std::vector<std::string> out;
    for (const double part : {*by, 0.5, 1.0 / 3}) {
      auto one = bath_with_dose(std::min(part, *by), facts);
      if (one && (out.empty() || out.back() != *one)) out.push_back(std::move(*one));
    }
    return out;
  }
  // more than that is another product
  constexpr double most_piece = 2.5;
  constexpr double most_batch = 5;
  constexpr double least_batch = 0.1;
  if (change == Change::piece && facts.piece) {
    if (*by > most_piece || *by < 1 / most_piece) return {};
    constexpr double step = 5;
    const double wanted = *facts.piece * *by;
    const double grams = (*by > 1 ? std::ceil(wanted / step) : std::floor(wanted / step)) * step;
    if (!(grams > 0)) return {};
    return {"piece " + formula::printed_figure(grams, formula::measure::mass)};
  }
  std::vector<std::string> out;
  if (change != Change::batch || !facts.batch) return out;
  // what a scale shows too coarsely wants more in a batch, what is too much in a room less
  for (const double times : {1 / *by, *by}) {
    if (times > most_batch || times < least_batch) continue;
    out.push_back("scale batch to " + formula::printed_figure(even(times * *facts.batch, times > 1),
                                                              formula::measure::mass));
  }
  return out;
}

}  // namespace sudsmark::mending
