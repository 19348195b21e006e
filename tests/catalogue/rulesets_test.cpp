// The data files of the project: they load without a complaint, and quickly from their packed form.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <random>

#include "catalogue/loaded.h"
#include "catalogue/pack.h"
#include "where.h"

using namespace sudsmark;
using namespace sudsmark::catalogue;
using testing::Loaded;

namespace {

/// All files of rulesets/, by path. Sources stand in files of rules too.
std::vector<std::string> data_files() {
  const auto root = testing::source_dir() / "rulesets";
  std::vector<std::filesystem::path> paths;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(root)) {
    if (entry.path().extension() == ".yaml") paths.push_back(entry.path());
  }
  std::sort(paths.begin(), paths.end());
  std::vector<std::string> files;
  for (const auto& path : paths) files.push_back(testing::file_contents(path));
  return files;
}

/// What the files hold beside the catalogue's keys.
constexpr std::array<std::string_view, 11> keys_of_rules{
    "subject", "authority", "markets",  "measures", "rules",   "concerns",
    "cards",   "breakages", "harmless", "chapters", "cautions"};

Loaded load_all() {
  return Loaded(data_files(), {}, keys_of_rules);
}

}  // namespace

TEST_CASE("the data files load, pack and unpack") {
  const Loaded loaded = load_all();
  CHECK(loaded.errors() == "");
  CHECK(loaded.catalogue.materials.size() > 100);
  const std::string bytes = pack(loaded.catalogue);
  const auto unpacked = unpack(bytes);
  REQUIRE(unpacked);
  CHECK(unpacked->materials == loaded.catalogue.materials);
  CHECK(unpacked->substances == loaded.catalogue.substances);
  CHECK(unpacked->tables == loaded.catalogue.tables);
}

TEST_CASE("every material is found by its name, and every substance") {
  const Catalogue catalogue = load_all().catalogue;
  for (std::size_t at = 0; at < catalogue.materials.size(); ++at) {
    const Meaning meaning = catalogue.find_material(catalogue.materials[at].name);
    CHECK_MESSAGE(std::count(meaning.materials.begin(), meaning.materials.end(), at) == 1,
                  catalogue.materials[at].name);
  }
  for (std::size_t at = 0; at < catalogue.substances.size(); ++at) {
    CHECK_MESSAGE(catalogue.find_substance(catalogue.substances[at].name) == at,
                  catalogue.substances[at].name);
  }
}

TEST_CASE("spoilt data files are read to the end") {
  const std::vector<std::string> files = data_files();
  std::mt19937 random(1847);
  const auto pick = [&](std::size_t size) { return static_cast<std::size_t>(random() % size); };
  const std::string_view signs = "\"'[]{}:,-%# \n0aC";
  for (int round = 0; round < 2000; ++round) {
    const std::string& file = files[pick(files.size())];
    const std::size_t begin = file.find("\n  - ", pick(file.size()));
    if (begin == std::string::npos) continue;
    std::string spoilt = (pick(3) == 0 ? "tables:" : "materials:") + file.substr(begin, 1500);
    spoilt.resize(std::min(spoilt.size(), spoilt.rfind('\n') + 1));
    for (std::size_t times = 1 + pick(4); times > 0; --times) {
      const std::size_t at = pick(spoilt.size());
      if (pick(2) == 0) {
        spoilt[at] = signs[pick(signs.size())];
      } else {
        spoilt.erase(at, 1 + pick(3));
      }
    }
    const Loaded loaded({spoilt, testing::prelude()});
    REQUIRE(loaded.catalogue.substances.size() >= 5);
    REQUIRE(consistent(loaded.catalogue));
  }
}
