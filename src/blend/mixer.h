// The mixer: the steps of mix, one after the other. Only mix.cpp and its neighbours use it.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "blend/blend.h"
#include "blend/names.h"
#include "blend/recipe.h"

namespace sudsmark::blend {

/// A material and its mass, as it came out of a line (or of a premix's line).
struct Portioned {
  MaterialId material = 0;
  Range mass;
  Span place;
  bool on_top = false;
  bool dries_off = false;
};

/// What lines bring in. Of one material, what stands on one line is one item, however many premixes
/// it comes through: so a list is never longer than the formula has lines.
class Items {
 public:
  void add(const Portioned& item);
  [[nodiscard]] const std::vector<Portioned>& all() const { return items_; }

 private:
  std::vector<Portioned> items_;
  std::map<std::tuple<MaterialId, text::FileIndex, std::uint32_t, bool, bool>, std::size_t> where_;
};

/// A premix opened: what one making holds.
struct OpenedPremix {
  Items items;                        ///< g in one making
  std::optional<double> fixed_total;  ///< g
  Range total;                        ///< g
};

class Mixer {
 public:
  Mixer(const formula::Card& card, const catalogue::Catalogue& catalogue,
        text::Diagnostics& diagnostics, const MixOptions& options);
  std::optional<Blend> mix();

 private:
  // mix.cpp: the formula itself
  void read_statements();
  [[nodiscard]] std::string product_hint(const std::string& name) const;
  void read_bath();
  void mix_phases();
  void split_portions();
  void set_contents();

  // premixes.cpp
  void open_premixes();
  const OpenedPremix* open(std::size_t premix);
  std::optional<OpenedPremix> open_afresh(std::size_t premix);
  std::optional<RecipeLine> recipe_line(const formula::Line& line, std::size_t phase,
                                        std::optional<Named>& named);
  /// What a line of this mass brings in: itself, or the items of a premix.
  void spread(const Named& named, const Portioned& line, Items& items);
  bool fill_is_alone(const std::vector<RecipeLine>& lines, const std::vector<Named>& names);

  // workshop.cpp: workshop, tasks and weighings
  [[nodiscard]] const formula::Workshop* stated_workshop() const;
  void read_scales();
  /// A mass as it stands on the display, where that is asked for.
  [[nodiscard]] Range as_weighed(const formula::Line& line, const Range& mass);
  /// The masses of a recipe as they stand on the display; what they sum to is fixed no more.
  void weigh_out(const std::vector<RecipeLine>& lines, Weighed& weighed);
  void read_workshop();
  void read_tasks();
  void note_weighing(const formula::Line& line, const Named& named, const Range& mass,
                     SectionKind section, std::size_t index);

  const formula::Card& card_;
  const catalogue::Catalogue& catalogue_;
  text::Diagnostics& diagnostics_;
  const MixOptions& options_;
  std::vector<Scale> scales_;  ///< read where masses are mixed as weighed
  Names names_;
  Blend blend_;
  std::vector<std::optional<OpenedPremix>> opened_;
  std::vector<bool> unsound_;         ///< premixes with an error, which was told once
  std::vector<std::size_t> opening_;  ///< premixes being opened, outermost first
  Items mixed_;                       ///< of all phases
  bool failed_ = false;
};

/// Items added up by material; places of the greatest amount first. All of them, as they are mixed.
[[nodiscard]] Composition gathered(const Items& items, std::optional<double> fixed_total);
/// Gives a part what is left of its items once it is dry, and its dough where something dries off.
void set_compositions(Part& part, const Items& items, std::optional<double> fixed_total);

}  // namespace sudsmark::blend
