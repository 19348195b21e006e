// Doubles as decimal digits and back: the same digits with every compiler, on every machine and in
// every locale. Compilers whose library cannot do this (that of the browser is one) are why it is
// not left to <charconv>; the only file that knows fmt and fast_float is beside this one.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace sudsmark::text {

/// So many decimals after the point, rounded to the nearest: "2.50".
[[nodiscard]] std::string fixed_digits(double value, int decimals);

/// As few decimals as read back as the same double, without an exponent: "0.000001".
[[nodiscard]] std::string plain_digits(double value);

/// At most so many digits that count, in the shorter of both forms: "2.5", "1e-07".
[[nodiscard]] std::string general_digits(double value, int digits);

/// As few digits as read back as the same double, with an exponent where that is shorter.
[[nodiscard]] std::string shortest_digits(double value);

/// A value rounded to so many digits that count.
[[nodiscard]] double rounded_to_digits(double value, int digits);

/// The double nearest to digits, perhaps with a point and an exponent; none if the text is anything
/// else or no double can hold it.
[[nodiscard]] std::optional<double> read_digits(std::string_view text);

}  // namespace sudsmark::text
