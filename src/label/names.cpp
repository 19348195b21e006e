// A material stands under its INCI name, with what differs told apart: scents are one name,
// mixtures stand under the names of their parts, solutions under their own and that of water,
// colours under index numbers or, in the United States, their listed names, and plants there with
// their English names in brackets.
#include "label/names.h"

#include <algorithm>
#include <cctype>
#include <map>
#include <utility>

#include "label/rows.h"
#include "text/name.h"

namespace sudsmark::label {
namespace {

using catalogue::Material;
using catalogue::Role;
using quantity::Range;

constexpr catalogue::Roles natural = bit(Role::food) | bit(Role::botanical) |
                                     bit(Role::plant_colour) | bit(Role::scent) | bit(Role::colour);

/// Water that makes a material a solution [fraction]; less of it is moisture, and no ingredient
/// (common practice).
constexpr double least_water = 0.05;

/// A part of a material under one name: how much of the material it is.
struct NamedPart {
  std::string name;
  Range share = 1.0;
  bool colour = false;
  bool scent = false;
};

bool is_index_number(std::string_view name) {
  return name.size() > 3 && name.substr(0, 3) == "CI " &&
         std::isdigit(static_cast<unsigned char>(name[3])) != 0;
}

/// "Cetearyl Alcohol (and) Polysorbate 60" as two names.
std::vector<std::string> parts_of(std::string_view inci) {
  std::vector<std::string> out;
  constexpr std::string_view joint = " (and) ";
  for (std::size_t at = inci.find(joint); at != std::string_view::npos; at = inci.find(joint)) {
    out.emplace_back(inci.substr(0, at));
    inci.remove_prefix(at + joint.size());
  }
  out.emplace_back(inci);
  return out;
}

/// "Corn Starch" of "Zea Mays (Corn) Starch"; empty for a name without brackets behind its Latin.
std::string without_latin(const std::string& name) {
  const std::size_t open = name.find(" (");
  const std::size_t close = name.find(')');
  if (open == std::string::npos || close == std::string::npos) return {};
  return name.substr(open + 2, close - open - 2) + name.substr(close + 1);
}

class Naming {
 public:
  Naming(const blend::Blend& blend, const LabelAsk& ask, std::vector<std::string>& doubts)
      : blend_(blend), ask_(ask), doubts_(doubts) {
    american_ = ask.market == "US";
  }

  [[nodiscard]] std::vector<NamedPart> parts(blend::MaterialId id) const {
    const Material& material = blend_.material(id);
    if ((material.roles & bit(Role::scent)) != 0) {
      return {{american_ ? "Fragrance" : "Parfum", 1.0, false, true}};
    }
    if (material.inci.empty()) {
      doubts_.push_back("No ingredient name is known of '" + material.name +
                        "': it stands under its own name until the supplier gives one.");
      return {{material.name, 1.0, false, false}};
    }
    const std::vector<std::string> names = parts_of(material.inci);
    if (names.size() > 1) return mixture(id, material, names);
    if ((material.roles & bit(Role::colour)) != 0) return {colour(id, material)};
    return solution(id, material);
  }

 private:
  /// Water that is free in what is bought as a liquid or paste stands under a name of its own.
  [[nodiscard]] std::vector<NamedPart> solution(blend::MaterialId id,
                                                const Material& material) const {
    Range water = 0.0;
    for (const blend::ContentView& content : blend_.contents(id)) {
      if (content.water == catalogue::WaterClass::free) water += content.share;
    }
    const std::string name = named(material.inci);
    const bool wet =
        material.form == catalogue::Form::liquid || material.form == catalogue::Form::paste;
    const bool counts = wet && (material.roles & natural) == 0 && water.high >= least_water;
    if (!counts || name == water_name()) return {{name, 1.0, false, false}};
    water = quantity::clamp(water, 0.0, 1.0);
    return {{name, quantity::clamp(Range(1.0) - water, 0.0, 1.0), false, false},
            {water_name(), water, false, false}};
  }

  [[nodiscard]] std::vector<NamedPart> mixture(blend::MaterialId id, const Material& material,
                                               const std::vector<std::string>& names) const {
    std::vector<NamedPart> out;
    Range stated = 0.0;
    std::vector<std::size_t> open;
    for (const std::string& name : names) {
      NamedPart part;
      part.name = named(name);
      part.colour = is_index_number(name);
      if (part.colour && american_) part.name = listed_in_us(name, part.name);
      const std::optional<Range> share = stated_share(id, name);
      if (share) {
        part.share = *share;
        stated += *share;
      } else {
        open.push_back(out.size());
      }
      out.push_back(std::move(part));
    }
    const double most = std::clamp(1.0 - stated.low, 0.0, 1.0);
    for (const std::size_t at : open) {
      out[at].share = {open.size() == 1 ? std::clamp(1.0 - stated.high, 0.0, most) : 0.0, most};
    }
    if (open.size() > 1) {
      doubts_.push_back("How much of each is in '" + material.name +
                        "' is not stated: each is placed by the most that it can be.");
    }
    return out;
  }

  /// What the contents of a material say of one name of its mixture.
  [[nodiscard]] std::optional<Range> stated_share(blend::MaterialId id,
                                                  const std::string& name) const {
    const std::string folded = text::fold(name);
    for (const blend::ContentView& content : blend_.contents(id)) {
      if (content.substance == nullptr) continue;
      if (text::fold(content.substance->inci) == folded ||
          text::fold(content.substance->name) == folded) {
        return content.share;
      }
    }
    return std::nullopt;
  }

  [[nodiscard]] NamedPart colour(blend::MaterialId id, const Material& material) const {
    if (american_) {
      if (const catalogue::Row* row = row_of(id, "us-colour-additives")) {
        std::string name = word_of(blend_, "us-colour-additives", *row, "label");
        // carmine is a lake by itself, and declared by its own name
        const bool certified = word_of(blend_, "us-colour-additives", *row, "certified") != "no";
        if (certified && (material.roles & bit(Role::lake)) != 0) {
          name += " Aluminum Lake";
          doubts_.push_back("'" + material.name +
                            "' is taken for a lake on aluminium: its batch certificate names it.");
        }
        return {std::move(name), 1.0, true, false};
      }
      if (is_index_number(material.inci)) {
        doubts_.push_back("No listed name of the United States was found for '" + material.name +
                          "' (" + material.inci + ").");
      }
      return {material.inci, 1.0, is_index_number(material.inci), false};
    }
    if (is_index_number(material.inci)) return {material.inci, 1.0, true, false};
    for (const std::string_view table : {"not-a-listed-colour", "colourants"}) {
      const catalogue::Row* row = row_of(id, table);
      if (row == nullptr) continue;
      const std::string name = word_of(blend_, table, *row, "label");
      if (!name.empty()) return {name, 1.0, is_index_number(name), false};
    }
    return {material.inci, 1.0, false, false};
  }

  [[nodiscard]] const catalogue::Row* row_of(blend::MaterialId id, std::string_view table) const {
    for (const catalogue::Row* row : rows_for(blend_, table, colour_law())) {
      for (const blend::ContentView& content : blend_.contents(id)) {
        if (content.substance != nullptr &&
            std::find(row->substances.begin(), row->substances.end(), content.substance_id) !=
                row->substances.end()) {
          return row;
        }
      }
    }
    return nullptr;
  }

  /// Canada takes the same names; the tables have them as those of the European lists.
  [[nodiscard]] LabelAsk colour_law() const {
    LabelAsk ask = ask_;
    if (ask.market == "CA") ask.market = "EU";
    return ask;
  }

  [[nodiscard]] std::string listed_in_us(const std::string& name, std::string otherwise) const {
    const auto substances = blend_.catalogue->find_substances(name);
    for (const catalogue::Row* row : rows_for(blend_, "us-colour-additives", ask_)) {
      for (const catalogue::SubstanceIndex substance : row->substances) {
        if (std::find(substances.begin(), substances.end(), substance) != substances.end()) {
          return word_of(blend_, "us-colour-additives", *row, "label");
        }
      }
    }
    return otherwise;
  }

  /// Water is Aqua, or plain water in the United States (common practice).
  [[nodiscard]] std::string water_name() const { return american_ ? "Water" : "Aqua"; }

  [[nodiscard]] std::string named(const std::string& inci) const {
    const std::string folded = text::fold(inci);
    if (folded == "aqua" || folded == "water") return water_name();
    constexpr std::string_view table = "us-ingredient-names";
    const catalogue::Row* begins = nullptr;
    for (const catalogue::Row* row : rows_for(blend_, table, ask_)) {
      const std::string name = text::fold(row->name);
      if (name == folded) return word_of(blend_, table, *row, "label");
      const bool longer = begins == nullptr || row->name.size() > begins->name.size();
      if (longer && folded.starts_with(name + ' ')) begins = row;
    }
    if (begins == nullptr || !inci.starts_with(begins->name)) return inci;
    std::string rest = inci.substr(begins->name.size());
    constexpr std::string_view wax = " Cera";
    if (rest.ends_with(wax)) rest.replace(rest.size() - wax.size(), wax.size(), " Wax");
    return word_of(blend_, table, *begins, "label") + rest;
  }

  const blend::Blend& blend_;
  const LabelAsk& ask_;
  std::vector<std::string>& doubts_;
  bool american_ = false;
};

}  // namespace

std::vector<ListedName> listed_names(const blend::Blend& blend, const LabelAsk& ask,
                                     std::vector<std::string>& doubts) {
  const blend::Composition& composition = blend.whole.composition;
  const std::size_t count = composition.ingredients.size();
  struct Counted {
    ListedName listed;
    std::vector<Range> counts;
  };
  std::vector<Counted> all;
  std::map<std::string, std::size_t> places;
  std::map<blend::MaterialId, std::vector<NamedPart>> known;
  const Naming naming(blend, ask, doubts);
  for (std::size_t at = 0; at < count; ++at) {
    const blend::Ingredient& ingredient = composition.ingredients[at];
    if (!(ingredient.mass.high > 0)) continue;
    const auto [parts, fresh] = known.try_emplace(ingredient.material);
    if (fresh) parts->second = naming.parts(ingredient.material);
    for (const NamedPart& part : parts->second) {
      const auto [place, added] = places.try_emplace(text::fold(part.name), all.size());
      if (added) all.push_back({{part.name, part.colour, part.scent, 0.0, {}}, {}});
      Counted& counted = all[place->second];
      counted.counts.resize(count, Range(0.0));
      counted.counts[at] += part.share;
      counted.listed.colour = counted.listed.colour || part.colour;
      const std::string& name = blend.material(ingredient.material).name;
      auto& from = counted.listed.from;
      if (std::find(from.begin(), from.end(), name) == from.end()) from.push_back(name);
    }
  }
  std::vector<ListedName> out;
  for (Counted& counted : all) {
    counted.listed.share = quantity::clamp(composition.weighted_share(counted.counts), 0.0, 1.0);
    out.push_back(std::move(counted.listed));
  }
  return out;
}

std::vector<OtherForm> other_forms(const blend::Blend& blend, const LabelAsk& ask) {
  LabelAsk elsewhere = ask;
  elsewhere.market = ask.market == "US" ? "EU" : "US";
  std::vector<std::string> doubts;
  const Naming here(blend, ask, doubts);
  const Naming there(blend, elsewhere, doubts);
  std::vector<OtherForm> out;
  for (const blend::Ingredient& one : blend.whole.composition.ingredients) {
    const std::vector<NamedPart> own = here.parts(one.material);
    const std::vector<NamedPart> others = there.parts(one.material);
    if (own.size() != others.size()) continue;
    for (std::size_t at = 0; at < own.size(); ++at) {
      if (own[at].name != others[at].name) out.push_back({own[at].name, others[at].name});
      const std::string& american = ask.market == "US" ? own[at].name : others[at].name;
      const std::string english = without_latin(american);
      if (!english.empty()) out.push_back({own[at].name, english});
    }
  }
  return out;
}

}  // namespace sudsmark::label
