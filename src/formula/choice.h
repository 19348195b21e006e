// Choices: terms that take one of a few fixed words, and say which when they meet another.
#pragma once

#include <string>
#include <string_view>

#include "formula/terms.h"
#include "formula/vocabulary.h"
#include "formula/words.h"
#include "text/name.h"

namespace sudsmark::formula {

/// Reads one of the words, in any case and with any run of blanks or hyphens between its parts; the
/// attribute holds it as it is listed. `before` is a word of the language that follows, if there is
/// one. The choice must outlive the term.
constexpr auto one_of(const Choice& choice, std::string_view before = {}) {
  return term<Word>(choice.words, [&choice, before](Iterator& first, Iterator last,
                                                    Reading& reading, Word& word) {
    Iterator next = first;
    if (!scan_name(next, last, reading, {.keyword = before, .comma = true}, word)) return false;
    const std::string folded = text::fold(word.text);
    for (const std::string_view one : choice.choices) {
      if (text::fold(one) == folded) {
        word.text = one;
        first = next;
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
