// The fixed words that statements choose from, each list once for all rooms that know it.
#pragma once

#include <array>
#include <span>
#include <string_view>

namespace sudsmark::formula {

/// Fixed words that a statement chooses from, and what they are, for sentences.
struct Choice {
  std::string_view words;  ///< "a way of forming"
  std::span<const std::string_view> choices;
};

namespace vocabulary {

inline constexpr std::array<std::string_view, 6> formings{"pressed", "hand moulded", "scooped",
                                                          "rolled",  "poured",       "loose"};
/// As the law writes them; each has laws of its own.
inline constexpr std::array<std::string_view, 5> markets{"GB", "EU", "NI", "US", "CA"};
inline constexpr std::array<std::string_view, 3> users{"adults", "children over 3",
                                                       "children under 3"};
inline constexpr std::array<std::string_view, 4> waters{"pure", "soft", "medium", "hard"};
inline constexpr std::array<std::string_view, 6> masks{"none", "FFP1", "FFP2",
                                                       "FFP3", "N95",  "P100"};
inline constexpr std::array<std::string_view, 2> yes_or_no{"yes", "no"};

}  // namespace vocabulary

namespace choice {

inline constexpr Choice forming{"a way of forming", vocabulary::formings};
inline constexpr Choice market{"a market", vocabulary::markets};
inline constexpr Choice users{"a group of users", vocabulary::users};
inline constexpr Choice water{"a kind of water", vocabulary::waters};
inline constexpr Choice mask{"a mask", vocabulary::masks};
inline constexpr Choice extraction{"an answer", vocabulary::yes_or_no};

}  // namespace choice

}  // namespace sudsmark::formula
