#include "science/substances.h"

#include <doctest/doctest.h>

#include <set>
#include <string_view>

using namespace sudsmark::science;

TEST_CASE("a substance is found by name and by CAS number") {
  const Substance* const citric = find_substance("citric acid monohydrate");
  REQUIRE(citric != nullptr);
  CHECK(citric->molar_mass == 210.139);
  CHECK(find_substance("5949-29-1") == citric);
  CHECK(find_substance("lemon juice") == nullptr);
  CHECK(find_substance("") == nullptr);
}

TEST_CASE("names and CAS numbers are unique, and every substance brings something") {
  std::set<std::string_view> seen;
  for (const Substance& substance : bath_substances()) {
    CAPTURE(substance.name);
    CHECK(seen.insert(substance.name).second);
    if (!substance.cas.empty()) CHECK(seen.insert(substance.cas).second);
    CHECK(substance.molar_mass > 30.0);
    CHECK(substance.parts[0].mol > 0.0);
  }
}

TEST_CASE("the carbonate in a substance is the gas it can give") {
  for (const Substance& substance : bath_substances()) {
    double carbonate = 0.0;
    for (const Substance::Part& part : substance.parts) {
      if (part.component == Component::carbonate) carbonate += part.mol;
    }
    CAPTURE(substance.name);
    CHECK(substance.bicarbonate + substance.carbonate == carbonate);
  }
  CHECK(base_protons(*find_substance("sodium sesquicarbonate")) == 3.0);
}

TEST_CASE("the protons of an acid are what its ions leave over") {
  // Charge of the bare bases less charge of the metals = all protons in it; those that bicarbonate
  // can take are fewer for phosphate (two of three), ascorbate and boric acid.
  const auto spare = [](const char* name) {
    const Substance* const found = find_substance(name);
    REQUIRE(found != nullptr);
    double charge = 0.0;
    for (const Substance::Part& part : found->parts) {
      const std::size_t i = index_of(part.component);
      const int z = i < first_acid ? species()[first_ion_species + i].charge
                                   : acids()[i - first_acid].base_charge;
      charge += z * part.mol;
    }
    return -charge;
  };
  for (const char* name : {"citric acid",
                           "citric acid monohydrate",
                           "monosodium citrate",
                           "disodium citrate",
                           "trisodium citrate dihydrate",
                           "tartaric acid",
                           "potassium hydrogen tartrate",
                           "malic acid",
                           "lactic acid",
                           "sodium lactate",
                           "adipic acid",
                           "sodium bisulfate",
                           "fumaric acid",
                           "succinic acid",
                           "glucono-delta-lactone",
                           "sodium acid pyrophosphate",
                           "sodium sulfate",
                           "magnesium sulfate heptahydrate",
                           "sodium chloride",
                           "calcium chloride"}) {
    CAPTURE(name);
    CHECK(spare(name) == find_substance(name)->acid_protons);
  }
  CHECK(spare("sodium bicarbonate") == 1.0);
  CHECK(spare("sodium carbonate") == 0.0);
  CHECK(spare("monocalcium phosphate monohydrate") == 4.0);
  CHECK(spare("borax decahydrate") == 2.0);
}
