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

std::optional<bool> Machine::settled(const Program& program, const Subject* subject) const {
  const Pool& pool = ruleset_.pool;
  OpenTruths truths;
  for (std::uint32_t index = program.begin; index < program.end; ++index) {
    const Instruction& instruction = pool.code[index];
    std::optional<bool> is;
    bool may_be_open = false;
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
        if (subject == nullptr) return std::nullopt;
        is = plain_cell(index, program.end, *subject);
        index += 2;
        break;
      case Code::is_word: {
        const auto words = static_cast<StatedWords>(instruction.a);
        if (subject == nullptr && words == StatedWords::dustiness) return std::nullopt;
        is = figures_.says(words, instruction.c, subject != nullptr ? *subject : Subject{});
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
        if (subject != nullptr) {
          is = figures_.is_material(instruction.c, *subject);
        } else if (figures_.may_be_material(instruction.c)) {
          may_be_open = true;  // of one material it holds, of another not
        } else {
          is = false;
        }
        break;
      default:
        break;
    }
    if ((!is && !may_be_open) || truths.full()) return std::nullopt;
    truths.push(is);
  }
  if (truths.is(true)) return true;
  return truths.is(false) ? std::optional(false) : std::nullopt;
}

}  // namespace sudsmark::rules
