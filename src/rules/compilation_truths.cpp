// Comparisons, questions and logic: what leaves a truth on the stack.
#include <algorithm>
#include <utility>

#include "measures/registry.h"
#include "rules/compilation.h"
#include "rules/messages.h"
#include "text/name.h"
#include "text/yaml_fields.h"

namespace sudsmark::rules {
namespace {

std::optional<Relation> relation_of(Op op) {
  switch (op) {
    case Op::equal:
      return Relation::equal;
    case Op::unequal:
      return Relation::unequal;
    case Op::less:
      return Relation::less;
    case Op::less_equal:
      return Relation::less_equal;
    case Op::greater:
      return Relation::greater;
    case Op::greater_equal:
      return Relation::greater_equal;
    default:
      return std::nullopt;
  }
}

/// `a < b` says of b that `b > a`.
Relation turned(Relation relation) {
  switch (relation) {
    case Relation::less:
      return Relation::greater;
    case Relation::less_equal:
      return Relation::greater_equal;
    case Relation::greater:
      return Relation::less;
    case Relation::greater_equal:
      return Relation::less_equal;
    default:
      return relation;
  }
}

/// The unit in which a figure and its limit are printed: as the limit is written, or as the figure
/// is measured.
std::string_view unit_of(const Type& measured, const Type& limit) {
  if (limit.constant && limit.unit_given) return limit.unit;
  return measured.unit_given || !limit.unit_given ? measured.unit : limit.unit;
}

}  // namespace

Compilation::Result Compilation::compile_comparison(NodeIndex at) {
  const NodeIndex left = node(at).parts[0];
  const NodeIndex right = node(at).parts[1];
  const Relation relation = *relation_of(node(at).op);
  const bool equality = relation == Relation::equal || relation == Relation::unequal;
  if (is_words(left)) {
    if (!equality) {
      refuse(messages::word_order, at);
      return std::nullopt;
    }
    const bool before = std::exchange(denied_, denied_ != (relation == Relation::unequal));
    const Result result = compile_words(at, left, {right});
    denied_ = before;
    if (result && relation == Relation::unequal) emit(Code::deny);
    return result;
  }
  const auto a = operand(left);
  // of a name that nobody knows nobody knows what it may be held against
  const auto b = a || !is_words(right) ? operand(right) : std::nullopt;
  if (!a || !b || !comparable_operands(at, *a, *b, left, right)) return std::nullopt;
  Test test;
  test.compares = true;
  test.swapped = a->constant && !b->constant;
  test.relation = test.swapped ? turned(relation) : relation;
  const NodeIndex limit = test.swapped ? left : right;
  test.unit = test.swapped ? unit_of(*b, *a) : unit_of(*a, *b);
  if (node(limit).op == Op::name) {
    const Meaning meaning = resolve(node(limit).text);
    test.field_limit = meaning.kind == Meaning::Kind::field;
    if (test.field_limit) test.field = static_cast<Field>(meaning.index);
  }
  gather_origins(test.swapped ? right : left, test.origins);
  gather_origins(limit, test.origins);
  const std::uint16_t number = keep(std::move(test));
  emit(Code::compare, 0, static_cast<std::uint8_t>(relation), number);
  return truth_type();
}

/// A figure that stands there as such: `5 %`, `-2 C`.
std::optional<quantity::Range> Compilation::written_figure(NodeIndex index) const {
  const Node& of = node(index);
  if (of.op == Op::figure) return of.value;
  if (of.op != Op::negate) return std::nullopt;
  const auto figure = written_figure(of.parts[0]);
  return figure ? std::optional(-*figure) : std::nullopt;
}

Compilation::Result Compilation::compile_between(NodeIndex at) {
  const std::vector<NodeIndex>& parts = node(at).parts;
  const auto figure = operand(parts[0]);
  const auto low = operand(parts[1]);
  const auto high = operand(parts[2]);
  if (!figure || !low || !high) return std::nullopt;
  if (!comparable_operands(at, *figure, *low, parts[0], parts[1])) return std::nullopt;
  if (!comparable_operands(at, *figure, *high, parts[0], parts[2])) return std::nullopt;
  const auto least = written_figure(parts[1]);
  const auto most = written_figure(parts[2]);
  if (least && most && least->low > most->high) {
    refuse(messages::between_order, at, {words_of(parts[1]), words_of(parts[2])});
    return std::nullopt;
  }
  Test test;
  test.compares = true;
  test.between = true;
  test.unit = unit_of(*figure, low->unit_given ? *low : *high);
  for (const NodeIndex part : parts) gather_origins(part, test.origins);
  const std::uint16_t number = keep(std::move(test));
  emit(Code::between, 0, 0, number);
  return truth_type();
}

Compilation::Result Compilation::compile_logic(NodeIndex at) {
  const bool both = node(at).op == Op::both;
  const auto side = [this](NodeIndex part) {
    const Result type = compile(part);
    if (!type || type->kind == ValueKind::truth) return type.has_value();
    refuse(messages::not_truth, part, {type_words(*type)});
    return false;
  };
  const bool first = side(node(at).parts[0]);
  const std::uint32_t skip = here();
  emit(both ? Code::skip_if_no : Code::skip_if_yes);
  const bool second = side(node(at).parts[1]);
  if (!first || !second) return std::nullopt;
  emit(both ? Code::both : Code::either);
  pool_.code[skip].c = here();
  return truth_type();
}

Compilation::Result Compilation::compile_denial(NodeIndex at) {
  const NodeIndex part = node(at).parts[0];
  denied_ = !denied_;
  const Result type = compile(part);
  denied_ = !denied_;
  if (!type) return std::nullopt;
  if (type->kind != ValueKind::truth) {
    refuse(messages::not_truth, part, {type_words(*type)});
    return std::nullopt;
  }
  emit(Code::deny);
  return truth_type();
}

/// Whether a side of a comparison is a word, so that the other must be words too.
bool Compilation::is_words(NodeIndex at) {
  if (node(at).op == Op::quoted) return true;
  if (node(at).op != Op::name) return false;
  const Meaning meaning = resolve(node(at).text);
  const bool word_cell =
      meaning.kind == Meaning::Kind::cell && table()->columns[meaning.index].word;
  return word_cell || meaning.kind == Meaning::Kind::stated || meaning.kind == Meaning::Kind::text;
}

Compilation::Result Compilation::compile_words(NodeIndex at, NodeIndex left,
                                               const std::vector<NodeIndex>& items) {
  if (!is_words(left)) {
    refuse(node(at).op == Op::in ? messages::in_of_figure : messages::is_of_what, at,
           {words_of(left)});
    return std::nullopt;
  }
  for (const NodeIndex item : items) {
    if (node(item).op == Op::name || node(item).op == Op::quoted) continue;
    refuse(messages::not_words, item, {std::string("a word"), std::string("a figure")});
    return std::nullopt;
  }
  if (node(left).op == Op::name) {
    const Meaning meaning = resolve(node(left).text);
    if (meaning.kind == Meaning::Kind::stated) {
      return compile_stated(left, meaning, items);
    }
    if (meaning.kind == Meaning::Kind::text &&
        static_cast<SubjectText>(meaning.index) == SubjectText::product) {
      return compile_product(left, meaning.side, items);
    }
  }
  return compile_texts(left, items);
}

/// Whether an item asks the other formula for the same word: `forming = base.forming`.
bool Compilation::other_side(NodeIndex item, const Meaning& left) const {
  if (node(item).op != Op::name) return false;
  const Meaning meaning = resolve(node(item).text);
  const bool other = (meaning.side == Side::base) != (left.side == Side::base);
  return other && meaning.kind == left.kind && meaning.index == left.index;
}

Compilation::Result Compilation::compile_stated(NodeIndex left, const Meaning& meaning,
                                                const std::vector<NodeIndex>& items) {
  const auto words = static_cast<StatedWords>(meaning.index);
  const auto number = static_cast<std::uint8_t>(words);
  const StatedInfo& about = info(words);
  if (!may_ask(left, meaning.side)) return std::nullopt;
  if (items.size() == 1 && other_side(items.front(), meaning)) {
    if (!may_ask(items.front(), Side::base)) return std::nullopt;
    emit(Code::same_words, 0, number, keep_question(Origin{Origin::Kind::words, number}));
    return truth_type();
  }
  std::uint32_t bits = 0;
  bool known = true;
  for (const NodeIndex item : items) {
    if (const auto at = find_word(about, node(item).text)) {
      bits |= 1U << *at;
      continue;
    }
    std::vector<std::string> all(about.known.begin(), about.known.end());
    refuse(
        messages::unknown_word, item,
        {node(item).text, "'" + node(left).text + "'", "; known are " + text::listed(all, "and")});
    known = false;
  }
  if (!known) return std::nullopt;
  emit_of(meaning.side, Code::is_word, bits, number,
          keep_question(Origin{Origin::Kind::words, number}));
  return truth_type();
}

Compilation::Result Compilation::compile_product(NodeIndex left, Side side,
                                                 const std::vector<NodeIndex>& items) {
  constexpr auto product = static_cast<std::uint8_t>(SubjectText::product);
  const Origin origin{Origin::Kind::product, 0};
  if (!may_ask(left, side)) return std::nullopt;
  if (items.size() == 1 && other_side(items.front(), {Meaning::Kind::text, product, side})) {
    if (!may_ask(items.front(), Side::base)) return std::nullopt;
    emit_of(Side::own, Code::subject_text, 0, product);
    emit_of(Side::base, Code::subject_text, 0, product);
    emit(Code::same_text, 0, 0, keep_question(origin));
    return truth_type();
  }
  std::vector<std::uint16_t> products;
  bool known = true;
  for (const NodeIndex item : items) {
    if (const catalogue::ProductKind* kind = catalogue_.find_product(node(item).text)) {
      products.push_back(static_cast<std::uint16_t>(kind - catalogue_.products.data()));
      continue;
    }
    refuse(
        messages::unknown_kind, item,
        {node(item).text, text::hint(node(item).text, catalogue_.near_products(node(item).text))});
    known = false;
  }
  if (!known) return std::nullopt;
  std::sort(products.begin(), products.end());
  emit_of(side, Code::is_product, interner_.list(products), 0, keep_question(origin));
  return truth_type();
}

/// A word as the table's column spells it; an error if the column does not know it.
std::optional<std::string> Compilation::spelled(NodeIndex item, const Meaning& left) {
  const std::string& word = node(item).text;
  if (left.kind != Meaning::Kind::cell) return word;
  std::vector<std::string> known;
  for (const catalogue::Row& row : table()->rows) {
    const auto* cell = std::get_if<std::string>(&row.cells[left.index]);
    if (cell == nullptr) continue;
    if (text::fold(*cell) == text::fold(word)) return *cell;
    if (std::find(known.begin(), known.end(), *cell) == known.end()) known.push_back(*cell);
  }
  constexpr std::size_t most_shown = 8;
  std::string rest;
  if (known.size() <= most_shown && !known.empty()) {
    rest = "; known are " + text::listed(known, "and");
  } else {
    rest = text::hint(word, known);
  }
  refuse(messages::unknown_word, item,
         {word, "the column '" + table()->columns[left.index].name + "'", rest});
  return std::nullopt;
}

Compilation::Result Compilation::compile_texts(NodeIndex left,
                                               const std::vector<NodeIndex>& items) {
  const Meaning meaning = node(left).op == Op::name ? resolve(node(left).text) : Meaning{};
  bool first = true;
  for (const NodeIndex item : items) {
    if (!compile(left)) return std::nullopt;
    const bool names_text = node(item).op == Op::name && is_words(item);
    if (names_text) {
      if (!compile(item)) return std::nullopt;
    } else {
      const auto word = spelled(item, meaning);
      if (!word) return std::nullopt;
      emit(Code::text, interner_.text(*word));
    }
    emit(Code::same_text, 0, 0, keep_question());
    if (!first) emit(Code::either);
    first = false;
  }
  return truth_type();
}

/// Walks the `and`, `or`, `not` of what stands behind `is`, and asks each leaf on its own.
template <typename EachLeaf>
Compilation::Result Compilation::logic_of(NodeIndex at, const EachLeaf& leaf) {
  switch (node(at).op) {
    case Op::pick_not: {
      denied_ = !denied_;
      const Result type = logic_of(node(at).parts[0], leaf);
      denied_ = !denied_;
      if (type) emit(Code::deny);
      return type;
    }
    case Op::pick_both:
    case Op::pick_either: {
      const Result first = logic_of(node(at).parts[0], leaf);
      const Result second = logic_of(node(at).parts[1], leaf);
      if (!first || !second) return std::nullopt;
      emit(node(at).op == Op::pick_both ? Code::both : Code::either);
      return first;
    }
    default:
      return leaf(at);
  }
}

Compilation::Result Compilation::compile_is(NodeIndex at) {
  const NodeIndex left = node(at).parts[0];
  const NodeIndex asked = node(at).parts[1];
  const bool named = node(left).op == Op::name;
  const auto [side, subject] = sided(named ? std::string_view(node(left).text) : "");
  if (subject == "product") {
    if (!may_ask(left, side)) return std::nullopt;
    return logic_of(asked, [this, of = side](NodeIndex leaf) { return compile_trait(leaf, of); });
  }
  if (named && node(left).text == "material") {
    if (source_.scope.each != Each::material) {
      refuse_name(left);
      return std::nullopt;
    }
    return logic_of(asked, [this](NodeIndex leaf) { return compile_material_is(leaf); });
  }
  const Each each = source_.scope.each;
  const bool of_part = each == Each::task || each == Each::premix;
  if (named && of_part && node(left).text == each_word(each)) {
    return logic_of(asked, [this](NodeIndex leaf) { return compile_part_is(leaf); });
  }
  refuse(messages::is_of_what, at, {words_of(left)});
  return std::nullopt;
}

/// `task is H318`: by the mixture rules over what it handles.
Compilation::Result Compilation::compile_part_is(NodeIndex at) {
  if (node(at).op == Op::pick_name && is_hazard_code(node(at).text)) {
    emit(Code::is_hazardous, interner_.text(node(at).text), 0, keep_question());
    return truth_type();
  }
  refuse(messages::hazard_of_part, at, {std::string(each_word(source_.scope.each))});
  return std::nullopt;
}

Compilation::Result Compilation::compile_trait(NodeIndex at, Side side) {
  const std::string wanted = text::fold(node(at).text);
  std::vector<std::string> known;
  for (const catalogue::ProductKind& product : catalogue_.products) {
    for (const std::string& trait : product.traits) {
      if (text::fold(trait) == wanted) {
        const Origin origin{Origin::Kind::product, 0};
        emit_of(side, Code::has_trait, interner_.trait(trait), 0, keep_question(origin));
        return truth_type();
      }
      if (std::find(known.begin(), known.end(), trait) == known.end()) known.push_back(trait);
    }
  }
  if (catalogue_.find_product(node(at).text) != nullptr) {
    refuse(messages::unknown_trait, at,
           {node(at).text, "; a kind is asked for with 'product = " + node(at).text + "'"});
  } else {
    refuse(messages::unknown_trait, at, {node(at).text, text::hint(node(at).text, known)});
  }
  return std::nullopt;
}

Compilation::Result Compilation::compile_material_is(NodeIndex at) {
  const std::string& word = node(at).text;
  if (node(at).op == Op::pick_name) {
    if (is_hazard_code(word)) {
      emit(Code::is_hazardous, interner_.text(word), 0, keep_question());
      return truth_type();
    }
    const std::string folded = text::fold(word);
    for (const MarkInfo& mark : marks()) {
      if (mark.name != folded) continue;
      emit(Code::is_marked, 0, static_cast<std::uint8_t>(mark.id), keep_question());
      return truth_type();
    }
  }
  const auto chosen = selection(at);
  if (!chosen) return std::nullopt;
  emit(Code::is_material, *chosen, 0, keep_question());
  return truth_type();
}

/// `material is listed in TABLE`
Compilation::Result Compilation::compile_listed(NodeIndex at) {
  const NodeIndex left = node(at).parts[0];
  const NodeIndex asked = node(at).parts[1];
  if (node(left).op != Op::name || node(left).text != "material") {
    refuse(messages::listed_of_what, at, {words_of(left)});
    return std::nullopt;
  }
  if (source_.scope.each != Each::material) {
    refuse_name(left);
    return std::nullopt;
  }
  const catalogue::Table* found = catalogue_.find_table(node(asked).text);
  if (found == nullptr) {
    std::vector<std::string> known;
    for (const catalogue::Table& each : catalogue_.tables) known.push_back(each.id);
    refuse(messages::unknown_table, asked, {node(asked).text, text::hint(node(asked).text, known)});
    return std::nullopt;
  }
  emit(Code::is_listed, static_cast<std::uint32_t>(found - catalogue_.tables.data()), 0,
       keep_question());
  return truth_type();
}

Compilation::Result Compilation::compile_holds(NodeIndex at) {
  const NodeIndex left = node(at).parts[0];
  const Each each = source_.scope.each;
  const bool named = node(left).op == Op::name;
  const auto [side, holder] = sided(named ? std::string_view(node(left).text) : "");
  const bool of_material = node(left).text == "material" && named && each == Each::material;
  const bool of_part = holder == "product" ? each == Each::product
                                           : named && side == Side::own &&
                                                 holder == each_word(each) && each != Each::row;
  if (!may_ask(left, side)) return std::nullopt;
  if (!of_part && !of_material) {
    refuse(messages::is_of_what, at, {words_of(left)});
    return std::nullopt;
  }
  const auto chosen = selection(node(at).parts[1], of_material);
  if (!chosen) return std::nullopt;
  const std::uint32_t sum = interner_.sum(SumKind::count, *chosen);
  emit_of(side, Code::holds, sum, 0, keep_question(Origin{Origin::Kind::sum, sum}));
  return truth_type();
}

}  // namespace sudsmark::rules
