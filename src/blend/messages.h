// What the blend says when a card does not add up or names something that nobody knows.
#pragma once

#include "text/diagnostic.h"

namespace sudsmark::blend::messages {

using text::Message;

inline constexpr Message unknown_name{
    "unknown-name",
    "'{0}' is not a material, premix or fragrance that is known{1}; a material of your own is told "
    "of in two lines: 'material \"{0}\"' and, below it, 'inci \"the INCI name on its bag\"'"};
inline constexpr Message ambiguous_name{"ambiguous-name",
                                        "'{0}' can mean {1}: write the one you have"};
inline constexpr Message unknown_product{"unknown-product",
                                         "'{0}' is not a kind of product that is known{1}"};
inline constexpr Message unknown_constituent{
    "unknown-constituent",
    "'{0}' is not a substance that is known{1}; put it in quotes to keep it as it is"};
inline constexpr Message unknown_like{"unknown-like",
                                      "'{0}' is not a material of the catalogue{1}"};
inline constexpr Message unknown_role{"unknown-role", "'{0}' is not a role{1}"};
inline constexpr Message unknown_form{"unknown-form", "'{0}' is not a form{1}"};
inline constexpr Message role_needed{
    "role-needed",
    "'{0}' is like nothing that is known: say its role and its form, or what it is like"};
inline constexpr Message content_over{
    "content-over", "'{0}' would hold more than 100 %: active and water are at least {1} %"};
inline constexpr Message unknown_workshop{"unknown-workshop", "no workshop is called '{0}'{1}"};
inline constexpr Message unknown_phase{"unknown-phase", "no phase is called '{0}'{1}"};

inline constexpr Message mixed_amounts{
    "mixed-amounts",
    "parts cannot stand beside masses or shares: give all amounts in parts, or none"};
inline constexpr Message batch_needed{
    "batch-needed",
    "shares beside masses need to know what one making weighs: add batch, or use one kind"};
inline constexpr Message fill_needs_total{
    "fill-needs-total", "q.s. fills up to 100 % or to the batch, and neither is given: add batch"};
inline constexpr Message fill_twice{"fill-twice",
                                    "q.s. stands twice; only one line can take what is left"};
inline constexpr Message fill_beside{
    "fill-beside", "'{0}' is filled up with q.s. and has an amount too: drop one of the two"};
inline constexpr Message fill_in_portion{
    "fill-in-portion",
    "q.s. cannot stand in a portion: what is added after the split comes on top"};
inline constexpr Message nothing_left{"nothing-left",
                                      "nothing is left for q.s.: the others already make {0} {1}"};
inline constexpr Message share_sum{"share-sum", "the shares make {0} %, not 100 %: {1} % {2}"};
inline constexpr Message mass_sum{"mass-sum",
                                  "the amounts make {0} g, not the {1} g of {2}: {3} g {4}{5}"};
inline constexpr Message dose_on_nothing{
    "dose-on-nothing", "a dose is counted on what stands before it, and nothing does"};
inline constexpr Message one_figure{"one-figure", "{0} is one figure, not a range"};
inline constexpr Message volume_without_density{
    "volume-without-density", "no density is known for '{0}': weigh it and give grams"};
inline constexpr Message wrong_unit{"wrong-unit", "'{0}' is not made in '{1}'{2}"};
inline constexpr Message premix_circle{"premix-circle", "premix '{0}' holds itself: {1}"};
inline constexpr Message premix_depth{"premix-depth", "premixes nest more than {0} deep here"};
inline constexpr Message portion_mass{"portion-mass",
                                      "a mass in a portion needs batch to say how much it goes "
                                      "into: add batch, or give a dose (0.3 g per kg)"};
inline constexpr Message portion_parts{
    "portion-parts", "parts cannot stand in a portion: give a dose (0.3 g per kg)"};
inline constexpr Message empty_formula{
    "empty-formula", "the formula holds nothing: it needs a phase with ingredients"};
inline constexpr Message all_dries_off{
    "all-dries-off", "everything dries off: nothing would be left of the product"};
inline constexpr Message piece_needed{
    "piece-needed",
    "'bath' counts in pieces, and nobody says what one weighs: add piece, e.g. piece 85 g"};
inline constexpr Message zero_amount{"zero-amount",
                                     "none of '{0}' is used: the line changes nothing"};
inline constexpr Message weighed_away{
    "weighed-away",
    "'{0}' is so little that the scale shows nothing: as weighed, none of it is in"};
inline constexpr Message task_needs_amount{
    "task-needs-amount",
    "'{0}' is handled in an amount that cannot be weighed: give a mass or a premix's units"};

}  // namespace sudsmark::blend::messages
