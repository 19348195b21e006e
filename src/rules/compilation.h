// One expression on its way into code. Only the compiler's own files use it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "rules/compiler.h"
#include "rules/side.h"

namespace sudsmark::rules {

class Compilation {
 public:
  Compilation(Compiler& compiler, const Source& source, bool tests);

  /// Compiles the whole tree. On an error the pool's code is as it was before, and none is
  /// answered.
  std::optional<Program> run(Type& type);

  /// Where the figures below a node come from, in the order in which they are written.
  void gather_origins(NodeIndex at, std::vector<Origin>& origins);
  /// The selection below a node; none after an error.
  std::optional<std::uint32_t> selection(NodeIndex at, bool of_subject = false);

  /// Adds an error at a node.
  void refuse(const text::Message& message, NodeIndex at,
              std::vector<text::Argument> arguments = {});

 private:
  using Result = std::optional<Type>;

  /// What a name stands for.
  struct Meaning {
    enum class Kind : std::uint8_t {
      unknown,
      measure,
      named,
      stated,
      field,
      cell,
      text,
      sum,
      flag
    } kind = Kind::unknown;
    std::uint32_t index = 0;
    Side side = Side::own;
  };

  // compilation.cpp: what stands on the stack
  Result compile(NodeIndex at);
  Result compile_figure(const Node& node);
  Result compile_name(NodeIndex at);
  Result compile_cell(std::uint32_t column);
  Result compile_sum(NodeIndex at);
  Result compile_arithmetic(NodeIndex at);
  Result compile_extremes(NodeIndex at);
  /// A figure made of one figure, of the same kind.
  Result compile_of_one(NodeIndex at, Code code);
  Result compile_choice(NodeIndex at);
  std::optional<Type> operand(NodeIndex at);
  bool comparable_operands(NodeIndex at, const Type& left, const Type& right, NodeIndex left_at,
                           NodeIndex right_at);

  // compilation_truths.cpp: comparisons and logic
  Result compile_comparison(NodeIndex at);
  Result compile_between(NodeIndex at);
  [[nodiscard]] std::optional<quantity::Range> written_figure(NodeIndex index) const;
  Result compile_logic(NodeIndex at);
  Result compile_denial(NodeIndex at);
  Result compile_is(NodeIndex at);
  Result compile_trait(NodeIndex at, Side side);
  Result compile_material_is(NodeIndex at);
  Result compile_part_is(NodeIndex at);
  Result compile_holds(NodeIndex at);
  Result compile_listed(NodeIndex at);
  Result compile_words(NodeIndex at, NodeIndex left, const std::vector<NodeIndex>& words);
  Result compile_stated(NodeIndex left, const Meaning& meaning,
                        const std::vector<NodeIndex>& items);
  Result compile_product(NodeIndex left, Side side, const std::vector<NodeIndex>& items);
  [[nodiscard]] bool other_side(NodeIndex item, const Meaning& left) const;
  Result compile_texts(NodeIndex left, const std::vector<NodeIndex>& items);
  bool is_words(NodeIndex at);
  std::optional<std::string> spelled(NodeIndex item, const Meaning& left);
  template <typename EachLeaf>
  Result logic_of(NodeIndex at, const EachLeaf& leaf);

  // compilation_names.cpp: names and selections
  Meaning resolve(std::string_view name) const;
  Meaning resolve_plain(std::string_view name) const;
  void refuse_name(NodeIndex at);
  bool refuse_side(NodeIndex at, const Sided& of);
  bool may_ask(NodeIndex at, Side side);
  bool gather_picks(NodeIndex at, std::vector<Pick>& picks, bool& aroma, bool denied);
  bool gather_pick(NodeIndex at, std::vector<Pick>& picks, bool& aroma, bool denied);
  std::optional<Named> named(NodeIndex at, bool& aroma);

  // the code that grows
  void emit(Code code, std::uint32_t c = 0, std::uint8_t a = 0, std::uint16_t b = nothing);
  /// An instruction that pushes what one of two formulas answers.
  void emit_of(Side side, Code code, std::uint32_t c = 0, std::uint8_t a = 0,
               std::uint16_t b = nothing);
  std::uint32_t here() const { return static_cast<std::uint32_t>(pool_.code.size()); }
  std::uint16_t keep(Test test);
  std::uint16_t keep_question(std::optional<Origin> origin = std::nullopt);

  [[nodiscard]] const Node& node(NodeIndex at) const { return source_.tree[at]; }
  [[nodiscard]] std::string words_of(NodeIndex at) const;
  [[nodiscard]] const catalogue::Table* table() const;

  Compiler& compiler_;
  Ruleset& ruleset_;
  Pool& pool_;
  const catalogue::Catalogue& catalogue_;
  Interner& interner_;
  const Source& source_;
  bool tests_;  ///< comparisons here decide
  bool denied_ = false;
  bool failed_ = false;
  bool pair_ = false;  ///< a side was named
  int depth_ = 0;
  int most_ = 0;
  std::size_t first_test_;
};

/// A type for a comparison's words: the dimension that both sides share.
[[nodiscard]] quantity::Dimension merged(const quantity::Dimension& a,
                                         const quantity::Dimension& b);

}  // namespace sudsmark::rules
