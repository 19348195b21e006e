#include "mending/variants.h"

#include <algorithm>
#include <string_view>
#include <utility>

#include "formula/print_figure.h"
#include "text/diagnostic.h"

namespace sudsmark::mending {
namespace {

using catalogue::Form;
using catalogue::Material;
using catalogue::Role;
using formula::AmountKind;
using rules::Mend;

/// Of the product: with so little of it a newcomer is there, and changes nothing yet.
constexpr double a_trace = 0.0005;

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

bool holds(const Dials& dials, const std::string& key) {
  return std::any_of(dials.all().begin(), dials.all().end(),
                     [&](const Dial& dial) { return dial.key == key; });
}

std::unique_ptr<Variant> varied(const Original& original, std::vector<std::string> edits,
                                const std::string& key, const std::string& out_of) {
  const Dial* fill = filler(original.dials);
  if (fill == nullptr || fill->name.text == out_of) return nullptr;
  if (!fill->fills) edits.push_back("fill with " + quoted(fill->name.text));
  auto card = original.beside.card(edits, original.same_name);
  if (!card) return nullptr;
  auto out = std::make_unique<Variant>();
  out->card = std::move(*card);
  text::Diagnostics diagnostics;
  out->blend = blend::mix(out->card, original.book.catalogue, diagnostics);
  if (!out->blend || !diagnostics.empty()) return nullptr;
  out->dials = std::make_unique<Dials>(out->card, *out->blend, original.same_name);
  const auto& all = out->dials->all();
  const auto dial =
      std::find_if(all.begin(), all.end(), [&](const Dial& one) { return one.key == key; });
  if (dial == all.end()) return nullptr;
  out->brought.dial = static_cast<std::size_t>(dial - all.begin());
  out->brought.out_of = out_of;
  return out;
}

std::unique_ptr<Variant> added(const Original& original, const Mend& mend,
                               const Material& material) {
  const std::string key = original.same_name(material.name);
  const Dial* like = pattern(original.dials);
  if (like == nullptr || holds(original.dials, key)) return nullptr;
  const std::string phase = phase_for(original, material, mend);
  if (phase.empty()) return nullptr;
  formula::Amount amount = like->amount;
  amount.value = formula::Range(like->worth * a_trace);
  auto out = varied(original,
                    {"add " + formula::printed_amount(amount) + " " + quoted(material.name) +
                     " to " + quoted(phase)},
                    key, "");
  if (out) out->brought.phase = phase;
  return out;
}

std::unique_ptr<Variant> swapped(const Original& original, const Mend& mend, const Dial& dial) {
  const Material& material = original.book.catalogue.materials[mend.material];
  const std::string key = original.same_name(material.name);
  const bool plain = dial.where == formula::PartKind::phase && divides(dial.amount.kind);
  if (!plain || dial.kept || holds(original.dials, key)) return nullptr;
  formula::Amount amount = dial.amount;
  double factor = worth_of(*dial.material, material);
  if (material.usual) factor = std::min(factor, material.usual->value.high / dial.share);
  amount.value = {amount.value.low * factor, amount.value.high * factor};
  return varied(original,
                {"swap " + quoted(dial.name.text) + " for " + quoted(material.name),
                 "set " + quoted(material.name) + " to " + formula::printed_amount(amount)},
                key, dial.name.text);
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

std::unique_ptr<Variant> filled_up(const Original& original, const catalogue::ProductKind& kind,
                                   const Trialled& verdict, std::size_t mend) {
  const bool hair =
      std::find(kind.traits.begin(), kind.traits.end(), "for-hair") != kind.traits.end();
  for (const std::string_view name : {hair ? "Kaolin" : "Corn starch", "Corn starch", "Kaolin"}) {
    const auto& meaning = original.book.catalogue.find_material(name);
    if (!meaning.one()) continue;
    auto out = added(original, original.remedies.of(verdict.rule)[mend],
                     original.book.catalogue.materials[meaning.materials.front()]);
    if (!out) continue;
    out->verdict = verdict.key;
    out->mend = mend;
    return out;
  }
  return nullptr;
}

std::vector<std::unique_ptr<Variant>> variants_of(const Original& original, const Trialled& verdict,
                                                  std::size_t mend) {
  std::vector<std::unique_ptr<Variant>> out;
  const Mend& one = original.remedies.of(verdict.rule)[mend];
  if (one.kind == Mend::Kind::add) {
    const Material& material = original.book.catalogue.materials[one.material];
    if (auto made = added(original, one, material)) out.push_back(std::move(made));
  } else if (one.kind == Mend::Kind::swap) {
    std::vector<const Dial*> lines;
    for (const Dial& dial : original.dials.all()) {
      if (original.remedies.selects(one, verdict, dial)) lines.push_back(&dial);
    }
    std::stable_sort(lines.begin(), lines.end(),
                     [](const Dial* a, const Dial* b) { return a->share > b->share; });
    for (const Dial* line : lines) {
      if (auto made = swapped(original, one, *line)) out.push_back(std::move(made));
    }
  }
  for (const auto& variant : out) {
    variant->verdict = verdict.key;
    variant->mend = mend;
  }
  return out;
}

}  // namespace sudsmark::mending
