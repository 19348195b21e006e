// The words of a name as bags, shops and blogs spell it, brought to one spelling: what changes
// nothing in what a material is goes, what could change it stays.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/role.h"

namespace sudsmark::catalogue {

/// The words of a name: lower case, American, singular; letters and figures apart; without the
/// words of a short closed list ("organic", "pure", "food grade", "no.", …). A strength keeps its
/// sign: "70%".
[[nodiscard]] std::vector<std::string> name_words(std::string_view name);

/// Words in any order as one key. A strength loses its sign.
[[nodiscard]] std::string any_order(const std::vector<std::string>& words);
/// Words in their order with nothing between ("bees wax", "beeswax").
[[nodiscard]] std::string run_together(const std::vector<std::string>& words);

/// The strength that a word states, as a fraction: "70%", or a bare figure from 20 to 100.
[[nodiscard]] std::optional<double> strength(std::string_view word);

/// Whether a word only says where a plant was grown.
[[nodiscard]] bool names_origin(std::string_view word);

/// Forms that a word can name, a bit each (`1 << Form`); 0 if it names no form.
[[nodiscard]] unsigned forms_of_word(std::string_view word);

/// Whether a text in brackets may be left out: it has no word of another form, hydrate, strength or
/// making.
[[nodiscard]] bool tells_nothing(std::string_view bracketed);

}  // namespace sudsmark::catalogue
