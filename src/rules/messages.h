// What the rules room says when a ruleset cannot be read or used.
#pragma once

#include "text/diagnostic.h"

namespace sudsmark::rules::messages {

using text::Message;

// Reading an expression.
inline constexpr Message syntax{"expression-syntax", "expected {0}, found {1}"};
inline constexpr Message too_long{"expression-too-long",
                                  "an expression is at most {0} bytes long; this one has {1}"};
inline constexpr Message too_deep{"expression-too-deep",
                                  "the expression is nested more than {0} deep"};
inline constexpr Message decimal_comma{"expression-decimal-comma",
                                       "a decimal comma: write the figure with a point"};
inline constexpr Message subtraction{"expression-subtraction",
                                     "a subtraction has a blank on each side of its '-'"};
inline constexpr Message comparison_chain{
    "expression-chain",
    "a second comparison: write 'x between a and b', or join two comparisons with 'and'"};
inline constexpr Message unknown_unit{"unknown-unit", "'{0}' is not a unit that is known{1}"};
inline constexpr Message unknown_function{"unknown-function",
                                          "'{0}' is not a function that is known{1}"};
inline constexpr Message per_unit{"expression-per",
                                  "'per' needs a unit on each side, as in '0.6 g per kg'"};
inline constexpr Message figure_size{"figure-size",
                                     "this figure is too large or too small to be kept"};
inline constexpr Message quote_open{"expression-quote-open", "this quote is never closed"};

// What exercises are drawn from.
inline constexpr Message breakage_way{
    "breakage-way",
    "a breakage has 'line' and 'becomes', or one of 'add', 'leave out' and 'tweak'"};
inline constexpr Message training_unknown{"training-unknown",
                                          "an exercise names the {0} '{1}', and there is none"};

// Names and types.
inline constexpr Message unknown_measure{"unknown-measure",
                                         "'{0}' is not a measure or a word that is known here{1}"};
inline constexpr Message measure_elsewhere{"measure-elsewhere",
                                           "'{0}' is only known in a rule with 'each: {1}'"};
inline constexpr Message unknown_trait{"unknown-trait",
                                       "'{0}' is not a trait of any kind of product{1}"};
inline constexpr Message unknown_kind{"unknown-product",
                                      "'{0}' is not a kind of product that is known{1}"};
inline constexpr Message unknown_word{"unknown-word", "'{0}' is not a word of {1}{2}"};
inline constexpr Message unknown_choice{
    "unknown-selection", "'{0}' is not a role, a form, a substance or a material that is known{1}"};
inline constexpr Message ambiguous_choice{"ambiguous-selection",
                                          "'{0}' can mean {1}: write the one that is meant"};
inline constexpr Message hazard_of_material{
    "hazard-of-material",
    "'{0}' is asked of one material at a time: 'each: material' and 'material is {0}'"};
inline constexpr Message against{"wrong-kind", "{0} cannot be held against {1}"};
inline constexpr Message share_against_number{
    "share-against-number", "a share cannot be held against a plain number: write '{0} %'"};
inline constexpr Message added{"wrong-kind", "{0} cannot be {2} {1}"};
inline constexpr Message not_figure{"not-a-figure", "expected a figure here, found {0}"};
inline constexpr Message not_truth{"not-a-truth",
                                   "expected something that is true or false here, found {0}"};
inline constexpr Message not_words{"not-words", "expected {0} here, found {1}"};
inline constexpr Message is_of_what{
    "is-of-what",
    "only 'product is TRAIT', 'material is …', and 'task is H318' can be asked, not '{0} is'"};
inline constexpr Message listed_of_what{
    "listed-of-what", "only 'material is listed in TABLE' can be asked, not of '{0}'"};
inline constexpr Message hazard_of_part{
    "hazard-of-part",
    "'{0} is' asks for a hazard statement, such as H318; what it holds is asked with '{0} holds'"};
inline constexpr Message in_of_figure{
    "in-of-figure", "'in' asks for words; a figure is held against others with '=' or 'between'"};
inline constexpr Message word_order{"word-order",
                                    "words can only be equal or not: write '=', '!=' or 'in'"};
inline constexpr Message side_alone{
    "side-alone", "'{0}' needs what is asked of it, as in '{0}.oils' or '{0}.share(oil)'"};
inline constexpr Message side_of_what{
    "side-of-what",
    "'{0}' takes no '{1}': only a measure, a sum over a selection, and what a formula states can "
    "be asked of one of two formulas"};
inline constexpr Message side_of_part{
    "side-of-part",
    "a rule over each {0} cannot ask the base or the tweak, which need not have such a {0}"};
inline constexpr Message side_in_measure{
    "side-in-measure", "a measure is of one formula: 'base.' and 'tweak.' stand in rules only"};
inline constexpr Message between_order{
    "between-order", "'between' names the lower figure first, and {0} is more than {1}"};
inline constexpr Message degrees{
    "degrees-fahrenheit", "a difference of temperatures is written in C, since 0 F is not nothing"};
inline constexpr Message branches{"wrong-kind",
                                  "'then' gives {0}, and 'else' gives {1}: both must be of a kind"};
inline constexpr Message too_involved{"expression-too-involved",
                                      "the expression keeps more than {0} figures at once"};
inline constexpr Message too_far{"wrong-kind", "no quantity is multiplied with itself so often"};
inline constexpr Message supplied_of_material{
    "share-of-material",
    "a material of the formula is counted as it is supplied: write 'supplied'"};

// Reading a file of rules.
inline constexpr Message measure_figure{"measure-not-figure", "a measure is a figure; this is {0}"};
inline constexpr Message measure_unit{"measure-unit", "the measure is {0}, and '{1}' is {2}"};
inline constexpr Message measure_computed{
    "measure-computed", "'{0}' is computed by the program; give this measure another name"};
inline constexpr Message measure_word{"measure-word",
                                      "'{0}' is a word of the expressions; give it another name"};
inline constexpr Message measure_name{
    "measure-name",
    "'{0}' cannot name a measure: letters, digits, '.', '_' and hyphens between them"};
inline constexpr Message measure_side{
    "measure-side", "'{0}' cannot name a measure: '{1}' asks one of two formulas"};
inline constexpr Message measure_circle{"measure-circle", "the measure '{0}' needs itself: {1}"};
inline constexpr Message measure_deep{"measure-deep",
                                      "measures made of measures go more than {0} deep here"};
inline constexpr Message measure_changed{
    "measure-changed", "'{0}' stands for {1} in the rules it is replaced in; this is {2}"};
inline constexpr Message duplicate_rule{"duplicate-rule", "the rule '{0}' stands in two places"};
inline constexpr Message duplicate_measure{"duplicate-measure",
                                           "the measure '{0}' stands in two places"};
inline constexpr Message rule_id{
    "rule-id", "'{0}' cannot name a rule: lower case letters, digits and hyphens between them"};
inline constexpr Message former_id{"former-id",
                                   "'{0}' is the name of the rule '{1}', and cannot be the former "
                                   "one of '{2}'"};
inline constexpr Message mend_kind{
    "mend-kind",
    "one way to mend is one of 'lower: …', 'raise: …', 'add: …', 'swap: [A, B]', 'change: …' and "
    "'ask: …'"};
inline constexpr Message mend_change{
    "mend-change",
    "'{0}' is nothing that can be changed: piece, batch, scale, dose, warmth or mask"};
inline constexpr Message mend_pair{
    "mend-pair", "'swap' takes what goes out and the material that comes in: [A, B]"};
inline constexpr Message mend_material{"mend-material", "'{0}' is not a material that is known{1}"};
inline constexpr Message unknown_authority{"unknown-authority",
                                           "'{0}' is not an authority: law, standard or craft"};
inline constexpr Message unknown_concern{"unknown-concern",
                                         "'{0}' is nobody's concern: health or craft"};
inline constexpr Message concern_of_law{
    "concern-of-law", "'{0}': what a law asks is a concern of the law; leave 'concerns' out"};
inline constexpr Message bad_rank{"bad-rank",
                                  "the rank of a known limit is a whole number from 1 to {0}"};
inline constexpr Message markets_needed{"markets-needed",
                                        "a law holds in a market: add 'markets', e.g. [GB, EU]"};
inline constexpr Message markets_of_law{"markets-of-law",
                                        "only a law is bound to markets: drop this key"};
inline constexpr Message unknown_level{"unknown-level", "'{0}' is not a level: {1}"};
inline constexpr Message unknown_each{
    "unknown-each", "'{0}' cannot be gone over: row of TABLE, portion, material, premix or task"};
inline constexpr Message unknown_table{"unknown-table", "'{0}' is not a table that is known{1}"};
inline constexpr Message unknown_source{"unknown-source", "'{0}' is not a source that is known{1}"};
inline constexpr Message bad_date{"bad-date", "'{0}' is not a day of the calendar: 2027-06-30"};
inline constexpr Message date_order{"date-order", "{0} is not before {1}"};
inline constexpr Message shelf_alone{
    "shelf-alone", "'shelf' needs 'from', the day of first placing on the market"};
inline constexpr Message hole_open{"hole-open", "this '{' is never closed"};
inline constexpr Message hole_closed{"hole-closed", "this '}' closes nothing; holes are '{…}'"};
inline constexpr Message hole_unknown{"hole-unknown",
                                      "'{0}' is nothing that this message can name{1}"};
inline constexpr Message unknown_decider{"unknown-decider", "'{0}' decides no rule; known are {1}"};
inline constexpr Message not_decided{"not-decided", "no rule '{0}' is decided by {1}{2}"};
inline constexpr Message hole_truth{"hole-truth",
                                    "a message prints figures and words; this is {0}"};
inline constexpr Message example_needed{
    "example-needed", "a built-in rule has an example that {0}: 'examples: {1}: […]'"};
inline constexpr Message example_pair{
    "example-pair",
    "the rule asks a tweak and its base, so its example has both: '{ base: …, tweak: … }'"};
inline constexpr Message example_alone{
    "example-alone", "the rule asks one formula, so its example is the text of one"};
inline constexpr Message source_needed{"source-needed",
                                       "a built-in rule names where it comes from: 'sources: […]'"};
inline constexpr Message text_needed{"rule-text-needed", "a built-in rule says {0}: add '{1}'"};
inline constexpr Message replaced_table{
    "replaced-table",
    "the table '{0}' was replaced, and the rule '{1}' cannot use the new one: {2}"};
inline constexpr Message nothing_in_file{
    "empty-file", "nothing stands in this file of rules: no rule, measure, table or material"};
inline constexpr Message too_many{"too-many", "more than {0} {1} in the rulesets"};
inline constexpr Message unknown_allow{"unknown-allow", "no rule is called '{0}'{1}"};

// What `verify` finds.
inline constexpr Message example_unreadable{"example-unreadable", "'{0}': {1} cannot be read: {2}"};
inline constexpr Message base_unreadable{"base-unreadable",
                                         "'{0}': the base of {1} cannot be read: {2}"};
inline constexpr Message example_wrong{"example-wrong", "'{0}': {1} gives {2}{3}"};
inline constexpr Message example_missing{"example-missing", "'{0}' has no example that {1}"};

}  // namespace sudsmark::rules::messages
