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
/// Ages first; then what may be true of people of any age.
inline constexpr std::array<std::string_view, 5> users{
    "adults", "children over 3", "children under 3", "sensitive skin", "pregnant or nursing"};
inline constexpr std::size_t ages = 3;
/// What packs and stalls say most; anything else is said in quotes.
inline constexpr std::array<std::string_view, 15> claims{
    "vegan",         "natural",           "organic",     "fragrance free",
    "unscented",     "hypoallergenic",    "gentle",      "for sensitive skin",
    "tear free",     "preservative free", "soap free",   "palm oil free",
    "biodegradable", "plastic free",      "sulfate free"};
/// What a sampler of dust lets through.
inline constexpr std::array<std::string_view, 3> dust_fractions{"inhalable", "thoracic",
                                                                "respirable"};
inline constexpr std::array<std::string_view, 4> waters{"pure", "soft", "medium", "hard"};
inline constexpr std::array<std::string_view, 6> masks{"none", "FFP1", "FFP2",
                                                       "FFP3", "N95",  "P100"};
inline constexpr std::array<std::string_view, 2> yes_or_no{"yes", "no"};

}  // namespace vocabulary

namespace choice {

inline constexpr Choice forming{"a way of forming", vocabulary::formings};
inline constexpr Choice market{"a market", vocabulary::markets};
inline constexpr Choice users{"a group of users", vocabulary::users};
inline constexpr Choice claims{"a claim", vocabulary::claims};
inline constexpr Choice dust_fraction{"a fraction of dust", vocabulary::dust_fractions};
inline constexpr Choice water{"a kind of water", vocabulary::waters};
inline constexpr Choice mask{"a mask", vocabulary::masks};
inline constexpr Choice answer{"an answer", vocabulary::yes_or_no};

}  // namespace choice

}  // namespace sudsmark::formula
