#include "rules/grammar.h"

#include <doctest/doctest.h>

#include <string>

#include "quantity/number.h"

namespace {

using namespace sudsmark;
using rules::Op;

std::string_view op_word(Op op) {
  switch (op) {
    case Op::negate:
      return "negate";
    case Op::add:
      return "+";
    case Op::subtract:
      return "-";
    case Op::multiply:
      return "*";
    case Op::divide:
      return "/";
    case Op::minimum:
      return "min";
    case Op::maximum:
      return "max";
    case Op::absolute:
      return "abs";
    case Op::lowest:
      return "lowest";
    case Op::highest:
      return "highest";
    case Op::equal:
      return "=";
    case Op::unequal:
      return "!=";
    case Op::less:
      return "<";
    case Op::less_equal:
      return "<=";
    case Op::greater:
      return ">";
    case Op::greater_equal:
      return ">=";
    case Op::between:
      return "between";
    case Op::in:
      return "in";
    case Op::is:
      return "is";
    case Op::holds:
      return "holds";
    case Op::listed:
      return "listed";
    case Op::not_true:
      return "not";
    case Op::both:
      return "and";
    case Op::either:
      return "or";
    case Op::choose:
      return "if";
    case Op::list:
      return "list";
    case Op::pick_not:
      return "NOT";
    case Op::pick_both:
      return "AND";
    case Op::pick_either:
      return "OR";
    default:
      return "?";
  }
}

std::string shown(const rules::Tree& tree, rules::NodeIndex at) {
  const rules::Node& node = tree[at];
  switch (node.op) {
    case Op::figure:
      return quantity::machine_number(node.value.low) +
             (node.unit == nullptr ? std::string() : ":" + std::string(node.unit->word));
    case Op::name:
    case Op::pick_name:
      return "<" + node.text + ">";
    case Op::quoted:
    case Op::pick_quoted:
      return "\"" + node.text + "\"";
    default:
      break;
  }
  std::string out = "(";
  out += node.op == Op::sum ? node.text : std::string(op_word(node.op));
  for (const rules::NodeIndex part : node.parts) out += " " + shown(tree, part);
  return out + ")";
}

/// The tree of an expression, or "BEGIN-END sentence" of what is wrong with it.
std::string read(std::string_view text) {
  rules::SyntaxError error;
  const auto tree = rules::parse_expression(text, error);
  if (tree) return shown(*tree, tree->root);
  return std::to_string(error.begin) + "-" + std::to_string(error.end) + " " +
         text::sentence({error.message, error.arguments, {}});
}

std::string nested(int depth) {
  return std::string(static_cast<std::size_t>(depth), '(') + "1" +
         std::string(static_cast<std::size_t>(depth), ')');
}

}  // namespace

TEST_CASE("expressions become trees") {
  CHECK(read("1 + 2 * 3") == "(+ 1 (* 2 3))");
  CHECK(read("(1 + 2) * 3") == "(* (+ 1 2) 3)");
  CHECK(read("a - b - c") == "(- (- <a> <b>) <c>)");
  CHECK(read("a or b and not c") == "(or <a> (and <b> (not <c>)))");
  CHECK(read("oils+scent") == "(+ <oils> <scent>)");
  CHECK(read("emulsifier/oils >= 0.5") == "(>= (/ <emulsifier> <oils>) 0.5)");
  CHECK(read("bath.ph between 6 and 8 and oils > 1 %") ==
        "(and (between <bath.ph> 6 8) (> <oils> 0.01:%))");
  CHECK(read("min(a, max(b, c, 1), abs(d))") == "(min <a> (max <b> <c> 1) (abs <d>))");
  CHECK(read("lowest(a) - highest(b + c)") == "(- (lowest <a>) (highest (+ <b> <c>)))");
  CHECK(read("if a then 1 else if b then 2 else 3") == "(if <a> 1 (if <b> 2 3))");
  CHECK(read("-2") == "(negate 2)");
  CHECK(read("a * -b") == "(* <a> (negate <b>))");
  CHECK(read("looks_like_food") == "<looks_like_food>");
}

TEST_CASE("hyphens belong to names, subtractions have blanks") {
  CHECK(read("fat-to-active") == "<fat-to-active>");
  CHECK(read("fat - to") == "(- <fat> <to>)");
  CHECK(read("a -b") == "2-3 a subtraction has a blank on each side of its '-'");
  CHECK(read("a- b") == "1-2 a subtraction has a blank on each side of its '-'");
  CHECK(read("5-3") == "1-2 a subtraction has a blank on each side of its '-'");
  CHECK(read("(a)-(b)") == "3-4 a subtraction has a blank on each side of its '-'");
}

TEST_CASE("words between blanks are one name") {
  CHECK(read("product = bath  fizzy and users = adults") ==
        "(and (= <product> <bath fizzy>) (= <users> <adults>))");
  CHECK(read("product in {bubble bar, bath fizzy}") ==
        "(in <product> (list <bubble bar> <bath fizzy>))");
  CHECK(read("product not in {bubble bar}") == "(not (in <product> (list <bubble bar>)))");
  CHECK(read("users = children over 3") == "(= <users> <children over 3>)");
  CHECK(read("product is bath-diluted") == "(is <product> <bath-diluted>)");
  CHECK(read("product is not foaming or x") == "(or (not (is <product> <foaming>)) <x>)");
  CHECK(read("bandit = island") == "(= <bandit> <island>)");
  CHECK(read("in_bath > 1 mg/l") == "(> <in_bath> 0.001:mg/l)");
}

TEST_CASE("selections") {
  CHECK(read("share(shea butter)") == "(share <shea butter>)");
  CHECK(read("share(oil and not (butter or \"a, b\"))") ==
        "(share (AND <oil> (NOT (OR <butter> \"a, b\"))))");
  CHECK(read("supplied(CI 42090 or 151-21-3)") == "(supplied (OR <CI 42090> <151-21-3>))");
  CHECK(read("in_bath(caprylic/capric triglyceride)") ==
        "(in_bath <caprylic/capric triglyceride>)");
  CHECK(read("holds(polysorbate 80)") == "(holds <polysorbate 80>)");
  CHECK(read("holds ( 'say \"it\"' )") == "(holds \"say \"it\"\")");
  CHECK(read("material holds (citral or linalool) and x") ==
        "(and (holds <material> (OR <citral> <linalool>)) <x>)");
  CHECK(read("count(h\xC3\xA9lio)") == "(count <h\xC3\xA9lio>)");
}

TEST_CASE("figures with units") {
  CHECK(read("2 kg") == "2000:kg");
  CHECK(read("2kg") == "2000:kg");
  CHECK(read("1/3 kg") == "333.3333333:kg");
  CHECK(read("1/3") == "(/ 1 3)");
  CHECK(read("1/3 / a") == "(/ (/ 1 3) <a>)");
  CHECK(read("0.6 g per kg") == "0.0006:g/kg");
  CHECK(read("0.5 g per 100 g") == "0.005:%");
  CHECK(read("1.5 per hour") == "1.5:per hour");
  CHECK(read("10 g/limit") == "(/ 10:g <limit>)");
  CHECK(read("38 C") == "38:C");
  CHECK(read("50 F") == "10:F");
  CHECK(read("5 g and x") == "(and 5:g <x>)");
}

TEST_CASE("what is wrong is said in our words, at its place") {
  CHECK(read("") == "0-0 expected a figure, a measure or '(', found the end");
  CHECK(read("  ") == "2-2 expected a figure, a measure or '(', found the end");
  CHECK(read("1 +") == "3-3 expected a figure, a measure or '(', found the end");
  CHECK(read("a > > 1") == "4-5 expected a figure, a measure or '(', found '>'");
  CHECK(read("(a + b") == "6-6 expected ')', found the end");
  CHECK(read("a b)") == "3-4 expected an operator or the end, found ')'");
  CHECK(read("share()") ==
        "6-7 expected a role, a form, a substance, a material or '(', found ')'");
  CHECK(read("share(oil") == "9-9 expected ')', found the end");
  CHECK(read("share(oil, butter)") == "9-10 expected ')', found ','");
  CHECK(read("a in oils") == "5-6 expected '{', found 'oils'");
  CHECK(read("a in {}") == "6-7 expected a word, found '}'");
  CHECK(read("a in {b, }") == "9-10 expected a word, found '}'");
  CHECK(read("a in {b") == "7-7 expected '}', found the end");
  CHECK(read("a between 1 or 2") == "12-13 expected 'and', found 'or'");
  CHECK(read("if a then b") == "11-11 expected 'else', found the end");
  CHECK(read("if a else b") == "5-6 expected 'then', found 'else'");
  CHECK(read("a > 0,5") == "5-6 a decimal comma: write the figure with a point");
  CHECK(read("a < b < c") ==
        "6-7 a second comparison: write 'x between a and b', or join two comparisons with 'and'");
  CHECK(read("5 kgs") == "2-5 'kgs' is not a unit that is known; perhaps 'kg'");
  CHECK(read("shares(a)") == "0-6 'shares' is not a function that is known; known are 'share'");
  CHECK(read("mean(a, b)") ==
        "0-4 'mean' is not a function that is known; known are 'share', 'supplied', 'mass', "
        "'dose', 'in_bath', 'count', 'holds', 'min', 'max', 'abs', 'lowest' and 'highest'");
  CHECK(read("min(a)") == "5-6 expected two figures or more, with commas between, found ')'");
  CHECK(read("abs(a, b)") == "8-9 expected one figure in abs(…), found ')'");
  CHECK(read("lowest(a, b)") == "11-12 expected one figure in lowest(…), found ')'");
  CHECK(read("a = \"b") == "4-5 this quote is never closed");
  CHECK(read("5 per kg") == "2-5 'per' needs a unit on each side, as in '0.6 g per kg'");
  CHECK(read("a ? b") == "2-3 expected an operator or the end, found '?'");
  CHECK(read("1" + std::string(400, '0') + " > a") ==
        "0-401 this figure is too large or too small to be kept");
  CHECK(read("\xFF\xFE").starts_with("expected") == false);
}

TEST_CASE("bounds") {
  CHECK(read(nested(64)) == "1");
  CHECK(read(nested(65)) == "65-65 the expression is nested more than 64 deep");
  CHECK(read(nested(1900)).find("nested more than 64 deep") != std::string::npos);
  std::string nots;
  for (int at = 0; at < 900; ++at) nots += "not ";
  CHECK(read(nots + "a").find("nested more than 64 deep") != std::string::npos);
  std::string ifs;
  for (int at = 0; at < 300; ++at) ifs += "if a then ";
  CHECK(read(ifs).find("nested more than 64 deep") != std::string::npos);
  CHECK(read("share(" + nested(64) + ")").find("nested more than 64 deep") != std::string::npos);
  CHECK(read(std::string(4001, ' ')) ==
        "0-4001 an expression is at most 4000 bytes long; this one has 4001");
}
