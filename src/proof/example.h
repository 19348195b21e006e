// Examples: the formulas by which a rule shows what it says, and its edges, as blends to be asked.
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "blend/blend.h"
#include "catalogue/catalogue.h"
#include "proof/edges.h"
#include "rules/ruleset.h"

namespace sudsmark::proof {

/// A formula in words, and its base where the rule is over both.
struct Words {
  std::string formula;  ///< of a pair: the tweak, edits alone or a formula in full
  std::string base;
  bool pair = false;
};

/// One example or edge of a rule.
struct Example {
  Words words;
  Kind gives = Kind::pass;  ///< what the rule has to say of it
  bool edge = false;
  std::size_t number = 1;  ///< among those of its kind
  /// An edge's line that its example has not; empty: it has them all.
  std::string missing_line;

  /// "example 2 that should pass", "edge 3".
  [[nodiscard]] std::string name() const;
};

/// A rule's examples that pass, those that fail, and its edges.
[[nodiscard]] std::vector<Example> examples_of(const rules::Rule& rule,
                                               const std::vector<Edge>& edges);

/// The words of an example that passes or fails, counted from 1; it must be there.
[[nodiscard]] Words words_of(const rules::Rule& rule, bool that_passes, std::size_t number);

/// Words with some of their lines changed. The line that is not there, if there is one.
std::optional<std::string> change_lines(Words& words, const std::vector<std::string>& take,
                                        const std::vector<std::string>& put);

/// An example as it is asked.
struct Made {
  std::optional<blend::Blend> blend;  ///< none: the words make no formula
  std::optional<blend::Blend> base;
  bool wrong_in_base = false;
  std::string wrong;  ///< "line 4: 'sweat oil' is not a material …"
};
[[nodiscard]] std::unique_ptr<Made> make(const Words& words, const catalogue::Catalogue& catalogue);

/// What a rule says of an example: the gravest of its verdicts. What is met and from memory counts
/// as met, what waits for a paper alone as failed. The gravest message goes into `message`.
[[nodiscard]] Kind outcome(const rules::Ruleset& ruleset, std::uint32_t rule, const Made& made,
                           const rules::Day& on, std::string* message = nullptr);

}  // namespace sudsmark::proof
