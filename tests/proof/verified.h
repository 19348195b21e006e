// The examples and edges of a workbench's rules, run.
#pragma once

#include <doctest/doctest.h>

#include "proof/edges.h"
#include "proof/verify.h"
#include "rules/workbench.h"

namespace sudsmark::testing {

/// The edges of a workbench's files; its diagnostics take what is wrong with them.
inline proof::Edges edges_of(Workbench& bench) {
  proof::Edges edges(bench.book.ruleset);
  for (text::FileIndex file = 0; file < bench.sources.size(); ++file) {
    if (!bench.sources[file].path().ends_with(".yaml")) continue;
    proof::read_edges(bench.sources, file, bench.book.ruleset, edges, bench.diagnostics);
  }
  return edges;
}

inline proof::Verified verify(Workbench& bench) {
  const proof::Edges edges = edges_of(bench);
  return proof::verify(bench.book.ruleset, bench.book.catalogue, edges, test_day);
}

}  // namespace sudsmark::testing
