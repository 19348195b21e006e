#include "borders/placed.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "blend/same_name.h"
#include "borders/lines.h"
#include "formula/assemble.h"
#include "front/parts.h"
#include "front/problems.h"
#include "rules/questions.h"
#include "text/name.h"

namespace sudsmark::borders {
namespace {

using mending::Dial;

constexpr double percent = 100;

/// The sound side in as few digits as tell it from the other; it stays on its side.
LeewayEnd rounded(const Border& border, double from, double fine) {
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

/// At the border itself figure and limit are told apart by their last digit alone, so the words are
/// those of a little farther out, where the same verdict is worse there.
void tell_beyond(const Look& look, const Border& border, std::size_t rules, LeewayStop& stop) {
  constexpr double a_little = 0.03;
  const bool down = border.outside < border.inside;
  const double farther = border.outside * (down ? 1 - a_little : 1 + a_little);
  Chosen chosen(rules, false);
  chosen[border.worse.front().rule] = true;
  const auto there = look(farther, chosen);
  if (!there) return;
  for (const Worse& one : *there) {
    const bool same = one.stop.kind == stop.kind && one.stop.subject == stop.subject &&
                      one.stop.subject_kind == stop.subject_kind;
    if (!same) continue;
    stop.message = one.stop.message;
    return;
  }
}

}  // namespace

Result<std::unique_ptr<Placed>> Placed::read(const FormulaText& formula, const Rulesets& rulesets,
                                             const CheckOptions& options, Level threshold) {
  const auto& catalogue = front::parts(rulesets).catalogue;
  text::Sources sources;
  text::Diagnostics diagnostics;
  formula::AssembleOptions reading;
  reading.read = options.read;
  reading.allow_outside = options.allow_outside;
  reading.batch = options.batch;
  reading.same_name = blend::same_name(catalogue);
  auto card =
      formula::assemble(sources, sources.add(formula.path, formula.text), reading, diagnostics);
  auto blend = card ? blend::mix(*card, catalogue, diagnostics) : std::nullopt;
  if (blend) rules::check_search(front::parts(rulesets).ruleset, *blend, diagnostics);
  Result<std::unique_ptr<Placed>> out;
  if (!blend || !diagnostics.empty()) {
    front::add_problems(diagnostics, sources, out.problems);
    return out;
  }
  out.value.emplace(new Placed(std::move(*card), std::move(*blend)));
  Placed& placed = **out.value;
  placed.sources_ = std::move(sources);
  placed.same_name_ = reading.same_name;
  placed.dials_ = std::make_unique<mending::Dials>(placed.card_, placed.blend_, placed.same_name_);
  placed.rounding_ = std::make_unique<mending::Rounding>(*placed.dials_, placed.blend_);
  placed.settings_ =
      std::make_unique<Settings>(rulesets, options, placed.card_, placed.blend_, threshold);
  return out;
}

const Dial* Placed::find(const std::string& name) const {
  const std::string folded = text::fold(name);
  const std::string key = same_name_(name);
  for (const Dial& dial : dials_->all()) {
    if (!dial.fills && (dial.key == key || text::fold(dial.name.text) == folded)) return &dial;
  }
  return nullptr;
}

LeewayLine Placed::line(const Dial& dial) const {
  LeewayLine out;
  out.material = dial.name.text;
  out.container = dial.container;
  out.line = sources_.position(dial.name.place).line;
  out.file = sources_.path(dial.name.place);
  const formula::Range& amount = dial.amount.value;
  const double half = dial.worth > 0 ? (amount.high - amount.low) / dial.worth / 2 : 0.0;
  out.share = {percent * (dial.share - half), percent * (dial.share + half), "%"};
  out.step = rounding_->step(dial, dial.share);
  return out;
}

double Placed::fine(const Dial& dial) const {
  double out = rounding_->step(dial, dial.share);
  if (!blend_.workshop || !dial.grams) return out;
  for (const blend::Scale& scale : blend_.workshop->scales) {
    out = std::min(out, scale.step / *dial.grams * percent);
  }
  return out;
}

void Placed::look(const Dial& dial, LeewayLine& out) const {
  const double step = fine(dial);
  constexpr double to_round = 4;
  const Look look = [&](double at, const Chosen& chosen) {
    return settings_->worse({set_to(card_, dial, at)}, chosen);
  };
  const auto end = [&](const std::vector<double>& places) {
    const Border border =
        outward({look, settings_->all()}, dial.share, places, step / percent / to_round);
    LeewayEnd found = rounded(border, dial.share, step / to_round);
    if (found.stopped_by) {
      tell_beyond(look, border, settings_->all().size(), *found.stopped_by);
    }
    return found;
  };
  out.least = end(places_down(dial.share, step / percent));
  out.most = end(places_up(dial.share, 1, step / percent));
}

}  // namespace sudsmark::borders
