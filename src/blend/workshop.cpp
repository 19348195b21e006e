// Where and how it is made: the workshop, its scales, the tasks, and what is weighed.
#include <algorithm>
#include <type_traits>

#include "blend/messages.h"
#include "blend/mixer.h"
#include "formula/statements.h"
#include "text/name.h"

namespace sudsmark::blend {
namespace {

using formula::AmountKind;

std::optional<Stated> stated(const std::optional<formula::Figure>& figure) {
  if (!figure) return std::nullopt;
  return Stated{figure->value, figure->place, false};
}

std::vector<std::pair<std::string_view, StatedWord>> choices(const formula::Workshop& said) {
  std::vector<std::pair<std::string_view, StatedWord>> out;
  formula::each_field<formula::Workshop>([&](const auto& row) {
    if constexpr (std::is_same_v<decltype(row.form), formula::ChoiceForm>) {
      const std::optional<formula::Word>& word = said.*(row.field);
      if (word) out.emplace_back(row.full, StatedWord{text::fold(word->text), word->place});
    }
  });
  return out;
}

std::optional<Range> value(const std::optional<formula::Figure>& figure) {
  if (!figure) return std::nullopt;
  return figure->value;
}

Scale read_scale(const formula::Scale& scale) {
  Scale out{scale.step.value.low, std::nullopt, scale.place};
  if (scale.most) out.most = scale.most->value.high;
  return out;
}

template <typename Section>
const Section* named(const std::vector<Section>& sections, const std::string& name) {
  const auto found = std::find_if(sections.begin(), sections.end(), [&](const Section& section) {
    return text::fold(section.name.text) == text::fold(name);
  });
  return found == sections.end() ? nullptr : &*found;
}

template <typename Section>
std::string nearest_hint(const std::vector<Section>& sections, const std::string& name) {
  std::vector<std::string> known;
  for (const Section& section : sections) known.push_back(section.name.text);
  const auto near = text::nearest(name, known);
  if (!near.empty()) return text::perhaps(near);
  return known.empty() ? std::string() : "; there is " + text::listed(known, "and");
}

}  // namespace

const StatedWord* Workshop::choice(std::string_view statement) const {
  const auto at = std::find_if(choices.begin(), choices.end(),
                               [&](const auto& one) { return one.first == statement; });
  return at == choices.end() ? nullptr : &at->second;
}

void Mixer::note_weighing(const formula::Line& line, const Named& what, const Range& mass,
                          SectionKind section, std::size_t index) {
  Weighing weighing;
  weighing.name = line.name.text;
  weighing.material = what.material;
  weighing.premix = what.premix;
  weighing.in_premix = section == SectionKind::premix;
  weighing.mass = weighing.in_premix || blend_.real_masses ? mass : Range::unknown();
  switch (section) {
    case SectionKind::phase:
      weighing.container = "phase " + card_.phases[index].name.text;
      break;
    case SectionKind::premix:
      weighing.container = "premix '" + card_.premixes[index].name.text + "'";
      break;
    case SectionKind::portion:
      weighing.container = "portion " + card_.portions[index].name.text;
      break;
  }
  weighing.section = section;
  weighing.section_index = index;
  weighing.place = line.place;
  blend_.weighings.push_back(std::move(weighing));
}

const formula::Workshop* Mixer::stated_workshop() const {
  if (const auto& made_in = card_.statements.made_in) {
    return named(card_.workshops, made_in->text);
  }
  // the only one there is
  return card_.workshops.size() == 1 ? &card_.workshops.front() : nullptr;
}

void Mixer::read_scales() {
  const formula::Workshop* said = options_.weighed ? stated_workshop() : nullptr;
  if (said == nullptr) return;
  for (const formula::Scale& scale : said->scales) scales_.push_back(read_scale(scale));
}

Range Mixer::as_weighed(const formula::Line& line, const Range& mass) {
  if (scales_.empty() || !mass.known()) return mass;
  const Range out(options_.weighed(mass.low, scales_), options_.weighed(mass.high, scales_));
  if (mass.high > 0 && !(out.high > 0)) {
    blend_.notes.push_back({&messages::weighed_away, {line.name.text}, {line.place}});
  }
  return out;
}

void Mixer::weigh_out(const std::vector<RecipeLine>& lines, Weighed& weighed) {
  if (scales_.empty() || !weighed.real) return;
  double fixed = 0;
  bool exact = true;
  for (std::size_t at = 0; at < lines.size(); ++at) {
    Range& mass = weighed.masses[at];
    mass = as_weighed(*lines[at].line, mass);
    exact = exact && mass.exact();
    if (!weighed.on_top[at]) fixed += mass.low;
  }
  weighed.fixed_total.reset();
  if (exact) weighed.fixed_total = fixed;
}

void Mixer::read_workshop() {
  const formula::Workshop* said = stated_workshop();
  if (said == nullptr && card_.statements.made_in) {
    const formula::Word& made_in = *card_.statements.made_in;
    diagnostics_.add(messages::unknown_workshop, made_in.place,
                     {made_in.text, nearest_hint(card_.workshops, made_in.text)});
    failed_ = true;
    return;
  }
  if (said == nullptr) return;
  Workshop workshop;
  workshop.name = said->name.text;
  workshop.room = stated(said->room);
  workshop.air_changes = stated(said->air_changes);
  workshop.humidity = stated(said->humidity);
  workshop.temperature = stated(said->temperature);
  for (const formula::Scale& scale : said->scales) workshop.scales.push_back(read_scale(scale));
  workshop.choices = choices(*said);
  workshop.air_speed = stated(said->air_speed);
  workshop.place = said->place;
  blend_.workshop = std::move(workshop);
}

void Mixer::read_tasks() {
  for (const formula::Task& said : card_.tasks) {
    Task task;
    task.place = said.place;
    task.takes = value(said.takes);
    task.times = value(said.times);
    task.in = value(said.in);
    task.raises = value(said.raises);
    for (const formula::Sampled& one : said.measured) {
      task.sampled.push_back({one.dust, one.fraction.text, one.over.value.low, one.place});
    }
    task.handled.name = said.name.text;
    task.handled.place = said.place;
    if (!said.handles) {
      blend_.tasks.push_back(std::move(task));
      continue;
    }
    const formula::Handled& handled = *said.handles;
    Items items;
    std::optional<double> fixed;
    if (handled.phase) {
      const auto phase = std::find_if(
          blend_.phases.begin(), blend_.phases.end(),
          [&](const Part& part) { return text::fold(part.name) == text::fold(handled.name.text); });
      if (phase == blend_.phases.end()) {
        diagnostics_.add(messages::unknown_phase, handled.name.place,
                         {handled.name.text, nearest_hint(card_.phases, handled.name.text)});
        failed_ = true;
        continue;
      }
      task.handled.composition = phase->composition;
      task.mass_known = blend_.real_masses;
      blend_.tasks.push_back(std::move(task));
      continue;
    }
    formula::Line line{handled.amount.value_or(formula::Amount{}), handled.name, said.place};
    std::optional<Named> what;
    const auto recipe = recipe_line(line, 0, what);
    if (!recipe) {
      failed_ = true;
      continue;
    }
    Range mass = line.amount.value;
    if (line.amount.kind == AmountKind::units) {
      mass *= *recipe->unit_mass;
    } else if (line.amount.kind == AmountKind::volume && recipe->density) {
      mass *= *recipe->density;
    } else if (line.amount.kind != AmountKind::mass) {
      diagnostics_.add(messages::task_needs_amount, handled.name.place, {handled.name.text});
      failed_ = true;
      continue;
    }
    spread(*what, {0, mass, said.place, false, false}, items);
    task.premix = what->premix;
    task.handled.composition = gathered(items, fixed);
    blend_.tasks.push_back(std::move(task));
  }
}

}  // namespace sudsmark::blend
