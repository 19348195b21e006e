// The counts of a run over all kinds of change.
#pragma once

#include "proof/mutation.h"

namespace sudsmark::testing {

inline proof::Tally all_kinds(const proof::Mutated& run) {
  proof::Tally sum;
  for (const proof::Tally& one : run.tallies) {
    sum.made += one.made;
    sum.noticed += one.noticed;
    sum.explained += one.explained;
  }
  return sum;
}

}  // namespace sudsmark::testing
