// The grammar in Spirit X3. Terms scan by hand (tokens.h); what cannot be left out is a `need` with
// our own words for it, which takes the place of X3's expectation, so that nothing throws and no
// message shows a C++ type.
#include "rules/grammar.h"

#include <algorithm>
#include <array>
#include <boost/fusion/include/at_c.hpp>
#include <boost/spirit/home/x3.hpp>
#include <string>
#include <utility>

#include "rules/messages.h"
#include "rules/side.h"
#include "rules/tokens.h"
#include "rules/words.h"
#include "text/name.h"

namespace sudsmark::rules {
namespace {

namespace x3 = boost::spirit::x3;
using boost::fusion::at_c;

/// Under this tag the Scan travels in the context of the grammar.
struct ScanTag;

template <typename Context>
Scan& scan_of(const Context& context) {
  return x3::get<ScanTag>(context);
}

struct Blanks : x3::parser<Blanks> {
  using attribute_type = x3::unused_type;
  [[maybe_unused]] static constexpr bool has_attribute = false;
  template <typename Context, typename RuleContext, typename Attribute>
  bool parse(Iterator& first, const Iterator& last, const Context& /*context*/,
             RuleContext& /*rule*/, Attribute& /*attribute*/) const {
    if (first == last || !is_blank(*first)) return false;
    ++first;
    return true;
  }
};

/// A parser from a scanner: `scanner(first, last, scan, attribute)`.
template <typename Attribute, typename Scanner>
struct Term : x3::parser<Term<Attribute, Scanner>> {
  using attribute_type = Attribute;
  static constexpr bool has_attribute = !std::is_same_v<Attribute, x3::unused_type>;
  constexpr explicit Term(Scanner with) : scanner(with) {}

  template <typename Context, typename RuleContext, typename Target>
  bool parse(Iterator& first, const Iterator& last, const Context& context, RuleContext& /*rule*/,
             Target& target) const {
    Scan& scan = scan_of(context);
    if (scan.refused()) return false;
    Iterator at = first;
    x3::skip_over(at, last, context);
    Attribute attribute{};
    if (!scanner(at, last, scan, attribute)) return false;
    first = at;
    scan.compared = false;
    if constexpr (std::is_same_v<Target, Attribute>) target = std::move(attribute);
    return true;
  }

  Scanner scanner;
};

template <typename Attribute, typename Scanner>
constexpr Term<Attribute, Scanner> term(Scanner scanner) {
  return Term<Attribute, Scanner>(scanner);
}

/// What cannot be left out.
template <typename Subject>
struct Need : x3::unary_parser<Subject, Need<Subject>> {
  using base = x3::unary_parser<Subject, Need<Subject>>;
  static constexpr bool is_pass_through_unary = true;
  constexpr Need(const Subject& inner, std::string_view expected) : base(inner), words(expected) {}

  template <typename Context, typename RuleContext, typename Target>
  bool parse(Iterator& first, const Iterator& last, const Context& context, RuleContext& rule,
             Target& target) const {
    if (this->subject.parse(first, last, context, rule, target)) return true;
    return scan_of(context).expected(words, first);
  }

  std::string_view words;
};

template <typename Subject>
constexpr auto need(std::string_view words, const Subject& subject) {
  return Need<typename x3::extension::as_parser<Subject>::value_type>{x3::as_parser(subject),
                                                                      words};
}

/// What may nest, with the depth counted.
template <typename Subject>
struct Deeper : x3::unary_parser<Subject, Deeper<Subject>> {
  using base = x3::unary_parser<Subject, Deeper<Subject>>;
  static constexpr bool is_pass_through_unary = true;
  constexpr explicit Deeper(const Subject& inner) : base(inner) {}

  template <typename Context, typename RuleContext, typename Target>
  bool parse(Iterator& first, const Iterator& last, const Context& context, RuleContext& rule,
             Target& target) const {
    Scan& scan = scan_of(context);
    if (scan.depth >= most_expression_depth) {
      return scan.refuse(messages::too_deep, first, first, {double{most_expression_depth}});
    }
    ++scan.depth;
    const bool matched = this->subject.parse(first, last, context, rule, target);
    --scan.depth;
    return matched;
  }
};

template <typename Subject>
constexpr auto deeper(const Subject& subject) {
  return Deeper<typename x3::extension::as_parser<Subject>::value_type>(x3::as_parser(subject));
}

constexpr auto keyword(std::string_view word) {
  return term<x3::unused_type>(
      [word](Iterator& first, Iterator last, Scan& /*scan*/, x3::unused_type&) {
        return scan_keyword(first, last, word);
      });
}

constexpr auto sign(std::string_view text) {
  return term<x3::unused_type>([text](Iterator& first, Iterator last, Scan& /*scan*/,
                                      x3::unused_type&) { return scan_sign(first, last, text); });
}

/// A sign or keyword whose attribute is its offset.
constexpr auto placed(std::string_view text) {
  return term<Iterator>([text](Iterator& first, Iterator last, Scan& /*scan*/, Iterator& place) {
    place = first;
    const bool letter = text[0] >= 'a' && text[0] <= 'z';
    return letter ? scan_keyword(first, last, text) : scan_sign(first, last, text);
  });
}

/// A ')' or '}' and where it ends.
constexpr auto closing(std::string_view text) {
  return term<Iterator>([text](Iterator& first, Iterator last, Scan& /*scan*/, Iterator& place) {
    const bool there = scan_sign(first, last, text);
    place = first;
    return there;
  });
}

constexpr auto minus =
    term<x3::unused_type>([](Iterator& first, Iterator last, Scan& scan, x3::unused_type&) {
      return scan_minus(first, last, scan);
    });

/// A '-' right before what it negates.
constexpr auto negative =
    term<Iterator>([](Iterator& first, Iterator last, Scan& /*scan*/, Iterator& place) {
      place = first;
      if (first == last || *first != '-') return false;
      if (first + 1 == last || is_blank(first[1])) return false;
      ++first;
      return true;
    });

constexpr auto relation = term<Op>([](Iterator& first, Iterator last, Scan& /*scan*/, Op& op) {
  using Sign = std::pair<std::string_view, Op>;
  constexpr std::array<Sign, 6> signs{Sign{"<=", Op::less_equal}, Sign{">=", Op::greater_equal},
                                      Sign{"!=", Op::unequal},    Sign{"=", Op::equal},
                                      Sign{"<", Op::less},        Sign{">", Op::greater}};
  for (const auto& [text, meaning] : signs) {
    if (!scan_sign(first, last, text)) continue;
    op = meaning;
    return true;
  }
  return false;
});

constexpr auto figure =
    term<NodeIndex>([](Iterator& first, Iterator last, Scan& scan, NodeIndex& at) {
      Node node;
      if (!scan_figure(first, last, scan, node)) return false;
      at = scan.add(std::move(node));
      return true;
    });

template <Op op>
constexpr auto name = term<NodeIndex>([](Iterator& first, Iterator last, Scan& scan,
                                         NodeIndex& at) {
  const Iterator begin = first;
  std::string text;
  if (!scan_name(first, last, op == Op::pick_name, text)) return false;
  at = scan.add(op, {}, begin, first, std::move(text));
  return true;
});

template <Op op>
constexpr auto quoted = term<NodeIndex>([](Iterator& first, Iterator last, Scan& scan,
                                           NodeIndex& at) {
  const Iterator begin = first;
  std::string text;
  if (!scan_quoted(first, last, scan, text)) return false;
  at = scan.add(op, {}, begin, first, std::move(text));
  return true;
});

struct Function {
  std::string name;
  Iterator begin = nullptr;
};

constexpr std::array<std::string_view, 7> sums{"share",   "supplied", "mass", "dose",
                                               "in_bath", "count",    "holds"};
constexpr std::array<std::string_view, 5> arithmetic{"min", "max", "abs", "lowest", "highest"};

template <std::size_t size>
bool one_of(const std::array<std::string_view, size>& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

/// The name of a function over a selection.
constexpr auto sum_function = term<Function>([](Iterator& first, Iterator last, Scan& /*scan*/,
                                                Function& function) {
  Iterator at = first;
  // `holds` is a keyword too: `material holds S`
  Iterator keyword_end = at;
  if (scan_keyword(keyword_end, last, "holds")) {
    function.name = "holds";
    at = keyword_end;
  } else if (!scan_function(at, last, function.name) || !one_of(sums, sided(function.name).name)) {
    return false;
  }
  function.begin = first;
  first = at;
  return true;
});

constexpr auto plain_function =
    term<Function>([](Iterator& first, Iterator last, Scan& scan, Function& function) {
      Iterator at = first;
      if (!scan_function(at, last, function.name)) return false;
      if (!one_of(arithmetic, function.name)) {
        const std::vector<std::string> known(functions().begin(), functions().end());
        const auto near = text::nearest(sided(function.name).name, known);
        return scan.refuse(
            messages::unknown_function, first, at,
            {function.name, "; known are " + text::listed(near.empty() ? known : near, "and")});
      }
      function.begin = first;
      first = at;
      return true;
    });

// Actions. A rule's value is the index of the node that it made.

constexpr auto take = [](auto& context) { x3::_val(context) = x3::_attr(context); };

template <Op op>
constexpr auto join = [](auto& context) {
  x3::_val(context) = scan_of(context).add(op, {x3::_val(context), x3::_attr(context)});
};

constexpr auto compare = [](auto& context) {
  Scan& scan = scan_of(context);
  const auto& attribute = x3::_attr(context);
  x3::_val(context) = scan.add(at_c<0>(attribute), {x3::_val(context), at_c<1>(attribute)});
  scan.compared = true;
};

constexpr auto lie_between = [](auto& context) {
  Scan& scan = scan_of(context);
  const auto& attribute = x3::_attr(context);
  x3::_val(context) =
      scan.add(Op::between, {x3::_val(context), at_c<0>(attribute), at_c<1>(attribute)});
  scan.compared = true;
};

/// `is not X` and `not in {…}` are `not (… is X)`.
template <Op op>
constexpr auto join_denied = [](auto& context) {
  Scan& scan = scan_of(context);
  x3::_val(context) =
      scan.add(Op::not_true, {scan.add(op, {x3::_val(context), x3::_attr(context)})});
};

template <Op op>
constexpr auto before = [](auto& context) {
  const auto& attribute = x3::_attr(context);
  x3::_val(context) = scan_of(context).add(op, {at_c<1>(attribute)}, at_c<0>(attribute));
};

constexpr auto choose = [](auto& context) {
  const auto& attribute = x3::_attr(context);
  x3::_val(context) = scan_of(context).add(
      Op::choose, {at_c<1>(attribute), at_c<2>(attribute), at_c<3>(attribute)}, at_c<0>(attribute));
};

constexpr auto enclose = [](auto& context) {
  const auto& attribute = x3::_attr(context);
  x3::_val(context) = at_c<1>(attribute);
  Node& node = scan_of(context).tree.nodes[x3::_val(context)];
  node.begin = scan_of(context).offset(at_c<0>(attribute));
  node.end = scan_of(context).offset(at_c<2>(attribute));
};

constexpr auto listed = [](auto& context) {
  const auto& attribute = x3::_attr(context);
  x3::_val(context) =
      scan_of(context).add(Op::list, at_c<1>(attribute), at_c<0>(attribute), at_c<2>(attribute));
};

constexpr auto call_sum = [](auto& context) {
  const auto& attribute = x3::_attr(context);
  const Function& function = at_c<0>(attribute);
  x3::_val(context) = scan_of(context).add(Op::sum, {at_c<1>(attribute)}, function.begin,
                                           at_c<2>(attribute), function.name);
};

Op function_op(std::string_view name) {
  if (name == "abs") return Op::absolute;
  if (name == "lowest") return Op::lowest;
  if (name == "highest") return Op::highest;
  return name == "min" ? Op::minimum : Op::maximum;
}

constexpr auto call_plain = [](auto& context) {
  Scan& scan = scan_of(context);
  const auto& attribute = x3::_attr(context);
  const Function& function = at_c<0>(attribute);
  const std::vector<NodeIndex>& parts = at_c<1>(attribute);
  const Op op = function_op(function.name);
  const bool several = op == Op::minimum || op == Op::maximum;
  if (several ? parts.size() < 2 : parts.size() != 1) {
    scan.expected(several ? "two figures or more, with commas between"
                          : "one figure in " + function.name + "(…)",
                  at_c<2>(attribute) - 1);
    x3::_pass(context) = false;
    return;
  }
  x3::_val(context) = scan.add(op, parts, function.begin, at_c<2>(attribute));
};

using NodeRule = NodeIndex;
template <typename Id>
using Rule = x3::rule<Id, NodeRule>;

constexpr std::string_view operand = "a figure, a measure or '('";
constexpr std::string_view choice = "a role, a form, a substance, a material or '('";
constexpr std::string_view word = "a word";
constexpr std::string_view table = "the id of a table";

// Selections.

const Rule<struct SelectionId> selection{"selection"};
const Rule<struct SelectionBothId> selection_both{"selection and"};
const Rule<struct SelectionNotId> selection_not{"selection not"};
const Rule<struct SelectionPartId> selection_part{"selection part"};

const auto selection_def = selection_both[take] >>
                           *(keyword("or") >> need(choice, selection_both)[join<Op::pick_either>]);
const auto selection_both_def = selection_not[take] >>
                                *(keyword("and") >>
                                  need(choice, selection_not)[join<Op::pick_both>]);
const auto selection_not_def =
    (placed("not") >> deeper(need(choice, selection_not)))[before<Op::pick_not>] |
    selection_part[take];
const auto selection_part_def =
    (placed("(") >> deeper(need(choice, selection)) >> need("')'", closing(")")))[enclose] |
    quoted<Op::pick_quoted>[take] | name<Op::pick_name>[take];

BOOST_SPIRIT_DEFINE(selection, selection_both, selection_not, selection_part)

// Expressions.

const Rule<struct ExpressionId> expression{"expression"};
const Rule<struct EitherId> either{"either"};
const Rule<struct BothId> both{"both"};
const Rule<struct NotId> negation{"negation"};
const Rule<struct ComparisonId> comparison{"comparison"};
const Rule<struct SumId> sum{"sum"};
const Rule<struct ProductId> product{"product"};
const Rule<struct SignedId> with_sign{"signed"};
const Rule<struct PrimaryId> primary{"primary"};
const Rule<struct ListId> list{"list"};
const Rule<struct ItemId> item{"item"};

const auto expression_def =
    (placed("if") >> deeper(need("a condition", expression)) >> need("'then'", keyword("then")) >>
     deeper(need(operand, expression)) >> need("'else'", keyword("else")) >>
     deeper(need(operand, expression)))[choose] |
    either[take];
const auto either_def = both[take] >> *(keyword("or") >> need(operand, both)[join<Op::either>]);
const auto both_def = negation[take] >>
                      *(keyword("and") >> need(operand, negation)[join<Op::both>]);
const auto negation_def =
    (placed("not") >> deeper(need(operand, negation)))[before<Op::not_true>] | comparison[take];
const auto comparison_def =
    sum[take] >>
    -((relation >> need(operand, sum))[compare] |
      (keyword("between") >> need(operand, sum) >> need("'and'", keyword("and")) >>
       need(operand, sum))[lie_between] |
      (keyword("in") >> need("'{'", list))[join<Op::in>] |
      (keyword("not") >> need("'in'", keyword("in")) >> need("'{'", list))[join_denied<Op::in>] |
      (keyword("is") >> keyword("listed") >> keyword("in") >> need(table, item))[join<Op::listed>] |
      (keyword("is") >> keyword("not") >> keyword("listed") >> keyword("in") >>
       need(table, item))[join_denied<Op::listed>] |
      (keyword("is") >> keyword("not") >> need(choice, selection_part))[join_denied<Op::is>] |
      (keyword("is") >> need(choice, selection_part))[join<Op::is>] |
      (keyword("holds") >> need(choice, selection_part))[join<Op::holds>]);
const auto sum_def = product[take] >> *((sign("+") >> need(operand, product)[join<Op::add>]) |
                                        (minus >> need(operand, product)[join<Op::subtract>]));
const auto product_def = with_sign[take] >>
                         *((sign("*") >> need(operand, with_sign)[join<Op::multiply>]) |
                           (sign("/") >> need(operand, with_sign)[join<Op::divide>]));
const auto with_sign_def =
    (negative >> deeper(need(operand, with_sign)))[before<Op::negate>] | primary[take];
const auto primary_def =
    (placed("(") >> deeper(need(operand, expression)) >> need("')'", closing(")")))[enclose] |
    figure[take] |
    (sum_function >> sign("(") >> deeper(need(choice, selection)) >>
     need("')'", closing(")")))[call_sum] |
    (plain_function >> sign("(") >> (deeper(need(operand, expression)) % sign(",")) >>
     need("')'", closing(")")))[call_plain] |
    quoted<Op::quoted>[take] | name<Op::name>[take];
const auto list_def =
    (placed("{") >> (need(word, item) % sign(",")) >> need("'}'", closing("}")))[listed];
const auto item_def = quoted<Op::quoted>[take] | name<Op::name>[take];

BOOST_SPIRIT_DEFINE(expression, either, both, negation, comparison, sum, product, with_sign,
                    primary, list, item)

template <typename Grammar>
std::optional<Tree> run(std::string_view text, const Grammar& grammar, std::string_view operators,
                        SyntaxError& error) {
  if (text.size() > most_expression_bytes) {
    error = {&messages::too_long,
             {std::to_string(most_expression_bytes), std::to_string(text.size())},
             0,
             static_cast<std::uint32_t>(text.size())};
    return std::nullopt;
  }
  Scan scan(text);
  Iterator first = scan.begin();
  NodeIndex root = no_node;
  const bool matched =
      x3::phrase_parse(first, scan.end(), x3::with<ScanTag>(scan)[grammar], Blanks{}, root);
  if (matched && first != scan.end()) scan.expected(operators, first);
  if (scan.refused()) {
    error = std::move(scan.error);
    return std::nullopt;
  }
  scan.tree.root = root;
  return std::move(scan.tree);
}

}  // namespace

std::optional<Tree> parse_expression(std::string_view text, SyntaxError& error) {
  return run(text, need(operand, expression), "an operator or the end", error);
}

std::optional<Tree> parse_selection(std::string_view text, SyntaxError& error) {
  return run(text, need(choice, selection), "'and', 'or' or the end", error);
}

}  // namespace sudsmark::rules
