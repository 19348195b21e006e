#include "rules/machine.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

#include "rules/words.h"

namespace sudsmark::rules {
namespace {

Certainty denied(Certainty truth) {
  if (truth == Certainty::depends) return truth;
  return truth == Certainty::yes ? Certainty::no : Certainty::yes;
}

/// A range that arithmetic on very large figures may have left without order.
Range sane(const Range& range) {
  if (std::isnan(range.low) || std::isnan(range.high)) return Range::unknown();
  constexpr double most = std::numeric_limits<double>::max();
  return {std::min(range.low, most), std::max(range.high, -most)};
}

Value figure(const Range& range, MissingSet missing) {
  Value value;
  value.range = sane(range);
  value.missing = value.range.exact() ? 0 : missing;
  return value;
}
Value figure(const Measured& measured) {
  return figure(measured.value, measured.missing);
}

Value truth(Certainty certainty, MissingSet missing) {
  Value value;
  value.truth = certainty;
  value.missing = certainty == Certainty::depends ? missing : 0;
  return value;
}

Value text_value(std::string_view text) {
  Value value;
  value.text = text;
  return value;
}

Certainty related(Relation relation, const Range& a, const Range& b) {
  switch (relation) {
    case Relation::equal:
      return quantity::equal(a, b);
    case Relation::unequal:
      return denied(quantity::equal(a, b));
    case Relation::less:
      return quantity::less(a, b);
    case Relation::less_equal:
      return quantity::less_or_equal(a, b);
    case Relation::greater:
      return quantity::less(b, a);
    case Relation::greater_equal:
      break;
  }
  return quantity::less_or_equal(b, a);
}

Value both(const Value& a, const Value& b) {
  if (a.truth == Certainty::no || b.truth == Certainty::no) return truth(Certainty::no, 0);
  if (a.truth == Certainty::yes) return b;
  if (b.truth == Certainty::yes) return a;
  return truth(Certainty::depends, a.missing | b.missing);
}

Value either(const Value& a, const Value& b) {
  if (a.truth == Certainty::yes || b.truth == Certainty::yes) return truth(Certainty::yes, 0);
  if (a.truth == Certainty::no) return b;
  if (b.truth == Certainty::no) return a;
  return truth(Certainty::depends, a.missing | b.missing);
}

/// What stands where a condition cannot be told: one of two.
Value one_of(const Value& a, const Value& b, MissingSet missing) {
  Value value;
  value.range = quantity::hull(a.range, b.range);
  value.truth = a.truth == b.truth ? a.truth : Certainty::depends;
  value.text = a.text;
  value.known = a.known && b.known && a.text == b.text;
  const bool settled = value.range.exact() && value.truth != Certainty::depends && value.known;
  value.missing = settled ? 0 : missing | a.missing | b.missing;
  return value;
}

/// The smaller of two; a reason counts only if its figure can be the one.
Value smaller(const Value& a, const Value& b) {
  if (a.range.high <= b.range.low) return a;
  if (b.range.high <= a.range.low) return b;
  return figure(quantity::min(a.range, b.range), a.missing | b.missing);
}
Value greater(const Value& a, const Value& b) {
  if (a.range.low >= b.range.high) return a;
  if (b.range.low >= a.range.high) return b;
  return figure(quantity::max(a.range, b.range), a.missing | b.missing);
}

/// Whether a text that names several, as in "9, 10A and 7A", names one.
bool names(std::string_view several, std::string_view one) {
  while (!several.empty()) {
    const std::size_t end = std::min({several.find(", "), several.find(" and "), several.size()});
    if (several.substr(0, end) == one) return true;
    several.remove_prefix(end);
    if (!several.empty()) several.remove_prefix(several.front() == ',' ? 2 : 5);
  }
  return false;
}

}  // namespace

Machine::Machine(const Ruleset& ruleset, const blend::Blend& blend, blend::MissingTable& missing,
                 const std::vector<std::string>& markets, const Day& today,
                 const blend::Blend* base)
    : ruleset_(ruleset),
      blend_(blend),
      missing_(missing),
      today_(today),
      measure_count_(measures::all().size()),
      kept_(1 + blend.portions.size() + blend.premixes.size() + blend.tasks.size()),
      kept_of_subject_(ruleset.pool.sums.size()),
      kept_of_undeclared_{},
      hazards_(kept_.size()),
      words_{},
      traits_(ruleset.pool.traits.size()),
      base_blend_(base) {
  if (base != nullptr) base_markets_ = markets;
  read_words(markets);
  for (std::size_t at = 0; at < traits_.size(); ++at) {
    const std::vector<std::string>& of_product = blend.product->traits;
    traits_[at] = std::find(of_product.begin(), of_product.end(), ruleset.pool.traits[at]) !=
                  of_product.end();
  }
}

bool Machine::in_force(const catalogue::Row& row) const {
  return in_force({row.from, row.shelf, row.until}, row.markets);
}

bool Machine::in_force(const Dates& dates, const std::vector<std::string>& markets) const {
  // each market counts from a day of its own
  bool sold = false;
  const std::uint32_t said = words_[static_cast<std::size_t>(StatedWords::market)].bits;
  const std::span<const std::string_view> known = info(StatedWords::market).known;
  for (std::size_t index = 0; index < known.size(); ++index) {
    const bool of_law =
        markets.empty() || std::find(markets.begin(), markets.end(), known[index]) != markets.end();
    if ((said & (1U << index)) == 0 || !of_law) continue;
    sold = true;
    if (rules::in_force(dates, blend_.counted_from(known[index], today_), today_)) return true;
  }
  const std::string_view alone = markets.size() == 1 ? std::string_view(markets.front()) : "";
  return !sold && rules::in_force(dates, blend_.counted_from(alone, today_), today_);
}

std::size_t Machine::part_of_premix(std::size_t at) const {
  return part_of_portion(blend_.portions.size()) + at;
}
std::size_t Machine::part_of_task(std::size_t at) const {
  return part_of_premix(blend_.premixes.size()) + at;
}

Value Machine::run(const Program& program, const Subject& subject, std::vector<Tried>* tried) {
  if (tried != nullptr) tried->assign(program.test_count, Tried{});
  // measures of YAML are run in the midst of others, on top of what stands already
  if (stack_.size() < size_ + most_stack + 1) stack_.resize(size_ + most_stack + 1);
  run(program.begin, program.end, program, subject, tried);
  return pop();
}

void Machine::run(std::uint32_t at, std::uint32_t end, const Program& program,
                  const Subject& subject, std::vector<Tried>* tried) {
  const std::vector<Instruction>& code = ruleset_.pool.code;
  while (at < end) {
    const Instruction& instruction = code[at++];
    switch (instruction.code) {
      case Code::skip_if_no:
        if (stack_[size_ - 1].truth == Certainty::no) at = instruction.c;
        break;
      case Code::skip_if_yes:
        if (stack_[size_ - 1].truth == Certainty::yes) at = instruction.c;
        break;
      case Code::choose: {
        const Value condition = pop();
        const std::uint32_t second = at + instruction.b;
        const std::uint32_t after = second + instruction.c;
        if (condition.truth != Certainty::no) run(at, second, program, subject, tried);
        if (condition.truth != Certainty::yes) run(second, after, program, subject, tried);
        if (condition.truth == Certainty::depends) {
          const Value b = pop();
          const Value a = pop();
          push(one_of(a, b, condition.missing));
        }
        at = after;
        break;
      }
      case Code::of_base:
        ask_base(code[at++], program, subject, tried);
        break;
      case Code::negate:
      case Code::add:
      case Code::subtract:
      case Code::multiply:
      case Code::divide:
      case Code::minimum:
      case Code::maximum:
      case Code::absolute:
      case Code::deny:
      case Code::both:
      case Code::either:
        compute(instruction);
        break;
      case Code::compare:
      case Code::between:
        compare(instruction, program, tried);
        break;
      default:
        ask(instruction, program, subject, tried);
    }
  }
}

void Machine::compute(const Instruction& instruction) {
  const Value b = pop();
  if (instruction.code == Code::negate) return push(figure(-b.range, b.missing));
  if (instruction.code == Code::absolute) {
    return push(figure(quantity::abs(b.range), b.missing));
  }
  if (instruction.code == Code::deny) return push(truth(denied(b.truth), b.missing));
  const Value a = pop();
  const MissingSet missing = a.missing | b.missing;
  switch (instruction.code) {
    case Code::add:
      return push(figure(a.range + b.range, missing));
    case Code::subtract:
      return push(figure(a.range - b.range, missing));
    case Code::multiply:
      return push(figure(a.range * b.range, missing));
    case Code::divide: {
      if (b.range != Range(0.0)) return push(figure(a.range / b.range, missing));
      const std::string& divisor = ruleset_.pool.texts[instruction.c];
      return push(figure(Range::unknown(), missing | lacks("an amount of " + divisor +
                                                           " that is more than nothing")));
    }
    case Code::minimum:
      return push(smaller(a, b));
    case Code::maximum:
      return push(greater(a, b));
    case Code::both:
      return push(both(a, b));
    default:
      return push(either(a, b));
  }
}

void Machine::compare(const Instruction& instruction, const Program& program,
                      std::vector<Tried>* tried) {
  const bool between = instruction.code == Code::between;
  const Value high = between ? pop() : Value{};
  const Value right = pop();
  const Value left = pop();
  Value result;
  if (between) {
    const Value above =
        truth(quantity::less_or_equal(right.range, left.range), left.missing | right.missing);
    const Value below =
        truth(quantity::less_or_equal(left.range, high.range), left.missing | high.missing);
    result = both(above, below);
  } else {
    result = truth(related(static_cast<Relation>(instruction.a), left.range, right.range),
                   left.missing | right.missing);
  }
  if (tried != nullptr && instruction.b != nothing) {
    const Test& test = ruleset_.pool.tests[program.first_test + instruction.b];
    Tried& one = (*tried)[instruction.b];
    one.asked = true;
    one.truth = test.denied ? denied(result.truth) : result.truth;
    one.measured = test.swapped ? right.range : left.range;
    one.low = test.swapped ? left.range : right.range;
    one.high = between ? high.range : one.low;
  }
  push(result);
}

void Machine::ask(const Instruction& instruction, const Program& program, const Subject& subject,
                  std::vector<Tried>* tried) {
  const Pool& pool = ruleset_.pool;
  const auto yes_or_no = [](bool is) { return truth(is ? Certainty::yes : Certainty::no, 0); };
  Value result;
  switch (instruction.code) {
    case Code::figure:
      return push(figure(pool.figures[instruction.c], 0));
    case Code::measure:
      return push(figure(measure(instruction.c, subject)));
    case Code::named:
      return push(figure(named(instruction.c, subject)));
    case Code::sum:
      return push(figure(sum(instruction.c, subject)));
    case Code::field:
      return push(figure(field(static_cast<Field>(instruction.a), subject)));
    case Code::cell:
      return push(cell(instruction.c, subject));
    case Code::text:
      return push(text_value(pool.texts[instruction.c]));
    case Code::subject_text:
    case Code::word_text:
      return push(text(instruction, subject));
    case Code::is_word:
      result = is_word(static_cast<StatedWords>(instruction.a), instruction.c, subject);
      break;
    case Code::is_product: {
      const std::vector<std::uint16_t>& list = pool.lists[instruction.c];
      const auto at = blend_.product - blend_.catalogue->products.data();
      result = yes_or_no(std::find(list.begin(), list.end(), static_cast<std::uint16_t>(at)) !=
                         list.end());
      break;
    }
    case Code::has_trait:
      result = yes_or_no(traits_[instruction.c]);
      break;
    case Code::holds:
      result = holds(instruction.c, subject);
      break;
    case Code::is_material:
      result = yes_or_no(is_material(instruction.c, subject));
      break;
    case Code::is_listed:
      result = is_listed(instruction.c, subject);
      break;
    case Code::is_hazardous:
      result = is_hazardous(pool.texts[instruction.c], subject);
      break;
    case Code::is_marked:
      result = is_marked(static_cast<Mark>(instruction.a), subject);
      break;
    case Code::looks_like_food:
      result = yes_or_no(instruction.a == 0 ? blend_.looks_like_food.has_value()
                                            : blend_.label && blend_.label->ingredients);
      break;
    case Code::same_words:
      result = same_words(static_cast<StatedWords>(instruction.a));
      break;
    default: {  // same_text
      const Value b = pop();
      const Value a = pop();
      const bool known = a.known && b.known;
      const bool match = a.text == b.text || (a.several && names(a.text, b.text)) ||
                         (b.several && names(b.text, a.text));
      const Certainty same = match ? Certainty::yes : Certainty::no;
      result = truth(known ? same : Certainty::depends, a.missing | b.missing);
    }
  }
  if (tried != nullptr && instruction.b != nothing) {
    const Test& test = ruleset_.pool.tests[program.first_test + instruction.b];
    Tried& one = (*tried)[instruction.b];
    one.asked = true;
    one.truth = test.denied ? denied(result.truth) : result.truth;
  }
  push(result);
}

}  // namespace sudsmark::rules
