// The built-in rules are data, and tested as such: with their edges (tests/edges), most changes in
// one place are noticed, and what is said to go unnoticed does.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <vector>

#include "case_files.h"
#include "proof/edges.h"
#include "proof/mutation.h"
#include "proof/tally.h"
#include "proof/verify.h"
#include "rules/layer.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

namespace fs = std::filesystem;

constexpr rules::Day day{std::chrono::year(2026), std::chrono::month(11), std::chrono::day(29)};

/// The built-in rules with their edges.
struct Proven {
  rules::Rulebook book;
  proof::Edges edges;
};

const Proven& proven() {
  static const Proven made = [] {
    text::Sources sources;
    text::Diagnostics diagnostics;
    const auto below = [&](const char* folder) {
      std::vector<fs::path> paths;
      for (const auto& entry : fs::recursive_directory_iterator(source_dir() / folder)) {
        if (entry.path().extension() == ".yaml") paths.push_back(entry.path());
      }
      std::sort(paths.begin(), paths.end());
      std::vector<text::FileIndex> files;
      for (const fs::path& path : paths) {
        files.push_back(sources.add(path.string(), file_contents(path)));
      }
      return files;
    };
    rules::Rulebook book = rules::add_layer({}, sources, below("rulesets"), true, diagnostics);
    const std::vector<text::FileIndex> of_edges = below("tests/edges");
    // they have a kind of product of their own
    book = rules::add_layer(std::move(book), sources, of_edges, false, diagnostics);
    proof::Edges edges(book.ruleset);
    for (const text::FileIndex file : of_edges) {
      proof::read_edges(sources, file, book.ruleset, edges, diagnostics);
    }
    CHECK_MESSAGE(diagnostics.empty(), printed(sources, diagnostics));
    return Proven{std::move(book), std::move(edges)};
  }();
  return made;
}

}  // namespace

TEST_CASE("the examples and edges of the built-in rules do as they should") {
  const proof::Verified verified =
      proof::verify(proven().book.ruleset, proven().book.catalogue, proven().edges, day);
  for (const auto& finding : verified.findings) CHECK_MESSAGE(false, finding.message);
  CHECK(verified.ran > 2'000);
}

TEST_CASE("most changes of the built-in rules are noticed") {
  // Rules that came later have no edges until somebody writes them.
  constexpr double least = 0.95;
  proof::MutateOptions options;
  options.on = day;
  const proof::Mutated run =
      proof::mutate(proven().book.ruleset, proven().book.catalogue, proven().edges, options);
  for (const std::string& one : run.stale) CHECK_MESSAGE(false, one, " is noticed");
  const proof::Tally all = all_kinds(run);
  CHECK(all.made > 3'000);
  const double share = static_cast<double>(all.noticed) / static_cast<double>(all.made);
  CHECK_MESSAGE(share >= least, all.noticed << " of " << all.made);
}
