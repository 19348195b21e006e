// Leeway from text to ends.
#include <sudsmark/leeway.h>

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

#include "blend/blend.h"
#include "blend/same_name.h"
#include "borders/lines.h"
#include "borders/outward.h"
#include "borders/settings.h"
#include "formula/assemble.h"
#include "front/parts.h"
#include "front/problems.h"
#include "front/today.h"
#include "mending/dials.h"
#include "mending/rounding.h"

namespace sudsmark {
namespace {

using borders::Border;
using mending::Dial;

constexpr double percent = 100;

class LeewayOf {
 public:
  LeewayOf(const FormulaText& formula, const Rulesets& rulesets, const CheckOptions& options,
           const LeewayOptions& how)
      : formula_(formula), rulesets_(rulesets), options_(front::with_day(options)), how_(how) {}

  Result<Leeway> run() {
    const auto& catalogue = front::parts(rulesets_).catalogue;
    formula::AssembleOptions reading;
    reading.read = options_.read;
    reading.allow_outside = options_.allow_outside;
    reading.batch = options_.batch;
    reading.same_name = blend::same_name(catalogue);
    const auto file = sources_.add(formula_.path, formula_.text);
    const auto card = formula::assemble(sources_, file, reading, diagnostics_);
    auto blend = card ? blend::mix(*card, catalogue, diagnostics_) : std::nullopt;
    if (!blend || !diagnostics_.empty()) {
      Result<Leeway> out;
      front::add_problems(diagnostics_, sources_, out.problems);
      return out;
    }
    Leeway out;
    out.file = formula_.path;
    out.name = blend->name;
    out.threshold = how_.threshold;
    const mending::Dials dials(*card, *blend, reading.same_name);
    const mending::Rounding rounding(dials, *blend);
    const borders::Settings settings(rulesets_, options_, *card, *blend, how_.threshold);
    out.broken = settings.broken();
    for (const Dial& dial : dials.all()) {
      if (dial.fills) {
        out.fixed.push_back("'" + dial.name.text + "' takes up what the others leave");
      } else {
        out.lines.push_back(line(dial, rounding, *blend, settings));
      }
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

 private:
  [[nodiscard]] LeewayLine line(const Dial& dial, const mending::Rounding& rounding,
                                const blend::Blend& blend,
                                const borders::Settings& settings) const {
    LeewayLine out;
    out.material = dial.name.text;
    out.container = dial.container;
    out.line = sources_.position(dial.name.place).line;
    out.file = sources_.path(dial.name.place);
    const double half =
        dial.worth > 0 ? (dial.amount.value.high - dial.amount.value.low) / dial.worth / 2 : 0.0;
    out.share = {percent * (dial.share - half), percent * (dial.share + half), "%"};
    out.step = rounding.step(dial, dial.share);
    double fine = out.step;
    if (blend.workshop && dial.grams) {
      for (const blend::Scale& scale : blend.workshop->scales) {
        fine = std::min(fine, scale.step / *dial.grams * percent);
      }
    }
    const borders::Look look = [&](double at, const borders::Chosen& chosen) {
      return settings.worse({borders::set_to(settings.card(), dial, at)}, chosen);
    };
    constexpr double to_round = 4;
    const auto end = [&](const std::vector<double>& places) {
      const Border border =
          borders::outward({look, settings.all()}, dial.share, places, fine / percent / to_round);
      LeewayEnd found = rounded(border, dial.share, fine / to_round);
      if (found.stopped_by) tell_beyond(look, border, settings, *found.stopped_by);
      return found;
    };
    out.least = end(borders::places_down(dial.share, fine / percent));
    out.most = end(borders::places_up(dial.share, 1));
    return out;
  }

  /// At the border itself figure and limit are told apart by their last digit alone, so the words
  /// are those of a little farther out, where the same verdict is worse there.
  static void tell_beyond(const borders::Look& look, const Border& border,
                          const borders::Settings& settings, LeewayStop& stop) {
    constexpr double a_little = 0.03;
    const double farther =
        border.outside * (border.outside < border.inside ? 1 - a_little : 1 + a_little);
    borders::Chosen chosen(settings.all().size(), false);
    chosen[border.worse.front().rule] = true;
    const auto there = look(farther, chosen);
    if (!there) return;
    for (const borders::Worse& one : *there) {
      const bool same = one.stop.kind == stop.kind && one.stop.subject == stop.subject &&
                        one.stop.subject_kind == stop.subject_kind;
      if (!same) continue;
      stop.message = one.stop.message;
      return;
    }
  }

  /// The sound side in as few digits as tell it from the other; it stays on its side.
  static LeewayEnd rounded(const Border& border, double from, double fine) {
    LeewayEnd out;
    if (!border.worse.empty()) out.stopped_by = border.worse.front().stop;
    const double digit = std::pow(10.0, std::floor(std::log10(fine)));
    const double steps = border.inside * percent / digit;
    constexpr double bits = 1e-6;  // of a step: what binary fractions make of a whole one
    const bool down = border.inside < from;
    constexpr double no_sign = 0.0;  // a zero out of rounding may have one
    out.share = (down ? std::ceil(steps - bits) : std::floor(steps + bits)) * digit + no_sign;
    out.share = down ? std::min(out.share, from * percent) : std::max(out.share, from * percent);
    if (border.inside == from) out.share = from * percent;
    return out;
  }

  const FormulaText& formula_;
  const Rulesets& rulesets_;
  const CheckOptions options_;
  const LeewayOptions how_;
  text::Sources sources_;
  text::Diagnostics diagnostics_;
};

}  // namespace

Result<Leeway> leeway(const FormulaText& formula, const Rulesets& rulesets,
                      const CheckOptions& options, const LeewayOptions& leeway_options) {
  return LeewayOf(formula, rulesets, options, leeway_options).run();
}

}  // namespace sudsmark
