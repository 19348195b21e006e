// Conditions that are settled by what stands in the formula and in the subject's row, without any
// figure: most rules begin with one, and most of them do not apply.
#include <variant>

#include "rules/machine.h"
#include "rules/open_truths.h"

namespace sudsmark::rules {
/// `row.COLUMN = "word"`, at an instruction; nothing where it is anything else, or not known.
std::optional<bool> Machine::plain_cell(std::uint32_t index, std::uint32_t end,
                                        const Subject& subject) const {
  const Pool& pool = ruleset_.pool;
  const Instruction* const at = pool.code.data() + index;
  const bool of_cell = end - index >= 3 &&
                       at[0].a == static_cast<std::uint8_t>(SubjectText::cell) &&
                       at[1].code == Code::text && at[2].code == Code::same_text;
  if (!of_cell) return std::nullopt;
  const auto* const word = std::get_if<std::string>(&subject.row->cells[at[0].c]);
  if (word == nullptr || word->empty()) return std::nullopt;
  return *word == pool.texts[at[1].c];
}

std::optional<bool> Machine::plain(const Program& program, const Subject& subject) const {
  const Pool& pool = ruleset_.pool;
  OpenTruths truths;
  for (std::uint32_t index = program.begin; index < program.end; ++index) {
    const Instruction& instruction = pool.code[index];
    std::optional<bool> is;
    switch (instruction.code) {
      case Code::deny:
        truths.deny();
        continue;
      case Code::both:
        truths.both();
        continue;
      case Code::either:
        truths.either();
        continue;
      case Code::skip_if_no:
        if (truths.is(false)) index = instruction.c - 1;
        continue;
      case Code::skip_if_yes:
        if (truths.is(true)) index = instruction.c - 1;
        continue;
      case Code::subject_text:
        is = plain_cell(index, program.end, subject);
        index += 2;
        break;
      case Code::is_word:
        is = figures_.says(static_cast<StatedWords>(instruction.a), instruction.c, subject);
        break;
      case Code::is_product:
        is = figures_.is_one_of(pool.lists[instruction.c]);
        break;
      case Code::has_trait:
        is = figures_.has_trait(instruction.c);
        break;
      case Code::flag:
        is = figures_.has(static_cast<Flag>(instruction.a));
        break;
      case Code::is_material:
        is = figures_.is_material(instruction.c, subject);
        break;
      default:
        break;
    }
    if (!is || truths.full()) return std::nullopt;
    truths.push(is);
  }
  return truths.is(true);
}

bool Machine::never(const Program& program) const {
  const Pool& pool = ruleset_.pool;
  OpenTruths truths;
  for (std::uint32_t index = program.begin; index < program.end; ++index) {
    const Instruction& instruction = pool.code[index];
    std::optional<bool> is;
    switch (instruction.code) {
      case Code::deny:
        truths.deny();
        continue;
      case Code::both:
        truths.both();
        continue;
      case Code::either:
        truths.either();
        continue;
      case Code::skip_if_no:
        if (truths.is(false)) index = instruction.c - 1;
        continue;
      case Code::skip_if_yes:
        if (truths.is(true)) index = instruction.c - 1;
        continue;
      case Code::is_word: {
        const auto words = static_cast<StatedWords>(instruction.a);
        if (words == StatedWords::dustiness) return false;
        is = figures_.says(words, instruction.c, Subject{});
        if (!is) return false;
        break;
      }
      case Code::is_product:
        is = figures_.is_one_of(pool.lists[instruction.c]);
        break;
      case Code::has_trait:
        is = figures_.has_trait(instruction.c);
        break;
      case Code::flag:
        is = figures_.has(static_cast<Flag>(instruction.a));
        break;
      case Code::is_material:
        // of some it is true, unless nothing of the kind is in the formula
        if (!figures_.may_be_material(instruction.c)) is = false;
        break;
      default:
        return false;
    }
    if (truths.full()) return false;
    truths.push(is);
  }
  return truths.is(false);
}

}  // namespace sudsmark::rules
