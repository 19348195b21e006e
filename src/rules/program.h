// Programs: compiled expressions.
//
// Every expression of a ruleset is a stretch of one flat array of small instructions for a stack
// machine (machine.h). What instructions refer to (constants, selections, words) stands in the
// lists of the same Pool, each thing once, so that two rules that ask for the same sum share its
// figure. Catalogue things (materials, substances, products, tables) are indices into the catalogue
// that the ruleset was compiled against.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "catalogue/catalogue.h"
#include "catalogue/enum_size.h"
#include "quantity/range.h"
#include "quantity/unit.h"

namespace sudsmark::rules {

/// Most figures that one expression keeps at once.
inline constexpr std::size_t most_stack = 128;
/// How deep measures made of measures may go.
inline constexpr int most_measure_depth = 32;

/// Over what a rule is asked, once for each.
enum class Each : std::uint8_t { product, row, portion, material, premix, task };

enum class Code : std::uint8_t {
  figure,   ///< push figures[c]
  measure,  ///< push the C++ measure c
  named,    ///< push the YAML measure c
  sum,      ///< push sums[c]
  field,    ///< push the subject's figure Field(a)
  cell,     ///< push the row's figure in column c
  negate,
  add,
  subtract,
  multiply,
  divide,  ///< texts[c] is what was nothing where 0 / 0 is asked for
  minimum,
  maximum,
  absolute,
  lowest,        ///< the lower end of a range, as a figure of its own
  highest,       ///< the upper end
  compare,       ///< Relation(a); b: number of the program's test, or nothing
  between,       ///< b: test
  is_word,       ///< push whether StatedWords(a) has one of the words in the bits c; b: test
  same_words,    ///< push whether both formulas state the same StatedWords(a); b: test
  is_product,    ///< push whether the product is one of lists[c]; b: test
  has_trait,     ///< push whether the product has traits[c]; b: test
  holds,         ///< push whether sums[c] (a count) is more than nothing; b: test
  is_material,   ///< push whether the subject's material is selected by selections[c]; b: test
  is_listed,     ///< push whether tables[c] has the subject's material; b: test
  is_hazardous,  ///< push whether the subject (a material, or what a task or premix holds by the
                 ///< mixture rules) has the hazard statement texts[c]; b: test
  is_marked,     ///< push whether the subject's material has Mark(a); b: test
  flag,          ///< push whether the formula has Flag(a); b: test
  same_text,     ///< pop two texts; b: test
  text,          ///< push texts[c]
  subject_text,  ///< push SubjectText(a); c: a column
  word_text,     ///< push the words of StatedWords(a) as a text
  deny,          ///< not
  both,          ///< pop two truths
  either,
  skip_if_no,  ///< leave the truth, and go to c if it is `no`
  skip_if_yes,
  of_base,  ///< the next instruction, which pushes, asks the base
  choose    ///< pop a truth: a block of b instructions follows, then one of c instructions
};

/// What an instruction takes from the stack and leaves there.
struct Effect {
  int takes = 0;
  int leaves = 0;
  /// By how much the stack grows.
  [[nodiscard]] constexpr int growth() const { return leaves - takes; }
};

/// Of the instruction itself: of the two blocks behind `choose` one leaves a value more, and
/// `of_base` comes before one that pushes.
[[nodiscard]] constexpr Effect effect_of(Code code) {
  switch (code) {
    case Code::figure:
    case Code::measure:
    case Code::named:
    case Code::sum:
    case Code::field:
    case Code::cell:
    case Code::is_word:
    case Code::same_words:
    case Code::is_product:
    case Code::has_trait:
    case Code::holds:
    case Code::is_material:
    case Code::is_listed:
    case Code::is_hazardous:
    case Code::is_marked:
    case Code::flag:
    case Code::text:
    case Code::subject_text:
    case Code::word_text:
      return {0, 1};
    case Code::negate:
    case Code::absolute:
    case Code::lowest:
    case Code::highest:
    case Code::deny:
      return {1, 1};
    case Code::add:
    case Code::subtract:
    case Code::multiply:
    case Code::divide:
    case Code::minimum:
    case Code::maximum:
    case Code::compare:
    case Code::same_text:
    case Code::both:
    case Code::either:
      return {2, 1};
    case Code::between:
      return {3, 1};
    case Code::choose:
      return {1, 0};
    case Code::skip_if_no:
    case Code::skip_if_yes:
    case Code::of_base:
      break;
  }
  return {};
}

/// What stands for "none" where an instruction refers to a list.
inline constexpr std::uint16_t nothing = 0xFFFF;

struct Instruction {
  Code code = Code::figure;
  std::uint8_t a = 0;
  std::uint16_t b = nothing;
  std::uint32_t c = 0;
  friend bool operator==(const Instruction&, const Instruction&) = default;
};

enum class Relation : std::uint8_t { equal, unequal, less, less_equal, greater, greater_equal };

/// What holds of two exact figures where a relation does not: < for >=.
[[nodiscard]] constexpr Relation opposite(Relation relation) {
  switch (relation) {
    case Relation::equal:
      return Relation::unequal;
    case Relation::unequal:
      return Relation::equal;
    case Relation::less:
      return Relation::greater_equal;
    case Relation::less_equal:
      return Relation::greater;
    case Relation::greater:
      return Relation::less_equal;
    case Relation::greater_equal:
      break;
  }
  return Relation::less;
}

/// Words that a formula states, or that hold of its subject, by their rows in words.h. Those that
/// are asked for by name come first; statements of the workshop follow.
enum class StatedWords : std::uint8_t {
  forming,
  users,
  claims,
  market,
  bath_water,
  dustiness  ///< of the subject's material
};

/// What a formula has or has not, without more words.
enum class Flag : std::uint8_t {
  looks_like_food,
  has_label  ///< a printed list in a label section, which is checked instead of being proposed
};

/// Figures of the subject of an `each`.
enum class Field : std::uint8_t {
  material_active,
  material_water,
  material_bound_water,
  material_crystal_water,
  material_melting,
  material_hlb,
  material_required_hlb,
  material_density,
  material_deliquescence,
  material_usual_least,
  material_usual_most,
  material_supplier_limit,
  material_certificate,
  material_pure_colour,
  material_flash_point,
  material_stable_ph_least,
  material_stable_ph_most,
  material_lowest_explosible,
  material_nameless,
  material_weighing_error,
  portion_share,
  portion_sold_apart,
  premix_mass,
  task_takes,
  task_times,
  task_mass,
  task_volume,
  task_raises
};

/// What a material can be marked as.
enum class Mark : std::uint8_t { combustible, inert, grade_unclear, own, limited };

enum class SubjectText : std::uint8_t {
  name,                ///< of the row, portion, material, premix or task
  cell,                ///< a word of the row
  product,             ///< name of the kind of product
  fragrance_category,  ///< of the kind of product
  neighbour_category,
  certificate_category,  ///< that the material's certificate names
  brought_by,            ///< which materials bring the row's substances, with their shares
  unnamed                ///< what would have to be known of a scent
};

/// A selection is a postfix program of its own, over one candidate.
enum class PickCode : std::uint8_t {
  role,     ///< any of the roles in the bits
  form,     ///< any of the forms in the bits
  named,    ///< named[bits]
  subject,  ///< the subject's material, or the substances of the subject's row
  beside,   ///< what the substances of the subject's row must not meet
  deny,
  both,
  either
};

struct Pick {
  PickCode code = PickCode::role;
  std::uint64_t bits = 0;
  friend bool operator==(const Pick&, const Pick&) = default;
};

/// A selection: a stretch of Pool::picks.
struct Selection {
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
  bool aroma = false;    ///< names aroma chemicals, which what is undeclared may be
  bool subject = false;  ///< asks for the subject, so its figures hold for that subject alone
};

/// A substance or material by name. The word is kept, since a user's catalogue may add to what it
/// means.
struct Named {
  std::string word;
  std::vector<catalogue::MaterialIndex> materials;
  std::vector<catalogue::SubstanceIndex> substances;
  friend bool operator==(const Named&, const Named&) = default;
};

enum class SumKind : std::uint8_t { share, supplied, mass, dose, in_bath, count };
inline constexpr std::size_t sum_kind_count = catalogue::enum_size<SumKind>;

struct Sum {
  SumKind kind = SumKind::share;
  std::uint32_t selection = 0;
  friend bool operator==(const Sum&, const Sum&) = default;
};

/// Where a figure comes from, for the place of a finding.
struct Origin {
  enum class Kind : std::uint8_t { measure, sum, words, product, flag } kind = Kind::measure;
  std::uint32_t index = 0;
  friend bool operator==(const Origin&, const Origin&) = default;
};

/// What an `expect` tests and what a message says about it: one comparison, or one question.
struct Test {
  bool denied = false;                  ///< under an odd number of `not`
  bool compares = false;                ///< figures: `measured` against one limit or two
  bool swapped = false;                 ///< the limit stands on the left
  Relation relation = Relation::equal;  ///< of the measured side to the limit, before denial
  bool between = false;
  std::string unit;          ///< in which both are printed
  bool field_limit = false;  ///< the limit is the material's own figure `field`
  Field field = Field::material_active;
  std::vector<Origin> origins;  ///< the measured side's first
};

enum class ValueKind : std::uint8_t { figure, truth, text };

/// A compiled expression: a stretch of Pool::code.
struct Program {
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
  ValueKind kind = ValueKind::truth;
  std::uint32_t first_test = 0;  ///< of Pool::tests
  std::uint32_t test_count = 0;
  bool pair = false;  ///< names the base or the tweak, so that it needs both
  std::string unit;   ///< of a figure, as it is printed

  [[nodiscard]] bool empty() const { return begin == end; }
};

/// What all programs of a ruleset share.
struct Pool {
  std::vector<Instruction> code;
  std::vector<quantity::Range> figures;
  std::vector<std::string> texts;
  std::vector<std::string> traits;
  std::vector<std::vector<std::uint16_t>> lists;  ///< kinds of product
  std::vector<Pick> picks;
  std::vector<Selection> selections;
  std::vector<Named> named;
  std::vector<Sum> sums;
  std::vector<Test> tests;
};

}  // namespace sudsmark::rules
