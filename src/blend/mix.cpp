#include <algorithm>

#include "blend/messages.h"
#include "blend/mixer.h"
#include "formula/print_figure.h"
#include "formula/words.h"
#include "text/name.h"

namespace sudsmark::blend {
namespace {

using formula::AmountKind;

StatedWord folded(const formula::Word& word) {
  return {text::fold(word.text), word.place};
}

Stated stated(const formula::Figure& figure) {
  return {figure.value, figure.place, false};
}

Composition gathered(const std::vector<Portioned>& items, std::optional<double> fixed_total) {
  struct Gathered {
    Ingredient ingredient;
    std::vector<std::pair<double, Span>> places;
  };
  std::vector<Gathered> sums;
  for (const Portioned& item : items) {
    auto found = std::find_if(sums.begin(), sums.end(), [&](const Gathered& sum) {
      return sum.ingredient.material == item.material && sum.ingredient.on_top == item.on_top;
    });
    if (found == sums.end()) {
      sums.push_back({{item.material, item.mass, {}, item.on_top}, {}});
      found = std::prev(sums.end());
    } else {
      found->ingredient.mass += item.mass;
    }
    found->places.emplace_back(item.mass.high, item.place);
  }
  Composition composition;
  composition.fixed_total = fixed_total;
  for (Gathered& sum : sums) {
    std::stable_sort(sum.places.begin(), sum.places.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    for (const auto& [mass, place] : sum.places) sum.ingredient.places.push_back(place);
    composition.ingredients.push_back(std::move(sum.ingredient));
  }
  return composition;
}

}  // namespace

Composition gathered(const Items& from, std::optional<double> fixed_total) {
  return gathered(from.all(), fixed_total);
}

void set_compositions(Part& part, const Items& items, std::optional<double> fixed_total) {
  std::vector<Portioned> stays;
  bool exact = true;
  double dries = 0;
  for (const Portioned& item : items.all()) {
    if (!item.dries_off) {
      stays.push_back(item);
      continue;
    }
    if (item.on_top) continue;
    exact = exact && item.mass.exact();
    dries += item.mass.low;
  }
  const bool any = stays.size() < items.all().size();
  if (!any) {
    part.composition = gathered(items, fixed_total);
    return;
  }
  part.dough = gathered(items, fixed_total);
  // what dries off takes its share of the whole with it
  std::optional<double> left;
  if (fixed_total && exact) left = *fixed_total - dries;
  part.composition = gathered(stays, left);
}

Mixer::Mixer(const formula::Card& card, const catalogue::Catalogue& catalogue,
             text::Diagnostics& diagnostics, const MixOptions& options)
    : card_(card),
      catalogue_(catalogue),
      diagnostics_(diagnostics),
      options_(options),
      names_(card, catalogue, diagnostics) {
  failed_ = !diagnostics.empty();
  opened_.resize(card.premixes.size());
  unsound_.resize(card.premixes.size());
}

std::optional<Blend> Mixer::mix() {
  blend_.catalogue = &catalogue_;
  blend_.file = card_.file;
  blend_.name = card_.name.text;
  blend_.place = card_.place;
  read_statements();
  read_scales();
  open_premixes();
  mix_phases();
  if (failed_) return std::nullopt;
  split_portions();
  read_workshop();
  read_tasks();
  read_bath();
  if (failed_) return std::nullopt;
  blend_.own_materials_ = std::move(names_.own_materials);
  blend_.own_substances_ = std::move(names_.own_substances);
  blend_.scents = std::move(names_.scents);
  blend_.traces = std::move(names_.traces);
  set_contents();
  return std::move(blend_);
}

std::string Mixer::product_hint(const std::string& name) const {
  const std::vector<std::string> near = catalogue_.near_products(name);
  if (!near.empty()) return text::perhaps(near);
  std::vector<std::string> kinds;
  for (const catalogue::ProductKind& kind : catalogue_.products) kinds.push_back(kind.name);
  return "; the kinds are " + text::series(kinds, "and");
}

void Mixer::read_statements() {
  const formula::Statements& said = card_.statements;
  if (!said.product) {
    failed_ = true;  // the language has said so already
  } else {
    blend_.product = catalogue_.find_product(said.product->text);
    if (blend_.product == nullptr) {
      // "bath bombs": what is meant is plain
      blend_.product = catalogue_.find_product(formula::singular(said.product->text));
    }
    blend_.product_place = said.product->place;
    if (blend_.product == nullptr) {
      diagnostics_.add(messages::unknown_product, said.product->place,
                       {said.product->text, product_hint(said.product->text)});
      failed_ = true;
    }
  }
  if (said.forming) blend_.forming = folded(*said.forming);
  if (said.markets) {
    for (const formula::Word& market : said.markets->words) {
      blend_.markets.push_back({market.text, market.place});
    }
  }
  if (said.users) {
    for (const formula::Word& users : said.users->words) blend_.users.push_back(folded(users));
  }
  if (said.claims) {
    for (const formula::Word& claim : said.claims->words) {
      blend_.claims.push_back(claim.quoted ? StatedWord{claim.text, claim.place} : folded(claim));
    }
  }
  if (said.dried) {
    blend_.dried = Drying{said.dried->time.value, std::nullopt, said.dried->place};
    if (said.dried->temperature) blend_.dried->temperature = said.dried->temperature->value;
  }
  const auto day = [](const std::optional<formula::Date>& date) {
    return date ? std::optional(StatedDay{date->day, date->place}) : std::nullopt;
  };
  blend_.batch_made = day(said.batch_made);
  blend_.on_sale_since = day(said.on_sale_since);
  blend_.looks_like_food = said.looks_like_food;
  if (said.batch) {
    blend_.batch = stated(*said.batch);
    if (!said.batch->value.exact()) {
      diagnostics_.add(messages::one_figure, said.batch->place, {std::string("batch")});
      failed_ = true;
    }
  }
  if (said.piece) blend_.piece = stated(*said.piece);
  blend_.keeps = said.keeps;
  blend_.allows = said.allows;
  blend_.label = card_.label;
  for (const formula::Keep& keep : said.keeps) failed_ |= !names_.find(keep.name).has_value();
}

void Mixer::mix_phases() {
  std::vector<RecipeLine> lines;
  std::vector<Named> names;
  std::vector<std::size_t> first_of_phase;
  for (std::size_t phase = 0; phase < card_.phases.size(); ++phase) {
    first_of_phase.push_back(lines.size());
    for (const formula::Line& line : card_.phases[phase].lines) {
      std::optional<Named> named;
      const auto recipe = recipe_line(line, phase, named);
      if (!recipe) {
        failed_ = true;
        continue;
      }
      lines.push_back(*recipe);
      names.push_back(*named);
    }
  }
  if (failed_) return;
  if (lines.empty()) {
    diagnostics_.add(messages::empty_formula, card_.place);
    failed_ = true;
    return;
  }
  Target target{std::nullopt, "batch"};
  if (blend_.batch) target.mass = blend_.batch->value.low;
  if (card_.tweaked && card_.statements.batch && card_.statements.batch->place.file == card_.file) {
    target.hint = "; to make more or less of all, write 'scale batch to " +
                  formula::printed_figure(card_.statements.batch->value, formula::measure::mass) +
                  "'";
  }
  auto weighed =
      fill_is_alone(lines, names) ? weigh(lines, target, card_.place, diagnostics_) : std::nullopt;
  if (!weighed) {
    failed_ = true;
    return;
  }
  weigh_out(lines, *weighed);
  blend_.real_masses = weighed->real;
  first_of_phase.push_back(lines.size());
  for (std::size_t phase = 0; phase < card_.phases.size(); ++phase) {
    Items items;
    for (std::size_t at = first_of_phase[phase]; at < first_of_phase[phase + 1]; ++at) {
      const formula::Line& line = *lines[at].line;
      spread(names[at],
             {0, weighed->masses[at], line.place, weighed->on_top[at], line.dries_off.has_value()},
             items);
      note_weighing(line, names[at], weighed->masses[at], SectionKind::phase, phase);
    }
    const formula::Phase& said = card_.phases[phase];
    blend_.phases.push_back({said.name.text, gathered(items, std::nullopt), said.place, 1.0, {}});
    for (const Portioned& item : items.all()) mixed_.add(item);
  }
  blend_.whole.name = blend_.name;
  blend_.whole.place = card_.place;
  set_compositions(blend_.whole, mixed_, weighed->fixed_total);
  if (!(blend_.whole.composition.total().high > 0) && blend_.whole.dough) {
    diagnostics_.add(messages::all_dries_off, card_.place);
    failed_ = true;
  }
}

void Mixer::split_portions() {
  if (card_.portions.empty()) return;
  const Composition& mixed = blend_.whole.as_formed();
  const Range total = mixed.total();
  const std::optional<double> fixed = mixed.fixed_total;
  Items everything = mixed_;
  for (const formula::Portion& portion : card_.portions) {
    const Range share = portion.share.value;
    Items items;
    for (Portioned item : mixed_.all()) {
      item.mass *= share;
      items.add(item);
    }
    for (const formula::Line& line : portion.lines) {
      const auto named = names_.find(line.name);
      if (!named) {
        failed_ = true;
        continue;
      }
      Range mass;
      const formula::Amount& amount = line.amount;
      switch (amount.kind) {
        // a share in a portion is counted like a dose: on what the portion weighed before it
        case AmountKind::dose:
        case AmountKind::share:
          mass = total * share * amount.value;
          break;
        case AmountKind::parts:
          diagnostics_.add(messages::portion_parts, amount.place);
          failed_ = true;
          continue;
        case AmountKind::fill:
          diagnostics_.add(messages::fill_in_portion, amount.place);
          failed_ = true;
          continue;
        case AmountKind::mass:
        case AmountKind::volume:
        case AmountKind::units: {
          if (!blend_.real_masses) {
            diagnostics_.add(messages::portion_mass, amount.place);
            failed_ = true;
            continue;
          }
          std::optional<Named> again;
          const auto recipe = recipe_line(line, 0, again);
          if (!recipe) {
            failed_ = true;
            continue;
          }
          if (amount.kind == AmountKind::volume && !recipe->density) {
            diagnostics_.add(messages::volume_without_density, amount.place, {line.name.text});
            failed_ = true;
            continue;
          }
          mass = amount.value;
          if (amount.kind == AmountKind::volume) mass *= *recipe->density;
          if (amount.kind == AmountKind::units) mass *= *recipe->unit_mass;
          break;
        }
      }
      if (blend_.real_masses) mass = as_weighed(line, mass);
      Items added;
      spread(*named, {0, mass, line.place, true, line.dries_off.has_value()}, added);
      note_weighing(line, *named, mass, SectionKind::portion,
                    static_cast<std::size_t>(&portion - card_.portions.data()));
      for (const Portioned& item : added.all()) {
        items.add(item);
        everything.add(item);
      }
    }
    std::optional<double> part_fixed;
    if (fixed && share.exact()) part_fixed = *fixed * share.low;
    Part part{portion.name.text, {}, portion.place, share, {}, portion.sold_apart};
    set_compositions(part, items, part_fixed);
    blend_.portions.push_back(std::move(part));
  }
  set_compositions(blend_.whole, everything, fixed);
}

void Mixer::read_bath() {
  const formula::Statements& said = card_.statements;
  const catalogue::ProductKind& kind = *blend_.product;
  const auto assumed = [&](const std::optional<catalogue::Sourced>& usual) {
    std::optional<Stated> out;
    if (usual) out = Stated{usual->value, blend_.product_place, true};
    return out;
  };
  if (!blend_.piece) blend_.piece = assumed(kind.piece);
  if (said.bath) {
    const formula::BathUse& bath = *said.bath;
    if (const auto* mass = std::get_if<formula::Figure>(&bath.dose)) blend_.dose = stated(*mass);
    if (const auto* pieces = std::get_if<Range>(&bath.dose)) {
      if (!said.piece) {
        diagnostics_.add(messages::piece_needed, bath.place);
        failed_ = true;
        return;
      }
      blend_.dose = Stated{*pieces * said.piece->value, bath.place, false};
    }
    if (bath.volume) blend_.bath_volume = stated(*bath.volume);
    if (bath.temperature) blend_.bath_temperature = stated(*bath.temperature);
  }
  if (!blend_.dose) blend_.dose = assumed(kind.dose);
  if (!blend_.bath_volume) blend_.bath_volume = assumed(kind.water);
  if (!blend_.bath_temperature) blend_.bath_temperature = assumed(kind.temperature);
  if (said.water) {
    BathWater water;
    if (said.water->named) water.named = text::fold(said.water->named->text);
    if (said.water->alkalinity) water.alkalinity = said.water->alkalinity->value;
    if (said.water->hardness) water.hardness = said.water->hardness->value;
    if (said.water->ph) water.ph = said.water->ph->value;
    water.place = said.water->place;
    blend_.water = water;
  }
}

void Mixer::set_contents() {
  blend_.content_slot_.assign(catalogue_.materials.size() + blend_.own_materials_.size(), 0);
  blend_.contents_.emplace_back();  // slot 0: of materials that are not used
  const auto take = [&](const Composition& composition) {
    for (const Ingredient& ingredient : composition.ingredients) {
      std::uint32_t& slot = blend_.content_slot_[ingredient.material];
      if (slot != 0) continue;
      slot = static_cast<std::uint32_t>(blend_.contents_.size());
      blend_.contents_.push_back(
          views(blend_.material(ingredient.material), catalogue_, blend_.own_substances_));
    }
  };
  take(blend_.whole.as_formed());
  for (const Part& premix : blend_.premixes) take(premix.composition);
  for (const Task& task : blend_.tasks) take(task.handled.composition);
}

std::optional<Blend> mix(const formula::Card& card, const catalogue::Catalogue& catalogue,
                         text::Diagnostics& diagnostics, const MixOptions& options) {
  return Mixer(card, catalogue, diagnostics, options).mix();
}

}  // namespace sudsmark::blend
