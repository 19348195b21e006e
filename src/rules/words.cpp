#include "rules/words.h"

#include <algorithm>
#include <array>

#include "formula/vocabulary.h"
#include "text/name.h"

namespace sudsmark::rules {
namespace {

constexpr std::array<std::string_view, 6> each_words{"product",  "row",    "portion",
                                                     "material", "premix", "task"};

/// The named waters, and what stands for figures instead of a name.
constexpr auto water_words = [] {
  std::array<std::string_view, formula::vocabulary::waters.size() + 1> words{};
  std::copy(formula::vocabulary::waters.begin(), formula::vocabulary::waters.end(), words.begin());
  words.back() = "figures";
  return words;
}();
constexpr std::array<std::string_view, 3> dustiness_words{"low", "medium", "high"};

constexpr std::array stated = [] {
  std::array rows{
      StatedInfo{"forming", Each::product, formula::vocabulary::formings,
                 "the forming method (`forming`)", "how the product is formed, as stated"},
      StatedInfo{"users", Each::product, formula::vocabulary::users, "who uses it (`users`)",
                 "for whom the product is made, as stated"},
      StatedInfo{"claims", Each::product, formula::vocabulary::claims, "what is claimed (`claims`)",
                 "what the pack or the stall says: true if any of the formula's claims is meant"},
      StatedInfo{"market", Each::product, formula::vocabulary::markets,
                 "where it is sold (`market`)",
                 "where it is sold: true if any of the formula's markets is meant"},
      StatedInfo{"bath.water", Each::product, water_words, "the water of the bath (`water`)",
                 "the named water of the bath; `figures` where it is stated by its figures"},
      StatedInfo{"material.dustiness", Each::material, dustiness_words, "the dustiness",
                 "how much dust the material throws when it is tipped"},
      StatedInfo{"workshop.mask", Each::product, formula::vocabulary::masks,
                 "the mask (`mask` of the workshop)", "the mask that is worn", "mask"},
      StatedInfo{"workshop.extraction", Each::product, formula::vocabulary::yes_or_no,
                 "whether there is extraction (`extraction` of the workshop)",
                 "whether dust is drawn off where it rises", "extraction"},
      StatedInfo{"workshop.goggles", Each::product, formula::vocabulary::yes_or_no,
                 "whether goggles are worn (`goggles` of the workshop)",
                 "whether goggles are worn where dust rises; `no` where nothing is said", "goggles",
                 "no"},
  };
  for (std::size_t at = 0; at < rows.size(); ++at) rows[at].id = static_cast<StatedWords>(at);
  return rows;
}();
static_assert(stated.size() <= most_stated_words);

/// Whether the words that are asked for by name stand first, in their order.
constexpr bool named_first() {
  constexpr std::array<std::string_view, catalogue::enum_size<StatedWords>> named{
      "forming", "users", "claims", "market", "bath.water", "material.dustiness"};
  return std::equal(named.begin(), named.end(), stated.begin(),
                    [](std::string_view name, const StatedInfo& row) { return row.name == name; });
}
static_assert(named_first());

constexpr std::array all_fields{
    FieldInfo{Field::material_active, "material.active", Each::material, "%", "the active matter",
              "what the material is bought for, as a share of it"},
    FieldInfo{Field::material_water, "material.water", Each::material, "%", "the water",
              "free water in the material"},
    FieldInfo{Field::material_bound_water, "material.bound_water", Each::material, "%",
              "the moisture", "water that is held and given off slowly, as in starch"},
    FieldInfo{Field::material_crystal_water, "material.crystal_water", Each::material, "%",
              "the crystal water", "water in crystals, set free on warming"},
    FieldInfo{Field::material_melting, "material.melting", Each::material, "C", "the melting point",
              "melting point or range"},
    FieldInfo{Field::material_hlb, "material.hlb", Each::material, "1", "the HLB",
              "HLB as an emulsifier, Griffin's scale"},
    FieldInfo{Field::material_required_hlb, "material.required_hlb", Each::material, "1",
              "the required HLB", "HLB that the oil asks for, oil in water"},
    FieldInfo{Field::material_density, "material.density", Each::material, "g/ml", "the density",
              "density"},
    FieldInfo{Field::material_deliquescence, "material.deliquescence", Each::material, "%",
              "the deliquescence humidity", "relative humidity from which it turns wet, at 25 C"},
    FieldInfo{Field::material_usual_least, "material.usual_least", Each::material, "%",
              "the usual use range", "lower end of its usual use range"},
    FieldInfo{Field::material_usual_most, "material.usual_most", Each::material, "%",
              "the usual use range", "upper end of its usual use range"},
    FieldInfo{Field::material_supplier_limit, "material.supplier_limit", Each::material, "%",
              "the supplier's limit", "most that the supplier allows in a product"},
    FieldInfo{Field::material_certificate, "material.certificate", Each::material, "%",
              "the certificate",
              "most that a fragrance's certificate allows in this kind of product"},
    FieldInfo{Field::material_pure_colour, "material.pure_colour", Each::material, "%",
              "the pure dye content", "share of pure dye in a dye or lake"},
    FieldInfo{Field::material_flash_point, "material.flash_point", Each::material, "C",
              "the flash point", "flash point of a fragrance"},
    FieldInfo{Field::material_stable_ph_least, "material.stable_ph_least", Each::material, "pH",
              "the pH it is stable at", "lowest pH at which it keeps its nature"},
    FieldInfo{Field::material_stable_ph_most, "material.stable_ph_most", Each::material, "pH",
              "the pH it is stable at", "highest pH at which it keeps its nature"},
    FieldInfo{Field::material_lowest_explosible, "material.lowest_explosible", Each::material,
              "g/m3", "the lowest explosible concentration",
              "least dust in air that can carry a flame"},
    FieldInfo{Field::material_nameless, "material.nameless", Each::material, "%",
              "the CAS numbers of what is in it",
              "share of a scent under names that no table knows"},
    FieldInfo{Field::material_weighing_error, "material.weighing_error", Each::material, "%",
              "the scale", "step of the scale as a share of a weighing of it, at worst"},
    FieldInfo{Field::portion_share, "portion.share", Each::portion, "%", "the share",
              "share of the batch that the portion is"},
    FieldInfo{Field::portion_sold_apart, "portion.sold_apart", Each::portion, "1",
              "whether it is sold apart", "1 where pieces of it are sold by themselves, else 0"},
    FieldInfo{Field::premix_mass, "premix.mass", Each::premix, "g", "the mass",
              "what one making of the premix weighs"},
    FieldInfo{Field::task_takes, "task.takes", Each::task, "min", "the time (`takes`)",
              "how long the task takes"},
    FieldInfo{Field::task_times, "task.times", Each::task, "per day", "the number (`times`)",
              "how often a day it is done"},
    FieldInfo{Field::task_mass, "task.mass", Each::task, "g", "the mass",
              "what is handled at once"},
    FieldInfo{Field::task_volume, "task.volume", Each::task, "l", "the vessel (`in`)",
              "bowl, bucket or mixer it is handled in"},
    FieldInfo{Field::task_raises, "task.raises", Each::task, "mg/kg",
              "the measured dust (`raises`)", "mass that becomes airborne, where it was measured"},
};

constexpr std::array all_marks{
    MarkInfo{Mark::combustible, "combustible", "the dust data", "its dust can burn"},
    MarkInfo{Mark::inert, "inert", "the dust data",
             "it quenches a dust flame where it is most of the mix"},
    MarkInfo{Mark::grade_unclear, "grade unclear", "",
             "it is sold under one name in grades that differ by a factor"},
    MarkInfo{Mark::own, "own", "", "it is a material or fragrance of the formula's own"},
    MarkInfo{Mark::limited, "limited", "", "its supplier states the most that a product may hold"},
};

constexpr std::array all_flags{
    FlagInfo{Flag::looks_like_food, "looks_like_food", "the product is shaped or sold like food"},
    FlagInfo{Flag::has_label, "has_label",
             "the formula has a printed list of its own, which is checked instead"},
};

constexpr std::array all_texts{
    TextInfo{SubjectText::name, "row", Each::row, "", "name of the row"},
    TextInfo{SubjectText::name, "portion", Each::portion, "", "name of the portion"},
    TextInfo{SubjectText::name, "material", Each::material, "", "name of the material"},
    TextInfo{SubjectText::name, "premix", Each::premix, "", "name of the premix"},
    TextInfo{SubjectText::name, "task", Each::task, "", "name of the task"},
    TextInfo{SubjectText::product, "product", Each::product, "", "the kind of product"},
    TextInfo{SubjectText::fragrance_category, "product.fragrance_category", Each::product,
             "the fragrance category of this kind of product",
             "category of the fragrance standard for this kind of product"},
    TextInfo{SubjectText::neighbour_category, "product.neighbour_category", Each::product,
             "a neighbouring fragrance category",
             "category that this kind of product might be taken for"},
    TextInfo{SubjectText::certificate_category, "material.category", Each::material,
             "the category of the certificate",
             "category of the fragrance standard that a fragrance's certificate names"},
    TextInfo{SubjectText::brought_by, "row.brought_by", Each::row, "",
             "which materials bring the row's substances, and how much each"},
    TextInfo{SubjectText::unnamed, "material.unnamed", Each::material, "",
             "what would have to be known of a scent: CAS numbers, or what it holds undeclared"},
};

constexpr std::array<std::string_view, 12> all_functions{
    "share", "supplied", "mass", "dose", "in_bath", "count",
    "holds", "min",      "max",  "abs",  "lowest",  "highest"};

/// Tables are asked by the number of an enumeration, so each has its values in order.
template <class Enum, class List>
constexpr bool in_order(const List& list) {
  if (list.size() != catalogue::enum_size<Enum>) return false;
  for (std::size_t index = 0; index < list.size(); ++index) {
    if (static_cast<std::size_t>(list[index].id) != index) return false;
  }
  return true;
}
static_assert(in_order<Field>(all_fields));
static_assert(in_order<Mark>(all_marks));
static_assert(in_order<Flag>(all_flags));
static_assert(each_words.size() == catalogue::enum_size<Each>);

}  // namespace

std::string_view each_word(Each each) {
  return each_words[static_cast<std::size_t>(each)];
}

std::span<const StatedInfo> stated_words() {
  return stated;
}
const StatedInfo& info(StatedWords words) {
  return stated[static_cast<std::size_t>(words)];
}

std::optional<unsigned> find_word(const StatedInfo& info, std::string_view word) {
  // nearly always it is spelled as it is known
  for (unsigned at = 0; at < info.known.size(); ++at) {
    if (info.known[at] == word) return at;
  }
  const std::string wanted = text::fold(word);
  for (unsigned at = 0; at < info.known.size(); ++at) {
    if (text::fold(info.known[at]) == wanted) return at;
  }
  return std::nullopt;
}

std::span<const FieldInfo> fields() {
  return all_fields;
}
const FieldInfo& info(Field field) {
  return all_fields[static_cast<std::size_t>(field)];
}

std::span<const MarkInfo> marks() {
  return all_marks;
}
const MarkInfo& info(Mark mark) {
  return all_marks[static_cast<std::size_t>(mark)];
}

std::span<const FlagInfo> flags() {
  return all_flags;
}

std::span<const std::string_view> functions() {
  return all_functions;
}

std::span<const TextInfo> texts() {
  return all_texts;
}

bool is_hazard_code(std::string_view word) {
  if (word.size() < 4 || (word[0] != 'H' && !word.starts_with("EUH"))) return false;
  const std::size_t digits = word[0] == 'H' ? 1 : 3;
  if (word.size() < digits + 3) return false;
  return std::all_of(word.begin() + static_cast<std::ptrdiff_t>(digits),
                     word.begin() + static_cast<std::ptrdiff_t>(digits) + 3,
                     [](char c) { return c >= '0' && c <= '9'; });
}

bool reserved(std::string_view name) {
  const auto named = [&](const auto& item) { return item.name == name; };
  return std::any_of(stated.begin(), stated.end(), named) ||
         std::any_of(all_fields.begin(), all_fields.end(), named) ||
         std::any_of(all_flags.begin(), all_flags.end(), named) ||
         std::any_of(all_texts.begin(), all_texts.end(), named) ||
         std::find(all_functions.begin(), all_functions.end(), name) != all_functions.end();
}

std::vector<std::string> known_names(Each each) {
  std::vector<std::string> names;
  const auto take = [&](const auto& list) {
    for (const auto& item : list) {
      if (item.each == Each::product || item.each == each) names.emplace_back(item.name);
    }
  };
  take(stated);
  take(all_fields);
  take(all_texts);
  for (const FlagInfo& flag : all_flags) names.emplace_back(flag.name);
  return names;
}

}  // namespace sudsmark::rules
