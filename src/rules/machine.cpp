#include "rules/machine.h"

#include <utility>

namespace sudsmark::rules {

Machine::Machine(const Ruleset& ruleset, const blend::Blend& blend, blend::MissingTable& missing,
                 const std::vector<std::string>& markets, const Day& today,
                 const blend::Blend* base)
    : ruleset_(ruleset),
      figures_(ruleset, blend, missing, markets, today),
      today_(today),
      missing_(missing),
      base_blend_(base) {
  if (base != nullptr) base_markets_ = markets;
}

/// Measures of YAML are run in the midst of others, on top of what stands already.
void Machine::make_room() {
  if (stack_.size() < size_ + most_stack + 1) stack_.resize(size_ + most_stack + 1);
}

Value Machine::run(const Program& program, const Subject& subject, std::vector<Tried>* tried) {
  if (tried != nullptr) tried->assign(program.test_count, Tried{});
  make_room();
  run(program.begin, program.end, {program, subject, tried});
  return pop();
}

void Machine::run(std::uint32_t index, std::uint32_t end, const Run& run) {
  const std::vector<Instruction>& code = ruleset_.pool.code;
  while (index < end) {
    const Instruction& instruction = code[index++];
    [[maybe_unused]] const std::size_t before = size_;
    [[maybe_unused]] int growth = effect_of(instruction.code).growth();
    if (instruction.code == Code::choose) {
      index = choose(index, run);
      growth += 1;  // what the block that was taken left
    } else if (instruction.code == Code::of_base) {
      growth += effect_of(code[index].code).growth();
      ask_base(code[index++], run);
    } else if (instruction.code == Code::skip_if_no) {
      if (stack_[size_ - 1].truth == Certainty::no) index = instruction.c;
    } else if (instruction.code == Code::skip_if_yes) {
      if (stack_[size_ - 1].truth == Certainty::yes) index = instruction.c;
    } else {
      step(instruction, run);
    }
    assert(static_cast<std::ptrdiff_t>(size_) == static_cast<std::ptrdiff_t>(before) + growth);
  }
}

std::uint32_t Machine::choose(std::uint32_t index, const Run& run) {
  const Instruction& instruction = ruleset_.pool.code[index - 1];
  const Value condition = pop();
  const std::uint32_t second = index + instruction.b;
  const std::uint32_t after = second + instruction.c;
  if (condition.truth != Certainty::no) this->run(index, second, run);
  if (condition.truth != Certainty::yes) this->run(second, after, run);
  if (condition.truth == Certainty::depends) {
    const Value b = pop();
    const Value a = pop();
    push(one_of(a, b, condition.missing));
  }
  return after;
}

/// One instruction that goes on to the next.
void Machine::step(const Instruction& instruction, const Run& run) {
  const Pool& pool = ruleset_.pool;
  const Subject& subject = run.subject;
  const std::uint32_t c = instruction.c;
  const auto one = [this](const auto& of) { push(of(pop())); };
  const auto two = [this](const auto& of) {
    const Value b = pop();
    const Value a = pop();
    push(of(a, b));
  };
  switch (instruction.code) {
    case Code::figure:
      return next().be_figure(pool.figures[c], {});
    case Code::measure:
      return push_figure(figures_.measure(c, subject));
    case Code::named:
      return push_figure(named(c, subject));
    case Code::sum:
      return push_figure(figures_.sum(c, subject));
    case Code::field:
      return push(figure(figures_.field(static_cast<Field>(instruction.a), subject)));
    case Code::cell:
      return push(figures_.cell(c, subject));
    case Code::text:
      return push(text_value(pool.texts[c]));
    case Code::subject_text:
      return push(figures_.subject_text(static_cast<SubjectText>(instruction.a), c, subject));
    case Code::word_text:
      return push(figures_.stated_text(static_cast<StatedWords>(instruction.a), subject));

    case Code::negate:
      return one([](const Value& a) { return figure(-a.range, a.missing); });
    case Code::absolute:
      return one([](const Value& a) { return figure(quantity::abs(a.range), a.missing); });
    case Code::lowest:
      return one([](const Value& a) { return end_of(a, a.range.low); });
    case Code::highest:
      return one([](const Value& a) { return end_of(a, a.range.high); });
    case Code::add:
      return two([](const Value& a, const Value& b) {
        return figure(a.range + b.range, a.missing | b.missing);
      });
    case Code::subtract:
      return two([](const Value& a, const Value& b) {
        return figure(a.range - b.range, a.missing | b.missing);
      });
    case Code::multiply:
      return two([](const Value& a, const Value& b) {
        return figure(a.range * b.range, a.missing | b.missing);
      });
    case Code::divide:
      return two([&](const Value& a, const Value& b) { return divided(instruction, a, b); });
    case Code::minimum:
      return two(smaller);
    case Code::maximum:
      return two(greater);
    case Code::deny:
      top().truth = denied(top().truth);
      return;
    case Code::both:
      return join(Certainty::no);
    case Code::either:
      return join(Certainty::yes);
    case Code::compare:
    case Code::between:
      return compare(instruction, run);

    case Code::same_text: {
      const Value b = pop();
      const Value a = pop();
      return answer(instruction, same_text(a, b), run);
    }
    case Code::is_word: {
      const auto words = static_cast<StatedWords>(instruction.a);
      return answer(instruction, figures_.is_word(words, c, subject), run);
    }
    case Code::same_words:
      return answer(instruction, same_words(static_cast<StatedWords>(instruction.a)), run);
    case Code::is_product:
      return answer(instruction, figures_.is_one_of(pool.lists[c]), run);
    case Code::has_trait:
      return answer(instruction, figures_.has_trait(c), run);
    case Code::flag:
      return answer(instruction, figures_.has(static_cast<Flag>(instruction.a)), run);
    case Code::holds:
      return answer(instruction, figures_.holds(c, subject), run);
    case Code::is_material:
      return answer(instruction, figures_.is_material(c, subject), run);
    case Code::is_listed:
      return answer(instruction, figures_.is_listed(c, subject), run);
    case Code::is_hazardous:
      return answer(instruction, figures_.is_hazardous(pool.texts[c], subject), run);
    case Code::is_marked: {
      const auto mark = static_cast<Mark>(instruction.a);
      return answer(instruction, figures_.is_marked(mark, subject), run);
    }

    case Code::skip_if_no:
    case Code::skip_if_yes:
    case Code::of_base:
    case Code::choose:
      break;
  }
  assert(false && "goes elsewhere: run() does it");
}

Value Machine::divided(const Instruction& instruction, const Value& a, const Value& b) {
  const MissingSet missing = a.missing | b.missing;
  if (b.range != Range(0.0)) return figure(a.range / b.range, missing);
  const std::string& divisor = ruleset_.pool.texts[instruction.c];
  const std::string amount = "an amount of " + divisor + " that is more than nothing";
  return figure(Range::unknown(), missing | figures_.lacks(amount));
}

const Measured& Machine::named(std::uint32_t index, const Subject& subject) {
  // the measure's own program may ask for others, and so move what is kept
  if (!figures_.named(index, subject)) {
    Measured measured;
    const Program& program = ruleset_.measures[index].program;
    if (!program.empty()) {
      const Value value = run(program, subject);
      measured = {value.range, value.missing};
    }
    figures_.named(index, subject) = std::move(measured);
  }
  return *figures_.named(index, subject);
}

void Machine::push_figure(const Measured& measured) {
  next().be_figure(measured.value, measured.missing);
}

/// Two truths become one: `decisive` of either settles both, the other way round neither does.
void Machine::join(Certainty decisive) {
  Value& b = stack_[--size_];
  Value& a = stack_[size_ - 1];
  if (a.truth == decisive || b.truth == decisive) {
    a.be_truth(decisive == Certainty::yes);
  } else if (a.truth != Certainty::depends) {
    std::swap(a, b);
  } else if (b.truth == Certainty::depends) {
    a.missing |= b.missing;
  }
}

void Machine::compare(const Instruction& instruction, const Run& run) {
  const bool between = instruction.code == Code::between;
  size_ -= between ? 2 : 1;
  Value& left = stack_[size_ - 1];
  const Value& right = stack_[size_];
  const Value& high = stack_[between ? size_ + 1 : size_];
  if (run.tried != nullptr && instruction.b != nothing) {
    const Test& test = ruleset_.pool.tests[run.program.first_test + instruction.b];
    Tried& tried = (*run.tried)[instruction.b];
    tried.measured = test.swapped ? right.range : left.range;
    tried.low = test.swapped ? left.range : right.range;
    tried.high = between ? high.range : tried.low;
  }
  if (between) {
    left = within(left, right, high);
  } else {
    left.be_relation(related(static_cast<Relation>(instruction.a), left.range, right.range), right);
  }
  note(instruction, left.truth, run);
}

/// Notes what a test came to, where somebody wants to know.
void Machine::note(const Instruction& instruction, Certainty truth, const Run& run) {
  if (run.tried == nullptr || instruction.b == nothing) return;
  const Test& test = ruleset_.pool.tests[run.program.first_test + instruction.b];
  Tried& tried = (*run.tried)[instruction.b];
  tried.asked = true;
  tried.truth = test.denied ? denied(truth) : truth;
}

void Machine::answer(const Instruction& instruction, Value value, const Run& run) {
  note(instruction, value.truth, run);
  push(std::move(value));
}

void Machine::answer(const Instruction& instruction, bool is, const Run& run) {
  note(instruction, is ? Certainty::yes : Certainty::no, run);
  next().be_truth(is);
}

}  // namespace sudsmark::rules
