// Sentences: what a verdict says to a maker.
#pragma once

#include <string>
#include <vector>

#include "blend/missing.h"
#include "quantity/range.h"
#include "quantity/unit.h"
#include "rules/machine.h"
#include "rules/ruleset.h"

namespace sudsmark::rules {

/// The test of an `expect` that made the verdict what it is, and what it came to.
struct Decider {
  const Test* test = nullptr;  ///< null: none can be named
  Tried tried;

  [[nodiscard]] bool compares() const { return test != nullptr && test->compares; }
};

/// "at least 0.5", "at most 5 %", "at least 3 % and at most 9 %", "none wanted" or, of a law, "none
/// allowed"; empty where the limit is not known or nothing was compared.
[[nodiscard]] std::string limit_words(const Decider& decider, const Rule& rule);

/// The range within which a figure keeps to the limit; an infinite end is open.
[[nodiscard]] std::optional<quantity::Range> limit_of(const Decider& decider);

/// A range printed with as many digits as it takes to look different from the limit's ends.
[[nodiscard]] std::string printed_beside(const quantity::Range& range, const quantity::Range& limit,
                                         const quantity::Unit& unit);

/// A message of a rule with its holes filled. What was measured never looks equal to the limit
/// that it breaks. `limit_told` is set where a hole prints the limit itself.
[[nodiscard]] std::string filled(const std::vector<MessagePart>& message, const Subject& subject,
                                 Machine& machine, const Decider& decider,
                                 bool* limit_told = nullptr);

/// The rule's title, of its subject, and the figure with its limit: what a pass says.
[[nodiscard]] std::string headline(const Rule& rule, const Subject& subject,
                                   const Decider& decider);

/// "the certificate of fragrance 'Sea Fig' and the forming method (`forming`)"; at most three are
/// named.
[[nodiscard]] std::string listed(const blend::MissingSet& missing,
                                 const blend::MissingTable& table);

}  // namespace sudsmark::rules
