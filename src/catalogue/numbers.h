// Registry numbers and dates as the data files write them.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string_view>

namespace sudsmark::catalogue {

/// Whether a text has the form of a CAS number: 2 to 7 digits, 2 digits, 1 check digit, joined by
/// hyphens.
[[nodiscard]] bool looks_like_cas(std::string_view text);
/// The check digit that a text of that form should end in: the sum of the digits before it, the
/// last counted once, the last but one twice, and so on, modulo 10 (CAS registry number check
/// digit).
[[nodiscard]] int cas_check_digit(std::string_view text);

/// A colour index number: "42090" or "CI 42090"; none if it is not five digits.
[[nodiscard]] std::optional<std::uint32_t> read_colour_index(std::string_view text);

/// Whether a word is a CAS number or "CI 42090", and so may belong to several substances.
[[nodiscard]] bool is_number(std::string_view word);

/// "2026-07-31"; none for any other form, and for a day that no calendar has.
[[nodiscard]] std::optional<std::chrono::year_month_day> read_date(std::string_view text);

}  // namespace sudsmark::catalogue
