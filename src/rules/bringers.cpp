#include "rules/bringers.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "quantity/number.h"
#include "text/name.h"

namespace sudsmark::rules {
namespace {

/// One material's part in a row.
struct OfMaterial {
  const catalogue::Row* row = nullptr;
  blend::MaterialId material = 0;
};

bool is_of(const void* context, const measures::Candidate& candidate) {
  const auto& of = *static_cast<const OfMaterial*>(context);
  return candidate.material_id == of.material && in_row(*of.row, candidate);
}

}  // namespace

bool holds_whole(const catalogue::Row& row, const catalogue::Material& material) {
  return !material.id.empty() &&
         std::find(row.materials.begin(), row.materials.end(), material.id) != row.materials.end();
}

bool in_row(const catalogue::Row& row, const measures::Candidate& candidate) {
  if (holds_whole(row, *candidate.material)) return true;
  if (candidate.content == nullptr) return false;
  const auto& substances = row.substances;
  return std::find(substances.begin(), substances.end(), candidate.content->substance_id) !=
         substances.end();
}

std::string brought_by(const measures::View& whole, const Subject& subject) {
  constexpr std::size_t most = 4;
  std::vector<std::pair<quantity::Range, std::string>> parts;
  std::vector<blend::MaterialId> asked;
  for (const blend::Ingredient& ingredient : whole.part->composition.ingredients) {
    if (std::find(asked.begin(), asked.end(), ingredient.material) != asked.end()) continue;
    asked.push_back(ingredient.material);
    const OfMaterial of{subject.row, ingredient.material};
    const quantity::Range share = measures::share(whole, {&is_of, &of, false}).value;
    if (!(share.high > 0)) continue;
    parts.emplace_back(share, "from '" + whole.blend->material(ingredient.material).name + "'");
  }
  if (parts.empty()) return "from what the scents do not declare";
  if (parts.size() == 1) return parts.front().second;
  std::stable_sort(parts.begin(), parts.end(),
                   [](const auto& a, const auto& b) { return a.first.high > b.first.high; });
  const auto percent = *quantity::find_unit("%");
  std::vector<std::string> words;
  for (const auto& [share, name] : parts) {
    if (words.size() == most && parts.size() > most + 1) {
      words.push_back(std::to_string(parts.size() - most) + " more");
      break;
    }
    words.push_back(quantity::printed(share, percent) + " " + name);
  }
  return text::series(words, "and");
}

}  // namespace sudsmark::rules
