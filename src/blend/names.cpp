#include "blend/names.h"

#include <algorithm>

#include "blend/messages.h"
#include "text/name.h"

namespace sudsmark::blend {
namespace {

using catalogue::Content;
using catalogue::Material;
using catalogue::MaterialIndex;
using catalogue::Role;
using catalogue::WaterClass;

std::vector<std::string> strings(std::span<const std::string_view> words) {
  return {words.begin(), words.end()};
}

}  // namespace

Names::Names(const formula::Card& card, const catalogue::Catalogue& catalogue,
             text::Diagnostics& diagnostics)
    : card_(card), catalogue_(catalogue), diagnostics_(diagnostics) {
  for (std::size_t at = 0; at < card.premixes.size(); ++at) {
    own_names_[text::fold(card.premixes[at].name.text)] = Named{std::nullopt, at};
  }
  for (const formula::Fragrance& stated : card.fragrances) add_fragrance(stated);
  for (const formula::UserMaterial& stated : card.materials) add_material(stated);
  const auto add_named = [&](const auto& parts) {
    for (const auto& part : parts) {
      for (const formula::Line& line : part.lines) add_pure(line.name);
    }
  };
  add_named(card.phases);
  add_named(card.premixes);
  add_named(card.portions);
}

const Material& Names::material(MaterialId id) const {
  const std::size_t known = catalogue_.materials.size();
  return id < known ? catalogue_.materials[id] : own_materials[id - known];
}

std::size_t Names::material_count() const {
  return catalogue_.materials.size() + own_materials.size();
}

std::optional<Named> Names::find(const formula::Word& word) {
  const auto own = own_names_.find(text::fold(word.text));
  if (own != own_names_.end()) return own->second;
  const catalogue::Meaning& meaning = catalogue_.find_material(word.text);
  if (meaning.one()) return Named{meaning.materials.front(), std::nullopt};
  if (meaning.none()) {
    diagnostics_.add(messages::unknown_name, word.place,
                     {word.text, text::perhaps(near(word.text))});
    return std::nullopt;
  }
  std::vector<std::string> names;
  for (const MaterialIndex at : meaning.materials) names.push_back(catalogue_.materials[at].name);
  diagnostics_.add(messages::ambiguous_name, word.place, {word.text, text::listed(names)});
  return std::nullopt;
}

std::vector<std::string> Names::near_materials(const std::string& name) {
  if (!near_materials_) near_materials_ = catalogue::near_materials(catalogue_);
  return near_materials_->to(name);
}

std::vector<std::string> Names::near_substances(const std::string& name) {
  if (!near_substances_) near_substances_ = catalogue::near_substances(catalogue_);
  return near_substances_->to(name);
}

std::vector<std::string> Names::near(const std::string& name) {
  std::vector<std::string> own;
  for (const formula::Premix& premix : card_.premixes) own.push_back(premix.name.text);
  for (const Material& material : own_materials) own.push_back(material.name);
  std::vector<std::string> names = text::nearest(name, own);
  for (std::string& known : near_materials(name)) {
    if (names.size() < 3) names.push_back(std::move(known));
  }
  return names;
}

std::optional<Material> Names::base_of(const formula::UserMaterial& stated) {
  const formula::Word& like = stated.like.value_or(stated.name);
  const auto own = own_names_.find(text::fold(like.text));
  if (own != own_names_.end() && own->second.material) return material(*own->second.material);
  const catalogue::Meaning& meaning = catalogue_.find_material(like.text);
  if (meaning.one()) return catalogue_.materials[meaning.materials.front()];
  if (!stated.like) return named_by_label(stated);
  if (meaning.none()) {
    diagnostics_.add(messages::unknown_like, like.place,
                     {like.text, text::perhaps(near_materials(like.text))});
  } else {
    std::vector<std::string> names;
    for (const MaterialIndex at : meaning.materials) names.push_back(catalogue_.materials[at].name);
    diagnostics_.add(messages::ambiguous_name, like.place, {like.text, text::listed(names)});
  }
  return std::nullopt;
}

/// The one material of the catalogue that the INCI name or the CAS number of an own one means.
std::optional<Material> Names::named_by_label(const formula::UserMaterial& stated) const {
  if (!stated.roles.empty()) return std::nullopt;  // it says itself what it is
  for (const std::optional<formula::Word>& word : {stated.cas, stated.inci}) {
    if (!word) continue;
    const catalogue::Meaning& meaning = catalogue_.find_material(word->text);
    if (meaning.one()) return catalogue_.materials[meaning.materials.front()];
  }
  return std::nullopt;
}

/// What the law calls by its name can stand on a line, whether or not anybody sells it by the bag:
/// the pure substance, so that no limit passes for want of a material.
void Names::add_pure(const formula::Word& word) {
  const std::string key = text::fold(word.text);
  if (own_names_.contains(key) || !catalogue_.find_material(word.text).none()) return;
  const auto known = catalogue_.find_substance(word.text);
  if (!known) return;
  const catalogue::Substance& substance = catalogue_.substances[*known];
  constexpr catalogue::Roles scent_roles =
      bit(Role::scent) | bit(Role::aroma_chemical) | bit(Role::essential_oil);
  Material material;
  material.name = substance.name;
  material.inci = substance.inci;
  material.cas = substance.cas;
  material.roles = substance.roles;
  material.form =
      (substance.roles & scent_roles) != 0 ? catalogue::Form::liquid : catalogue::Form::fine_powder;
  material.contents.push_back({*known, 1.0, true, WaterClass::none, {}});
  own_materials.push_back(std::move(material));
  own_names_[key] = Named{static_cast<MaterialId>(material_count() - 1), std::nullopt};
}

void Names::add_material(const formula::UserMaterial& stated) {
  std::optional<Material> base = base_of(stated);
  if (!base && stated.like) return;
  Material material = base.value_or(Material{});
  material.synonyms.clear();
  if (!base && (stated.roles.empty() || !stated.form)) {
    diagnostics_.add(messages::role_needed, stated.name.place, {stated.name.text});
    return;
  }
  if (base && base->contents.empty()) {
    // what was all one substance of its own name stays that substance under another name
    if (const auto same = known_substance(base->name)) {
      material.contents.push_back({*same, 1.0, true, WaterClass::none, {}});
    }
  }
  if (base) set_identity(material, stated);
  material.name = stated.name.text;
  material.remark.clear();
  if (!stated.roles.empty()) material.roles = 0;
  for (const formula::Word& word : stated.roles) {
    if (const auto role = catalogue::find_role(word.text)) {
      material.roles |= catalogue::with_implied(*role);
    } else {
      const auto words = strings(catalogue::role_words());
      diagnostics_.add(messages::unknown_role, word.place,
                       {word.text, text::perhaps(text::nearest(word.text, words))});
    }
  }
  if (stated.form) {
    if (const auto form = catalogue::find_form(stated.form->text)) {
      material.form = *form;
    } else {
      const auto words = strings(catalogue::form_words());
      diagnostics_.add(messages::unknown_form, stated.form->place,
                       {stated.form->text, "; known are " + text::listed(words, "and")});
    }
  }
  if (stated.inci) material.inci = stated.inci->text;
  if (stated.cas) material.cas = {stated.cas->text};
  for (const formula::Trace& trace : stated.traces) {
    traces.push_back(
        {static_cast<MaterialId>(material_count()), trace.name.text, trace.share, trace.place});
  }
  if (stated.density) material.density = catalogue::Sourced{stated.density->value, {}};
  if (stated.supplier_limit) {
    material.supplier_limit = catalogue::Sourced{stated.supplier_limit->value, {}};
  }
  if (stated.hazards) {
    material.hazards.clear();
    for (const formula::Word& code : *stated.hazards) material.hazards.push_back(code.text);
    material.hazard_sources.clear();
  }
  if (stated.active || stated.water) {
    material.grade_unclear = false;
    set_contents(material, stated);
  }
  if (!base && material.contents.empty()) add_identity(material);
  own_materials.push_back(std::move(material));
  own_names_[text::fold(stated.name.text)] =
      Named{static_cast<MaterialId>(material_count() - 1), std::nullopt};
}

void Names::set_contents(Material& material, const formula::UserMaterial& stated) {
  std::vector<Content>& contents = material.contents;
  if (stated.active) {
    // several actives share the stated figure as their own figures stand to each other
    Range actives = 0.0;
    for (const Content& content : contents) actives += content.active ? content.share : 0.0;
    bool placed = false;
    for (Content& content : contents) {
      if (!content.active) continue;
      const bool alone = content.share == actives;
      content.share = alone ? stated.active->value
                            : quantity::clamp(stated.active->value * content.share / actives, 0, 1);
      content.sources.clear();
      placed = true;
    }
    if (!placed) {
      auto known = known_substance(stated.like ? stated.like->text : material.name);
      if (!known) known = numbered_substance(material);
      const auto index = known ? *known : substance(stated.name, material.roles);
      contents.insert(contents.begin(), {index, stated.active->value, true, WaterClass::none, {}});
    }
  }
  if (stated.water) {
    std::erase_if(contents, [](const Content& c) { return c.water == WaterClass::free; });
    contents.push_back({catalogue_.water(), stated.water->value, false, WaterClass::free, {}});
  }
  Range stated_sum = 0.0;
  for (const Content& content : contents) {
    if (content.active || content.water == WaterClass::free) stated_sum += content.share;
  }
  if (stated_sum.low > 1 + 1e-9) {
    diagnostics_.add(messages::content_over, stated.name.place,
                     {stated.name.text, stated_sum.low * 100});
    return;
  }
  // the catalogue's figures for the rest give way to what the maker's paper says
  const double room = std::max(0.0, 1 - stated_sum.low);
  for (Content& content : contents) {
    if (!content.active && content.water != WaterClass::free) {
      content.share = quantity::clamp(content.share, 0.0, room);
    }
  }
}

std::optional<catalogue::SubstanceIndex> Names::numbered_substance(const Material& material) const {
  for (const std::string& cas : material.cas) {
    const auto found = catalogue_.find_substances(cas);
    if (found.size() == 1) return found.front();
  }
  return material.inci.empty() ? std::nullopt : catalogue_.find_substance(material.inci);
}

/// An INCI name or a CAS number of its own makes a material that substance, whatever it is like: a
/// colour of another number is another colour, and what the catalogue says of the one that it is
/// like is said of that one.
void Names::set_identity(Material& material, const formula::UserMaterial& stated) {
  Material said;
  if (stated.cas) said.cas = {stated.cas->text};
  if (stated.inci) said.inci = stated.inci->text;
  auto identity = numbered_substance(said);
  const bool another_number =
      stated.cas && !material.cas.empty() &&
      std::find(material.cas.begin(), material.cas.end(), stated.cas->text) == material.cas.end();
  const bool another_colour = stated.inci && text::fold(stated.inci->text).starts_with("ci ") &&
                              text::fold(stated.inci->text) != text::fold(material.inci);
  if (!identity && !another_number && !another_colour) return;
  const auto holds = [&](catalogue::SubstanceIndex index) {
    return std::any_of(material.contents.begin(), material.contents.end(),
                       [&](const Content& content) { return content.substance == index; });
  };
  if (identity && holds(*identity)) return;
  if (!identity && !another_colour && stated.inci &&
      text::fold(stated.inci->text) == text::fold(material.inci)) {
    return;  // another number of the same thing
  }
  if (!identity) identity = substance(stated.inci.value_or(stated.name), material.roles);
  bool placed = false;
  for (Content& content : material.contents) {
    if (!content.active) continue;
    content.substance = *identity;
    content.sources.clear();
    placed = true;
  }
  if (!placed) material.contents = {{*identity, 1.0, true, WaterClass::none, {}}};
  material.id.clear();
  material.colour_index.clear();
  if (!stated.cas) material.cas.clear();
  if (!stated.inci) material.inci.clear();
}

/// A material of the maker's own words is what its CAS number or INCI name says it is. Of a mixture
/// of preservatives nobody says how much of each is in it, and each has a limit of its own.
void Names::add_identity(Material& material) {
  if (known_substance(material.name)) return;
  if (const auto same = numbered_substance(material)) {
    material.contents.push_back({*same, 1.0, true, WaterClass::none, {}});
    return;
  }
  if ((material.roles & bit(Role::preservative)) == 0) return;
  constexpr std::string_view joint = " (and) ";
  std::string_view rest = material.inci;
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find(joint), rest.size());
    const auto part = catalogue_.find_substance(rest.substr(0, end));
    if (part && *part != catalogue_.water()) {
      material.contents.push_back({*part, {0.0, 1.0}, false, WaterClass::none, {}});
    }
    rest.remove_prefix(std::min(end + joint.size(), rest.size()));
  }
}

std::optional<catalogue::SubstanceIndex> Names::known_substance(const std::string& name) const {
  if (const auto known = catalogue_.find_substance(name)) return known;
  const std::string wanted = text::fold(name);
  for (std::size_t at = 0; at < own_substances.size(); ++at) {
    if (text::fold(own_substances[at].name) == wanted) {
      return static_cast<catalogue::SubstanceIndex>(catalogue_.substances.size() + at);
    }
  }
  return std::nullopt;
}

catalogue::SubstanceIndex Names::substance(const formula::Word& word, catalogue::Roles roles) {
  if (const auto known = known_substance(word.text)) return *known;
  catalogue::Substance made;
  made.name = word.text;
  made.roles = roles;
  own_substances.push_back(std::move(made));
  return static_cast<catalogue::SubstanceIndex>(catalogue_.substances.size() +
                                                own_substances.size() - 1);
}

void Names::add_fragrance(const formula::Fragrance& stated) {
  // A certificate for an oil that the catalogue knows adds to what is known of it.
  Material material;
  const catalogue::Meaning& meaning = catalogue_.find_material(stated.name.text);
  const bool known = meaning.one() && (catalogue_.materials[meaning.materials.front()].roles &
                                       bit(Role::scent)) != 0;
  if (known) {
    material = catalogue_.materials[meaning.materials.front()];
    material.synonyms.clear();
    if (!stated.constituents.empty()) material.contents.clear();
  } else {
    material.form = catalogue::Form::liquid;
    material.roles = catalogue::with_implied(Role::fragrance);
    material.inci = "Parfum";
  }
  material.name = stated.name.text;
  for (const formula::Constituent& constituent : stated.constituents) {
    const formula::Word& word = constituent.name;
    if (!word.quoted && !known_substance(word.text)) {
      const auto names = near_substances(word.text);
      if (!names.empty()) {
        diagnostics_.add(messages::unknown_constituent, word.place,
                         {word.text, text::perhaps(names)});
        continue;
      }
    }
    material.contents.push_back({substance(word, catalogue::with_implied(Role::aroma_chemical)),
                                 constituent.share,
                                 false,
                                 WaterClass::none,
                                 {}});
  }
  Scent scent;
  scent.has_certificate = stated.limit.has_value();
  if (stated.limit) scent.limit = stated.limit->value;
  if (stated.categories) {
    for (const formula::Word& category : stated.categories->words) {
      scent.categories.push_back(category.text);
    }
  }
  scent.undeclared_none = stated.undeclared_none;
  if (stated.flash_point) scent.flash_point = stated.flash_point->value;
  scent.place = stated.name.place;
  own_materials.push_back(std::move(material));
  scent.material = static_cast<MaterialId>(material_count() - 1);
  own_names_[text::fold(stated.name.text)] = Named{scent.material, std::nullopt};
  scents.push_back(std::move(scent));
}

}  // namespace sudsmark::blend
