// The machine: runs programs over one formula.
//
// A Machine belongs to one blend and one thread. It is the stack alone; what programs ask the
// formula for, its figures answer (figures.h). A rule over a tweak and its base runs on the tweak's
// machine, which has another for the base.
#pragma once

#include <cassert>
#include <cstdint>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "rules/figures.h"

namespace sudsmark::rules {

/// What a test of an `expect` came to.
struct Tried {
  bool asked = false;
  Certainty truth = Certainty::no;  ///< as the expression needs it, `not` counted in
  Range measured;
  Range low;  ///< the limit, or the lower of two
  Range high;
};

class Machine {
 public:
  /// `markets` take the place of the blend's, where there are any. `base` is what rules over a
  /// tweak and its base hold the blend against; it must outlive the machine.
  Machine(const Ruleset& ruleset, const blend::Blend& blend, blend::MissingTable& missing,
          const std::vector<std::string>& markets, const Day& today = {},
          const blend::Blend* base = nullptr);

  /// Runs a program. `tried` is filled where the program has tests and somebody wants them.
  Value run(const Program& program, const Subject& subject, std::vector<Tried>* tried = nullptr);

  // machine_plain.cpp
  /// What a condition comes to, where no figure has to be asked for; nothing where one has. It
  /// never adds a reason.
  [[nodiscard]] std::optional<bool> plain(const Program& program, const Subject& subject) const {
    return settled(program, &subject);
  }

  /// Whether a condition is `no` whatever its subject is, so that no subject has to be asked: of
  /// another kind of product, or of materials of which none is there. Asks for no figure before
  /// that shows, and so never adds a reason.
  [[nodiscard]] bool never(const Program& program) const {
    return settled(program, nullptr) == false;
  }

  [[nodiscard]] Figures& figures() { return figures_; }
  [[nodiscard]] const Figures& figures() const { return figures_; }

  // machine_pair.cpp: the base
  /// The reasons without those of the base that are the formula's own as well.
  [[nodiscard]] MissingSet without_doubles(MissingSet missing) const;

  /// Reasons in words: those of the formula, and those of its base.
  struct Doubts {
    std::set<std::string_view> own;
    std::set<std::string_view> of_base;
    friend bool operator==(const Doubts&, const Doubts&) = default;
  };
  [[nodiscard]] Doubts doubts(const MissingSet& missing) const;

  [[nodiscard]] bool has_base() const { return base_blend_ != nullptr; }
  /// A subject as it is in the base, which the machine has. Its ingredient is null where the base
  /// does not have the material.
  [[nodiscard]] Subject in_base(const Subject& subject) const;

 private:
  /// What a run is about.
  struct Run {
    const Program& program;
    const Subject& subject;
    std::vector<Tried>* tried;
  };

  /// Of one subject, or of whichever there may be.
  [[nodiscard]] std::optional<bool> settled(const Program& program, const Subject* subject) const;
  [[nodiscard]] std::optional<bool> plain_cell(std::uint32_t index, std::uint32_t end,
                                               const Subject& subject) const;
  void run(std::uint32_t index, std::uint32_t end, const Run& run);
  void step(const Instruction& instruction, const Run& run);
  /// Does what a block of code behind an instruction is for, and answers where to go on.
  std::uint32_t choose(std::uint32_t index, const Run& run);
  void ask_base(const Instruction& instruction, const Run& run);
  /// Pushes what a test came to, and notes it.
  void answer(const Instruction& instruction, Value value, const Run& run);
  void answer(const Instruction& instruction, bool is, const Run& run);
  void note(const Instruction& instruction, Certainty truth, const Run& run);
  void push_figure(const Measured& measured);
  void join(Certainty decisive);
  void compare(const Instruction& instruction, const Run& run);
  [[nodiscard]] Value divided(const Instruction& instruction, const Value& a, const Value& b);
  [[nodiscard]] const Measured& named(std::uint32_t index, const Subject& subject);
  [[nodiscard]] Value same_words(StatedWords words);

  void make_room();
  void push(Value value) {
    assert(size_ < stack_.size());
    stack_[size_++] = std::move(value);
  }
  /// The place of a value that is pushed, with what stood there before.
  Value& next() {
    assert(size_ < stack_.size());
    return stack_[size_++];
  }
  Value& top() { return stack_[size_ - 1]; }
  Value pop() {
    assert(size_ > 0);
    return std::move(stack_[--size_]);
  }

  Machine* base();
  MissingSet carried(const MissingSet& of_base);

  const Ruleset& ruleset_;
  Figures figures_;
  Day today_;
  blend::MissingTable& missing_;
  std::vector<Value> stack_;
  std::size_t size_ = 0;

  const blend::Blend* base_blend_;
  std::vector<std::string> base_markets_;
  std::unique_ptr<Machine> base_;     ///< made when a rule first asks it
  blend::MissingTable base_missing_;  ///< its reasons, in its own words
  std::vector<MissingSet> of_base_;   ///< by reason of the base: the same in `missing_`
};

}  // namespace sudsmark::rules
