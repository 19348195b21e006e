// What the loader of the catalogue says.
#pragma once

#include "text/diagnostic.h"

namespace sudsmark::catalogue::messages {

using text::Message;

// Figures, numbers, dates.
inline constexpr Message bad_figure{"bad-figure", "expected {0}, for instance '{1}'; found '{2}'"};
inline constexpr Message unknown_unit{"unknown-unit", "'{0}' is not a unit{1}"};
inline constexpr Message wrong_dimension{"wrong-dimension", "expected {0}, found {1} ('{2}')"};
inline constexpr Message reversed_range{"reversed-range",
                                        "the first figure of a range must not exceed the second"};
inline constexpr Message over_whole{"over-whole", "a share cannot exceed 100 %"};
inline constexpr Message one_figure{"one-figure", "expected one figure, found a range"};
inline constexpr Message bad_cas{
    "bad-cas", "'{0}' is not a CAS number: expected digits as in 497-19-8, from 2 to 7 at first"};
inline constexpr Message cas_check_digit{"cas-check-digit",
                                         "the check digit of the CAS number {0} should be {1}"};
inline constexpr Message bad_colour_index{
    "bad-colour-index", "'{0}' is not a colour index number: expected five digits, as in 42090"};
inline constexpr Message bad_date{"bad-date", "'{0}' is not a date: expected one as 2026-07-31"};
inline constexpr Message dates_reversed{"dates-reversed", "'until' must be later than 'from'"};
inline constexpr Message shelf_alone{
    "shelf-alone", "'shelf' needs 'from', the day of first placing on the market"};
inline constexpr Message shelf_reversed{"shelf-reversed", "'shelf' must not be before 'from'"};
inline constexpr Message bad_market{"bad-market",
                                    "'{0}' is not a market: expected GB, EU, NI, US or CA"};
inline constexpr Message bad_hazard{
    "bad-hazard", "'{0}' is not a hazard statement: expected a code as H319 or EUH208"};
inline constexpr Message bad_id{
    "bad-id", "'{0}' cannot be an id: expected lower case letters, digits and hyphens"};

// Words from a fixed list.
inline constexpr Message unknown_word{"unknown-word", "'{0}' is not {1}{2}"};
inline constexpr Message wrong_word{"wrong-word", "expected {0}, found '{1}'"};

// Names that point at something.
inline constexpr Message unknown_source{"unknown-source", "no source has the id '{0}'{1}"};
inline constexpr Message source_needed{"source-needed", "{0} needs a source"};
inline constexpr Message source_twice{"source-twice",
                                      "'source' and 'sources' mean the same: give one"};
inline constexpr Message unknown_substance{"unknown-substance",
                                           "'{0}' is not a substance that is known{1}"};
inline constexpr Message ambiguous_substance{"ambiguous-substance",
                                             "'{0}' can mean {1}: write the name of one"};
inline constexpr Message unknown_material{"unknown-material", "no material has the id '{0}'{1}"};
inline constexpr Message same_id{"same-id", "{0} '{1}' is already there"};
inline constexpr Message same_word{"same-word", "'{0}' already means the product '{1}'"};
inline constexpr Message too_many{"too-many", "there are more than {0} {1}"};

// Materials and tables.
inline constexpr Message zero_molar_mass{"zero-molar-mass", "a molar mass is more than 0"};
inline constexpr Message bad_formula{
    "bad-formula", "'{0}' is not a chemical formula, such as CaCO3 or Na2CO3.10H2O"};
inline constexpr Message solution_strength{
    "solution-strength", "the strength of a solution is more than 0 % and less than 100 %"};
inline constexpr Message beyond_ph{"beyond-ph", "a pH is from 0 to 14"};
inline constexpr Message content_kind{
    "content-kind", "a content is one of 'active', 'substance' and 'water': give exactly one"};
inline constexpr Message content_twice{"content-twice", "'{0}' is already among the contents"};
inline constexpr Message contents_over{
    "contents-over", "the contents are at least {0} % of the material: more than the whole"};
inline constexpr Message reserved_column{
    "reserved-column", "a column cannot be called '{0}', which is a key of every row"};
inline constexpr Message word_with_unit{"word-with-unit", "a column of words has no unit"};
inline constexpr Message column_twice{"column-twice", "there is already a column '{0}'"};
inline constexpr Message market_twice{"market-twice",
                                      "the row holds in {0} already, by its own sources"};
inline constexpr Message likewise_alone{
    "likewise-alone", "'likewise' needs markets of the row itself beside it (`market`)"};
inline constexpr Message row_unnamed{"row-unnamed", "a row needs a name or a substance"};

}  // namespace sudsmark::catalogue::messages
