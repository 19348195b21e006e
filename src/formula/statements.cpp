// What the register promises, held by the compiler: each field of a section is filled by a row of
// it, by its heading, or by its lines; and each kind of edit has a row.
#include "formula/statements.h"

#include <variant>

namespace sudsmark::formula {
namespace held {

/// Compiles only if an aggregate has this many fields.
template <std::size_t count, typename Section>
constexpr bool has_fields(const Section& section) {
  if constexpr (count == 2) {
    [[maybe_unused]] const auto& [a, b] = section;
  } else if constexpr (count == 3) {
    [[maybe_unused]] const auto& [a, b, c] = section;
  } else if constexpr (count == 6) {
    [[maybe_unused]] const auto& [a, b, c, d, e, f] = section;
  } else if constexpr (count == 7) {
    [[maybe_unused]] const auto& [a, b, c, d, e, f, g] = section;
  } else if constexpr (count == 8) {
    [[maybe_unused]] const auto& [a, b, c, d, e, f, g, h] = section;
  } else if constexpr (count == 9) {
    [[maybe_unused]] const auto& [a, b, c, d, e, f, g, h, i] = section;
  } else if constexpr (count == 10) {
    [[maybe_unused]] const auto& [a, b, c, d, e, f, g, h, i, j] = section;
  } else if constexpr (count == 11) {
    [[maybe_unused]] const auto& [a, b, c, d, e, f, g, h, i, j, k] = section;
  } else if constexpr (count == 12) {
    [[maybe_unused]] const auto& [a, b, c, d, e, f, g, h, i, j, k, l] = section;
  } else if constexpr (count == 13) {
    [[maybe_unused]] const auto& [a, b, c, d, e, f, g, h, i, j, k, l, m] = section;
  } else if constexpr (count == 14) {
    [[maybe_unused]] const auto& [a, b, c, d, e, f, g, h, i, j, k, l, m, n] = section;
  } else if constexpr (count == 15) {
    [[maybe_unused]] const auto& [a, b, c, d, e, f, g, h, i, j, k, l, m, n, o] = section;
  } else if constexpr (count == 16) {
    [[maybe_unused]] const auto& [a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p] = section;
  } else if constexpr (count == 17) {
    [[maybe_unused]] const auto& [a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q] = section;
  } else if constexpr (count == 18) {
    [[maybe_unused]] const auto& [a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r] = section;
  } else {
    static_assert(count == 0, "has_fields knows no section of this size yet: add a line to it");
  }
  return true;
}

/// Whether each field of a section has a row, or stands in its heading or its lines.
template <typename Owner>
bool whole() {
  constexpr std::size_t count = field_count<Owner>() + Register<Owner>::other_fields;
  return has_fields<count>(Owner{});
}

template bool whole<Statements>();
template bool whole<Fragrance>();
template bool whole<UserMaterial>();
template bool whole<Workshop>();
template bool whole<Task>();
template bool whole<Label>();

}  // namespace held

namespace {

template <std::size_t... index>
constexpr bool edits_have_rows(std::index_sequence<index...> /*all*/) {
  return (!edit_words<std::variant_alternative_t<index, Edit>>().empty() && ...);
}
static_assert(edits_have_rows(std::make_index_sequence<std::variant_size_v<Edit>>{}),
              "an edit has no row in the register");

}  // namespace
}  // namespace sudsmark::formula
