#include <doctest/doctest.h>

#include "catalogue/loaded.h"

using namespace sudsmark;
using namespace sudsmark::catalogue;
using testing::Loaded;

namespace {

const char* const materials = R"(
materials:
  - { id: coco-us, name: Liquid betaine, synonyms: [{ word: coco betaine, market: US }],
      inci: Cocamidopropyl Betaine, cas: 61789-40-0, form: liquid, roles: amphoteric,
      source: memory }
  - { id: coco-eu, name: Other betaine, synonyms: [{ word: Coco-Betaine, market: [GB, EU] }],
      inci: Coco-Betaine, cas: 68424-94-2, form: liquid, roles: amphoteric, source: memory }
  - { id: powder, name: Powder betaine, inci: Cocamidopropyl Betaine, cas: 61789-40-0,
      form: fine powder, roles: amphoteric, source: memory }
)";

std::vector<std::string> ids(const Catalogue& catalogue, std::string_view name) {
  std::vector<std::string> out;
  for (const MaterialIndex at : catalogue.find_material(name).materials) {
    out.push_back(catalogue.materials[at].id);
  }
  return out;
}

}  // namespace

TEST_CASE("what a name of a material means") {
  const Loaded loaded({materials, testing::prelude()});
  REQUIRE(loaded.errors() == "");
  const Catalogue& catalogue = loaded.catalogue;
  using Ids = std::vector<std::string>;
  CHECK(ids(catalogue, "liquid  BETAINE") == Ids{"coco-us"});
  // a synonym of two, in one market or another; the INCI name of one of them does not decide it
  CHECK(ids(catalogue, "coco betaine") == Ids{"coco-eu", "coco-us"});
  CHECK(ids(catalogue, "coco_betaine") == Ids{"coco-eu", "coco-us"});
  // an INCI name of two, and a CAS number of two
  CHECK(ids(catalogue, "cocamidopropyl betaine") == Ids{"coco-us", "powder"});
  CHECK(ids(catalogue, "61789-40-0") == Ids{"coco-us", "powder"});
  CHECK(ids(catalogue, "68424-94-2") == Ids{"coco-eu"});
  CHECK(catalogue.find_material("betaine").none());
  CHECK(catalogue.find_material("").none());
  CHECK(catalogue.near_materials("powdr betaine").front() == "Powder betaine");
  CHECK(catalogue.near_materials("gold").empty());
}

TEST_CASE("what a name of a substance means") {
  const Loaded loaded({materials, testing::prelude()});
  const Catalogue& catalogue = loaded.catalogue;
  const auto names = [&](std::string_view name) {
    std::vector<std::string> out;
    for (const SubstanceIndex at : catalogue.find_substances(name)) {
      out.push_back(catalogue.substances[at].name);
    }
    return out;
  };
  using Names = std::vector<std::string>;
  CHECK(names("LINALOOL") == Names{"Linalool"});
  CHECK(names("78-70-6") == Names{"Linalool"});
  CHECK(names("ci 42090") == Names{"Bright dye", "Bright lake"});
  CHECK(names("sea blue") == Names{"Bright dye", "Bright lake"});
  CHECK(names("42090").empty());
  CHECK_FALSE(catalogue.find_substance("sea blue").has_value());
  CHECK_FALSE(catalogue.find_substance("gold").has_value());
  CHECK(catalogue.find_substance("aqua") == catalogue.water());
  CHECK(catalogue.near_substances("linalol") == Names{"Linalool"});
}

TEST_CASE("what a name of a citation means") {
  const Loaded loaded({testing::prelude()});
  const auto at = loaded.catalogue.find_citation("handbook");
  REQUIRE(at);
  CHECK(loaded.catalogue.citations[*at].title == "A handbook");
  CHECK(kind_word(loaded.catalogue.citations[*at].kind) == "published");
  CHECK(kind_word(SourceKind::common_practice) == "common practice");
  CHECK(kind_word(SourceKind::from_memory) == "from memory");
  CHECK_FALSE(loaded.catalogue.find_citation("Handbook").has_value());
}
