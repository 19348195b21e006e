// What a material holds, its undeclared rest included.
#include <algorithm>

#include "blend/blend.h"
#include "catalogue/numbers.h"
#include "formula/vocabulary.h"
#include "text/name.h"

namespace sudsmark::blend {
namespace {

using catalogue::Content;
using catalogue::Material;
using catalogue::Role;

/// What the declared contents leave of a material.
Range rest_of(const Material& material) {
  Range declared = 0.0;
  for (const Content& content : material.contents) declared += content.share;
  return quantity::clamp(Range(1.0) - declared, 0.0, 1.0);
}

/// The substance that a material is all of: by its name, or by a CAS number that one substance
/// alone carries (what grows is often sold under one number for several oils).
std::optional<catalogue::SubstanceIndex> substance_of(const Material& material,
                                                      const catalogue::Catalogue& catalogue) {
  if (const auto named = catalogue.find_substance(material.name)) return named;
  for (const std::string& cas : material.cas) {
    const auto numbered = catalogue.find_substances(cas);
    if (numbered.size() == 1) return numbered.front();
  }
  return std::nullopt;
}

/// A number that is one: its last digit proves the others.
bool is_cas(std::string_view word) {
  return catalogue::looks_like_cas(word) && word.back() - '0' == catalogue::cas_check_digit(word);
}

constexpr catalogue::Roles mixture = bit(Role::fragrance) | bit(Role::essential_oil);

/// What a scent of the maker's own is all of, by its number, its INCI name or its name; null where
/// it has constituents, and for fragrances, whose names are nobody's.
const catalogue::Substance* sole_substance(const Material& own,
                                           const catalogue::Catalogue& catalogue) {
  if ((own.roles & bit(Role::scent)) == 0 || (own.roles & bit(Role::fragrance)) != 0) {
    return nullptr;
  }
  const bool whole =
      own.contents.empty() || (own.contents.size() == 1 && own.contents.front().share.low >= 1);
  if (!whole) return nullptr;
  const auto substance = own.contents.empty() ? substance_of(own, catalogue)
                                              : std::optional(own.contents.front().substance);
  if (!substance || *substance >= catalogue.substances.size()) return nullptr;
  return &catalogue.substances[*substance];
}

/// An oil of the catalogue to which the maker gave another role is the oil still: beside its
/// constituents, none of which it is bought for, the rest is of its own kind.
bool has_scented_rest(const Material& own) {
  return (own.roles & bit(Role::scent)) != 0 && !own.contents.empty() &&
         std::none_of(own.contents.begin(), own.contents.end(),
                      [](const Content& content) { return content.active; });
}

}  // namespace

std::vector<ContentView> views(const Material& material, const catalogue::Catalogue& catalogue,
                               const std::vector<catalogue::Substance>& own_substances) {
  const std::size_t known = catalogue.substances.size();
  const auto substance = [&](std::uint32_t id) {
    return id < known ? &catalogue.substances[id] : &own_substances[id - known];
  };
  std::vector<ContentView> out;
  bool active = false;
  for (const Content& content : material.contents) {
    ContentView view;
    view.substance_id = content.substance;
    view.substance = substance(content.substance);
    view.share = content.share;
    view.active = content.active;
    view.water = content.water;
    view.roles = view.substance->roles;
    // what a material is bought for does what the material is there for
    if (content.active) view.roles |= material.roles;
    active = active || content.active;
    out.push_back(view);
  }
  ContentView rest;
  rest.share = rest_of(material);
  rest.substance_id = no_substance;
  if (out.empty()) {
    if (const auto own = substance_of(material, catalogue)) {
      rest.substance_id = *own;
      rest.substance = substance(*own);
    }
  }
  // Beside a named active the rest is filler; without one it is the material's own kind: the part
  // of an essential oil that no analysis names is still essential oil.
  if (!active) rest.roles = material.roles;
  if (rest.share.high > 0) out.push_back(rest);
  return out;
}

const Material& Blend::material(MaterialId id) const {
  const std::size_t known = catalogue->materials.size();
  return id < known ? catalogue->materials[id] : own_materials_[id - known];
}

const std::vector<ContentView>& Blend::contents(MaterialId id) const {
  return contents_[content_slot_[id]];
}

/// A declared constituent of which nothing is known but a name: no table can be asked of it. One
/// with a CAS number was looked up, and no table holds it.
bool Blend::is_nameless(const Content& content) const {
  const std::size_t known = catalogue->substances.size();
  return content.substance >= known && !is_cas(own_substances_[content.substance - known].name);
}

/// A scent of the maker's own that is neither a substance of the catalogue nor one with a number.
bool Blend::is_own_and_nameless(MaterialId id) const {
  const Material& of = material(id);
  if (id < catalogue->materials.size() || (of.roles & bit(Role::scent)) == 0) return false;
  if ((of.roles & mixture) != 0 || !of.contents.empty() || substance_of(of, *catalogue)) {
    return false;
  }
  const bool single = (of.roles & bit(Role::aroma_chemical)) != 0;
  return !single || std::none_of(of.cas.begin(), of.cas.end(), is_cas);
}

Range Blend::nameless(MaterialId id) const {
  const Material& of = material(id);
  if ((of.roles & bit(Role::scent)) == 0) return 0.0;
  if (is_own_and_nameless(id)) return 1.0;
  Range share = 0.0;
  for (const Content& content : of.contents) {
    if (is_nameless(content)) share += content.share;
  }
  return quantity::clamp(share, 0.0, 1.0);
}

Range Blend::undeclared(MaterialId id) const {
  const Material& of = material(id);
  const bool own = id >= catalogue->materials.size();
  if (const catalogue::Substance* sole = own ? sole_substance(of, *catalogue) : nullptr) {
    // a single substance holds nothing else; of an oil the name alone is known, and it may hold
    // what the tables limit
    return {0.0, (sole->roles & mixture) != 0 ? 1.0 : 0.0};
  }
  const double named_only = nameless(id).high;
  const Scent* stated = scent(id);
  if ((of.roles & mixture) == 0 && !(own && stated == nullptr && has_scented_rest(of))) {
    return {0.0, named_only};
  }
  if (stated != nullptr && stated->undeclared_none) return {0.0, named_only};
  // all that is not declared at its least may be anything
  return {0.0, std::min(1.0, rest_of(of).high + named_only)};
}

std::string Blend::undeclared_words(MaterialId id) const {
  const Material& of = material(id);
  const std::string quoted = "'" + of.name + "'";
  if (is_own_and_nameless(id)) {
    const bool single = (of.roles & bit(Role::aroma_chemical)) != 0;
    return single ? "the CAS number of " + quoted : "what " + quoted + " holds undeclared";
  }
  std::vector<std::string> names;
  for (const Content& content : of.contents) {
    if (!is_nameless(content)) continue;
    names.push_back("'" + own_substances_[content.substance - catalogue->substances.size()].name +
                    "'");
  }
  if (names.empty()) return "what " + quoted + " holds undeclared";
  const std::string number = names.size() == 1 ? "the CAS number of " : "the CAS numbers of ";
  return number + text::series(names, "and") + " in " + quoted;
}

bool Blend::used_by(std::string_view who) const {
  return std::any_of(users.begin(), users.end(),
                     [&](const StatedWord& one) { return one.text == who; });
}

bool Blend::states_age() const {
  const auto& known = formula::vocabulary::users;
  return std::any_of(known.begin(), known.begin() + formula::vocabulary::ages,
                     [this](std::string_view age) { return used_by(age); });
}

std::chrono::year_month_day Blend::counted_from(std::string_view market,
                                                const std::chrono::year_month_day& today) const {
  const std::optional<StatedDay>& day = market == "CA" ? on_sale_since : batch_made;
  return day ? day->day : today;
}

const Scent* Blend::scent(MaterialId id) const {
  const auto found = std::find_if(scents.begin(), scents.end(),
                                  [&](const Scent& scent) { return scent.material == id; });
  return found == scents.end() ? nullptr : &*found;
}

}  // namespace sudsmark::blend
