#include "rules/compilation.h"

#include <algorithm>
#include <cstdlib>
#include <utility>

#include "measures/registry.h"
#include "rules/messages.h"

namespace sudsmark::rules {
namespace {

using quantity::Dimension;
using quantity::Flavour;

Type text_type() {
  Type type;
  type.kind = ValueKind::text;
  return type;
}
Type figure_type(const Dimension& dimension, std::string_view unit, bool given) {
  Type type;
  type.dimension = dimension;
  type.unit = unit;
  type.unit_given = given;
  return type;
}

/// Unit of a figure made of two like figures: that of the first who has one.
void take_unit(Type& result, const Type& a, const Type& b) {
  const Type& from = a.unit_given || !b.unit_given ? a : b;
  result.unit = from.unit;
  result.unit_given = from.unit_given;
}

bool too_far(const Dimension& d) {
  constexpr int most_exponent = 9;
  return std::max({std::abs(d.mass), std::abs(d.volume), std::abs(d.amount),
                   std::abs(d.temperature), std::abs(d.time)}) > most_exponent;
}

std::optional<SumKind> sum_kind(std::string_view name) {
  if (name == "share") return SumKind::share;
  if (name == "supplied") return SumKind::supplied;
  if (name == "mass") return SumKind::mass;
  if (name == "dose") return SumKind::dose;
  if (name == "in_bath") return SumKind::in_bath;
  if (name == "count") return SumKind::count;
  return std::nullopt;
}

Type sum_type(SumKind kind) {
  switch (kind) {
    case SumKind::share:
    case SumKind::supplied:
      return figure_type(quantity::dimension::share, "%", true);
    case SumKind::mass:
    case SumKind::dose:
      return figure_type(quantity::dimension::mass, "g", true);
    case SumKind::in_bath:
      return figure_type(quantity::dimension::concentration, "mg/l", true);
    case SumKind::count:
      break;
  }
  return figure_type(quantity::dimension::number, "1", true);
}

}  // namespace

Dimension merged(const Dimension& a, const Dimension& b) {
  return a.bare() && a.flavour == Flavour::ratio ? b : a;
}

std::string type_words(const Dimension& dimension) {
  std::string words(quantity::described(dimension));
  const quantity::Unit& unit = quantity::usual_unit(dimension);
  if (unit.word != "1") words += " (" + std::string(unit.word) + ")";
  return words;
}

std::string type_words(const Type& type) {
  switch (type.kind) {
    case ValueKind::figure:
      return type_words(type.dimension);
    case ValueKind::truth:
      return "something that is true or false";
    case ValueKind::text:
      break;
  }
  return "a word";
}

Compilation::Compilation(Compiler& compiler, const Source& source, bool tests)
    : compiler_(compiler),
      ruleset_(compiler.ruleset_),
      pool_(compiler.ruleset_.pool),
      catalogue_(compiler.catalogue_),
      interner_(compiler.interner_),
      source_(source),
      tests_(tests),
      first_test_(pool_.tests.size()) {}

std::optional<Program> Compilation::run(Type& type) {
  Program program;
  program.begin = here();
  program.first_test = static_cast<std::uint32_t>(first_test_);
  const Result result = compile(source_.tree.root);
  if (result && static_cast<std::size_t>(most_) > most_stack) {
    refuse(messages::too_involved, source_.tree.root, {static_cast<double>(most_stack)});
  }
  if (!result || failed_) {
    pool_.code.resize(program.begin);
    pool_.tests.resize(first_test_);
    return std::nullopt;
  }
  program.end = here();
  program.kind = result->kind;
  program.unit = result->unit;
  program.pair = pair_;
  program.test_count = static_cast<std::uint32_t>(pool_.tests.size() - first_test_);
  type = *result;
  return program;
}

void Compilation::refuse(const text::Message& message, NodeIndex at,
                         std::vector<text::Argument> arguments) {
  failed_ = true;
  compiler_.diagnostics_.add(message, source_.placing(node(at).begin, node(at).end),
                             std::move(arguments));
}

void Compilation::emit(Code code, std::uint32_t c, std::uint8_t a, std::uint16_t b) {
  pool_.code.push_back({code, a, b, c});
  depth_ += effect_of(code).growth();
  most_ = std::max(most_, depth_);
}

void Compilation::emit_of(Side side, Code code, std::uint32_t c, std::uint8_t a, std::uint16_t b) {
  if (side == Side::base) emit(Code::of_base);
  emit(code, c, a, b);
}

std::uint16_t Compilation::keep(Test test) {
  if (!tests_) return nothing;
  test.denied = denied_;
  pool_.tests.push_back(std::move(test));
  return static_cast<std::uint16_t>(pool_.tests.size() - 1 - first_test_);
}

std::uint16_t Compilation::keep_question(std::optional<Origin> origin) {
  Test test;
  if (origin) test.origins.push_back(*origin);
  return keep(std::move(test));
}

std::string Compilation::words_of(NodeIndex at) const {
  std::string_view text = source_.text.substr(node(at).begin, node(at).end - node(at).begin);
  if (text.starts_with('(') && text.ends_with(')')) text = text.substr(1, text.size() - 2);
  std::string words;
  for (const char c : text) {
    const bool blank = c == ' ' || c == '\n' || c == '\t' || c == '\r';
    if (!blank) {
      words += c;
    } else if (!words.empty() && words.back() != ' ') {
      words += ' ';
    }
  }
  while (!words.empty() && words.back() == ' ') words.pop_back();
  return words;
}

const catalogue::Table* Compilation::table() const {
  return source_.scope.table == nothing ? nullptr : &catalogue_.tables[source_.scope.table];
}

Compilation::Result Compilation::compile_of_one(NodeIndex at, Code code) {
  auto type = operand(node(at).parts[0]);
  if (type) emit(code);
  return type;
}

Compilation::Result Compilation::compile(NodeIndex at) {
  switch (node(at).op) {
    case Op::figure:
      return compile_figure(node(at));
    case Op::name:
      return compile_name(at);
    case Op::quoted:
      emit(Code::text, interner_.text(node(at).text));
      return text_type();
    case Op::negate:
      return compile_of_one(at, Code::negate);
    case Op::absolute:
      return compile_of_one(at, Code::absolute);
    case Op::lowest:
      return compile_of_one(at, Code::lowest);
    case Op::highest:
      return compile_of_one(at, Code::highest);
    case Op::add:
    case Op::subtract:
    case Op::multiply:
    case Op::divide:
      return compile_arithmetic(at);
    case Op::minimum:
    case Op::maximum:
      return compile_extremes(at);
    case Op::equal:
    case Op::unequal:
    case Op::less:
    case Op::less_equal:
    case Op::greater:
    case Op::greater_equal:
      return compile_comparison(at);
    case Op::between:
      return compile_between(at);
    case Op::in:
      return compile_words(at, node(at).parts[0], node(node(at).parts[1]).parts);
    case Op::is:
      return compile_is(at);
    case Op::listed:
      return compile_listed(at);
    case Op::holds:
      return compile_holds(at);
    case Op::not_true:
      return compile_denial(at);
    case Op::both:
    case Op::either:
      return compile_logic(at);
    case Op::choose:
      return compile_choice(at);
    case Op::sum:
      return compile_sum(at);
    case Op::list:
    case Op::pick_name:
    case Op::pick_quoted:
    case Op::pick_not:
    case Op::pick_both:
    case Op::pick_either:
      break;  // compiled by what they stand in
  }
  return std::nullopt;
}

Compilation::Result Compilation::compile_figure(const Node& figure) {
  emit(Code::figure, interner_.figure(figure.value));
  const bool given = figure.unit != nullptr;
  Type type = figure_type(figure.dimension, given ? figure.unit->word : "1", given);
  type.constant = true;
  return type;
}

Compilation::Result Compilation::compile_name(NodeIndex at) {
  const Meaning meaning = resolve(node(at).text);
  if (!may_ask(at, meaning.side)) return std::nullopt;
  switch (meaning.kind) {
    case Meaning::Kind::measure: {
      const measures::Measure& measure = measures::all()[meaning.index];
      emit_of(meaning.side, Code::measure, meaning.index);
      return figure_type(measures::dimension(measure), measure.unit, true);
    }
    case Meaning::Kind::named: {
      const NamedMeasure& measure = ruleset_.measures[meaning.index];
      emit_of(meaning.side, Code::named, meaning.index);
      // the measure's own text may move while the rules are read
      return figure_type(measure.dimension, quantity::find_unit(measure.unit)->word, true);
    }
    case Meaning::Kind::field: {
      const FieldInfo& field = info(static_cast<Field>(meaning.index));
      emit(Code::field, 0, static_cast<std::uint8_t>(meaning.index));
      return figure_type(quantity::find_unit(field.unit)->dimension, field.unit, true);
    }
    case Meaning::Kind::cell:
      return compile_cell(meaning.index);
    case Meaning::Kind::sum: {
      const auto kind = static_cast<SumKind>(meaning.index);
      if (source_.scope.each == Each::material && kind == SumKind::share) {
        refuse(messages::supplied_of_material, at);
        return std::nullopt;
      }
      const std::uint32_t subject = interner_.selection({{PickCode::subject, 0}}, false);
      emit_of(meaning.side, Code::sum, interner_.sum(kind, subject));
      return sum_type(kind);
    }
    case Meaning::Kind::stated:
      emit_of(meaning.side, Code::word_text, 0, static_cast<std::uint8_t>(meaning.index));
      return text_type();
    case Meaning::Kind::text:
      emit_of(meaning.side, Code::subject_text, 0, static_cast<std::uint8_t>(meaning.index));
      return text_type();
    case Meaning::Kind::flag:
      emit_of(meaning.side, Code::flag, 0, static_cast<std::uint8_t>(meaning.index),
              keep_question(Origin{Origin::Kind::flag, meaning.index}));
      return truth_type();
    case Meaning::Kind::unknown:
      break;
  }
  refuse_name(at);
  return std::nullopt;
}

Compilation::Result Compilation::compile_cell(std::uint32_t index) {
  const catalogue::Column& column = table()->columns[index];
  if (column.word) {
    emit(Code::subject_text, index, static_cast<std::uint8_t>(SubjectText::cell));
    return text_type();
  }
  emit(Code::cell, index);
  const auto unit = quantity::find_unit(column.unit);
  const std::string_view word = unit ? unit->word : quantity::usual_unit(column.dimension).word;
  return figure_type(column.dimension, word, true);
}

Compilation::Result Compilation::compile_sum(NodeIndex at) {
  const auto chosen = selection(node(at).parts[0]);
  if (!chosen) return std::nullopt;
  const auto [side, name] = sided(node(at).text);
  if (!may_ask(at, side)) return std::nullopt;
  if (name == "holds") {
    const std::uint32_t sum = interner_.sum(SumKind::count, *chosen);
    emit_of(side, Code::holds, sum, 0, keep_question(Origin{Origin::Kind::sum, sum}));
    return truth_type();
  }
  const SumKind kind = sum_kind(name).value_or(SumKind::share);
  emit_of(side, Code::sum, interner_.sum(kind, *chosen));
  return sum_type(kind);
}

std::optional<Type> Compilation::operand(NodeIndex at) {
  const Result type = compile(at);
  if (type && type->kind != ValueKind::figure) {
    refuse(messages::not_figure, at, {type_words(*type)});
    return std::nullopt;
  }
  return type;
}

bool Compilation::comparable_operands(NodeIndex at, const Type& left, const Type& right,
                                      NodeIndex left_at, NodeIndex right_at) {
  if (quantity::comparable(left.dimension, right.dimension)) return true;
  const auto plain = [](const Type& type) {
    return type.dimension.bare() && type.dimension.flavour == Flavour::number;
  };
  const auto share = [](const Type& type) {
    return type.dimension.bare() && type.dimension.flavour == Flavour::share;
  };
  const bool right_is_figure = node(right_at).op == Op::figure;
  const bool left_is_figure = node(left_at).op == Op::figure;
  const Op op = node(at).op;
  if (share(left) && plain(right) && right_is_figure) {
    refuse(messages::share_against_number, right_at, {words_of(right_at)});
  } else if (share(right) && plain(left) && left_is_figure) {
    refuse(messages::share_against_number, left_at, {words_of(left_at)});
  } else if (op == Op::add) {
    refuse(messages::added, at, {type_words(right), type_words(left), std::string("added to")});
  } else if (op == Op::subtract) {
    refuse(messages::added, at,
           {type_words(right), type_words(left), std::string("subtracted from")});
  } else {
    refuse(messages::against, at, {type_words(left), type_words(right)});
  }
  return false;
}

Compilation::Result Compilation::compile_arithmetic(NodeIndex at) {
  const NodeIndex left = node(at).parts[0];
  const NodeIndex right = node(at).parts[1];
  const auto a = operand(left);
  const auto b = operand(right);
  if (!a || !b) return std::nullopt;
  Type result;
  result.constant = a->constant && b->constant;
  const Op op = node(at).op;
  if (op == Op::add || op == Op::subtract) {
    if (!comparable_operands(at, *a, *b, left, right)) return std::nullopt;
    for (const NodeIndex side : {left, right}) {
      const quantity::Unit* unit = node(side).op == Op::figure ? node(side).unit : nullptr;
      if (unit != nullptr && unit->offset != 0) {
        refuse(messages::degrees, side);
        return std::nullopt;
      }
    }
    result.dimension = merged(a->dimension, b->dimension);
    take_unit(result, *a, *b);
    emit(op == Op::add ? Code::add : Code::subtract);
    return result;
  }
  const auto plain = [](const Type& type) {
    return type.dimension == quantity::dimension::number && !type.unit_given;
  };
  result.dimension = op == Op::multiply ? quantity::product(a->dimension, b->dimension)
                                        : quantity::quotient(a->dimension, b->dimension);
  if (too_far(result.dimension)) {
    refuse(messages::too_far, at);
    return std::nullopt;
  }
  result.unit = quantity::usual_unit(result.dimension).word;
  if (plain(*b) && result.dimension == a->dimension) {
    take_unit(result, *a, *a);
  } else if (op == Op::multiply && plain(*a) && result.dimension == b->dimension) {
    take_unit(result, *b, *b);
  }
  if (op == Op::multiply) {
    emit(Code::multiply);
  } else {
    emit(Code::divide, interner_.text(words_of(right)));
  }
  return result;
}

Compilation::Result Compilation::compile_extremes(NodeIndex at) {
  Result result;
  NodeIndex first = no_node;
  for (const NodeIndex part : node(at).parts) {
    const auto type = operand(part);
    if (!type) return std::nullopt;
    if (!result) {
      result = type;
      first = part;
      continue;
    }
    if (!comparable_operands(at, *result, *type, first, part)) return std::nullopt;
    Type joined;
    joined.dimension = merged(result->dimension, type->dimension);
    joined.constant = result->constant && type->constant;
    take_unit(joined, *result, *type);
    result = joined;
    emit(node(at).op == Op::minimum ? Code::minimum : Code::maximum);
  }
  return result;
}

Compilation::Result Compilation::compile_choice(NodeIndex at) {
  const bool tests = std::exchange(tests_, false);
  const Result condition = compile(node(at).parts[0]);
  tests_ = tests;
  if (condition && condition->kind != ValueKind::truth) {
    refuse(messages::not_truth, node(at).parts[0], {type_words(*condition)});
    return std::nullopt;
  }
  const std::uint32_t choose = here();
  emit(Code::choose);
  const Result first = compile(node(at).parts[1]);
  const std::uint32_t second_at = here();
  // where the condition cannot be told, both values stand on the stack at once
  const Result second = compile(node(at).parts[2]);
  depth_ -= 1;
  if (!condition || !first || !second) return std::nullopt;
  pool_.code[choose].b = static_cast<std::uint16_t>(second_at - choose - 1);
  pool_.code[choose].c = here() - second_at;
  if (first->kind != second->kind || (first->kind == ValueKind::figure &&
                                      !quantity::comparable(first->dimension, second->dimension))) {
    refuse(messages::branches, at, {type_words(*first), type_words(*second)});
    return std::nullopt;
  }
  Type result = *first;
  result.dimension = merged(first->dimension, second->dimension);
  result.constant = first->constant && second->constant;
  take_unit(result, *first, *second);
  return result;
}

}  // namespace sudsmark::rules
