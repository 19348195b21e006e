// The inputs that targets begin with, and those that were found by looking for new ones
// (tests/fuzz/corpus), through each target once.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <set>
#include <string>

#include "case_files.h"
#include "fuzz/targets.h"

namespace {

namespace fs = std::filesystem;

TEST_CASE("every target takes what it is known by") {
  for (const auto& target : sudsmark::fuzz::targets()) {
    const std::string name(target.name);
    std::set<fs::path> inputs;
    for (const std::string& folder : {std::string(target.seeds), "tests/fuzz/corpus/" + name}) {
      const fs::path root = sudsmark::testing::source_dir() / folder;
      if (!fs::is_directory(root)) continue;
      for (const auto& entry : fs::directory_iterator(root)) {
        if (entry.path().extension() == target.ending) inputs.insert(entry.path());
      }
    }
    CHECK_MESSAGE(!inputs.empty(), name);
    for (const fs::path& input : inputs) {
      INFO(name << ": " << input.string());
      target.run(sudsmark::testing::file_contents(input));  // ends the program if it fails
    }
  }
}

}  // namespace
