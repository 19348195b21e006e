#include "formula/words.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <utility>

#include "text/name.h"

namespace sudsmark::formula {
namespace {

constexpr std::array<std::pair<std::string_view, Section>, 10> sections{{
    {"formula", Section::formula},
    {"phase", Section::phase},
    {"premix", Section::premix},
    {"portion", Section::portion},
    {"fragrance", Section::fragrance},
    {"material", Section::material},
    {"workshop", Section::workshop},
    {"task", Section::task},
    {"label", Section::label},
    {"tweak", Section::tweak},
}};

// A tweak takes its own statements and all of a formula's: they stand in one row, the formula's
// last, so that each section's statements are one stretch of it.
constexpr std::size_t tweak_edits = 6;
constexpr std::array<StatementWord, 19> tweak_statements{{
    {"set", Statement::set, "set", true},
    {"swap", Statement::swap, "swap", true},
    {"add", Statement::add, "add", true},
    {"remove", Statement::remove, "remove", true},
    {"scale", Statement::scale_batch, "scale batch"},
    {"fill", Statement::fill_with, "fill with"},
    {"product", Statement::product, "product"},
    {"forming", Statement::forming, "forming"},
    {"market", Statement::market, "market"},
    {"batch", Statement::batch, "batch"},
    {"piece", Statement::piece, "piece"},
    {"bath", Statement::bath, "bath"},
    {"water", Statement::water, "water"},
    {"users", Statement::users, "users"},
    {"first", Statement::first_sold, "first sold"},
    {"looks", Statement::looks_like_food, "looks like food"},
    {"made", Statement::made_in, "made in"},
    {"keep", Statement::keep, "keep", true},
    {"allow", Statement::allow, "allow", true},
}};

constexpr std::array<StatementWord, 6> fragrance_statements{{
    {"limit", Statement::limit, "limit"},
    {"category", Statement::category, "category"},
    {"below", Statement::below, "below", true},
    {"above", Statement::above, "above", true},
    {"undeclared", Statement::undeclared, "undeclared"},
    {"flash", Statement::flash_point, "flash point"},
}};

constexpr std::array<StatementWord, 9> material_statements{{
    {"active", Statement::active, "active"},
    {"water", Statement::water_content, "water"},
    {"density", Statement::density, "density"},
    {"inci", Statement::inci, "inci"},
    {"cas", Statement::cas, "cas"},
    {"supplier", Statement::supplier_limit, "supplier limit"},
    {"role", Statement::role, "role"},
    {"form", Statement::form, "form"},
    {"hazards", Statement::hazards, "hazards"},
}};

constexpr std::array<StatementWord, 7> workshop_statements{{
    {"room", Statement::room, "room"},
    {"air", Statement::air_changes, "air changes"},
    {"humidity", Statement::humidity, "humidity"},
    {"temperature", Statement::temperature, "temperature"},
    {"scale", Statement::scale, "scale", true},
    {"mask", Statement::mask, "mask"},
    {"extraction", Statement::extraction, "extraction"},
}};

constexpr std::array<StatementWord, 5> task_statements{{
    {"handles", Statement::handles, "handles"},
    {"takes", Statement::takes, "takes"},
    {"times", Statement::times, "times"},
    {"in", Statement::in, "in"},
    {"raises", Statement::raises, "raises"},
}};

constexpr std::array<StatementWord, 2> label_statements{{
    {"ingredients", Statement::ingredients, "ingredients"},
    {"warning", Statement::warning, "warning"},
}};

constexpr std::array<std::string_view, 21> kitchen_measures{
    "cup",      "cups",  "dash",     "dashes",    "drop",       "drops",       "handful",
    "handfuls", "pinch", "pinches",  "pinchs",    "tablespoon", "tablespoons", "tbs",
    "tbsp",     "tbsps", "teaspoon", "teaspoons", "tsp",        "tsps",        "handsful"};

constexpr std::array<std::pair<std::string_view, std::string_view>, 46> meant_units{{
    {"gram", "g"},         {"grams", "g"},       {"gramme", "g"},       {"grammes", "g"},
    {"gr", "g"},           {"grs", "g"},         {"gm", "g"},           {"gms", "g"},
    {"kilo", "kg"},        {"kilos", "kg"},      {"kilogram", "kg"},    {"kilograms", "kg"},
    {"kgs", "kg"},         {"milligram", "mg"},  {"milligrams", "mg"},  {"ounce", "oz"},
    {"ounces", "oz"},      {"pound", "lb"},      {"pounds", "lb"},      {"lbs", "lb"},
    {"percent", "%"},      {"pct", "%"},         {"liter", "l"},        {"liters", "l"},
    {"litre", "l"},        {"litres", "l"},      {"ltr", "l"},          {"milliliter", "ml"},
    {"milliliters", "ml"}, {"millilitre", "ml"}, {"millilitres", "ml"}, {"cc", "ml"},
    {"celsius", "C"},      {"°c", "C"},          {"fahrenheit", "F"},   {"°f", "F"},
    {"minute", "min"},     {"minutes", "min"},   {"mins", "min"},       {"hour", "h"},
    {"hours", "h"},        {"hr", "h"},          {"hrs", "h"},          {"m³", "m3"},
    {"°C", "C"},           {"°F", "F"},
}};

std::span<const StatementWord> formula_statements() {
  return std::span(tweak_statements).subspan(tweak_edits);
}

}  // namespace

std::string_view section_word(Section section) {
  const auto* found = std::find_if(sections.begin(), sections.end(),
                                   [&](const auto& entry) { return entry.second == section; });
  assert(found != sections.end());
  return found->first;
}

std::optional<Section> section_of(std::string_view word) {
  for (const auto& [name, section] : sections) {
    if (name == word) return section;
  }
  return std::nullopt;
}

std::span<const StatementWord> statements_of(Section section) {
  switch (section) {
    case Section::formula:
      return formula_statements();
    case Section::tweak:
      return tweak_statements;
    case Section::fragrance:
      return fragrance_statements;
    case Section::material:
      return material_statements;
    case Section::workshop:
      return workshop_statements;
    case Section::task:
      return task_statements;
    case Section::label:
      return label_statements;
    default:
      return {};
  }
}

const StatementWord* find_statement(Section section, std::string_view word) {
  for (const StatementWord& statement : statements_of(section)) {
    if (statement.word == word) return &statement;
  }
  return nullptr;
}

std::optional<Section> owner_of(std::string_view word) {
  for (const auto& [name, section] : sections) {
    if (find_statement(section, word) != nullptr) return section;
  }
  return std::nullopt;
}

bool holds_ingredients(Section section) {
  return section == Section::phase || section == Section::premix || section == Section::portion;
}

bool is_kitchen_measure(std::string_view word) {
  return std::find(kitchen_measures.begin(), kitchen_measures.end(), word) !=
         kitchen_measures.end();
}

std::string_view meant_unit(std::string_view word) {
  for (const auto& [written, meant] : meant_units) {
    if (written == word) return meant;
  }
  return {};
}

std::string singular(std::string_view word) {
  std::string out = text::fold(word);
  const bool plural = out.size() > 1 && out.back() == 's' && out[out.size() - 2] != 's' &&
                      out[out.size() - 2] != ' ';
  if (plural) out.pop_back();
  return out;
}

std::string nearest_hint(std::string_view word, std::span<const std::string> candidates) {
  const std::vector<std::string> near = text::nearest(word, candidates);
  if (near.empty()) return {};
  return "; perhaps " + text::listed(near);
}

std::string choice_hint(std::string_view word, std::span<const std::string_view> choices) {
  const std::vector<std::string> names(choices.begin(), choices.end());
  std::string hint = nearest_hint(word, names);
  hint += hint.empty() ? ": choose " : "; it is one of ";
  for (std::size_t at = 0; at < names.size(); ++at) {
    if (at > 0) hint += at + 1 == names.size() ? " or " : ", ";
    hint += names[at];
  }
  return hint;
}

std::string only_choice(std::string_view word, std::span<const std::string_view> choices) {
  const std::vector<std::string> near =
      text::nearest(word, std::vector<std::string>(choices.begin(), choices.end()));
  return near.size() == 1 ? near.front() : std::string();
}

}  // namespace sudsmark::formula
