// The limits that a maker knows by name (foamer in the bath, scent of its certificate, emulsifier
// to oil, …) of a checked formula. Which rules stand behind a name is said in their data: `known
// as`.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <sudsmark/results.h>

#include "front/parts.h"

namespace sudsmark::report {

struct NamedLimit {
  std::string name;     ///< "emulsifier to oil"
  std::string verdict;  ///< verdict_word of the gravest finding behind the name: "should change"
  std::string words;    ///< "0.12; at least 0.25", for who reads and does not look
  std::optional<Figure> measured;
  std::optional<Figure> limit;       ///< as narrow as the rules behind the name make it together
  const Finding* finding = nullptr;  ///< that gravest one; of the formula
};

/// In the order of their ranks; a name of which nothing applies is left out.
[[nodiscard]] std::vector<NamedLimit> named_limits(const FormulaResult& formula,
                                                   const front::Parts& parts);

}  // namespace sudsmark::report
