// The machine: runs programs over one formula.
//
// A Machine belongs to one blend and one thread. It keeps every figure that a program asked for, so
// that each measure and each sum is computed once for each part of the formula however many rules
// lean on it. Running a program allocates nothing but what a measure itself needs.
#pragma once

#include <array>
#include <cstdint>
#include <deque>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "blend/blend.h"
#include "blend/missing.h"
#include "measures/registry.h"
#include "measures/selection.h"
#include "measures/task_hazards.h"
#include "quantity/range.h"
#include "rules/ruleset.h"

namespace sudsmark::rules {

using blend::MissingSet;
using measures::Measured;
using quantity::Certainty;
using quantity::Range;
using text::Span;

/// What a rule is asked about: the product, or one row, portion, material, premix or task.
struct Subject {
  Each each = Each::product;
  std::size_t part = 0;      ///< of the machine's parts: whose figures are asked for
  std::uint32_t number = 0;  ///< told apart from all other subjects of this machine
  std::string_view name;
  Span place;
  const catalogue::Row* row = nullptr;
  const catalogue::Table* table = nullptr;
  bool declared = true;  ///< the row's substance is in what the formula declares
  bool aroma = false;    ///< the row's substance is an aroma chemical
  const blend::Ingredient* ingredient = nullptr;  ///< of a material
  const blend::Task* task = nullptr;
};

/// What stands on the stack.
struct Value {
  Range range;
  MissingSet missing = 0;
  std::string_view text;
  bool known = true;     ///< the text is
  bool several = false;  ///< it names several, with commas and "and" between them
  Certainty truth = Certainty::no;
};

/// What a test of an `expect` came to.
struct Tried {
  bool asked = false;
  Certainty truth = Certainty::no;  ///< as the expression needs it, `not` counted in
  Range measured;
  Range low;  ///< the limit, or the lower of two
  Range high;
};

class Machine {
 public:
  /// `markets` take the place of the blend's, where there are any. `base` is what rules over a
  /// tweak and its base hold the blend against; it must outlive the machine.
  Machine(const Ruleset& ruleset, const blend::Blend& blend, blend::MissingTable& missing,
          const std::vector<std::string>& markets, const Day& today = {},
          const blend::Blend* base = nullptr);

  /// Runs a program. `tried` is filled where the program has tests and somebody wants them.
  Value run(const Program& program, const Subject& subject, std::vector<Tried>* tried = nullptr);

  /// The parts that have figures of their own: the product, then portions, premixes and tasks.
  [[nodiscard]] std::size_t part_of_portion(std::size_t at) const { return 1 + at; }
  [[nodiscard]] std::size_t part_of_premix(std::size_t at) const;
  [[nodiscard]] std::size_t part_of_task(std::size_t at) const;

  /// Where a maker would change what a figure comes from; nowhere if that cannot be said.
  [[nodiscard]] Span place(const Origin& origin, const Subject& subject);

  /// Whether the formula is sold in one of the markets; all markets if the list is empty.
  Certainty sold_in(const std::vector<std::string>& markets, MissingSet& missing);
  /// Whether a row of a table holds today, for what was sold since the days that its markets count.
  [[nodiscard]] bool in_force(const catalogue::Row& row) const;
  /// The same of a rule of these markets (all if there are none).
  [[nodiscard]] bool in_force(const Dates& dates, const std::vector<std::string>& markets) const;
  /// Adds a reason to the formula's table.
  MissingSet lacks(std::string_view what, Span place = {}) { return missing_.add(what, place); }

  /// The reasons without those of the base that are the formula's own as well.
  [[nodiscard]] MissingSet without_doubles(MissingSet missing) const;

  /// Reasons in words: those of the formula, and those of its base.
  struct Doubts {
    std::set<std::string_view> own;
    std::set<std::string_view> of_base;
    friend bool operator==(const Doubts&, const Doubts&) = default;
  };
  [[nodiscard]] Doubts doubts(MissingSet missing) const;

  [[nodiscard]] const blend::Blend& blend() const { return blend_; }
  [[nodiscard]] bool has_base() const { return base_blend_ != nullptr; }
  /// A subject as it is in the base, which the machine has. Its ingredient is null where the base
  /// does not have the material.
  [[nodiscard]] Subject in_base(const Subject& subject) const;

 private:
  void run(std::uint32_t at, std::uint32_t end, const Program& program, const Subject& subject,
           std::vector<Tried>* tried);
  void ask(const Instruction& instruction, const Program& program, const Subject& subject,
           std::vector<Tried>* tried);
  void ask_base(const Instruction& instruction, const Program& program, const Subject& subject,
                std::vector<Tried>* tried);
  void compute(const Instruction& instruction);
  void compare(const Instruction& instruction, const Program& program, std::vector<Tried>* tried);

  void push(const Value& value) { stack_[size_++] = value; }
  Value pop() { return stack_[--size_]; }

  Measured measure(std::uint32_t index, const Subject& subject);
  Measured named(std::uint32_t index, const Subject& subject);
  Measured sum(std::uint32_t index, const Subject& subject);
  Measured compute_sum(const Sum& sum, const Subject& subject);
  Measured field(Field field, const Subject& subject);
  Value text(const Instruction& instruction, const Subject& subject);
  Value cell(std::uint32_t column, const Subject& subject);
  Value same_words(StatedWords words);
  Value is_word(StatedWords words, std::uint32_t bits, const Subject& subject);
  Value holds(std::uint32_t sum, const Subject& subject);
  Measured count_in_material(const Selection& selection, const Subject& subject);
  Value is_hazardous(std::string_view code, const Subject& subject);
  Value is_hazardous_mix(std::string_view code, const Subject& subject);
  Value is_marked(Mark mark, const Subject& subject);
  Value is_listed(std::uint32_t table, const Subject& subject);
  [[nodiscard]] bool is_material(std::uint32_t selection, const Subject& subject) const;
  [[nodiscard]] bool has_trait(std::uint32_t trait) const;

  /// The word that is stated, as bits of those known; none set if nothing is stated.
  struct Words {
    std::uint32_t bits = 0;
    Span place;
    bool stated = false;
  };
  [[nodiscard]] Words words(StatedWords words, const Subject& subject) const;
  Machine* base();
  MissingSet carried(MissingSet of_base);
  void read_words(const std::vector<std::string>& markets);
  [[nodiscard]] measures::View view(const Subject& subject);
  [[nodiscard]] MissingSet lacks_of(std::string_view what, const Subject& subject);
  [[nodiscard]] const catalogue::Material& material(const Subject& subject) const;

  /// A figure that is kept, and for which subject (0: for all of a part).
  struct Slot {
    Measured value;
    std::uint32_t subject = 0;
    bool filled = false;
  };
  Slot& slot(std::size_t part, std::size_t at);

  const Ruleset& ruleset_;
  const blend::Blend& blend_;
  blend::MissingTable& missing_;
  Day today_;
  std::size_t measure_count_;
  std::vector<std::vector<Slot>> kept_;     ///< by part: measures, YAML measures, sums
  std::vector<Slot> kept_of_subject_;       ///< by sum
  std::array<Slot, 6> kept_of_undeclared_;  ///< by SumKind, for rows that nothing declares
  std::vector<std::optional<measures::HandledHazards>> hazards_;  ///< by part
  std::array<Words, 7> words_;                                    ///< of the formula
  std::array<std::string, 7> said_;                               ///< the same as text: "GB and EU"
  std::vector<bool> traits_;                                      ///< by trait: the product has it
  std::deque<std::string> sentences_;                             ///< made while messages were
  std::vector<Value> stack_;
  std::size_t size_ = 0;

  const blend::Blend* base_blend_;
  std::vector<std::string> base_markets_;
  std::unique_ptr<Machine> base_;     ///< made when a rule first asks it
  blend::MissingTable base_missing_;  ///< its reasons, in its own words
  std::vector<MissingSet> of_base_;   ///< by reason of the base: the same in `missing_`
};

}  // namespace sudsmark::rules
