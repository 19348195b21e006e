#include "mending/variants.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <utility>

#include "formula/print.h"
#include "formula/print_figure.h"
#include "mending/guards.h"
#include "text/diagnostic.h"

namespace sudsmark::mending {
namespace {

using catalogue::Form;
using catalogue::Material;
using catalogue::Role;
using formula::AmountKind;
using rules::Mend;

/// Of the product: with so little of it a newcomer is there, and changes nothing yet.
constexpr double a_trace = 1e-8;

bool is_liquid(const Material& material) {
  return material.form == Form::liquid || material.form == Form::paste ||
         material.form == Form::butter;
}

bool divides(AmountKind kind) {
  return kind == AmountKind::share || kind == AmountKind::mass || kind == AmountKind::parts;
}

/// The greatest line of the phases that is written in a kind of amount that can be copied.
const Dial* pattern(const Dials& dials) {
  const Dial* best = nullptr;
  for (const Dial& dial : dials.all()) {
    if (dial.where != formula::PartKind::phase || !divides(dial.amount.kind)) continue;
    if (dial.worth > 0 && (best == nullptr || dial.share > best->share)) best = &dial;
  }
  return best;
}

const Dial* filler(const Dials& dials) {
  const std::size_t at = dials.fillers().front();
  return at < dials.all().size() ? &dials.all()[at] : nullptr;
}

/// Where it would be mixed in: liquids where most liquid is, powders with the fill.
std::string phase_for(const Original& original, const Material& material, const Mend& mend) {
  const Dial* best = filler(original.dials);
  double most = 0;
  for (const Dial& dial : original.dials.all()) {
    if (dial.where != formula::PartKind::phase || dial.material == nullptr) continue;
    const std::string& phase = original.dials.phase_of(dial);
    if (!mend.phase.empty() && phase == mend.phase) return phase;
    if (!is_liquid(material) || !is_liquid(*dial.material) || dial.share <= most) continue;
    most = dial.share;
    best = &dial;
  }
  return best == nullptr || best->where != formula::PartKind::phase
             ? std::string()
             : original.dials.phase_of(*best);
}

const Dial* line_of(const Dials& dials, const std::string& key) {
  const auto at = std::find_if(dials.all().begin(), dials.all().end(),
                               [&](const Dial& dial) { return dial.key == key; });
  return at == dials.all().end() ? nullptr : &*at;
}

/// A material that comes in: what is known of it, and the edits that bring it.
struct Newcomer {
  std::string key;
  Brought brought;
  std::vector<std::string> edits;
};

/// The formula with newcomers; null where that cannot be mixed, or where what is no fill would have
/// to make up for more than a tenth of itself.
std::unique_ptr<Variant> varied(const Original& original, const catalogue::ProductKind& kind,
                                const std::vector<Newcomer>& newcomers) {
  std::vector<std::string> edits;
  for (const Newcomer& one : newcomers) {
    edits.insert(edits.end(), one.edits.begin(), one.edits.end());
  }
  const Dial* fill = filler(original.dials);
  if (fill == nullptr ||
      (!newcomers.empty() && fill->name.text == newcomers.front().brought.out_of)) {
    return nullptr;
  }
  if (!fill->fills) edits.push_back("fill with " + formula::between_quotes(fill->name.text));
  auto card = original.beside.card(edits, original.same_name);
  if (!card) return nullptr;
  auto out = std::make_unique<Variant>();
  out->card = std::move(*card);
  text::Diagnostics diagnostics;
  out->blend = blend::mix(out->card, original.book.catalogue, diagnostics);
  if (!out->blend || !diagnostics.empty()) return nullptr;
  out->dials = std::make_unique<Dials>(out->card, *out->blend, original.same_name);
  const Dial* filled = line_of(*out->dials, fill->key);
  constexpr double a_tenth = 0.1;
  const bool poor = !fill->fills && fill_of(*fill, kind) < Fill::powder;
  if (filled == nullptr ||
      (poor && std::abs(filled->share - fill->share) > a_tenth * fill->share)) {
    return nullptr;
  }
  for (const Newcomer& one : newcomers) {
    const Dial* dial = line_of(*out->dials, one.key);
    if (dial == nullptr) return nullptr;
    out->brought.push_back(one.brought);
    out->brought.back().dial = static_cast<std::size_t>(dial - out->dials->all().data());
    constexpr double noticed = 1e-7;
    if (!fill->fills && std::abs(filled->share - fill->share) > noticed) {
      out->brought.back().gave = static_cast<std::size_t>(filled - out->dials->all().data());
    }
  }
  return out;
}

/// A trace of a material that is not there yet; none where it is, or no line could be copied.
std::optional<Newcomer> trace_of(const Original& original, const Mend& mend,
                                 const Material& material, const catalogue::ProductKind& kind) {
  const bool oily = std::find(kind.traits.begin(), kind.traits.end(), "oily") != kind.traits.end();
  Newcomer out;
  out.key = original.same_name(material.name);
  if (oily && material.usual && (material.roles & catalogue::bit(Role::emulsifier)) != 0) {
    // a melt has the emulsifier of its trade: the middle of what is usual, as factors go
    const auto& usual = material.usual->value;
    out.brought.least = std::sqrt(usual.low * usual.high);
  }
  const Dial* like = pattern(original.dials);
  if (like == nullptr || line_of(original.dials, out.key) != nullptr) return std::nullopt;
  out.brought.phase = phase_for(original, material, mend);
  if (out.brought.phase.empty()) return std::nullopt;
  formula::Amount amount = like->amount;
  amount.value = formula::Range(like->worth * a_trace);
  out.edits = {"add " + formula::printed_amount(amount) + " " +
               formula::between_quotes(material.name) + " to " +
               formula::between_quotes(out.brought.phase)};
  return out;
}

/// How much of it comes in for one part of what goes out.
double exchange(const Material& in, const Dial& out, double there) {
  double factor = worth_of(*out.material, in);
  if (!in.usual) return factor;
  const auto& usual = in.usual->value;
  // what keeps a product keeps nothing in traces
  const bool keeps = (in.roles & catalogue::bit(Role::preservative)) != 0;
  if (keeps) factor = std::max(factor, (usual.low - there) / out.share);
  return std::min(factor, (usual.high - there) / out.share);
}

std::optional<Newcomer> in_place_of(const Original& original, const Mend& mend, const Dial& dial) {
  const Material& material = original.book.catalogue.materials[mend.material];
  Newcomer out;
  out.key = original.same_name(material.name);
  const Dial* there = line_of(original.dials, out.key);
  const bool of_phase = dial.where == formula::PartKind::phase && divides(dial.amount.kind);
  const bool of_portion =
      dial.where == formula::PartKind::portion && dial.amount.kind == AmountKind::dose;
  if ((!of_phase && !of_portion) || dial.kept || there == &dial) return std::nullopt;
  const bool joins = there != nullptr && of_phase && there->where == dial.where &&
                     there->amount.kind == dial.amount.kind && !there->kept && !there->fills;
  if (there != nullptr && !joins) return std::nullopt;
  double factor = exchange(material, dial, joins ? there->share : 0);
  // what fills up gives no more than leaves as much of it as is usual
  const Dial* fill = filler(original.dials);
  if (fill != nullptr && fill->material != nullptr && fill->material->usual) {
    const double spare = std::max(0.0, fill->share - fill->material->usual->value.low);
    factor = std::min(factor, 1 + spare / dial.share);
  }
  if (!(factor > 0)) return std::nullopt;
  formula::Amount amount = dial.amount;
  amount.value = {amount.value.low * factor, amount.value.high * factor};
  if (joins) {
    amount.value.low += there->amount.value.low;
    amount.value.high += there->amount.value.high;
  }
  const std::string name = joins ? there->name.text : material.name;
  out.brought.out_of = dial.name.text;
  out.edits = {
      "swap " + formula::between_quotes(dial.name.text) + " for " + formula::between_quotes(name),
      "set " + formula::between_quotes(name) + " to " + formula::printed_amount(amount)};
  return out;
}

/// What one mend of a verdict's rule brings in: the material that it adds; or one for each line
/// that it could stand in the place of, the greatest first. None where it is there already.
std::vector<Newcomer> newcomers_of(const Original& original, const catalogue::ProductKind& kind,
                                   const Trialled& verdict, std::size_t mend) {
  std::vector<Newcomer> out;
  const Mend& one = original.remedies.of(verdict.rule)[mend];
  if (one.kind == Mend::Kind::add) {
    auto added = trace_of(original, one, original.book.catalogue.materials[one.material], kind);
    if (added) out.push_back(std::move(*added));
  } else if (one.kind == Mend::Kind::swap) {
    std::vector<const Dial*> lines;
    for (const Dial& dial : original.dials.all()) {
      if (original.remedies.selects(one, verdict, dial)) lines.push_back(&dial);
    }
    std::stable_sort(lines.begin(), lines.end(),
                     [](const Dial* a, const Dial* b) { return a->share > b->share; });
    for (const Dial* line : lines) {
      auto taken = in_place_of(original, one, *line);
      if (taken) out.push_back(std::move(*taken));
    }
  }
  return out;
}

/// Inert powders that a product of this kind can take more of, the likelier first.
std::vector<std::string_view> inert(const catalogue::ProductKind& kind) {
  const bool hair =
      std::find(kind.traits.begin(), kind.traits.end(), "for-hair") != kind.traits.end();
  if (hair) return {"Kaolin", "Corn starch"};
  return {"Corn starch", "Kaolin"};
}

/// Traces of the inert powders that are not there.
std::vector<Newcomer> powders(const Original& original, const catalogue::ProductKind& kind,
                              const Mend& mend) {
  std::vector<Newcomer> out;
  for (const std::string_view name : inert(kind)) {
    const auto& meaning = original.book.catalogue.find_material(name);
    if (!meaning.one()) continue;
    const Material& material = original.book.catalogue.materials[meaning.materials.front()];
    auto one = trace_of(original, mend, material, kind);
    if (one) out.push_back(std::move(*one));
  }
  return out;
}

double active_share(const Material& material) {
  double out = 0;
  for (const catalogue::Content& content : material.contents) {
    if (content.active) out += (content.share.low + content.share.high) / 2;
  }
  return out > 0 ? out : 1.0;
}

bool both(const Material& a, const Material& b, Role role) {
  return (a.roles & b.roles & catalogue::bit(role)) != 0;
}

}  // namespace

double worth_of(const Material& out, const Material& in) {
  constexpr double least = 0.1;
  constexpr double most = 10;
  double factor = 1;
  if (both(out, in, Role::surfactant)) {
    factor = active_share(out) / active_share(in);
  } else if (both(out, in, Role::acid) && out.chemistry && in.chemistry) {
    const auto equivalents = [](const catalogue::Chemistry& one) {
      return one.acid_protons / ((one.molar_mass.low + one.molar_mass.high) / 2);
    };
    // a slow acid is taken by the weight of the quick one: what it is short of, nobody misses
    if (equivalents(*in.chemistry) > 0 && !in.chemistry->slow) {
      factor = equivalents(*out.chemistry) / equivalents(*in.chemistry);
    }
  }
  return std::clamp(factor, least, most);
}

std::vector<std::unique_ptr<Variant>> filled_up(const Original& original,
                                                const catalogue::ProductKind& kind,
                                                const Trialled& verdict, std::size_t mend) {
  std::vector<std::unique_ptr<Variant>> out;
  const auto take = [&](const std::vector<Newcomer>& newcomers) {
    auto made = varied(original, kind, newcomers);
    if (!made) return;
    made->verdict = verdict.key;
    made->mend = mend;
    out.push_back(std::move(made));
  };
  take({});
  const auto all = powders(original, kind, original.remedies.of(verdict.rule)[mend]);
  for (const Newcomer& one : all) take({one});
  if (all.size() > 1) take(all);
  return out;
}

std::vector<std::unique_ptr<Variant>> variants_of(const Original& original,
                                                  const catalogue::ProductKind& kind,
                                                  const Trialled& verdict, std::size_t mend) {
  std::vector<std::unique_ptr<Variant>> out;
  for (const Newcomer& one : newcomers_of(original, kind, verdict, mend)) {
    auto made = varied(original, kind, {one});
    if (!made) continue;
    made->verdict = verdict.key;
    made->mend = mend;
    out.push_back(std::move(made));
  }
  return out;
}

std::vector<std::unique_ptr<Variant>> of_both(const Original& original,
                                              const catalogue::ProductKind& kind,
                                              const Trialled& first, const Trialled& second) {
  std::vector<std::unique_ptr<Variant>> out;
  const auto mends = [&](const Trialled& verdict) {
    return original.remedies.of(verdict.rule).size();
  };
  for (std::size_t a = 0; a < mends(first); ++a) {
    for (const Newcomer& one : newcomers_of(original, kind, first, a)) {
      for (std::size_t b = 0; b < mends(second); ++b) {
        for (const Newcomer& other : newcomers_of(original, kind, second, b)) {
          if (one.key == other.key || one.brought.out_of == other.key) continue;
          auto made = varied(original, kind, {one, other});
          if (!made) continue;
          made->verdict = first.key;
          made->mend = a;
          out.push_back(std::move(made));
        }
      }
    }
  }
  return out;
}

}  // namespace sudsmark::mending
