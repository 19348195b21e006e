#include "formula/words.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <tuple>
#include <utility>

#include "formula/statements.h"
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

template <typename Owner>
constexpr std::size_t row_count = std::tuple_size_v<decltype(Register<Owner>::rows)>;
constexpr std::size_t edit_count = std::tuple_size_v<decltype(Register<Tweak>::edits)>;

constexpr StatementWord word_of(std::string_view full, Times times, bool edit, std::size_t index) {
  return {full.substr(0, full.find(' ')), full, times == Times::many, edit, index};
}

template <typename Owner>
constexpr std::array<StatementWord, row_count<Owner>> words_of = [] {
  std::array<StatementWord, row_count<Owner>> words{};
  std::size_t index = 0;
  each_row<Owner>([&](const auto& row) {
    words[index] = word_of(row.full, row.times, false, index);
    ++index;
  });
  return words;
}();

/// A tweak takes its edits and all that a formula says.
constexpr std::array<StatementWord, edit_count + row_count<Statements>> tweak_words = [] {
  std::array<StatementWord, edit_count + row_count<Statements>> words{};
  std::size_t index = 0;
  each_edit([&](const auto& row) {
    words[index] = word_of(row.full, row.times, true, index);
    ++index;
  });
  for (const StatementWord& word : words_of<Statements>) words[index++] = word;
  return words;
}();

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
      return words_of<Statements>;
    case Section::tweak:
      return tweak_words;
    case Section::fragrance:
      return words_of<Fragrance>;
    case Section::material:
      return words_of<UserMaterial>;
    case Section::workshop:
      return words_of<Workshop>;
    case Section::task:
      return words_of<Task>;
    case Section::label:
      return words_of<Label>;
    case Section::none:
    case Section::phase:
    case Section::premix:
    case Section::portion:
    case Section::unknown:
      return {};
  }
  return {};
}

const StatementWord* find_statement(Section section, std::string_view word,
                                    std::string_view second) {
  const StatementWord* found = nullptr;
  for (const StatementWord& statement : statements_of(section)) {
    if (statement.word != word) continue;
    const std::string_view others =
        statement.full.substr(std::min(word.size() + 1, statement.full.size()));
    if (!others.empty() && others.substr(0, others.find(' ')) == second) return &statement;
    if (found == nullptr || others.empty()) found = &statement;
  }
  return found;
}

std::optional<Section> owner_of(std::string_view word) {
  for (const auto& [name, section] : sections) {
    if (find_statement(section, word) != nullptr) return section;
  }
  return std::nullopt;
}

std::optional<MeantStatement> meant_statement(Section section, std::string_view word) {
  struct Meant {
    Section section;
    std::string_view word;
    MeantStatement said;
  };
  constexpr MeantStatement set{"; write 'set', as in set SLSA to 20 %", "set"};
  constexpr MeantStatement swap{"; write 'swap', as in swap rice bran oil for sweet almond oil",
                                "swap"};
  constexpr MeantStatement remove{"; write 'remove' and the name", "remove"};
  constexpr MeantStatement batch{"; what one making weighs is 'batch', as in batch 2 kg", "batch"};
  constexpr MeantStatement name{"; the name stands behind 'formula'", {}};
  constexpr MeantStatement note{"; a note of your own begins with #", {}};
  constexpr std::array<Meant, 21> all{{
      {Section::tweak, "change", set},    {Section::tweak, "raise", set},
      {Section::tweak, "lower", set},     {Section::tweak, "increase", set},
      {Section::tweak, "decrease", set},  {Section::tweak, "reduce", set},
      {Section::tweak, "replace", swap},  {Section::tweak, "substitute", swap},
      {Section::tweak, "exchange", swap}, {Section::tweak, "delete", remove},
      {Section::tweak, "drop", remove},   {Section::tweak, "omit", remove},
      {Section::tweak, "notes", note},    {Section::tweak, "note", note},
      {Section::formula, "yield", batch}, {Section::formula, "yields", batch},
      {Section::formula, "makes", batch}, {Section::formula, "name", name},
      {Section::formula, "title", name},  {Section::formula, "notes", note},
      {Section::formula, "note", note},
  }};
  for (const Meant& one : all) {
    if (one.section == section && one.word == word) return one.said;
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

bool is_gallon(std::string_view word) {
  return word == "gal" || word == "gals" || word == "gallon" || word == "gallons";
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
  return text::perhaps(text::nearest(word, candidates));
}

std::string choice_hint(std::string_view word, std::span<const std::string_view> choices) {
  const std::vector<std::string> names(choices.begin(), choices.end());
  std::string hint = nearest_hint(word, names);
  hint += hint.empty() ? ": choose " : "; it is one of ";
  return hint + text::series(names, "or");
}

std::string only_choice(std::string_view word, std::span<const std::string_view> choices) {
  const std::vector<std::string> near =
      text::nearest(word, std::vector<std::string>(choices.begin(), choices.end()));
  return near.size() == 1 ? near.front() : std::string();
}

}  // namespace sudsmark::formula
