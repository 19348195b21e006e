// Choices: terms that take one of a few fixed words, and say which when they meet another.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "formula/terms.h"
#include "formula/words.h"
#include "text/name.h"

namespace sudsmark::formula {

/// Fixed words that a statement chooses from, and what they are, for sentences.
struct Choice {
  std::string_view words;  ///< "a way of forming"
  std::span<const std::string_view> choices;
};

/// Reads one of the words, in any case and with any run of blanks or hyphens between its parts; the
/// attribute holds it as it is listed. The choice must outlive the term.
constexpr auto one_of(const Choice& choice) {
  return term<Word>(
      choice.words, [&choice](Iterator& first, Iterator last, Reading& reading, Word& word) {
        Iterator at = first;
        if (!scan_name(at, last, reading, {.keyword = {}, .comma = true}, word)) return false;
        const std::string folded = text::fold(word.text);
        for (const std::string_view one : choice.choices) {
          if (text::fold(one) == folded) {
            word.text = one;
            first = at;
            return true;
          }
        }
        return reading.refuse(
            messages::not_a_choice, word.place,
            {shown(word.text), std::string(choice.words), choice_hint(word.text, choice.choices),
             only_choice(word.text, choice.choices)});
      });
}

}  // namespace sudsmark::formula
