#include "catalogue/substances.h"

#include <unordered_map>

#include "text/name.h"
#include "text/yaml_fields.h"

namespace sudsmark::catalogue {
namespace {

/// The substance that a material is, or is sold for, under this name.
Substance substance_of(const Material& material, const std::string& name) {
  Substance substance;
  substance.name = name;
  substance.inci = material.inci;
  for (const Synonym& synonym : material.synonyms) substance.synonyms.push_back(synonym.word);
  if (text::fold(material.name) != text::fold(name)) substance.synonyms.push_back(material.name);
  substance.cas = material.cas;
  substance.colour_index = material.colour_index;
  substance.roles = material.roles;
  return substance;
}

Substance water() {
  Substance substance;
  substance.name = "Water";
  substance.inci = "Aqua";
  substance.roles = bit(Role::water);
  return substance;
}

}  // namespace

void SubstanceGathering::Gathered::join(const Substance& more) {
  if (inci.empty()) inci = more.inci;
  synonyms.add(more.synonyms);
  cas.add(more.cas);
  colour_index.add(more.colour_index);
  roles |= more.roles;
}

Substance SubstanceGathering::Gathered::substance() const {
  return {name, inci, synonyms.list, cas.list, colour_index.list, roles};
}

SubstanceGathering::Gathered& SubstanceGathering::gather(const Substance& substance) {
  const auto [known, added] = gathered_.try_emplace(text::fold(substance.name));
  if (added) known->second.name = substance.name;
  known->second.join(substance);
  return known->second;
}

void SubstanceGathering::add_listed(const Substance& substance) {
  Gathered& gathered = gather(substance);
  gathered.listed = true;
  gathered.name = substance.name;
}

void SubstanceGathering::add_of_material(const Material& material, const text::Node& node) {
  if (material.name.empty()) return;
  const text::Node* contains = node.find("contains");
  if (contains == nullptr) {
    gather(substance_of(material, material.name));
    return;
  }
  const std::string own = text::fold(material.name);
  const std::string inci = text::fold(material.inci);
  for (const text::Node& item : contains->items) {
    const text::Node* named = item.find("active");
    if (named == nullptr) named = item.find("substance");
    if (named == nullptr || named->kind != text::Node::Kind::scalar) continue;
    const std::string name(text::trimmed(named->text));
    const std::string folded = text::fold(name);
    if (!folded.empty() && (folded == own || folded == inci)) {
      gather(substance_of(material, name));
    }
  }
}

void SubstanceGathering::merge_into(Shelf<Substance>& substances) const {
  std::unordered_map<std::string, std::size_t> places;
  for (std::size_t at = 0; at < substances.size(); ++at) {
    places.emplace(text::fold(std::as_const(substances)[at].name), at);
  }
  for (const auto& [id, gathered] : gathered_) {
    const auto [place, added] = places.emplace(id, substances.size());
    if (added) {
      substances.push_back(gathered.substance());
    } else if (gathered.listed) {
      substances[place->second] = gathered.substance();
    } else {
      Gathered joined;
      joined.name = substances[place->second].name;
      joined.join(substances[place->second]);
      joined.join(gathered.substance());
      substances[place->second] = joined.substance();
    }
  }
  if (places.find("water") == places.end()) substances.push_back(water());
}

}  // namespace sudsmark::catalogue
