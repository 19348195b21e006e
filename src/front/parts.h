// What a Rulesets stands for: the catalogue with the rules compiled against it.
#pragma once

#include <sudsmark/rulesets.h>

#include "rules/layer.h"

namespace sudsmark {

struct Rulesets::Parts : rules::Rulebook {};

}  // namespace sudsmark
