// Heading 1: materials as supplied, substances, scents.
#include <algorithm>
#include <string>
#include <vector>

#include "dossier/gathering.h"
#include "wording/figures.h"
#include "wording/words.h"

namespace sudsmark::dossier {
namespace {

DossierCell words(const std::vector<std::string>& list) {
  return {wording::joined(list)};
}

void add_supplied(const Gathering& to) {
  DossierTable table{"As weighed", {"Material", "INCI", "CAS", "Function", "Share"}, {}};
  for (const IngredientRow& one : to.checked.ingredients) {
    table.rows.push_back({{one.name}, {one.inci}, {one.cas}, words(one.roles), cell(one.share)});
  }
  to.heading(1).tables.push_back(std::move(table));
}

void add_substances(const Gathering& to) {
  DossierTable table{"As pure substances", {"Substance", "INCI", "CAS", "Function", "Share"}, {}};
  std::vector<std::string> numberless;
  for (const CompositionRow& one : to.checked.composition) {
    table.rows.push_back(
        {{one.substance}, {one.inci}, {one.cas}, words(one.roles), cell(one.share)});
    if (one.cas.empty() && one.substance != "Water") numberless.push_back(one.substance);
  }
  to.heading(1).tables.push_back(std::move(table));
  if (!numberless.empty()) {
    const std::size_t count = numberless.size();
    to.question({1, Answerer::supplier, "Which CAS number and which purity has each of these?",
                 "The report names every substance by its number, and impurities beside it.",
                 std::move(numberless), count});
  }
}

void add_scents(const Gathering& to) {
  const auto& ingredients = to.blend.whole.composition.ingredients;
  for (const blend::Scent& scent : to.blend.scents) {
    const bool used =
        std::any_of(ingredients.begin(), ingredients.end(),
                    [&](const blend::Ingredient& one) { return one.material == scent.material; });
    if (!used) continue;
    const std::string& name = to.blend.material(scent.material).name;
    std::string said;
    if (scent.limit) {
      said = "certificate: at most " + wording::printed(wording::figure(*scent.limit, "%"));
      if (!scent.categories.empty()) said += ", category " + wording::joined(scent.categories);
    } else {
      said = "no certificate is stated";
    }
    const quantity::Range rest = to.blend.undeclared(scent.material);
    said += rest.high > 0
                ? "; up to " + wording::printed(wording::figure({rest.high}, "%")) + " undeclared"
                : "; the supplier says that nothing else of note is in it";
    to.entry(1, "scent '" + name + "'", said + ".");
  }
}

}  // namespace

void add_composition(const Gathering& to) {
  add_supplied(to);
  add_substances(to);
  add_scents(to);
}

}  // namespace sudsmark::dossier
