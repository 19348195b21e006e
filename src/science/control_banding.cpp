#include "science/control_banding.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <optional>

#include "science/hazard_statement.h"
#include "science/workshop_sources.h"

namespace sudsmark::science {
namespace {

struct Listed {
  std::string_view code;
  HazardGroup group;
};

// HSG193 hazard groups (quoted).
constexpr std::array listed_statements{
    Listed{"H304", HazardGroup::a}, Listed{"H315", HazardGroup::a}, Listed{"H319", HazardGroup::a},
    Listed{"H336", HazardGroup::a}, Listed{"H302", HazardGroup::b}, Listed{"H312", HazardGroup::b},
    Listed{"H332", HazardGroup::b}, Listed{"H371", HazardGroup::b}, Listed{"H301", HazardGroup::c},
    Listed{"H311", HazardGroup::c}, Listed{"H314", HazardGroup::c}, Listed{"H317", HazardGroup::c},
    Listed{"H318", HazardGroup::c}, Listed{"H331", HazardGroup::c}, Listed{"H335", HazardGroup::c},
    Listed{"H370", HazardGroup::c}, Listed{"H373", HazardGroup::c}, Listed{"H300", HazardGroup::d},
    Listed{"H310", HazardGroup::d}, Listed{"H330", HazardGroup::d}, Listed{"H351", HazardGroup::d},
    Listed{"H360", HazardGroup::d}, Listed{"H361", HazardGroup::d}, Listed{"H362", HazardGroup::d},
    Listed{"H372", HazardGroup::d}, Listed{"H334", HazardGroup::e}, Listed{"H340", HazardGroup::e},
    Listed{"H341", HazardGroup::e}, Listed{"H350", HazardGroup::e},
};

// Rows small, medium, large amount; columns low, medium, high dustiness. HSG193 (quoted).
constexpr int exposure_bands[3][3] = {{1, 1, 2}, {2, 3, 3}, {2, 4, 4}};

// Rows group A to E, columns exposure band 1 to 4. HSG193 (from memory, computed).
constexpr int approach_matrix[5][4] = {
    {1, 1, 1, 2}, {1, 1, 2, 3}, {1, 2, 3, 4}, {2, 3, 4, 4}, {4, 4, 4, 4}};

// Group, amount, dustiness: the printed table as recalled. HSG193 (from memory).
constexpr int recalled_table[5][3][3] = {
    {{1, 1, 1}, {1, 1, 2}, {1, 2, 2}}, {{1, 1, 1}, {1, 2, 2}, {1, 3, 3}},
    {{1, 1, 2}, {2, 3, 3}, {2, 4, 4}}, {{2, 2, 3}, {3, 4, 4}, {3, 4, 4}},
    {{4, 4, 4}, {4, 4, 4}, {4, 4, 4}},
};

constexpr double small_below = 1.0;      // kg, HSG193 (from memory)
constexpr double medium_below = 1000.0;  // kg, HSG193 (from memory)

constexpr Disagreement eye_irritant_group{
    "hazard group of H319", "A, as the scheme's restatement has it",
    "C, as another public tool has it; judged a mistake of that tool"};
constexpr Disagreement both_tables{"approach for group A, kilograms, high dustiness",
                                   "2, the printed table as recalled",
                                   "1, worked out from the target concentrations"};

template <typename Enum>
constexpr std::size_t index_of(Enum value) {
  return static_cast<std::size_t>(value);
}

std::optional<HazardGroup> listed_group(std::string_view statement) {
  const std::string_view code = plain_code(statement);
  const auto* found = std::find_if(listed_statements.begin(), listed_statements.end(),
                                   [code](const Listed& listed) { return listed.code == code; });
  if (found == listed_statements.end()) return std::nullopt;
  return found->group;
}

}  // namespace

GroupResult hazard_group(std::span<const std::string_view> statements) {
  GroupResult result;
  result.source = sources::hsg193_groups;
  for (const std::string_view statement : statements) {
    const auto group = listed_group(statement);
    if (!group) {
      result.not_listed.push_back(statement);
      continue;
    }
    if (*group > result.group) {
      result.group = *group;
      result.decided_by.clear();
    }
    if (*group == result.group) result.decided_by.push_back(statement);
    if (plain_code(statement) == "H319" && result.disagreements.empty()) {
      result.disagreements.push_back(eye_irritant_group);
    }
  }
  return result;
}

AmountBand amount_band(double mass) {
  if (mass < small_below) return AmountBand::small;
  return mass < medium_below ? AmountBand::medium : AmountBand::large;
}

ControlApproach control_approach(HazardGroup group, AmountBand amount, DustinessWord dustiness) {
  ControlApproach result;
  result.source = sources::hsg193_matrix;
  result.exposure = exposure_bands[index_of(amount)][index_of(dustiness)];
  result.by_matrix = approach_matrix[index_of(group)][result.exposure - 1];
  result.by_recall = recalled_table[index_of(group)][index_of(amount)][index_of(dustiness)];
  result.approach = std::max(result.by_matrix, result.by_recall);
  if (result.by_matrix != result.by_recall) {
    // The tables differ in this one cell only, which a test holds them to.
    result.disagreements.push_back(both_tables);
  }
  return result;
}

std::string_view approach_words(int approach) {
  switch (approach) {
    case 1:
      return "general ventilation and good practice";
    case 2:
      return "engineering control";
    case 3:
      return "containment";
    case 4:
      return "specialist advice";
    default:
      break;
  }
  assert(false && "control approaches are 1 to 4");
  return "";
}

std::string_view group_letter(HazardGroup group) {
  constexpr std::array<std::string_view, 5> letters{"A", "B", "C", "D", "E"};
  return letters[index_of(group)];
}

}  // namespace sudsmark::science
