// A long list of names that makers write, against the data files of the project.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <sstream>

#include "catalogue/loaded.h"
#include "text/name.h"
#include "where.h"

using namespace sudsmark;
using namespace sudsmark::catalogue;

namespace {

Catalogue own_materials() {
  const auto root = testing::source_dir() / "rulesets";
  std::vector<std::filesystem::path> paths{root / "sources.yaml"};
  for (const auto& entry : std::filesystem::directory_iterator(root / "materials")) {
    paths.push_back(entry.path());
  }
  std::sort(paths.begin(), paths.end());
  std::vector<std::string> files;
  for (const auto& path : paths) files.push_back(testing::file_contents(path));
  testing::Loaded loaded(files);
  CHECK(loaded.errors() == "");
  return std::move(loaded.catalogue);
}

/// "A | B" of the names that a look-up answers, in the order of the alphabet; "unknown" for none.
std::string answer(const Catalogue& catalogue, std::string_view name) {
  std::vector<std::string> names;
  for (const MaterialIndex at : catalogue.find_material(name).materials) {
    names.push_back(catalogue.materials[at].name);
  }
  if (names.empty()) return "unknown";
  std::sort(names.begin(), names.end());
  std::string out;
  for (const std::string& one : names) out += (out.empty() ? "" : " | ") + one;
  return out;
}

}  // namespace

TEST_CASE("names as they are spelled mean what they should") {
  const Catalogue catalogue = own_materials();
  std::istringstream lines(
      testing::file_contents(testing::source_dir() / "tests/catalogue/names.txt"));
  int count = 0;
  for (std::string line; std::getline(lines, line);) {
    const std::size_t equals = line.rfind(" = ");
    if (line.starts_with('#') || equals == std::string::npos) continue;
    ++count;
    const std::string name = line.substr(0, equals);
    CHECK_MESSAGE(answer(catalogue, name) == line.substr(equals + 3), name);
  }
  CHECK(count > 600);
}

TEST_CASE("there are enough materials, each under a name of its own") {
  const Catalogue catalogue = own_materials();
  CHECK(catalogue.materials.size() >= 450);
  std::map<std::string, std::string> bearers;
  for (const Material& material : catalogue.materials) {
    const auto named = bearers.emplace(text::fold(material.name), material.id);
    CHECK_MESSAGE(named.second,
                  material.name << " names " << named.first->second << " and " << material.id);
  }
}

TEST_CASE("what a law keeps narrow is known by name, and never offered as a spelling") {
  const Catalogue catalogue = own_materials();
  const auto is_controlled = [&](std::string_view name) {
    const Meaning meaning = catalogue.find_material(name);
    return meaning.one() &&
           (catalogue.materials[meaning.materials.front()].roles & bit(Role::controlled)) != 0;
  };
  for (const char* name :
       {"borax", "boric acid", "salicylic acid", "zinc pyrithione", "sodium perborate",
        "sodium percarbonate", "DMDM hydantoin", "formalin", "methyl salicylate", "cocamide DEA"}) {
    CHECK_MESSAGE(is_controlled(name), name);
  }
  for (const char* name : {"boraks", "sodium perborat", "boric acd", "sodium bor", "zinc pyrithion",
                           "salicilic acid", "sassafras oyl", "sodium tetraborat"}) {
    CHECK(catalogue.find_material(name).none());
    for (const std::string& near : catalogue.near_materials(name)) {
      CHECK_MESSAGE(!is_controlled(near), name << " is answered with " << near);
    }
  }
}

TEST_CASE("who writes half a name is offered the whole, and no thing that rhymes") {
  const Catalogue catalogue = own_materials();
  const auto first = [&](std::string_view name) {
    const std::vector<std::string> near = catalogue.near_materials(name);
    return near.empty() ? std::string() : near.front();
  };
  CHECK(first("sodium bicarbonat") == "Sodium bicarbonate");
  CHECK(first("sodium cocoyl isethio") == "Sodium cocoyl isethionate");
  CHECK(first("lavander oil") == "Lavender oil");
  CHECK(first("poliquaternium 7") == "Polyquaternium-7");
  CHECK(first("kaolinn") == "Kaolin");
  CHECK(first("lanolinn") == "Lanolin");
  for (const std::string& near : catalogue.near_materials("lanolim")) CHECK(near != "Kaolin");
  CHECK(first("xyzzy") == "");
  CHECK(first(std::string(5000, 'k')) == "");
}

TEST_CASE("constituents of scents are known by chemical names, and with a remark in brackets") {
  const Catalogue catalogue = own_materials();
  const auto name_of = [&](std::string_view word) {
    const auto found = catalogue.find_substance(word);
    return found ? catalogue.substances[*found].name : std::string();
  };
  const std::string prohibited = "Butylphenyl methylpropional";
  CHECK(name_of("Butylphenyl Methylpropional (BMHCA)") == prohibited);
  CHECK(name_of("2-(4-tert-butylbenzyl)propionaldehyde") == prohibited);
  CHECK(name_of("p-tert-Butyl-alpha-methylhydrocinnamaldehyde") == prohibited);
  CHECK(name_of("80-54-6") == prohibited);
  CHECK(name_of("4-(4-hydroxy-4-methylpentyl)cyclohex-3-ene-1-carbaldehyde") ==
        "Hydroxyisohexyl 3-cyclohexene carboxaldehyde");
  CHECK(name_of("Linalool (natural)") == "Linalool");
  CHECK(name_of("4-allyl-2-methoxyphenol") == "Eugenol");
  CHECK(name_of("something (BMHCA)") == prohibited);
  CHECK(name_of("Linalool oxide (nothing)") == "");
}
