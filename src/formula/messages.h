// What the language says when it cannot read something. Holes are filled as each comment says;
// words from the file come in their quotes already. A message that ends in a number offers that
// argument as what to write instead.
#pragma once

#include "text/diagnostic.h"

namespace sudsmark::formula::messages {

using text::Message;

// Files

inline constexpr Message file_too_large{"file-too-large",
                                        "a formula file is at most 1 MiB; this one has {0} bytes"};
inline constexpr Message not_utf8{"not-utf8",
                                  "this byte is not UTF-8; save the file as UTF-8 text"};
inline constexpr Message too_many_lines{"too-many-lines",
                                        "a formula has at most 2,000 ingredient lines"};

// Lines

/// {0}: what was expected; {1}: what was found
inline constexpr Message expected{"expected", "expected {0}, found {1}"};
inline constexpr Message control_character{"control-character",
                                           "a control character ({0}) cannot stand here"};
inline constexpr Message odd_space{
    "odd-space", "an invisible character ({0}) stands here; type a plain space", 1};
inline constexpr Message curly_quote{"curly-quote",
                                     "'{0}' is a typographic quote; write a straight one (\")", 1};
inline constexpr Message open_quote{"open-quote", "this double quote is never closed"};
inline constexpr Message bad_escape{"bad-escape",
                                    "{0} means nothing; only \\\" and \\\\ are escapes"};
inline constexpr Message text_after_end{"text-after-end",
                                        "{0} stands after the end of the statement"};
inline constexpr Message empty_text{"empty-text", "there is nothing in the quotes"};

// Names

inline constexpr Message empty_name{"empty-name",
                                    "a name is missing: there is nothing in the quotes"};
inline constexpr Message name_too_long{"name-too-long",
                                       "a name is at most 200 bytes; this one has {0}"};
inline constexpr Message needs_quotes{
    "needs-quotes", "{0} cannot stand in a name unless the name is in double quotes"};

// Numbers

/// {0}: the number; {1}: how to write it
inline constexpr Message decimal_comma{"decimal-comma", "{0} has a decimal comma; write {1}", 1};
inline constexpr Message thousands_comma{"thousands-comma",
                                         "{0} has commas between its thousands; write {1}", 1};
inline constexpr Message negative{"negative", "{0} is negative; an amount is zero or more"};
inline constexpr Message plus_sign{"plus-sign", "{0} has a sign; write {1}", 1};
inline constexpr Message lone_point{"lone-point", "{0} begins with a point; write {1}", 1};
inline constexpr Message bad_point{
    "bad-point", "{0} is no number; one point at most, with digits on both sides"};
inline constexpr Message exponent{"exponent", "{0} has an exponent; write the number out"};
inline constexpr Message fraction_sign{"fraction-sign", "{0} is one character; write {1}", 1};
inline constexpr Message bad_fraction{"bad-fraction",
                                      "{0} is no fraction; it has whole numbers, as in 1/3"};
inline constexpr Message zero_below{"zero-below", "{0} divides by zero"};
inline constexpr Message number_out_of_bounds{
    "number-out-of-bounds",
    "{0} is out of bounds; a number lies between 10^-12 and 10^12, or is 0"};

// Figures

/// {0}: units that could stand here; {1}: the figure; {2}: what was found
inline constexpr Message unit_missing{"unit-missing",
                                      "a unit is missing after {1}: expected {0}, found {2}"};
/// {0}: the word; {1}: what is measured; {2}: a hint; {3}: what to write instead
inline constexpr Message wrong_unit{"wrong-unit", "{0} is no unit of {1}{2}", 3};
/// {0}: the unit with its point; {1}: without
inline constexpr Message unit_with_point{"unit-with-point", "{0} is written '{1}'", 1};
inline constexpr Message two_gallons{
    "two-gallons", "{0} is two measures: write 'US gal' (3.785 l) or 'imperial gal' (4.546 l)"};
inline constexpr Message rising_units{
    "rising-units",
    "{0} is no mass in two units; the second is less than one of the first, such as "
    "1 lb 4 oz"};
inline constexpr Message no_unit_here{"no-unit-here", "{0} is one too many: {1}, has no unit"};
inline constexpr Message kitchen_measure{
    "kitchen-measure",
    "{0} is a kitchen measure; a formula that is checked is weighed: give grams"};
inline constexpr Message unit_in_other_case{"unit-in-other-case", "{0} is no unit; write '{1}'", 1};
inline constexpr Message not_an_amount{"not-an-amount", "{0} measures no ingredient: expected {1}"};
/// {0}: the word; {1}: a hint; {2}: what to write instead
inline constexpr Message unknown_unit{"unknown-unit",
                                      "{0} is no unit, and no premix is made in it{1}", 2};
inline constexpr Message unit_or_name_missing{"unit-or-name-missing",
                                              "a unit is missing before {0}, or a name after it"};
inline constexpr Message unit_not_free{
    "unit-not-free", "{0} cannot be a premix's own unit; take a word that is no other measure"};
inline constexpr Message range_of_two_units{
    "range-of-two-units", "a range has one kind of unit; this one has {0} and {1}"};
inline constexpr Message wide_dash{"wide-dash",
                                   "{0} is a typographic dash; write a hyphen (-) or 'to'", 1};
inline constexpr Message backward_range{
    "backward-range", "{0} runs backwards; the left end of a range is at most the right"};
inline constexpr Message range_here{"range-here", "a range cannot stand here; give one figure"};
inline constexpr Message above_hundred{"above-hundred", "{0} is more than 100 %"};
/// {0}: the figure; {1}: the most
inline constexpr Message above_most{"above-most", "{0} is more than {1}"};
inline constexpr Message zero_here{"zero-here", "{0} cannot stand here; it must be above zero"};
inline constexpr Message dose_of_no_mass{"dose-of-no-mass",
                                         "a dose is a mass per mass, such as 0.6 g per kg"};
inline constexpr Message dose_with_slash{"dose-with-slash", "{0} is written '{1} per {2}'", 3};
inline constexpr Message handles_no_mass{
    "handles-no-mass",
    "what a task handles is weighed: expected a mass or a number of premix units"};
inline constexpr Message scale_upside_down{
    "scale-upside-down", "the smallest step is above the greatest load; it reads '0.1 g to 3 kg'"};
inline constexpr Message sampled_range{
    "sampled-range", "a sampler runs for one stretch of time: give one figure, such as 30 min"};
inline constexpr Message one_bound{"one-bound", "'{0}' takes one share, not a range"};

// Words

/// {0}: the word; {1}: what it should be; {2}: a hint; {3}: what to write instead
inline constexpr Message not_a_choice{"not-a-choice", "{0} is not {1}{2}", 3};
inline constexpr Message two_markets{"two-markets", "'UK' is two markets: write GB, NI or both"};
inline constexpr Message named_twice{"named-twice", "{0} is named twice"};
inline constexpr Message no_such_day{"no-such-day", "{0} is no day of the calendar"};
/// {0}: the number; {1}: the digit that it should end in
inline constexpr Message cas_check_digit{
    "cas-check-digit", "the check digit of {0} is wrong: the other digits make it {1}"};

// Sections and statements

/// {0}: the word; {1}: a hint; {2}: what to write instead
inline constexpr Message unknown_section{"unknown-section", "{0} opens no section{1}", 2};
/// {0}: the word; {1}: the section; {2}: a hint; {3}: what to write instead
inline constexpr Message unknown_statement{"unknown-statement", "{0} is no statement of {1}{2}", 3};
/// {0}: the word; {1}: the section; {2}: what is meant; {3}: what to write instead
inline constexpr Message meant_statement{"meant-statement", "{0} is no statement of {1}{2}", 3};
/// {0}: the word; {1}: the section that it belongs to; {2}: the one that is open
inline constexpr Message other_section{"other-section",
                                       "{0} belongs to a '{1}' section, not to {2}"};
inline constexpr Message no_section{
    "no-section", "{0} belongs to no section: a file begins with one, such as 'formula'{1}"};
/// {0}: what stands there
inline constexpr Message formula_missing{
    "formula-missing",
    "{0} belongs to no section; a formula begins so, a line each: 'formula \"my bar\"', then "
    "'product bubble bar', then 'phase \"dry\"', then an amount and a name a line, such as "
    "'440 g sodium bicarbonate' and '300 g cream of tartar'"};
inline constexpr Message lower_case{"lower-case", "{0} is written '{1}'", 1};
/// {0}: the section that is open
inline constexpr Message amount_out_of_place{
    "amount-out-of-place",
    "an amount cannot stand in {0}; ingredient lines follow 'phase', 'premix' or 'portion'"};
inline constexpr Message ingredient_needs_amount{
    "ingredient-needs-amount",
    "expected an amount at the head of the line, such as 44 %, 500 g or q.s., found {0}"};
inline constexpr Message write_qs{"write-qs", "{0} is written 'q.s.'", 1};
/// {0}: what stands behind q.s.
inline constexpr Message fill_to{
    "fill-to",
    "{0} is one too many: q.s. fills up to 100 %, or to the batch; write 'q.s.' and the name"};
/// {0}: the word before the colon
inline constexpr Message colon{"colon", "'{0}' takes no colon: a blank is enough"};
/// A statement of the language's first version.
inline constexpr Message first_sold{
    "first-sold",
    "'first sold' is two statements now: 'batch made' with the day on which this batch goes on the "
    "market, which the law of the EU, NI and GB counts, and 'on sale since' with the day since "
    "which the product is sold at all, which Canada counts"};
inline constexpr Message given_twice{"given-twice", "{0} is given twice"};
inline constexpr Message second_formula{
    "second-formula", "a file holds one 'formula' or 'tweak', and this is the second"};
inline constexpr Message product_missing{
    "product-missing",
    "the formula does not say what it is: it needs a line such as 'product bubble bar'"};

// Files that name others

inline constexpr Message library_named{
    "library-named",
    "there is no 'formula' and no 'tweak' in this file: it is a library, to be included"};
inline constexpr Message nothing_written{
    "nothing-written", "nothing is written in this file: a formula begins with 'formula \"Name\"'"};
inline constexpr Message unreadable{"unreadable", "{0} cannot be read"};
inline constexpr Message outside{
    "outside", "{0} leaves the folder of the formula; --allow-outside permits it"};
/// {0}: the files, each with the next that it names
inline constexpr Message circle{"circle", "the files go round in a circle: {0}"};
inline constexpr Message includes_formula{
    "includes-formula", "{0} holds a '{1}' of its own; only libraries can be included"};
inline constexpr Message base_is_library{
    "base-is-library", "{0} holds no 'formula' and no 'tweak': it cannot be the base of a tweak"};
inline constexpr Message too_many_files{"too-many-files",
                                        "a formula and all it names are at most 64 files"};
inline constexpr Message tree_too_large{"tree-too-large",
                                        "a formula and all it names are at most 8 MiB"};
/// {0}: what kind of thing; {1}: its name
inline constexpr Message name_twice{"name-twice", "{0} {1} is there already"};
inline constexpr Message label_twice{"label-twice",
                                     "a formula has one label, and this is the second"};
/// {0}: the sum; {1}: the difference; {2}: "is missing" or "too much"
inline constexpr Message portion_sum{"portion-sum",
                                     "the portions make {0} %, not 100 %: {1} % {2}"};

// Tweaks

/// {0}: the name; {1}: a hint
inline constexpr Message no_such_line{"no-such-line", "no line of the base names {0}{1}"};
inline constexpr Message no_such_part{"no-such-part",
                                      "no phase, premix or portion is called {0}{1}"};
inline constexpr Message no_phase{"no-phase", "the base has no phase to add to"};
inline constexpr Message set_in_several{
    "set-in-several",
    "{0} stands in {1} and in {2}, and no phase: 'set' cannot say which is meant"};
inline constexpr Message set_of_unlike{
    "set-of-unlike",
    "{0} stands on several lines in amounts that do not add up; remove it and add it again"};
inline constexpr Message fill_not_in_phase{
    "fill-not-in-phase",
    "{0} stands in no phase: only a line of a phase can take up the difference"};
inline constexpr Message filled_already{
    "filled-already", "the recipe has a q.s. already, so {0} cannot take up the difference too"};
/// {0}: for what; {1}: what the others make; {2}: the unit; {3}: what all should make
inline constexpr Message nothing_left{
    "nothing-left", "the tweak leaves nothing for {0}: the others make {1} of {3} {2}"};
inline constexpr Message parts_beside{
    "parts-beside", "the tweak puts parts beside masses or shares; give it in the base's own kind"};
inline constexpr Message batch_unknown{
    "batch-unknown", "to put shares beside masses, the base must say what its batch weighs"};
inline constexpr Message batch_to_scale{
    "batch-to-scale", "the base does not say what its batch weighs, and its lines do not either"};
inline constexpr Message volume_in_tweak{
    "volume-in-tweak",
    "a line given by volume has no mass here: give grams, or let q.s. take it up"};

}  // namespace sudsmark::formula::messages
