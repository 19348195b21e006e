// Premixes: opened one inside the other, and spread over what they hold.
#include <algorithm>

#include "blend/messages.h"
#include "blend/mixer.h"
#include "text/name.h"

namespace sudsmark::blend {
namespace {

using formula::AmountKind;

constexpr std::size_t deepest = formula::deepest_premix;

}  // namespace

std::optional<RecipeLine> Mixer::recipe_line(const formula::Line& line, std::size_t phase,
                                             std::optional<Named>& named) {
  named = names_.find(line.name);
  if (!named) return std::nullopt;
  RecipeLine out{&line, phase, std::nullopt, std::nullopt};
  if (named->premix && open(*named->premix) == nullptr) return std::nullopt;
  if (named->material) {
    const catalogue::Material& material = names_.material(*named->material);
    if (material.density) out.density = material.density->value;
  }
  if (line.amount.kind == AmountKind::units) {
    const formula::Premix* premix = named->premix ? &card_.premixes[*named->premix] : nullptr;
    if (premix == nullptr || !premix->unit || premix->unit->text != line.amount.unit) {
      std::string instead;
      if (premix != nullptr && premix->unit) instead = "; its unit is '" + premix->unit->text + "'";
      diagnostics_.add(messages::wrong_unit, line.amount.place,
                       {line.name.text, line.amount.unit, instead});
      return std::nullopt;
    }
    out.unit_mass = opened_[*named->premix]->total;
  }
  if (line.amount.kind != AmountKind::fill && line.amount.value == Range(0.0)) {
    blend_.notes.push_back({&messages::zero_amount, {line.name.text}, {line.place}});
  }
  return out;
}

bool Mixer::fill_is_alone(const std::vector<RecipeLine>& lines, const std::vector<Named>& names) {
  const auto fill = std::find_if(lines.begin(), lines.end(), [](const RecipeLine& line) {
    return line.line->amount.kind == AmountKind::fill;
  });
  if (fill == lines.end()) return true;
  const Named& filled = names[static_cast<std::size_t>(fill - lines.begin())];
  for (std::size_t at = 0; at < lines.size(); ++at) {
    if (&lines[at] == &*fill) continue;
    if (names[at].material == filled.material && names[at].premix == filled.premix) {
      diagnostics_.add(messages::fill_beside, {fill->line->place, lines[at].line->place},
                       {fill->line->name.text});
      return false;
    }
  }
  return true;
}

void Items::add(const Portioned& item) {
  const auto [known, is_new] = where_.try_emplace(
      {item.material, item.place.file, item.place.begin, item.on_top, item.dries_off},
      items_.size());
  if (is_new) {
    items_.push_back(item);
  } else {
    items_[known->second].mass += item.mass;
  }
}

void Mixer::spread(const Named& named, const Portioned& line, Items& items) {
  if (named.material) {
    Portioned item = line;
    item.material = *named.material;
    items.add(item);
    return;
  }
  const OpenedPremix& premix = *opened_[*named.premix];
  for (const Portioned& item : premix.items.all()) {
    items.add({item.material, line.mass * item.mass / premix.total, item.place, line.on_top,
               line.dries_off || item.dries_off});
  }
}

const OpenedPremix* Mixer::open(std::size_t index) {
  if (opened_[index]) return &*opened_[index];
  if (unsound_[index]) return nullptr;
  opened_[index] = open_afresh(index);
  unsound_[index] = !opened_[index];
  return opened_[index] ? &*opened_[index] : nullptr;
}

std::optional<OpenedPremix> Mixer::open_afresh(std::size_t index) {
  const formula::Premix& premix = card_.premixes[index];
  const auto again = std::find(opening_.begin(), opening_.end(), index);
  if (again != opening_.end()) {
    std::string circle;
    for (auto at = again; at != opening_.end(); ++at) {
      circle += "'" + card_.premixes[*at].name.text + "' holds ";
    }
    diagnostics_.add(messages::premix_circle, premix.name.place,
                     {premix.name.text, circle + "'" + premix.name.text + "'"});
    return std::nullopt;
  }
  if (opening_.size() >= deepest) {
    diagnostics_.add(messages::premix_depth, premix.name.place, {static_cast<double>(deepest)});
    return std::nullopt;
  }
  opening_.push_back(index);
  std::vector<RecipeLine> lines;
  std::vector<Named> names;
  bool sound = true;
  for (const formula::Line& line : premix.lines) {
    std::optional<Named> named;
    const auto recipe = recipe_line(line, 0, named);
    sound = sound && recipe.has_value();
    if (!recipe) continue;
    lines.push_back(*recipe);
    names.push_back(*named);
  }
  opening_.pop_back();
  if (sound && !premix.makes.value.exact()) {
    diagnostics_.add(messages::one_figure, premix.makes.place, {std::string("makes")});
    sound = false;
  }
  if (!sound || !fill_is_alone(lines, names)) return std::nullopt;
  const std::string called = "premix '" + premix.name.text + "'";
  auto weighed = weigh(lines, {premix.makes.value.low, called}, premix.place, diagnostics_);
  if (!weighed) return std::nullopt;
  weigh_out(lines, *weighed);
  OpenedPremix out;
  out.fixed_total = weighed->fixed_total;
  for (std::size_t at = 0; at < lines.size(); ++at) {
    const formula::Line& line = *lines[at].line;
    spread(names[at],
           {0, weighed->masses[at], line.place, weighed->on_top[at], line.dries_off.has_value()},
           out.items);
    note_weighing(line, names[at], weighed->masses[at], SectionKind::premix, index);
  }
  Composition composition = gathered(out.items, out.fixed_total);
  out.total = composition.total();
  if (!(out.total.low > 0)) {
    diagnostics_.add(messages::empty_formula, premix.place);
    return std::nullopt;
  }
  return out;
}

void Mixer::open_premixes() {
  for (std::size_t at = 0; at < card_.premixes.size(); ++at) {
    const OpenedPremix* opened = open(at);
    if (opened == nullptr) {
      failed_ = true;
      continue;
    }
    const formula::Premix& said = card_.premixes[at];
    blend_.premixes.push_back({said.name.text, gathered(opened->items, opened->fixed_total),
                               said.place, 1.0, said.unit ? said.unit->text : std::string()});
  }
}

}  // namespace sudsmark::blend
