// The paper trail: what a safety assessment asks for and a formula does not answer, as one list.
// The headings are those of the safety report (Annex I, part A) in the table `market-duties`; which
// materials a heading is about is common practice.
#include <algorithm>
#include <functional>
#include <utility>

#include "label/label.h"
#include "label/rows.h"

namespace sudsmark::label {
namespace {

using catalogue::Material;
using catalogue::Role;
using Test = std::function<bool(blend::MaterialId, const Material&)>;

bool is_any(const Material& material, catalogue::Roles roles) {
  return (material.roles & roles) != 0;
}

class Papers {
 public:
  Papers(const blend::Blend& blend, std::vector<LabelPaper>& out) : blend_(blend), out_(out) {}

  void about(std::string paper, std::string why, const Test& test, std::string entry = {}) {
    std::vector<std::string> names;
    for (const blend::Ingredient& ingredient : blend_.whole.composition.ingredients) {
      const Material& material = blend_.material(ingredient.material);
      if (!(ingredient.mass.high > 0) || !test(ingredient.material, material)) continue;
      if (std::find(names.begin(), names.end(), material.name) == names.end()) {
        names.push_back(material.name);
      }
    }
    if (!names.empty()) {
      out_.push_back({std::move(paper), std::move(why), std::move(names), std::move(entry)});
    }
  }

  void of_product(std::string paper, std::string why) {
    out_.push_back({std::move(paper), std::move(why), {}, {}});
  }

 private:
  const blend::Blend& blend_;
  std::vector<LabelPaper>& out_;
};

void add_of_scents(const blend::Blend& blend, Papers& papers) {
  const auto scented = [](const Material& material) { return is_any(material, bit(Role::scent)); };
  papers.about("certificate of conformity to the fragrance standard",
               "it states the most that this kind of product may hold",
               [&](blend::MaterialId id, const Material& material) {
                 const blend::Scent* scent = blend.scent(id);
                 return scented(material) && (scent == nullptr || !scent->limit);
               });
  papers.about("allergen declaration of the scent",
               "part of what is in it is not stated, and may have to be named",
               [&](blend::MaterialId id, const Material& material) {
                 return scented(material) && blend.undeclared(id).high > 0;
               });
}

void add_of_rows(const blend::Blend& blend, const std::vector<std::string>& markets,
                 Papers& papers) {
  constexpr std::string_view table = "restricted-substances";
  const catalogue::Table* found = blend.catalogue->find_table(table);
  if (found == nullptr) return;
  std::vector<std::pair<std::string, std::string>> told;
  for (const catalogue::Row& row : found->rows) {
    const std::string paper = word_of(blend, table, row, "paper");
    const bool here = std::any_of(markets.begin(), markets.end(), [&](const std::string& market) {
      return std::find(row.markets.begin(), row.markets.end(), market) != row.markets.end();
    });
    if (paper.empty() || !here ||
        std::find(told.begin(), told.end(), std::pair(row.name, paper)) != told.end()) {
      continue;
    }
    told.emplace_back(row.name, paper);
    papers.about(
        paper, "the law limits it for " + row.name,
        [&](blend::MaterialId id, const Material& material) {
          const auto& contents = blend.contents(id);
          return std::find(row.materials.begin(), row.materials.end(), material.id) !=
                     row.materials.end() ||
                 std::any_of(contents.begin(), contents.end(),
                             [&](const blend::ContentView& content) {
                               return content.substance != nullptr && content.share.high > 0 &&
                                      std::find(row.substances.begin(), row.substances.end(),
                                                content.substance_id) != row.substances.end();
                             });
        },
        word_of(blend, table, row, "entry"));
  }
}

}  // namespace

void add_papers(const blend::Blend& blend, const std::vector<std::string>& markets,
                std::vector<LabelPaper>& out) {
  Papers papers(blend, out);
  add_of_scents(blend, papers);
  const auto every = [](blend::MaterialId, const Material&) { return true; };
  papers.about("safety data sheet", "hazards, and what to do when something goes wrong", every);
  papers.about("specification with purity and traces",
               "heavy metals, solvents and by-products, batch by batch", every);
  papers.about(
      "microbiological specification", "what grew or was dug up brings germs, and a bath wets it",
      [](blend::MaterialId, const Material& material) {
        return is_any(material, bit(Role::food) | bit(Role::botanical) | bit(Role::plant_colour) |
                                    bit(Role::starch) | bit(Role::flour) | bit(Role::clay));
      });
  if (std::find(markets.begin(), markets.end(), "US") != markets.end()) {
    papers.about("certificate and lot number of the batch",
                 "in the United States dyes and lakes are certified batch by batch",
                 [](blend::MaterialId, const Material& material) {
                   return is_any(material, bit(Role::dye) | bit(Role::lake));
                 });
  }
  papers.about("full list of what is in it", "each dye or oxide on a pearl powder is a colour too",
               [](blend::MaterialId, const Material& material) {
                 return is_any(material, bit(Role::mica));
               });
  papers.about("proof that it is no plastic", "plastic glitter is forbidden market by market",
               [](blend::MaterialId, const Material& material) {
                 return is_any(material, bit(Role::glitter));
               });
  add_of_rows(blend, markets, papers);
  papers.of_product("microbiology of the product",
                    "a count of germs, and a challenge test unless its dryness is shown to do");
  papers.of_product("stability of the product",
                    "smell, colour, hardness and fizz over its life, in the pack it is sold in");
  papers.of_product("packaging: material, purity and whether it suits",
                    "what it gives off, and whether it keeps the damp out");
}

}  // namespace sudsmark::label
