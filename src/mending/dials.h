// Dials: what a maker can turn in her formula, and the formula with some of them turned.
//
// A dial is what the tweak language can set by name: all lines of a material in the phases, which
// keep their proportion, or its one line in a premix or a portion. A premix that is used moves as
// one, by how much of it is used, and its own recipe by the dials of its lines. Everything that is
// turned is counted in fractions of the product, so that dials of all kinds of amount can be added
// up. A range is turned by its middle and keeps its width.
//
// What cannot be turned: lines given by volume, names that stand in several premixes or portions,
// lines of one name in unlike amounts, amounts of nothing; past 120 dials those of the least share.
#pragma once

#include <cstddef>
#include <limits>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "blend/blend.h"
#include "formula/assemble.h"
#include "formula/card.h"
#include "formula/draft.h"

namespace sudsmark::mending {

inline constexpr double percent = 100;  ///< of a whole

struct Dial {
  formula::Word name;  ///< as written on its first line
  std::string key;     ///< one spelling for all its names
  formula::PartKind where = formula::PartKind::phase;
  std::size_t part = 0;                ///< of the draft, for premixes and portions
  std::vector<std::size_t> parts;      ///< of the draft, one a line
  std::vector<std::size_t> lines;      ///< in those parts
  std::string container;               ///< of premix or portion, for people
  formula::Amount amount;              ///< of all its lines together, its middle in `share`
  double share = 0;                    ///< fraction of the product today
  double worth = 0;                    ///< of its own kind of amount to one of the product
  std::optional<double> grams;         ///< that are weighed to one of the product
  std::optional<std::size_t> balance;  ///< of the sums that are kept; none: it comes on top
  bool fills = false;                  ///< q.s.: takes up what the others leave
  std::optional<formula::Range> kept;  ///< `keep`: the share has to stay within
  std::optional<std::string> keep;     ///< the statement in words
  const catalogue::Material* material = nullptr;  ///< null: a premix
  blend::MaterialId material_id = 0;
  std::vector<blend::ContentView> contents;  ///< of the material
};

/// How far each dial is turned, in fractions of the product.
using Turns = std::vector<double>;

/// Less than this is nothing: the line is taken out.
inline constexpr double next_to_nothing = 1e-9;

class Dials {
 public:
  /// Of a card that could be mixed. All must outlive the dials.
  Dials(const formula::Card& card, const blend::Blend& blend, const formula::SameName& same_name);

  [[nodiscard]] const std::vector<Dial>& all() const { return dials_; }
  /// The dial that takes up what others leave: q.s., or the greatest of what is best to fill with.
  /// One for each sum that is kept.
  [[nodiscard]] const std::vector<std::size_t>& fillers() const { return fillers_; }
  /// Chooses the fillers anew, and from these dials only where there is nothing else.
  void spare(const std::set<std::size_t>& blamed);
  /// The card with the dials turned. A q.s. line moves by itself.
  [[nodiscard]] formula::Card turned(const Turns& turns) const;
  /// The name of the part that a dial's first line stands in.
  [[nodiscard]] const std::string& phase_of(const Dial& dial) const {
    return draft_[dial.parts.front()].name.text;
  }
  /// The amount of a dial after a turn.
  [[nodiscard]] formula::Amount amount(const Dial& dial, double turn) const;
  /// Whether any line of the sums that are kept is a range.
  [[nodiscard]] bool ranges() const { return ranges_; }

 private:
  void gather_phases(const blend::Blend& blend);
  void gather_premixes(const blend::Blend& blend);
  void gather_portions(const blend::Blend& blend);
  void drop_least();
  void add_keeps();
  void find_materials();
  void choose_fillers(const std::set<std::size_t>& blamed);
  /// Whether a premix holds something, itself or in a premix of its own.
  [[nodiscard]] bool holds(const std::string& premix, const std::string& wanted, int depth) const;
  [[nodiscard]] std::string key(const std::string& name) const;
  [[nodiscard]] std::vector<double> shares_of_phases(const blend::Blend& blend);

  const formula::Card& card_;
  const blend::Blend& blend_;
  const formula::SameName& same_name_;
  formula::Draft draft_;
  std::vector<Dial> dials_;
  std::vector<std::size_t> fillers_;
  std::vector<double> usage_;  ///< of premixes: fraction of the product
  double whole_ = 1;           ///< g of the mixed batch, where it is known
  bool real_ = false;
  bool ranges_ = false;
};

}  // namespace sudsmark::mending
