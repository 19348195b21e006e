// The words that expressions know beside measures: what a formula states, and what the subject of
// an `each` has. One list for the compiler, the machine and the documentation.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "rules/program.h"

namespace sudsmark::rules {

/// "product", "row", "portion", …: as rules write it behind `each:`.
[[nodiscard]] std::string_view each_word(Each each);

/// A word of a formula with the words that it can be: `forming = pressed`.
struct StatedInfo {
  std::string_view name;
  Each each;                                ///< the subject it belongs to; product: always there
  std::span<const std::string_view> known;  ///< as they are spelled; at most 32
  std::string_view missing;                 ///< what a formula without it does not say
  std::string_view meaning;
  std::string_view workshop{};  ///< its statement, where it is one of the workshop
  std::string_view unsaid{};    ///< what holds where nothing is said; empty: nobody knows
  StatedWords id{};             ///< its place among the rows
};
inline constexpr std::size_t most_stated_words = 16;
[[nodiscard]] std::span<const StatedInfo> stated_words();
[[nodiscard]] const StatedInfo& info(StatedWords words);
/// Position among the known words, compared folded.
[[nodiscard]] std::optional<unsigned> find_word(const StatedInfo& info, std::string_view word);

/// A figure of the subject.
struct FieldInfo {
  Field id;
  std::string_view name;
  Each each;
  std::string_view unit;     ///< "1" for plain numbers
  std::string_view missing;  ///< followed by "of 'NAME'"
  std::string_view meaning;
};
[[nodiscard]] std::span<const FieldInfo> fields();
[[nodiscard]] const FieldInfo& info(Field field);

/// A mark of a material: `material is combustible`.
struct MarkInfo {
  Mark id;
  std::string_view name;
  std::string_view missing;  ///< followed by "of 'NAME'"; empty if it is always known
  std::string_view meaning;
};
[[nodiscard]] std::span<const MarkInfo> marks();
[[nodiscard]] const MarkInfo& info(Mark mark);

/// What a formula has or has not: `not has_label`.
struct FlagInfo {
  Flag id;
  std::string_view name;
  std::string_view meaning;
};
[[nodiscard]] std::span<const FlagInfo> flags();

/// The words of sums and of arithmetic: `share`, `min`, …
[[nodiscard]] std::span<const std::string_view> functions();

/// A text of the formula or the subject.
struct TextInfo {
  SubjectText id;
  std::string_view name;
  Each each;
  std::string_view missing;
  std::string_view meaning;
};
[[nodiscard]] std::span<const TextInfo> texts();

/// "H334", "H360FD": a hazard statement's code.
[[nodiscard]] bool is_hazard_code(std::string_view word);

/// Names that a YAML measure cannot have: words of this list and functions.
[[nodiscard]] bool reserved(std::string_view name);
/// Every name that stands for a value where `each` is gone over, for an error's suggestions.
[[nodiscard]] std::vector<std::string> known_names(Each each);

}  // namespace sudsmark::rules
