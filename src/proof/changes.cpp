#include "proof/changes.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "catalogue/role.h"
#include "rules/words.h"
#include "text/name.h"

namespace sudsmark::proof {
namespace {

using rules::Node;
using rules::NodeIndex;
using rules::Op;
using rules::Tree;

/// The word behind one in a list, the first behind the last.
std::string_view next_of(std::span<const std::string_view> words, std::string_view word) {
  const auto at = std::find_if(words.begin(), words.end(), [&](std::string_view one) {
    return text::fold(one) == text::fold(word);
  });
  if (at == words.end()) return {};
  return at + 1 == words.end() ? words.front() : *(at + 1);
}

class Changing {
 public:
  Changing(const Tree& tree, std::string_view text, const catalogue::Catalogue& catalogue)
      : tree_(tree), text_(text), catalogue_(catalogue) {}

  std::vector<Change> run() {
    visit(tree_.root, rules::no_node);
    tell_apart();
    return std::move(changes_);
  }

 private:
  void visit(NodeIndex at, NodeIndex above) {
    const Node& node = tree_[at];
    switch (node.op) {
      case Op::figure:
        move(at);
        break;
      case Op::less:
      case Op::less_equal:
      case Op::greater:
      case Op::greater_equal:
        turn_bound(at);
        break;
      case Op::both:
      case Op::either:
      case Op::pick_both:
      case Op::pick_either:
        drop_joined(at, above);
        break;
      case Op::between:
        replace_op(at, Op::greater_equal, {node.parts[0], node.parts[1]},
                   "no upper end of " + quoted(at));
        replace_op(at, Op::less_equal, {node.parts[0], node.parts[2]},
                   "no lower end of " + quoted(at));
        break;
      case Op::choose:
        drop_to(at, node.parts[1], "always " + quoted(node.parts[1]));
        drop_to(at, node.parts[2], "always " + quoted(node.parts[2]));
        break;
      case Op::not_true:
      case Op::pick_not:
        drop_to(at, node.parts[0], "no 'not' before " + quoted(node.parts[0]));
        break;
      case Op::minimum:
      case Op::maximum:
        drop_items(at);
        break;
      case Op::list:
        if (node.parts.size() > 1) drop_items(at);
        break;
      case Op::pick_name:
      case Op::pick_quoted:
        exchange(at, stand_in(at, above));
        break;
      default:
        break;
    }
    if (node.op == Op::equal || node.op == Op::unequal || node.op == Op::in) exchange_words(at);
    for (const NodeIndex part : node.parts) visit(part, at);
  }

  [[nodiscard]] std::string quoted(NodeIndex at) const {
    const Node& node = tree_[at];
    return "'" + std::string(text_.substr(node.begin, node.end - node.begin)) + "'";
  }

  Node& add(ChangeKind kind, std::string words, NodeIndex at) {
    changes_.push_back({kind, std::move(words), tree_});
    return changes_.back().tree.nodes[at];
  }

  void move(NodeIndex at) {
    if (tree_[at].value.low == 0 && tree_[at].value.high == 0) return;
    constexpr double tenth = 0.1;
    for (const bool up : {true, false}) {
      Node& node =
          add(ChangeKind::limit, quoted(at) + (up ? " a tenth higher" : " a tenth lower"), at);
      const double factor = up ? 1 + tenth : 1 - tenth;
      node.value = quantity::Range{node.value.low * factor, node.value.high * factor};
    }
  }

  void turn_bound(NodeIndex at) {
    constexpr std::array<std::pair<Op, Op>, 4> turns{
        std::pair{Op::less, Op::less_equal}, std::pair{Op::less_equal, Op::less},
        std::pair{Op::greater, Op::greater_equal}, std::pair{Op::greater_equal, Op::greater}};
    const bool open = tree_[at].op == Op::less || tree_[at].op == Op::greater;
    Node& node = add(ChangeKind::bound,
                     (open ? "the bound itself in " : "the bound itself out of ") + quoted(at), at);
    for (const auto& [from, to] : turns) {
      if (tree_[at].op == from) node.op = to;
    }
  }

  void drop_to(NodeIndex at, NodeIndex kept, std::string words) {
    Node& node = add(ChangeKind::part, std::move(words), at);
    node = tree_[kept];
  }

  void replace_op(NodeIndex at, Op op, std::vector<NodeIndex> parts, std::string words) {
    Node& node = add(ChangeKind::part, std::move(words), at);
    node.op = op;
    node.parts = std::move(parts);
  }

  /// `a and b and c` is `(a and b) and c`: each of the three is dropped once.
  void drop_joined(NodeIndex at, NodeIndex /*above*/) {
    const Node& node = tree_[at];
    drop_to(at, node.parts[0], "without " + quoted(node.parts[1]));
    if (tree_[node.parts[0]].op == node.op) return;
    drop_to(at, node.parts[1], "without " + quoted(node.parts[0]));
  }

  void drop_items(NodeIndex at) {
    const std::vector<NodeIndex>& parts = tree_[at].parts;
    for (std::size_t one = 0; one < parts.size(); ++one) {
      if (tree_[at].op != Op::list && parts.size() == 2) {
        drop_to(at, parts[1 - one], "without " + quoted(parts[one]));
        continue;
      }
      Node& node = add(ChangeKind::part, "without " + quoted(parts[one]), at);
      node.parts.erase(node.parts.begin() + static_cast<std::ptrdiff_t>(one));
    }
  }

  void exchange(NodeIndex at, std::string_view other) {
    if (other.empty()) return;
    Node& node = add(ChangeKind::exchange, quoted(at) + " exchanged", at);
    node.text = other;
    node.op = node.op == Op::pick_name || node.op == Op::pick_quoted ? Op::pick_quoted : Op::quoted;
    if (catalogue::find_role(other) || catalogue::find_form(other)) node.op = Op::pick_name;
    if (traits_.contains(std::string(other))) node.op = Op::pick_name;
  }

  /// Something of the same sort that the expression does not name.
  std::string_view stand_in(NodeIndex at, NodeIndex above) {
    const Node& node = tree_[at];
    if (node.text == "beside") return {};
    if (above != rules::no_node && tree_[above].op == Op::is) {
      const Node& asked = tree_[tree_[above].parts[0]];
      if (asked.text == "product" || asked.text.ends_with(".product"))
        return other_trait(node.text);
    }
    if (node.op == Op::pick_name) {
      if (const auto role = catalogue::find_role(node.text)) {
        std::string_view word = catalogue::role_word(*role);
        do word = next_of(catalogue::role_words(), word);
        while (named(word));
        return word;
      }
      if (const auto form = catalogue::find_form(node.text)) {
        return next_of(catalogue::form_words(), catalogue::form_word(*form));
      }
      if (node.text == "powder") return "liquid";
      if (rules::is_hazard_code(node.text)) return {};
      for (const rules::MarkInfo& mark : rules::marks()) {
        if (mark.name == node.text) return {};
      }
    }
    for (const catalogue::Material& material : catalogue_.materials) {
      if (!named(material.name)) return material.name;
    }
    return {};
  }

  std::string_view other_trait(const std::string& trait) {
    for (const catalogue::ProductKind& kind : catalogue_.products) {
      for (const std::string& one : kind.traits) traits_.insert(one);
    }
    for (const std::string& one : traits_) {
      if (one != trait) return one;
    }
    return {};
  }

  /// Words behind `=`, `!=` and `in`.
  void exchange_words(NodeIndex at) {
    const Node& node = tree_[at];
    const Node& left = tree_[node.parts[0]];
    if (left.op != Op::name) return;
    std::vector<NodeIndex> items{node.parts[1]};
    if (tree_[items[0]].op == Op::list) items = tree_[node.parts[1]].parts;
    const std::string name = left.text.substr(left.text.starts_with("base.") ? 5 : 0);
    for (const NodeIndex item : items) {
      if (tree_[item].op != Op::name && tree_[item].op != Op::quoted) continue;
      if (name == "product") {
        const auto other = std::find_if(
            catalogue_.products.begin(), catalogue_.products.end(),
            [&](const catalogue::ProductKind& kind) { return !listed(items, kind.name); });
        if (other != catalogue_.products.end()) exchange(item, other->name);
      }
      for (const rules::StatedInfo& stated : rules::stated_words()) {
        if (stated.name != name) continue;
        const auto other =
            std::find_if(stated.known.begin(), stated.known.end(),
                         [&](std::string_view word) { return !listed(items, word); });
        if (other != stated.known.end()) exchange(item, *other);
      }
    }
  }

  [[nodiscard]] bool listed(const std::vector<NodeIndex>& items, std::string_view word) const {
    return std::any_of(items.begin(), items.end(), [&](NodeIndex item) {
      return text::fold(tree_[item].text) == text::fold(word);
    });
  }

  [[nodiscard]] bool named(std::string_view word) const {
    return std::any_of(tree_.nodes.begin(), tree_.nodes.end(),
                       [&](const Node& node) { return text::fold(node.text) == text::fold(word); });
  }

  /// "'1 %' a tenth higher", "'1 %' a tenth higher (2)"
  void tell_apart() {
    std::map<std::string, int> seen;
    for (Change& change : changes_) {
      const int times = ++seen[change.words];
      if (times > 1) change.words += " (" + std::to_string(times) + ")";
    }
  }

  const Tree& tree_;
  std::string_view text_;
  const catalogue::Catalogue& catalogue_;
  std::vector<Change> changes_;
  std::set<std::string> traits_;
};

}  // namespace

std::string_view words_of(ChangeKind kind) {
  constexpr std::array<std::string_view, 4> words{
      "limit moved by a tenth", "bound taken in or left out", "part dropped", "thing exchanged"};
  return words[static_cast<std::size_t>(kind)];
}

std::vector<Change> changes_of(const Tree& tree, std::string_view text,
                               const catalogue::Catalogue& catalogue) {
  return Changing(tree, text, catalogue).run();
}

}  // namespace sudsmark::proof
