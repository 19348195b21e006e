// The bench plan: everything that a making weighs, in a workable order, each on the scale that
// suits it, with the way out where no scale does.
//
// A premix is planned for as many of its own makings (bags) as a task or the formula uses at a
// time: one big mix that is bagged afterwards. What would separate in it or cannot be spread by
// stirring (less than one part in a thousand; grains among powder) is planned bag by bag instead.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "measures/registry.h"
#include "science/dilution.h"

namespace sudsmark::measures {

/// Parts of a mix below this share go in bag by bag: stirring does not spread them over many bags.
/// Common practice (one part in a thousand).
inline constexpr double spreads_by_stirring = 0.001;

/// How a mass that no scale weighs is brought in: each weighing of the recipe keeps
/// bench_tolerance.
struct Dilution {
  science::DilutionRecipe recipe;  ///< for one bag or one batch
  std::string carrier;             ///< of the same section, in which it is rubbed down
  bool liquid = false;             ///< both are liquids and are stirred
  int doses = 1;                   ///< bags that get a portion
  int times = 1;                   ///< all masses of the recipe are so many times larger for them
};

struct BenchLine {
  std::string name;
  const blend::Weighing* weighing = nullptr;
  const catalogue::Material* material = nullptr;  ///< null: a premix
  Range mass;                                     ///< g; for all bags, or each bag by bag
  std::string makings;                            ///< "4 bags", of a premix with a unit
  double planned = 0;  ///< [g] the mass that the plan is for: the least there is
  /// How that is weighed; none where no scale is stated or none can take it.
  std::optional<science::WeighingPlan> plan;
  bool too_small = false;  ///< the best scale is off by more than bench_tolerance
  std::optional<Dilution> dilution;
  double least = 0;  ///< [g] that the scales at hand weigh to bench_tolerance
  /// Why it goes into each bag on its own; empty: with the rest.
  std::string bag_by_bag;
  /// [g] of it come with dilutions, and are taken off `mass` already.
  double held_back = 0;
};

struct BenchSection {
  blend::SectionKind kind = blend::SectionKind::phase;
  std::size_t index = 0;  ///< of the blend's list of that kind
  std::string name;
  std::string unit;  ///< a premix's own, "making" where it has none
  int makings = 1;   ///< bags of a premix
  Range each;        ///< [g] one making, all lines together
  std::vector<BenchLine> lines;
  bool damp = false;  ///< liquids hold it together: it does not separate
};

struct BenchPlan {
  std::vector<science::Scale> scales;
  std::vector<BenchSection> sections;  ///< premixes, phases, portions
  bool masses_known = true;            ///< false where no batch is stated
};

[[nodiscard]] BenchPlan bench_plan(const View& view);

}  // namespace sudsmark::measures
