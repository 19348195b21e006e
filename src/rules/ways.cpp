#include "rules/ways.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace sudsmark::rules {
namespace {

constexpr std::size_t most_ways = 12;

/// A truth as a tree over the tests of a program. Figures are nodes without any.
struct Node {
  enum class Kind : std::uint8_t { figure, test, deny, both, either, branches } kind = Kind::figure;
  std::uint16_t test = nothing;
  std::vector<Node> parts;
};

class Reader {
 public:
  Reader(const Pool& pool, const Program& program) : pool_(pool), program_(program) {}

  std::vector<Way> run(bool wanted) {
    read(program_.begin, program_.end);
    if (stack_.size() != 1) return {};
    return of(stack_.front(), wanted);
  }

 private:
  void push(Node::Kind kind, std::uint16_t test = nothing) { stack_.push_back({kind, test, {}}); }
  void drop(std::size_t count) { stack_.resize(stack_.size() - count); }

  void join(Node::Kind kind, std::size_t count) {
    Node node{kind, nothing, {}};
    node.parts.assign(std::make_move_iterator(stack_.end() - static_cast<std::ptrdiff_t>(count)),
                      std::make_move_iterator(stack_.end()));
    drop(count);
    stack_.push_back(std::move(node));
  }

  void read(std::uint32_t index, std::uint32_t end) {
    while (index < end) {
      const Instruction& one = pool_.code[index++];
      const auto takes = static_cast<std::size_t>(effect_of(one.code).takes);
      switch (one.code) {
        case Code::figure:
        case Code::measure:
        case Code::named:
        case Code::sum:
        case Code::field:
        case Code::cell:
        case Code::text:
        case Code::subject_text:
        case Code::word_text:
        case Code::negate:
        case Code::absolute:
        case Code::lowest:
        case Code::highest:
        case Code::add:
        case Code::subtract:
        case Code::multiply:
        case Code::divide:
        case Code::minimum:
        case Code::maximum:
          drop(takes);
          push(Node::Kind::figure);
          break;
        case Code::compare:
        case Code::between:
        case Code::same_text:
        case Code::is_word:
        case Code::same_words:
        case Code::is_product:
        case Code::has_trait:
        case Code::holds:
        case Code::is_material:
        case Code::is_listed:
        case Code::is_hazardous:
        case Code::is_marked:
        case Code::flag:
          drop(takes);
          push(Node::Kind::test, one.b);
          break;
        case Code::deny:
          join(Node::Kind::deny, takes);
          break;
        case Code::both:
          join(Node::Kind::both, takes);
          break;
        case Code::either:
          join(Node::Kind::either, takes);
          break;
        case Code::choose:
          drop(takes);
          index = branches(index, one);
          break;
        case Code::skip_if_no:
        case Code::skip_if_yes:
        case Code::of_base:
          break;
      }
    }
  }

  /// Reads the two blocks behind a `choose`, and answers where to go on.
  std::uint32_t branches(std::uint32_t index, const Instruction& choose) {
    const std::uint32_t second = index + choose.b;
    const std::uint32_t after = second + choose.c;
    read(index, second);
    read(second, after);
    if (stack_.back().kind == Node::Kind::figure) {
      drop(1);
    } else {
      join(Node::Kind::branches, 2);
    }
    return after;
  }

  [[nodiscard]] std::vector<Way> of(const Node& node, bool wanted) const {
    switch (node.kind) {
      case Node::Kind::figure:
        return {};
      case Node::Kind::test:
        return of_test(node.test, wanted);
      case Node::Kind::deny:
        return of(node.parts[0], !wanted);
      // only the branch that is taken asks its tests
      case Node::Kind::branches:
        return all(of(node.parts[0], wanted), of(node.parts[1], wanted));
      case Node::Kind::both:
      case Node::Kind::either:
        break;
    }
    auto first = of(node.parts[0], wanted);
    auto second = of(node.parts[1], wanted);
    if ((node.kind == Node::Kind::both) == wanted) return all(first, second);
    first.insert(first.end(), std::make_move_iterator(second.begin()),
                 std::make_move_iterator(second.end()));
    if (first.size() > most_ways) first.resize(most_ways);
    return first;
  }

  static std::vector<Way> all(const std::vector<Way>& a, const std::vector<Way>& b) {
    std::vector<Way> out;
    for (const Way& one : a) {
      for (const Way& other : b) {
        if (out.size() == most_ways) return out;
        Way& way = out.emplace_back(one);
        for (const Condition& condition : other) {
          if (std::find(way.begin(), way.end(), condition) == way.end()) way.push_back(condition);
        }
      }
    }
    return out;
  }

  [[nodiscard]] std::vector<Way> of_test(std::uint16_t number, bool wanted) const {
    if (number == nothing) return {{}};
    const Test& test = pool_.tests[program_.first_test + number];
    Condition one;
    one.test = number;
    // a test's own truth has its denial counted in
    one.wanted = wanted != test.denied;
    if (!test.compares) {
      one.question = true;
      return {{one}};
    }
    Condition below = one;
    below.upper = true;
    if (test.between) {
      Condition least = one;
      if (wanted) {
        below.second = true;
        return {{least, below}};
      }
      below.strict = true;
      least.second = true;
      least.strict = true;
      return {{below}, {least}};
    }
    switch (wanted ? test.relation : opposite(test.relation)) {
      case Relation::equal:
        one.exact = true;
        below.exact = true;
        return {{one, below}};
      case Relation::unequal:
        one.strict = true;
        below.strict = true;
        return {{one}, {below}};
      case Relation::less:
        below.strict = true;
        return {{below}};
      case Relation::less_equal:
        return {{below}};
      case Relation::greater:
        one.strict = true;
        break;
      case Relation::greater_equal:
        break;
    }
    return {{one}};
  }

  const Pool& pool_;
  const Program& program_;
  std::vector<Node> stack_;
};

}  // namespace

std::vector<Way> ways(const Pool& pool, const Program& program, bool wanted) {
  return Reader(pool, program).run(wanted);
}

std::optional<Slack> slack(const Condition& condition, const std::vector<Tried>& tried) {
  if (condition.question || condition.test >= tried.size()) return std::nullopt;
  const Tried& one = tried[condition.test];
  if (!one.asked) return std::nullopt;
  const Range& limit = condition.second ? one.high : one.low;
  const double end = condition.upper ? limit.low : limit.high;
  const double figure = condition.upper ? one.measured.high : one.measured.low;
  if (!std::isfinite(end) || !std::isfinite(figure)) return std::nullopt;
  return Slack{condition.upper ? end - figure : figure - end, end};
}

}  // namespace sudsmark::rules
