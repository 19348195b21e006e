// Hazard statements of what is handled: a bag of one material, or a mix by the mixture rules.
//
// A material alone keeps the statements of its data sheet. A mix has those that the rules of the
// CLP regulation give it (science/mixture_classification.h), over what is handled and never over
// the finished cosmetic. A statement of a component for which there is no rule here (asthma, acute
// poison, fire) stays open for the mix: it is neither denied nor claimed.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "measures/registry.h"
#include "science/mixture_classification.h"

namespace sudsmark::measures {

struct HandledStatement {
  std::string code;  ///< "H318", "H360FD"
  quantity::Certainty applies = quantity::Certainty::depends;
  std::vector<std::string> materials;  ///< that bring it
  science::Ground ground = science::Ground::single;
  bool without_rule = false;  ///< a component has it, and no rule here decides for the mix
};

struct HandledHazards {
  std::vector<HandledStatement> statements;  ///< in the order of their codes
  /// Data sheets that nobody gave: any statement may come with them.
  MissingSet missing;

  /// The entry of a code, a longer code of the same number too (H360 finds H360FD); null if none.
  [[nodiscard]] const HandledStatement* find(std::string_view code) const;
  /// Whether the statement applies; `depends` too where a data sheet is missing.
  [[nodiscard]] quantity::Certainty is(std::string_view code) const;
};

/// Whether anybody says what hazards a material has, be it none.
[[nodiscard]] bool hazards_stated(const catalogue::Material& material);

/// Hazards of a composition that is handled.
[[nodiscard]] HandledHazards hazards_of(const View& view, const blend::Composition& handled);

/// Hazards of what a task handles.
[[nodiscard]] HandledHazards task_hazards(const View& view, const blend::Task& task);

}  // namespace sudsmark::measures
