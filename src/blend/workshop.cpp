// Where and how it is made: the workshop, its scales, the tasks, and what is weighed.
#include <algorithm>

#include "blend/messages.h"
#include "blend/mixer.h"
#include "text/name.h"

namespace sudsmark::blend {
namespace {

using formula::AmountKind;

std::optional<Stated> stated(const std::optional<formula::Figure>& figure) {
  if (!figure) return std::nullopt;
  return Stated{figure->value, figure->place, false};
}

std::optional<StatedWord> folded(const std::optional<formula::Word>& word) {
  if (!word) return std::nullopt;
  return StatedWord{text::fold(word->text), word->place};
}

std::optional<Range> value(const std::optional<formula::Figure>& figure) {
  if (!figure) return std::nullopt;
  return figure->value;
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
  if (!near.empty()) return "; perhaps " + text::listed(near);
  return known.empty() ? std::string() : "; there is " + text::listed(known, "and");
}

}  // namespace

void Mixer::note_weighing(const formula::Line& line, const Named& what, const Range& mass,
                          std::string container, bool in_premix) {
  Weighing weighing;
  weighing.name = line.name.text;
  weighing.material = what.material;
  weighing.mass = in_premix || blend_.real_masses ? mass : Range::unknown();
  weighing.container = std::move(container);
  weighing.in_premix = in_premix;
  weighing.place = line.place;
  blend_.weighings.push_back(std::move(weighing));
}

void Mixer::read_workshop() {
  const formula::Workshop* said = nullptr;
  if (const auto& made_in = sheet_.statements.made_in) {
    said = named(sheet_.workshops, made_in->text);
    if (said == nullptr) {
      diagnostics_.add(messages::unknown_workshop, made_in->place,
                       {made_in->text, nearest_hint(sheet_.workshops, made_in->text)});
      failed_ = true;
      return;
    }
  } else if (sheet_.workshops.size() == 1) {
    said = &sheet_.workshops.front();  // the only one there is
  }
  if (said == nullptr) return;
  Workshop workshop;
  workshop.name = said->name.text;
  workshop.room = stated(said->room);
  workshop.air_changes = stated(said->air_changes);
  workshop.humidity = stated(said->humidity);
  workshop.temperature = stated(said->temperature);
  for (const formula::Scale& scale : said->scales) {
    Scale out{scale.step.value.low, std::nullopt, scale.place};
    if (scale.most) out.most = scale.most->value.high;
    workshop.scales.push_back(out);
  }
  workshop.mask = folded(said->mask);
  workshop.extraction = folded(said->extraction);
  workshop.place = said->place;
  blend_.workshop = std::move(workshop);
}

void Mixer::read_tasks() {
  for (const formula::Task& said : sheet_.tasks) {
    Task task;
    task.place = said.place;
    task.takes = value(said.takes);
    task.times = value(said.times);
    task.in = value(said.in);
    task.raises = value(said.raises);
    task.handled.name = said.name.text;
    task.handled.place = said.place;
    if (!said.handles) {
      blend_.tasks.push_back(std::move(task));
      continue;
    }
    const formula::Handled& handled = *said.handles;
    std::vector<Portioned> items;
    std::optional<double> fixed;
    if (handled.phase) {
      const auto phase = std::find_if(
          blend_.phases.begin(), blend_.phases.end(),
          [&](const Part& part) { return text::fold(part.name) == text::fold(handled.name.text); });
      if (phase == blend_.phases.end()) {
        diagnostics_.add(messages::unknown_phase, handled.name.place,
                         {handled.name.text, nearest_hint(sheet_.phases, handled.name.text)});
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
    spread(*what, mass, said.place, false, items);
    task.handled.composition = gathered(items, fixed);
    blend_.tasks.push_back(std::move(task));
  }
}

}  // namespace sudsmark::blend
