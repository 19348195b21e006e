// The plain evaluator that the compiled programs are held against: it walks the tree, knows nothing
// of programs, and does every step in the most obvious way.
#pragma once

#include <cmath>
#include <functional>
#include <map>
#include <string>

#include "blend/missing.h"
#include "quantity/range.h"
#include "rules/expression.h"
#include "rules/side.h"

namespace sudsmark::testing {

using quantity::Certainty;
using quantity::Range;
using rules::Op;

struct Walked {
  Range range;
  Certainty truth = Certainty::no;
  blend::MissingSet missing;
};

/// Values of the leaves by how they are written: "oils", "share(oil)", "forming = pressed".
using Leaves = std::function<Walked(const std::string& words)>;

class TreeWalker {
 public:
  TreeWalker(const rules::Tree& tree, std::string_view text, Leaves leaves)
      : tree_(tree), text_(text), leaves_(std::move(leaves)) {}

  Walked walk() { return walk(tree_.root); }
  /// Some divisor was nothing, so that the value means nothing.
  bool divided_by_nothing = false;
  /// Values of the leaves that ask the base, as they are written without `base.`.
  Leaves base_leaves;
  /// What 0 / 0 asks for is told by its divisor's words.
  std::function<blend::MissingSet(const std::string& divisor)> lacks;

 private:
  static Walked figure(Range range, blend::MissingSet missing) {
    Walked out;
    out.range = range;
    out.missing = range.low == range.high ? blend::MissingSet{} : missing;
    return out;
  }
  static Walked truth(Certainty certainty, blend::MissingSet missing) {
    Walked out;
    out.truth = certainty;
    out.missing = certainty == Certainty::depends ? missing : blend::MissingSet{};
    return out;
  }
  static Walked denied(const Walked& value) {
    if (value.truth == Certainty::depends) return value;
    return truth(value.truth == Certainty::yes ? Certainty::no : Certainty::yes, {});
  }
  static Walked both(const Walked& a, const Walked& b) {
    if (a.truth == Certainty::no || b.truth == Certainty::no) return truth(Certainty::no, {});
    if (a.truth == Certainty::yes && b.truth == Certainty::yes) return truth(Certainty::yes, {});
    return truth(Certainty::depends, a.missing | b.missing);
  }

  /// A node as it is written, without the parentheses around it.
  std::string words(const rules::Node& node) const {
    std::string_view out = text_.substr(node.begin, node.end - node.begin);
    while (out.starts_with('(')) out = out.substr(1, out.size() - 2);
    return std::string(out);
  }

  /// A leaf of the formula it asks: its own, or the base.
  Walked leaf(const std::string& words) const {
    if (words.starts_with("base.")) return base_leaves(words.substr(5));
    return leaves_(words.starts_with("tweak.") ? words.substr(6) : words);
  }

  Walked walk(rules::NodeIndex at) {
    const rules::Node& node = tree_[at];
    switch (node.op) {
      case Op::figure:
        return figure(node.value, {});
      case Op::name:
      case Op::sum:
        return leaf(words(node));
      case Op::equal:
      case Op::unequal:
        if (tree_[node.parts[1]].op == Op::name && tree_[node.parts[0]].op == Op::name &&
            is_word(node)) {
          const Walked asked =
              leaf(words(tree_[node.parts[0]]) + " = " + words(tree_[node.parts[1]]));
          return node.op == Op::equal ? asked : denied(asked);
        }
        break;
      case Op::choose: {
        const Walked condition = walk(node.parts[0]);
        if (condition.truth == Certainty::yes) return walk(node.parts[1]);
        if (condition.truth == Certainty::no) return walk(node.parts[2]);
        const Walked a = walk(node.parts[1]);
        const Walked b = walk(node.parts[2]);
        Walked out;
        out.range = quantity::hull(a.range, b.range);
        out.truth = a.truth == b.truth ? a.truth : Certainty::depends;
        const bool settled = out.range.exact() && out.truth != Certainty::depends;
        out.missing = settled ? blend::MissingSet{} : condition.missing | a.missing | b.missing;
        return out;
      }
      case Op::both: {
        const Walked a = walk(node.parts[0]);
        return a.truth == Certainty::no ? a : both(a, walk(node.parts[1]));
      }
      case Op::either: {
        // de Morgan, so that `or` is not the same code turned round
        const Walked a = walk(node.parts[0]);
        if (a.truth == Certainty::yes) return a;
        return denied(both(denied(a), denied(walk(node.parts[1]))));
      }
      default:
        break;
    }
    const Walked a = walk(node.parts[0]);
    if (node.op == Op::not_true) return denied(a);
    if (node.op == Op::negate) return figure(-a.range, a.missing);
    if (node.op == Op::absolute) return figure(quantity::abs(a.range), a.missing);
    if (node.op == Op::lowest || node.op == Op::highest) {
      const double end = node.op == Op::lowest ? a.range.low : a.range.high;
      if (!std::isfinite(end)) return figure(quantity::Range::unknown(), a.missing);
      return figure(quantity::Range(end), {});
    }
    const Walked b = walk(node.parts[1]);
    const blend::MissingSet missing = a.missing | b.missing;
    switch (node.op) {
      case Op::add:
        return figure(a.range + b.range, missing);
      case Op::subtract:
        return figure(a.range - b.range, missing);
      case Op::multiply:
        return figure(a.range * b.range, missing);
      case Op::divide:
        if (b.range.low == 0 && b.range.high == 0) {
          divided_by_nothing = true;
          return figure(Range::unknown(), missing | lacks(words(tree_[node.parts[1]])));
        }
        if (b.range.holds(0)) divided_by_nothing = true;
        return figure(a.range / b.range, missing);
      case Op::minimum:
        if (a.range.high <= b.range.low) return a;
        if (b.range.high <= a.range.low) return b;
        return figure(quantity::min(a.range, b.range), missing);
      case Op::maximum:
        if (a.range.low >= b.range.high) return a;
        if (b.range.low >= a.range.high) return b;
        return figure(quantity::max(a.range, b.range), missing);
      case Op::equal:
        return truth(quantity::equal(a.range, b.range), missing);
      case Op::unequal:
        return denied(truth(quantity::equal(a.range, b.range), missing));
      case Op::less:
        return truth(quantity::less(a.range, b.range), missing);
      case Op::less_equal:
        return truth(quantity::less_or_equal(a.range, b.range), missing);
      case Op::greater:
        return truth(quantity::less(b.range, a.range), missing);
      case Op::greater_equal:
        return truth(quantity::less_or_equal(b.range, a.range), missing);
      default: {  // between
        const Walked c = walk(node.parts[2]);
        return both(truth(quantity::less_or_equal(b.range, a.range), missing),
                    truth(quantity::less_or_equal(a.range, c.range), a.missing | c.missing));
      }
    }
  }

  bool is_word(const rules::Node& node) const {
    const std::string whole = words(tree_[node.parts[0]]);
    const std::string left(rules::sided(whole).name);
    return left == "forming" || left == "users" || left == "market" || left == "product";
  }

  const rules::Tree& tree_;
  std::string_view text_;
  Leaves leaves_;
};

}  // namespace sudsmark::testing
