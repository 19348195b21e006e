// Selecting: which materials and substances a rule or a measure means, and how much of them there
// is.
#pragma once

#include <cstdint>
#include <functional>

#include "measures/registry.h"

namespace sudsmark::measures {

/// What a selection is asked about: a material, and one of its contents (null where materials as
/// supplied are selected).
struct Candidate {
  blend::MaterialId material_id = 0;
  const catalogue::Material* material = nullptr;
  const blend::ContentView* content = nullptr;
};

/// A selection as the sums below call it: `test(context, candidate)`.
struct Selector {
  bool (*test)(const void* context, const Candidate& candidate) = nullptr;
  const void* context = nullptr;
  /// It names aroma chemicals, so that what a scent does not declare may be of them.
  bool aroma = false;
  /// Nothing that the formula declares is selected, and that is known: nobody has to be asked.
  bool nothing = false;
  [[nodiscard]] bool operator()(const Candidate& candidate) const {
    return test(context, candidate);
  }
};

/// Share by mass of the pure substances selected in a part [fraction].
[[nodiscard]] Measured share(const View& view, const Selector& selector);
/// Share by mass of the materials selected, as supplied [fraction].
[[nodiscard]] Measured supplied(const View& view, const Selector& selector);
/// Mass of the pure substances selected in the batch [g]; missing where no batch is stated.
[[nodiscard]] Measured mass(const View& view, const Selector& selector);
/// Their mass in one bath [g].
[[nodiscard]] Measured dose(const View& view, const Selector& selector);
/// Their concentration in the bath [g/l].
[[nodiscard]] Measured in_bath(const View& view, const Selector& selector);
/// How many different materials are selected (as supplied or by a content), present for sure to
/// perhaps.
[[nodiscard]] Measured count(const View& view, const Selector& selector);
/// The line of the greatest selected amount; nowhere if nothing is selected.
[[nodiscard]] Span place(const View& view, const Selector& selector);

}  // namespace sudsmark::measures
