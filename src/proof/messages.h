// What the proof says of edges that cannot be used.
#pragma once

#include "text/diagnostic.h"

namespace sudsmark::proof::messages {

using text::Message;

inline constexpr Message edge_rule{"edge-rule", "no rule is called '{0}'{1}"};
inline constexpr Message edge_subject{"edge-subject", "no rule or measure is called '{0}'{1}"};
inline constexpr Message edge_example{
    "edge-example", "'{0}' is none of the rule's examples: 'passes 1', 'fails 2'"};
inline constexpr Message edge_verdict{
    "edge-verdict", "'{0}' is not a verdict: pass, fail, review, open or notApplicable"};
inline constexpr Message edge_line{"edge-line", "'{0}': {1}: the example has no line '{2}'"};

}  // namespace sudsmark::proof::messages
