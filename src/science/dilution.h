// Dilution premixes: how to dose what is too little for the scale.
//
// A tenth of a gram of colour cannot be weighed on a scale that reads tenths. It can be carried in
// by a blend: so much colour and so much of a powder that the formula holds anyway, rubbed together
// and sieved, and of that a portion that can be weighed. Strong dilutions go stepwise (geometric
// dilution): no step makes more than ten times what went into it, as common practice asks. The
// recipe is worked out in steps of the scale, the last step making up for what rounding did to the
// ones before, so that it comes out right with the figures that stand on the display.
//
//   const DilutionRecipe recipe = dilution_recipe(scales, {.dose = 0.1, .tolerance = 0.05});
//   if (recipe.outcome == DilutionOutcome::recipe) ...  // recipe.steps, then recipe.portion
#pragma once

#include <cstdint>
#include <limits>
#include <span>
#include <vector>

#include "science/provenance.h"
#include "science/scale_choice.h"

namespace sudsmark::science {

/// Most that one step may dilute: mass of the blend over the mass that went in. Common practice
/// ("at most about 1:10", some texts 1:3 to 1:5), read on the strict side: 1 in 10 of the blend.
inline constexpr double most_dilution = 10.0;

/// What the tolerance is about.
enum class ToleranceCovers : std::uint8_t {
  each_weighing,  ///< each weighing for itself; the doubts of all may add up to more
  carried_dose    ///< the dose that arrives, with every weighing off as far as it can be
};

struct DilutionNeed {
  double dose = 0.0;       ///< [g] of the minor material in one batch, > 0
  double tolerance = 0.0;  ///< [share] > 0
  /// [g] most of the blend that a batch can take: the batch's share of the powder it is made with.
  double most_blend = std::numeric_limits<double>::infinity();
  double vessel = 0.0;  ///< [g] bowl that stands on the scale
  ToleranceCovers covers = ToleranceCovers::each_weighing;
};

enum class DilutionOutcome : std::uint8_t {
  recipe,         ///< `steps` and `portion` say what to do
  weighable,      ///< the dose can be weighed as it is: `portion` says how
  no_scale,       ///< no scale weighs anything to this tolerance within its load
  blend_too_big,  ///< the blend would be more than the batch takes: a finer scale is needed
  too_many_steps  ///< more than `most_dilution_steps`
};

/// Ten millionfold is no longer kitchen work (a limit of this program).
inline constexpr int most_dilution_steps = 6;

/// One blend: what to take, and the powder to add to it.
struct DilutionStep {
  WeighingPlan taken;        ///< the minor material (first step), or the blend before
  WeighingPlan powder;       ///< the powder it is rubbed into
  double blend = 0.0;        ///< [g] what comes of it
  double minor_share = 0.0;  ///< share of the minor material in it
  double dilution = 0.0;     ///< blend over taken, at most `most_dilution`
};

struct DilutionRecipe {
  DilutionOutcome outcome = DilutionOutcome::no_scale;
  std::vector<DilutionStep> steps;
  WeighingPlan portion;      ///< what of the last blend (or of the material itself) goes in a batch
  double carried = 0.0;      ///< [g] of the minor material in it, out of the rounded figures
  double off_share = 0.0;    ///< carried over asked, less 1
  double worst_share = 0.0;  ///< most that it can be off with every weighing in doubt [share]
  double powder_carried = 0.0;  ///< [g] of powder in the portion: the batch gets so much less of it
  double minor_used = 0.0;      ///< [g] of the minor material for the whole recipe
  double powder_used = 0.0;     ///< [g] of the powder for the whole recipe
  double left_over = 0.0;       ///< [g] of the last blend when the portion is out
  int portions = 0;             ///< whole portions in the last blend
  Provenance source;
};

/// The dilution for a need, on the scales at hand.
[[nodiscard]] DilutionRecipe dilution_recipe(std::span<const Scale> scales,
                                             const DilutionNeed& need);

}  // namespace sudsmark::science
