// What names mean: measures and words of an expression, and the things that a selection names.
#include <algorithm>

#include "catalogue/numbers.h"
#include "measures/registry.h"
#include "rules/compilation.h"
#include "rules/messages.h"
#include "text/name.h"
#include "text/yaml_fields.h"

namespace sudsmark::rules {
namespace {

/// The selection words for forms, and "powder" for both dry ones.
std::optional<std::uint64_t> form_bits(std::string_view word) {
  std::string folded = text::fold(word);
  if (!catalogue::find_form(folded) && folded.ends_with('s')) folded.pop_back();
  const auto bit = [](catalogue::Form form) {
    return std::uint64_t{1} << static_cast<unsigned>(form);
  };
  if (folded == "powder") return bit(catalogue::Form::fine_powder) | bit(catalogue::Form::granules);
  if (const auto form = catalogue::find_form(folded)) return bit(*form);
  return std::nullopt;
}

std::optional<std::uint32_t> subject_sum(std::string_view name, Each each) {
  if (each != Each::row && each != Each::material) return std::nullopt;
  if (name == "share") return static_cast<std::uint32_t>(SumKind::share);
  if (name == "mass") return static_cast<std::uint32_t>(SumKind::mass);
  if (name == "dose") return static_cast<std::uint32_t>(SumKind::dose);
  if (name == "in_bath") return static_cast<std::uint32_t>(SumKind::in_bath);
  if (name == "supplied" && each == Each::material) {
    return static_cast<std::uint32_t>(SumKind::supplied);
  }
  return std::nullopt;
}

/// The `each` that would know a name; product if none would.
Each home_of(std::string_view name) {
  for (const FieldInfo& field : fields()) {
    if (field.name == name) return field.each;
  }
  for (const TextInfo& text : texts()) {
    if (text.name == name) return text.each;
  }
  for (const StatedInfo& words : stated_words()) {
    if (words.name == name) return words.each;
  }
  if (subject_sum(name, Each::row)) return Each::row;
  if (subject_sum(name, Each::material)) return Each::material;
  return Each::product;
}

}  // namespace

/// A name with a side means what it means without, if both formulas have such a thing.
Compilation::Meaning Compilation::resolve(std::string_view name) const {
  using What = Meaning::Kind;
  const Meaning whole = resolve_plain(name);
  const Sided of = sided(name);
  if (whole.kind != What::unknown || of.side == Side::own) return whole;
  Meaning meaning = resolve_plain(of.name);
  const bool of_formula = meaning.kind == What::measure || meaning.kind == What::named ||
                          meaning.kind == What::sum || meaning.kind == What::flag ||
                          (meaning.kind == What::stated &&
                           info(static_cast<StatedWords>(meaning.index)).each == Each::product) ||
                          (meaning.kind == What::text && home_of(of.name) == Each::product);
  if (!of_formula) return {};
  meaning.side = of.side;
  return meaning;
}

Compilation::Meaning Compilation::resolve_plain(std::string_view name) const {
  const Each each = source_.scope.each;
  if (const catalogue::Table* rows = table()) {
    const std::string folded = text::fold(name);
    for (std::size_t at = 0; at < rows->columns.size(); ++at) {
      if (text::fold(rows->columns[at].name) == folded) {
        return {Meaning::Kind::cell, static_cast<std::uint32_t>(at)};
      }
    }
  }
  for (const StatedInfo& words : stated_words()) {
    if (words.name == name && (words.each == Each::product || words.each == each)) {
      return {Meaning::Kind::stated, static_cast<std::uint32_t>(words.id)};
    }
  }
  for (const FieldInfo& field : fields()) {
    if (field.name == name && field.each == each) {
      return {Meaning::Kind::field, static_cast<std::uint32_t>(field.id)};
    }
  }
  for (const TextInfo& text : texts()) {
    if (text.name == name && (text.each == Each::product || text.each == each)) {
      return {Meaning::Kind::text, static_cast<std::uint32_t>(text.id)};
    }
  }
  for (const FlagInfo& flag : flags()) {
    if (flag.name == name) return {Meaning::Kind::flag, static_cast<std::uint32_t>(flag.id)};
  }
  if (const auto sum = subject_sum(name, each)) return {Meaning::Kind::sum, *sum};
  if (const auto measure = measures::find(name)) return {Meaning::Kind::measure, *measure};
  if (const auto measure = compiler_.find_measure(name)) return {Meaning::Kind::named, *measure};
  return {};
}

/// Whether a side may be asked here, where one is; an error if not.
bool Compilation::may_ask(NodeIndex at, Side side) {
  if (side == Side::own) return true;
  const Each each = source_.scope.each;
  if (!source_.scope.sides) {
    refuse(messages::side_in_measure, at);
    return false;
  }
  if (each == Each::portion || each == Each::premix || each == Each::task) {
    refuse(messages::side_of_part, at, {std::string(each_word(each))});
    return false;
  }
  pair_ = true;
  return true;
}

/// Errors of a name with a side that are none of the name without.
bool Compilation::refuse_side(NodeIndex at, const Sided& of) {
  const std::string& name = node(at).text;
  if (name == "base" || name == "tweak") {
    refuse(messages::side_alone, at, {name});
    return true;
  }
  if (of.side == Side::own) return false;
  const bool known = resolve_plain(of.name).kind != Meaning::Kind::unknown;
  const bool of_subject = home_of(of.name) != Each::product && !subject_sum(of.name, Each::row) &&
                          !subject_sum(of.name, Each::material);
  if (!known && !of_subject) return false;
  const std::string side(of.side == Side::base ? "base." : "tweak.");
  refuse(messages::side_of_what, at, {std::string(of.name), side});
  return true;
}

void Compilation::refuse_name(NodeIndex at) {
  const Sided of = sided(node(at).text);
  const std::string name(of.name);
  failed_ = true;
  if (compiler_.faulty_.contains(name) || refuse_side(at, of)) return;
  const Each home = home_of(name);
  if (home == Each::row && subject_sum(name, Each::row)) {
    refuse(messages::unknown_measure, at,
           {node(at).text,
            "; write '" + node(at).text + "(…)' with what is meant, or go over rows or materials"});
    return;
  }
  if (home != Each::product) {
    refuse(messages::measure_elsewhere, at,
           {name, std::string(each_word(home)) + (home == Each::row ? " of TABLE" : "")});
    return;
  }
  if (!compiler_.may_hint()) {
    return refuse(messages::unknown_measure, at, {node(at).text, std::string()});
  }
  std::vector<std::string> known = known_names(source_.scope.each);
  if (const catalogue::Table* rows = table()) {
    for (const catalogue::Column& column : rows->columns) known.push_back(column.name);
  }
  for (const measures::Measure& measure : measures::all()) known.emplace_back(measure.name);
  for (const NamedMeasure& measure : ruleset_.measures) known.push_back(measure.name);
  if (of.side != Side::own) {
    for (std::string& one : known) one.insert(0, of.side == Side::base ? "base." : "tweak.");
  }
  refuse(messages::unknown_measure, at, {node(at).text, text::hint(node(at).text, known)});
}

void Compilation::gather_origins(NodeIndex at, std::vector<Origin>& origins) {
  const auto add = [&](const Origin& origin) {
    constexpr std::size_t most = 32;
    const bool there = std::find(origins.begin(), origins.end(), origin) != origins.end();
    if (!there && origins.size() < most) origins.push_back(origin);
  };
  const Node& here = node(at);
  if (here.op == Op::name) {
    const Meaning meaning = resolve(here.text);
    if (meaning.kind == Meaning::Kind::measure) add({Origin::Kind::measure, meaning.index});
    if (meaning.kind == Meaning::Kind::named) {
      for (const Origin& origin : ruleset_.measures[meaning.index].origins) add(origin);
    }
    if (meaning.kind == Meaning::Kind::stated) add({Origin::Kind::words, meaning.index});
    return;
  }
  if (here.op == Op::sum) {
    const auto chosen = selection(here.parts[0]);
    if (chosen) add({Origin::Kind::sum, interner_.sum(SumKind::share, *chosen)});
    return;
  }
  for (const NodeIndex part : here.parts) gather_origins(part, origins);
}

std::optional<std::uint32_t> Compilation::selection(NodeIndex at, bool of_subject) {
  std::vector<Pick> picks;
  bool aroma = false;
  if (of_subject) picks.push_back({PickCode::subject, 0});
  if (!gather_picks(at, picks, aroma, false)) return std::nullopt;
  if (of_subject) picks.push_back({PickCode::both, 0});
  constexpr std::size_t most_picks = 64;
  if (picks.size() > most_picks) {
    refuse(messages::too_involved, at, {static_cast<double>(most_picks)});
    return std::nullopt;
  }
  return interner_.selection(picks, aroma);
}

bool Compilation::gather_picks(NodeIndex at, std::vector<Pick>& picks, bool& aroma, bool denied) {
  const Node& here = node(at);
  switch (here.op) {
    case Op::pick_not:
      if (!gather_picks(here.parts[0], picks, aroma, !denied)) return false;
      picks.push_back({PickCode::deny, 0});
      return true;
    case Op::pick_both:
    case Op::pick_either: {
      const bool first = gather_picks(here.parts[0], picks, aroma, denied);
      const bool second = gather_picks(here.parts[1], picks, aroma, denied);
      picks.push_back({here.op == Op::pick_both ? PickCode::both : PickCode::either, 0});
      return first && second;
    }
    default:
      return gather_pick(at, picks, aroma, denied);
  }
}

bool Compilation::gather_pick(NodeIndex at, std::vector<Pick>& picks, bool& aroma, bool denied) {
  const std::string& word = node(at).text;
  if (node(at).op == Op::pick_name) {
    if (word == "beside" && table() != nullptr) {
      picks.push_back({PickCode::beside, 0});
      return true;
    }
    if (const auto role = catalogue::find_role(word)) {
      picks.push_back({PickCode::role, catalogue::bit(*role)});
      aroma = aroma || (!denied && *role == catalogue::Role::aroma_chemical);
      return true;
    }
    if (const auto forms = form_bits(word)) {
      picks.push_back({PickCode::form, *forms});
      return true;
    }
    if (is_hazard_code(word)) {
      refuse(messages::hazard_of_material, at, {word});
      return false;
    }
  }
  bool aroma_here = false;
  const auto things = named(at, aroma_here);
  if (things) {
    picks.push_back({PickCode::named, interner_.named(*things)});
    aroma = aroma || (!denied && aroma_here);
    return true;
  }
  return false;
}

std::optional<Named> Compilation::named(NodeIndex at, bool& aroma) {
  const std::string& word = node(at).text;
  const Named things = find_named(word, catalogue_);
  const auto several = [&](const auto& indices, const auto& list) {
    if (catalogue::is_number(word) || indices.size() < 2) return false;
    std::vector<std::string> names;
    for (const auto index : indices) names.push_back(list[index].name);
    refuse(messages::ambiguous_choice, at, {word, text::listed(names)});
    return true;
  };
  if (several(things.materials, catalogue_.materials)) return std::nullopt;
  if (things.materials.empty() && several(things.substances, catalogue_.substances)) {
    return std::nullopt;
  }
  if (things.materials.empty() && things.substances.empty()) {
    std::vector<std::string> known;
    if (!compiler_.may_hint()) {
      refuse(messages::unknown_choice, at, {word, std::string()});
      return std::nullopt;
    }
    for (const std::string_view role : catalogue::role_words()) known.emplace_back(role);
    for (const std::string_view form : catalogue::form_words()) known.emplace_back(form);
    for (std::string& near : catalogue_.near_materials(word)) known.push_back(std::move(near));
    for (std::string& near : catalogue_.near_substances(word)) known.push_back(std::move(near));
    refuse(messages::unknown_choice, at, {word, text::hint(word, known)});
    return std::nullopt;
  }
  constexpr catalogue::Roles aroma_role = catalogue::bit(catalogue::Role::aroma_chemical);
  for (const catalogue::SubstanceIndex index : things.substances) {
    if ((catalogue_.substances[index].roles & aroma_role) != 0) aroma = true;
  }
  return things;
}

Named find_named(std::string_view word, const catalogue::Catalogue& catalogue) {
  Named things;
  things.word = word;
  things.substances = catalogue.find_substances(word);
  things.materials = catalogue.find_material(word).materials;
  if (const auto number = catalogue::read_colour_index(word)) {
    for (std::size_t at = 0; at < catalogue.materials.size(); ++at) {
      const std::vector<std::uint32_t>& own = catalogue.materials[at].colour_index;
      const auto index = static_cast<catalogue::MaterialIndex>(at);
      const bool there = std::find(things.materials.begin(), things.materials.end(), index) !=
                         things.materials.end();
      if (!there && std::find(own.begin(), own.end(), *number) != own.end()) {
        things.materials.push_back(index);
      }
    }
  }
  return things;
}

}  // namespace sudsmark::rules
