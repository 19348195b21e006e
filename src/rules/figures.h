// Figures: what a formula answers where a program asks for a measure, a sum, a field or a word.
//
// They belong to one blend and one thread. Each measure and each sum is computed once for each part
// and each subject of the formula, however many rules lean on it, and kept. What measures of YAML
// come to is kept here too, and computed by the machine (machine.h).
#pragma once

#include <array>
#include <cstdint>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "blend/blend.h"
#include "blend/missing.h"
#include "measures/registry.h"
#include "measures/task_hazards.h"
#include "rules/picked_sets.h"
#include "rules/ruleset.h"
#include "rules/subject.h"
#include "rules/value.h"
#include "rules/words.h"

namespace sudsmark::rules {

/// A word that is stated, as bits of those known; none set if nothing is stated.
struct Words {
  std::uint32_t bits = 0;
  Span place;
  bool stated = false;
};

class Figures {
 public:
  /// `markets` take the place of the blend's, where there are any.
  Figures(const Ruleset& ruleset, const blend::Blend& blend, blend::MissingTable& missing,
          const std::vector<std::string>& markets, const Day& today);

  [[nodiscard]] const blend::Blend& blend() const { return blend_; }

  /// The parts that have figures of their own: the product, then portions, premixes and tasks.
  [[nodiscard]] std::size_t part_of_portion(std::size_t index) const { return 1 + index; }
  [[nodiscard]] std::size_t part_of_premix(std::size_t index) const;
  [[nodiscard]] std::size_t part_of_task(std::size_t index) const;

  // figures.cpp
  [[nodiscard]] const Measured& measure(std::uint32_t index, const Subject& subject);
  [[nodiscard]] const Measured& sum(std::uint32_t index, const Subject& subject);
  /// What a measure of YAML came to; nothing yet if it was not asked for. What is put here is kept.
  [[nodiscard]] std::optional<Measured>& named(std::uint32_t index, const Subject& subject);
  /// Where a maker would change what a figure comes from; nowhere if that cannot be said.
  [[nodiscard]] Span place(const Origin& origin, const Subject& subject);
  [[nodiscard]] measures::View view(const Subject& subject);

  // figures_fields.cpp
  [[nodiscard]] Measured field(Field field, const Subject& subject);
  [[nodiscard]] Value cell(std::uint32_t column, const Subject& subject);

  // figures_words.cpp
  [[nodiscard]] Value stated_text(StatedWords words, const Subject& subject);
  [[nodiscard]] Value subject_text(SubjectText which, std::uint32_t column, const Subject& subject);
  [[nodiscard]] Words words(StatedWords words, const Subject& subject) const;
  [[nodiscard]] Value is_word(StatedWords words, std::uint32_t bits, const Subject& subject);
  /// The same where it is said; nothing where it is not.
  [[nodiscard]] std::optional<bool> says(StatedWords words, std::uint32_t bits,
                                         const Subject& subject) const;
  /// Whether the formula is sold in one of the markets; all markets if the list is empty.
  Certainty sold_in(const std::vector<std::string>& markets, MissingSet& missing);

  // figures_sources.cpp
  /// What a row of a table leans on in the markets in which the formula is sold.
  [[nodiscard]] catalogue::Citations sources(const catalogue::Row& row);
  /// Whether a row is recalled alone in one of the formula's markets.
  [[nodiscard]] bool leans_on_memory(const catalogue::Row& row);
  [[nodiscard]] bool from_memory(const catalogue::Citations& sources) const;

  // figures_questions.cpp
  /// Whether the product is of one of these kinds.
  [[nodiscard]] bool is_one_of(const std::vector<std::uint16_t>& kinds) const;
  [[nodiscard]] bool has_trait(std::uint32_t trait) const { return traits_[trait]; }
  [[nodiscard]] bool has(Flag flag) const;
  [[nodiscard]] Value holds(std::uint32_t sum, const Subject& subject);
  [[nodiscard]] bool is_material(std::uint32_t selection, const Subject& subject) const;
  /// False where no material of the formula is selected.
  [[nodiscard]] bool may_be_material(std::uint32_t selection) const {
    return picked_.has_material(selection);
  }
  [[nodiscard]] Value is_hazardous(std::string_view code, const Subject& subject);
  [[nodiscard]] Value is_marked(Mark mark, const Subject& subject);

  // figures_listed.cpp
  [[nodiscard]] Value is_listed(std::uint32_t table, const Subject& subject);
  /// Whether a row of a table holds today, for what was sold since the days that its markets count.
  [[nodiscard]] bool in_force(const catalogue::Row& row) const;
  /// The same of a rule of these markets (all if there are none).
  [[nodiscard]] bool in_force(const Dates& dates, const std::vector<std::string>& markets) const;

  /// Adds a reason to the formula's table.
  MissingSet lacks(std::string_view what, Span place = {}) { return missing_.add(what, place); }

 private:
  using Kept = std::optional<Measured>;

  Kept& kept(std::size_t part, std::size_t index);
  Kept& kept_sum(std::uint32_t index, const Subject& subject);
  Measured compute_sum(const Sum& sum, const Subject& subject);
  Measured count_in_material(std::uint32_t selection, const Subject& subject);
  Value is_hazardous_mix(std::string_view code, const Subject& subject);
  void read_words(const std::vector<std::string>& markets);
  [[nodiscard]] MissingSet lacks_of(std::string_view what, const Subject& subject);
  [[nodiscard]] MissingSet lacks_cell(std::uint32_t column, const Subject& subject);
  [[nodiscard]] const catalogue::Material& material(const Subject& subject) const;

  const Ruleset& ruleset_;
  const blend::Blend& blend_;
  blend::MissingTable& missing_;
  Day today_;
  PickedSets picked_;
  std::size_t measure_count_;
  std::vector<std::vector<Kept>> kept_;                  ///< by part: measures, YAML measures, sums
  std::vector<std::vector<Kept>> kept_of_subject_;       ///< by sum, and by the subject's number
  std::array<Kept, sum_kind_count> kept_of_undeclared_;  ///< for rows that nothing declares
  std::vector<std::optional<measures::HandledHazards>> hazards_;  ///< by part
  std::array<Words, most_stated_words> words_;                    ///< of the formula
  std::vector<std::string_view> sold_;                            ///< its markets
  std::array<std::string, most_stated_words> said_;               ///< the same as text: "GB and EU"
  std::vector<bool> traits_;                                      ///< by trait: the product has it
  std::deque<std::string> sentences_;                             ///< made while messages were
};

}  // namespace sudsmark::rules
