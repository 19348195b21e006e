// Where the machine's figures and words come from: measures, sums, the subject, the formula.
#include <algorithm>
#include <bit>

#include "formula/vocabulary.h"
#include "measures/task_hazards.h"
#include "rules/bringers.h"
#include "rules/machine.h"
#include "rules/picking.h"
#include "rules/words.h"
#include "text/name.h"

namespace sudsmark::rules {
namespace {

using catalogue::Material;
using catalogue::Sourced;

/// Sum of the contents of a material that pass a test; the rest bounds it from above.
template <typename Test>
Range content_share(const std::vector<blend::ContentView>& contents, const Test& test) {
  Range sum = 0.0;
  for (const blend::ContentView& content : contents) {
    if (test(content)) sum += content.share;
  }
  return quantity::clamp(sum, 0.0, 1.0);
}

std::string quoted(std::string_view name) {
  return "'" + std::string(name) + "'";
}

}  // namespace

measures::View Machine::view(const Subject& subject) {
  measures::View view;
  view.blend = &blend_;
  view.missing = &missing_;
  std::size_t at = subject.part;
  view.part = &blend_.whole;
  if (at == 0) return view;
  if (at -= 1; at < blend_.portions.size()) {
    view.part = &blend_.portions[at];
    return view;
  }
  if (at -= blend_.portions.size(); at < blend_.premixes.size()) {
    view.part = &blend_.premixes[at];
    return view;
  }
  at -= blend_.premixes.size();
  view.task = &blend_.tasks[at];
  view.part = &view.task->handled;
  return view;
}

Machine::Slot& Machine::slot(std::size_t part, std::size_t at) {
  std::vector<Slot>& slots = kept_[part];
  if (slots.empty()) {
    slots.resize(measure_count_ + ruleset_.measures.size() + ruleset_.pool.sums.size());
  }
  return slots[at];
}

Measured Machine::measure(std::uint32_t index, const Subject& subject) {
  Slot& kept = slot(subject.part, index);
  if (!kept.filled) {
    kept.value = measures::all()[index].compute(view(subject));
    kept.filled = true;
  }
  return kept.value;
}

Measured Machine::named(std::uint32_t index, const Subject& subject) {
  const std::size_t at = measure_count_ + index;
  if (ruleset_.measures[index].program.empty()) return {};
  if (!slot(subject.part, at).filled) {
    const Value value = run(ruleset_.measures[index].program, subject);
    Slot& kept = slot(subject.part, at);
    kept.value = {value.range, value.missing};
    kept.filled = true;
  }
  return slot(subject.part, at).value;
}

Measured Machine::sum(std::uint32_t index, const Subject& subject) {
  const Sum& sum = ruleset_.pool.sums[index];
  const Selection& selection = ruleset_.pool.selections[sum.selection];
  const bool row_alone = subject.row != nullptr && selection.end - selection.begin == 1;
  Slot& kept = !selection.subject
                   ? slot(subject.part, measure_count_ + ruleset_.measures.size() + index)
               // all that nothing declares is the same: what the scents may hold undeclared
               : row_alone && !subject.declared && subject.aroma
                   ? kept_of_undeclared_[static_cast<std::size_t>(sum.kind)]
                   : kept_of_subject_[index];
  const bool of_other = &kept == &kept_of_subject_[index] && kept.subject != subject.number;
  if (!kept.filled || of_other) {
    kept.value = compute_sum(sum, subject);
    kept.subject = subject.number;
    kept.filled = true;
  }
  return kept.value;
}

Measured Machine::compute_sum(const Sum& sum, const Subject& subject) {
  const Selection& selection = ruleset_.pool.selections[sum.selection];
  const Picking picking(ruleset_.pool, *blend_.catalogue, selection, subject);
  const measures::Selector selector = picking.selector();
  const measures::View part = view(subject);
  switch (sum.kind) {
    case SumKind::share:
      return measures::share(part, selector);
    case SumKind::supplied:
      return measures::supplied(part, selector);
    case SumKind::mass:
      return measures::mass(part, selector);
    case SumKind::dose:
      return measures::dose(part, selector);
    case SumKind::in_bath:
      return measures::in_bath(part, selector);
    case SumKind::count:
      break;
  }
  if (selection.subject && subject.ingredient != nullptr) {
    return count_in_material(selection, subject);
  }
  return measures::count(part, selector);
}

/// Whether the subject's material holds what is selected: 1, 0, or 0 to 1.
Measured Machine::count_in_material(const Selection& selection, const Subject& subject) {
  const Picking picking(ruleset_.pool, *blend_.catalogue, selection, subject);
  const blend::MaterialId id = subject.ingredient->material;
  const Material& of = material(subject);
  Range held = 0.0;
  if (picking({id, &of, nullptr})) return {1.0, 0};
  for (const blend::ContentView& content : blend_.contents(id)) {
    if (picking({id, &of, &content})) held += content.share;
  }
  if (held.low > 0) return {1.0, 0};
  const bool perhaps = selection.aroma && blend_.undeclared(id).high > 0;
  const MissingSet missing =
      perhaps ? lacks("what " + quoted(of.name) + " holds undeclared", subject.place) : 0;
  return {Range(0.0, held.high > 0 || perhaps ? 1.0 : 0.0), missing};
}

const Material& Machine::material(const Subject& subject) const {
  return blend_.material(subject.ingredient->material);
}

MissingSet Machine::lacks_of(std::string_view what, const Subject& subject) {
  const std::string_view of = subject.task != nullptr ? " of the task " : " of ";
  return lacks(std::string(what) + std::string(of) + quoted(subject.name), subject.place);
}

Measured Machine::field(Field field, const Subject& subject) {
  const auto known_or_missing = [&](const std::optional<Range>& value) -> Measured {
    if (value) return {*value, 0};
    return {Range::unknown(), lacks_of(info(field).missing, subject)};
  };
  const auto sourced = [&](const std::optional<Sourced>& figure) {
    return known_or_missing(figure ? std::optional<Range>(figure->value) : std::nullopt);
  };
  const auto end = [&](const std::optional<Sourced>& figure, bool high) {
    std::optional<Range> value;
    if (figure) value = Range(high ? figure->value.high : figure->value.low);
    return known_or_missing(value);
  };
  switch (field) {
    case Field::portion_share:
      return {blend_.portions[subject.part - part_of_portion(0)].share, 0};
    case Field::portion_sold_apart:
      return {blend_.portions[subject.part - part_of_portion(0)].sold_apart ? 1.0 : 0.0, 0};
    case Field::premix_mass:
      return {blend_.premixes[subject.part - part_of_premix(0)].composition.total(), 0};
    case Field::task_takes:
      return known_or_missing(subject.task->takes);
    case Field::task_times: {
      constexpr double hours_a_day = 24;  // a rate's base unit is per hour
      std::optional<Range> times = subject.task->times;
      if (times) times = *times / hours_a_day;
      return known_or_missing(times);
    }
    case Field::task_volume:
      return known_or_missing(subject.task->in);
    case Field::task_raises:
      return known_or_missing(subject.task->raises);
    case Field::task_mass:
      if (!subject.task->mass_known) {
        return {Range::unknown(), lacks("the size of the batch (`batch`)", blend_.place)};
      }
      return {subject.task->handled.composition.total(), 0};
    default:
      break;
  }
  const Material& of = material(subject);
  const blend::MaterialId id = subject.ingredient->material;
  const std::vector<blend::ContentView>& contents = blend_.contents(id);
  const auto water = [&](catalogue::WaterClass wanted) {
    return content_share(contents, [&](const blend::ContentView& content) {
      const bool is_water = (content.roles & catalogue::bit(catalogue::Role::water)) != 0;
      const bool plain = content.water == catalogue::WaterClass::none && is_water;
      return content.water == wanted || (wanted == catalogue::WaterClass::free && plain);
    });
  };
  const blend::Scent* scent = blend_.scent(id);
  switch (field) {
    case Field::material_active: {
      const bool stated = std::any_of(contents.begin(), contents.end(),
                                      [](const blend::ContentView& c) { return c.active; });
      // what is all one substance is all active
      if (!stated && of.contents.empty() &&
          (of.roles & catalogue::bit(catalogue::Role::fragrance)) == 0)
        return {1.0, 0};
      if (!stated) return known_or_missing(std::nullopt);
      return {content_share(contents, [](const blend::ContentView& c) { return c.active; }), 0};
    }
    case Field::material_water:
      return {water(catalogue::WaterClass::free), 0};
    case Field::material_bound_water:
      return {water(catalogue::WaterClass::bound), 0};
    case Field::material_crystal_water:
      return {water(catalogue::WaterClass::crystal), 0};
    case Field::material_melting:
      return sourced(of.melting);
    case Field::material_hlb:
      return sourced(of.hlb);
    case Field::material_required_hlb:
      return sourced(of.required_hlb);
    case Field::material_density:
      return sourced(of.density);
    case Field::material_deliquescence:
      return sourced(of.deliquescence);
    case Field::material_usual_least:
      return end(of.usual, false);
    case Field::material_usual_most:
      return end(of.usual, true);
    case Field::material_supplier_limit:
      return sourced(of.supplier_limit);
    case Field::material_pure_colour:
      return sourced(of.pure_colour);
    case Field::material_stable_ph_least:
      return end(of.stable_ph, false);
    case Field::material_stable_ph_most:
      return end(of.stable_ph, true);
    case Field::material_certificate:
      if (scent != nullptr && scent->limit) return {*scent->limit, 0};
      return {Range::unknown(), lacks("the certificate of fragrance " + quoted(of.name),
                                      scent != nullptr ? scent->place : subject.place)};
    case Field::material_flash_point:
      return known_or_missing(scent != nullptr ? scent->flash_point : std::nullopt);
    case Field::material_lowest_explosible:
      return known_or_missing(of.dust ? of.dust->lowest_explosible : std::nullopt);
    default:
      return {};
  }
}

Value Machine::cell(std::uint32_t column, const Subject& subject) {
  Value value;
  value.range = Range::unknown();
  const catalogue::Cell& cell = subject.row->cells[column];
  if (const Range* figure = std::get_if<Range>(&cell)) {
    value.range = *figure;
  } else {
    value.missing = lacks("the " + subject.table->columns[column].name + " of " +
                          quoted(subject.name) + " in the table '" + subject.table->title + "'");
  }
  return value;
}

Value Machine::text(const Instruction& instruction, const Subject& subject) {
  Value value;
  const auto say = [&](std::string_view text, std::string_view missing) {
    value.text = text;
    value.known = !text.empty();
    if (text.empty() && !missing.empty()) value.missing = lacks(missing, blend_.place);
  };
  if (instruction.code == Code::word_text) {
    const auto which = static_cast<StatedWords>(instruction.a);
    if (which != StatedWords::dustiness) {
      say(said_[static_cast<std::size_t>(which)], info(which).missing);
      return value;
    }
    const std::uint32_t bits = words(which, subject).bits;
    say(bits == 0 ? std::string_view() : info(which).known[std::countr_zero(bits)], {});
    if (bits == 0) value.missing = lacks_of(info(which).missing, subject);
    return value;
  }
  const catalogue::ProductKind& product = *blend_.product;
  switch (static_cast<SubjectText>(instruction.a)) {
    case SubjectText::name:
      say(subject.name, {});
      break;
    case SubjectText::product:
      say(product.name, {});
      break;
    case SubjectText::fragrance_category:
      say(product.fragrance_category, "the fragrance category of this kind of product");
      break;
    case SubjectText::neighbour_category:
      say(product.neighbour_category, "a neighbouring fragrance category");
      break;
    case SubjectText::certificate_category: {
      const blend::Scent* scent = blend_.scent(subject.ingredient->material);
      if (scent != nullptr && scent->categories.size() > 1) {
        sentences_.push_back(text::series(scent->categories, "and"));
        say(sentences_.back(), {});
        value.several = true;
      } else {
        say(scent == nullptr || scent->categories.empty()
                ? std::string_view()
                : std::string_view(scent->categories.front()),
            {});
      }
      if (!value.known) {
        value.missing = lacks_of("the category that the certificate names", subject);
      }
      break;
    }
    case SubjectText::brought_by:
      sentences_.push_back(brought_by(view(subject), subject));
      say(sentences_.back(), {});
      break;
    case SubjectText::cell: {
      const std::string* word = std::get_if<std::string>(&subject.row->cells[instruction.c]);
      if (word != nullptr) {
        say(*word, {});
      } else {
        value.known = false;
        value.missing =
            lacks("the " + subject.table->columns[instruction.c].name + " of " +
                  quoted(subject.name) + " in the table '" + subject.table->title + "'");
      }
      break;
    }
  }
  return value;
}

void Machine::read_words(const std::vector<std::string>& markets) {
  const auto take = [this](StatedWords which, std::string_view word, Span place) {
    Words& words = words_[static_cast<std::size_t>(which)];
    words.stated = true;
    if (!words.place.somewhere()) words.place = place;
    const auto at = find_word(info(which), word);
    if (!at) return;
    words.bits |= 1U << *at;
    std::string& text = said_[static_cast<std::size_t>(which)];
    if (!text.empty()) text += " and ";
    text += info(which).known[*at];
  };
  const blend::Blend& said = blend_;
  if (said.forming) take(StatedWords::forming, said.forming->text, said.forming->place);
  for (const blend::StatedWord& users : said.users) {
    take(StatedWords::users, users.text, users.place);
  }
  for (const blend::StatedWord& claim : said.claims) {
    take(StatedWords::claims, claim.text, claim.place);
  }
  for (const blend::StatedWord& market : said.markets) {
    if (markets.empty()) take(StatedWords::market, market.text, market.place);
  }
  for (const std::string& market : markets) {
    take(StatedWords::market, market,
         said.markets.empty() ? said.place : said.markets.front().place);
  }
  if (said.water) {
    std::string_view named = said.water->named;
    if (named.empty()) named = "figures";
    take(StatedWords::bath_water, named, said.water->place);
  }
  if (!said.workshop) return;
  if (const auto& mask = said.workshop->mask) take(StatedWords::mask, mask->text, mask->place);
  if (const auto& drawn = said.workshop->extraction) {
    take(StatedWords::extraction, drawn->text, drawn->place);
  }
}

Machine::Words Machine::words(StatedWords which, const Subject& subject) const {
  if (which != StatedWords::dustiness) return words_[static_cast<std::size_t>(which)];
  Words words;
  const std::optional<catalogue::Dust>& dust = material(subject).dust;
  words.stated = dust && dust->dustiness != catalogue::Dustiness::unknown;
  if (words.stated) words.bits = 1U << (static_cast<unsigned>(dust->dustiness) - 1U);
  words.place = subject.place;
  return words;
}

Value Machine::is_word(StatedWords which, std::uint32_t bits, const Subject& subject) {
  const Words said = words(which, subject);
  Value value;
  // who says only that skin is sensitive has not said how old it is
  constexpr std::uint32_t ages = (1U << formula::vocabulary::ages) - 1;
  const bool age_open =
      which == StatedWords::users && (bits & ages) != 0 && (said.bits & (ages | bits)) == 0;
  if (which == StatedWords::claims || (said.stated && !age_open)) {
    value.truth = (said.bits & bits) != 0 ? Certainty::yes : Certainty::no;
    return value;
  }
  value.truth = Certainty::depends;
  value.missing = info(which).each == Each::material ? lacks_of(info(which).missing, subject)
                                                     : lacks(info(which).missing, blend_.place);
  return value;
}

Certainty Machine::sold_in(const std::vector<std::string>& markets, MissingSet& missing) {
  if (markets.empty()) return Certainty::yes;
  std::uint32_t bits = 0;
  for (const std::string& market : markets) {
    if (const auto at = find_word(info(StatedWords::market), market)) bits |= 1U << *at;
  }
  const Value sold = is_word(StatedWords::market, bits, Subject{});
  missing |= sold.missing;
  return sold.truth;
}

Value Machine::holds(std::uint32_t index, const Subject& subject) {
  const Measured count = sum(index, subject);
  Value value;
  value.truth = count.value.low >= 1    ? Certainty::yes
                : count.value.high <= 0 ? Certainty::no
                                        : Certainty::depends;
  if (value.truth == Certainty::depends) value.missing = count.missing;
  return value;
}

bool Machine::is_material(std::uint32_t index, const Subject& subject) const {
  const Picking picking(ruleset_.pool, *blend_.catalogue, ruleset_.pool.selections[index], subject);
  return picking({subject.ingredient->material, &material(subject), nullptr});
}

/// Of what a task or premix holds, by the mixture rules.
Value Machine::is_hazardous_mix(std::string_view code, const Subject& subject) {
  std::optional<measures::HandledHazards>& kept = hazards_[subject.part];
  if (!kept) {
    const measures::View part = view(subject);
    kept = measures::hazards_of(part, part.part->composition);
  }
  const measures::HandledHazards& hazards = *kept;
  Value value;
  value.truth = hazards.is(code);
  if (value.truth != Certainty::depends) return value;
  const measures::HandledStatement* open = hazards.find(code);
  value.missing = hazards.missing;
  if (open != nullptr) {
    value.missing |= lacks("whether " + std::string(code) + " holds for the mix " +
                               quoted(subject.name) + " (a data sheet of it)",
                           subject.place);
  }
  return value;
}

Value Machine::is_hazardous(std::string_view code, const Subject& subject) {
  if (subject.ingredient == nullptr) return is_hazardous_mix(code, subject);
  const Material& of = material(subject);
  Value value;
  const auto is = [&](const std::string& hazard) {
    // H360FD is an H360 in full
    return hazard == code || (hazard.size() > code.size() && hazard.starts_with(code));
  };
  if (std::any_of(of.hazards.begin(), of.hazards.end(), is)) {
    value.truth = Certainty::yes;
  } else if (!measures::hazards_stated(of)) {
    value.truth = Certainty::depends;
    value.missing = lacks("the safety data sheet of " + quoted(of.name), subject.place);
  }
  return value;
}

Value Machine::is_marked(Mark mark, const Subject& subject) {
  const Material& of = material(subject);
  Value value;
  const auto say = [&](bool is) { value.truth = is ? Certainty::yes : Certainty::no; };
  switch (mark) {
    case Mark::grade_unclear:
      say(of.grade_unclear);
      return value;
    case Mark::own:
      say(subject.ingredient->material >= blend_.catalogue->materials.size());
      return value;
    case Mark::limited:
      say(of.supplier_limit.has_value());
      return value;
    case Mark::combustible:
    case Mark::inert:
      break;
  }
  if (of.dust) {
    say(mark == Mark::combustible ? of.dust->combustible : of.dust->inert);
  } else {
    value.truth = Certainty::depends;
    value.missing = lacks_of(info(mark).missing, subject);
  }
  return value;
}

Span Machine::place(const Origin& origin, const Subject& subject) {
  switch (origin.kind) {
    case Origin::Kind::measure: {
      const measures::Measure& measure = measures::all()[origin.index];
      return measure.place == nullptr ? Span{} : measure.place(view(subject));
    }
    case Origin::Kind::sum: {
      const Selection& selection =
          ruleset_.pool.selections[ruleset_.pool.sums[origin.index].selection];
      const Picking picking(ruleset_.pool, *blend_.catalogue, selection, subject);
      return measures::place(view(subject), picking.selector());
    }
    case Origin::Kind::words:
      return words(static_cast<StatedWords>(origin.index), subject).place;
    case Origin::Kind::product:
      return blend_.product_place;
    case Origin::Kind::food:
      return blend_.looks_like_food.value_or(Span{});
  }
  return {};
}

}  // namespace sudsmark::rules
