// The compiler: an expression's tree into a Program, its names looked up and its types checked.
//
// A type is what stands on the machine's stack: a figure with a dimension, a truth, or a text.
// Words that a formula states (`forming`, `market`) are only compared, and such a comparison is a
// truth.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "catalogue/catalogue.h"
#include "rules/expression.h"
#include "rules/interner.h"
#include "rules/ruleset.h"
#include "rules/words.h"
#include "text/diagnostic.h"

namespace sudsmark::rules {

/// What the names of an expression can mean.
struct Scope {
  Each each = Each::product;
  std::uint16_t table = nothing;  ///< for Each::row
  bool sides = true;              ///< `base.` and `tweak.` may be asked: not in a measure
};

struct Type {
  ValueKind kind = ValueKind::figure;
  quantity::Dimension dimension;
  std::string_view unit = "1";  ///< in which a figure is printed
  bool unit_given = false;      ///< by a measure or by who wrote the expression, not by default
  bool constant = false;        ///< figures only
};
[[nodiscard]] inline Type truth_type() {
  Type type;
  type.kind = ValueKind::truth;
  return type;
}

/// Turns offsets in the expression into a place of its file.
using Placing = std::function<text::Span(std::uint32_t begin, std::uint32_t end)>;

/// An expression to be compiled.
struct Source {
  std::string_view text;
  const Tree& tree;
  Scope scope;
  const Placing& placing;
};

class Compiler {
 public:
  Compiler(Ruleset& ruleset, const catalogue::Catalogue& catalogue, text::Diagnostics& diagnostics);

  /// Something true or false. With `tests`, the comparisons that decide are kept for the verdict.
  std::optional<Program> truth(const Source& source, bool tests);
  /// A figure, and its dimension in `dimension`.
  std::optional<Program> figure(const Source& source, quantity::Dimension& dimension);
  /// A figure or a text, for a message.
  std::optional<Program> printable(const Source& source);
  /// Where the parts of a figure come from, its first parts first.
  std::vector<Origin> origins(const Source& source);
  /// A selection: `emulsifier`.
  std::optional<std::uint32_t> selection(const Source& source);
  /// What stands for the material or the row that a rule goes over.
  std::uint32_t subject_selection();
  /// A selection's place: `emulsifier`.
  std::optional<Origin> selection_origin(const Source& source);

  /// A measure with an error of its own: what leans on it is left out without another error.
  void mark_faulty(std::string_view measure) { faulty_.emplace(measure); }

 private:
  friend class Compilation;

  /// A measure of YAML by its name.
  std::optional<std::uint32_t> find_measure(std::string_view name);
  /// Looking for near names takes time, which a file full of mistakes may have only so often.
  bool may_hint() { return ++hints_ <= most_hints; }
  static constexpr int most_hints = 500;

  Ruleset& ruleset_;
  const catalogue::Catalogue& catalogue_;
  text::Diagnostics& diagnostics_;
  Interner interner_;
  std::unordered_map<std::string, std::uint32_t> measures_;
  std::unordered_set<std::string> faulty_;
  int hints_ = 0;
};

/// What a word of a selection names in a catalogue: materials and substances, perhaps none.
[[nodiscard]] Named find_named(std::string_view word, const catalogue::Catalogue& catalogue);

/// "a mass (g)", "a share (%)", "a number": a type for a sentence.
[[nodiscard]] std::string type_words(const quantity::Dimension& dimension);
[[nodiscard]] std::string type_words(const Type& type);

}  // namespace sudsmark::rules
