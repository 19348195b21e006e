#include <doctest/doctest.h>

#include <algorithm>
#include <random>

#include "catalogue/loaded.h"

using namespace sudsmark;
using namespace sudsmark::catalogue;
using quantity::Range;
using testing::Loaded;

namespace {

const char* const whole_material = R"(
materials:
  - id: fizz-salt
    name: Fizz salt
    synonyms: [fizzing salt, { word: sparkle, market: [GB, EU] }]
    inci: Sodium Fizzate
    cas: 497-19-8
    colour index: [42090, CI 77891]
    form: granules
    roles: [carbonate, fillers]
    contains:
      - { active: Fizz salt, share: 84 - 85 %, source: [handbook, practice] }
      - { substance: linalool, share: below 1 % }
      - { water: crystal, share: 10 - 14 %, source: memory }
    chemistry: { molar mass: 286.14, base protons: 2, carbon dioxide: 1,
                 gives: { sodium: 2, carbonate: 1 }, slow: yes, source: handbook }
    hlb: { value: 15.0, source: handbook }
    required hlb: { value: 6 - 7, source: memory }
    density: { value: 0.915 g/ml, source: memory }
    melting: { value: 34 - 38 C, source: practice }
    deliquescence: { value: 75 %, source: handbook }
    stable ph: { value: 5 - 8 }
    usual: { value: 20 - 37 %, source: practice }
    pure colour: { value: at least 88 % }
    dust: { dustiness: high, combustible: yes, inert: no, lowest explosible: 60 g/m3, kst: 150,
            source: handbook }
    hazards: { codes: [H315, EUH208], source: practice }
    allergens: [milk]
    grade unclear: yes
    remark: >
      Two lines
      of it.
    source: memory
)";

std::string id_of(const Catalogue& catalogue, const Citations& sources) {
  std::string out;
  for (const CitationIndex at : sources) out += catalogue.citations[at].id + " ";
  return out;
}

}  // namespace

TEST_CASE("a material with everything") {
  const Loaded loaded({whole_material, testing::prelude()});
  REQUIRE(loaded.errors() == "");
  const Catalogue& catalogue = loaded.catalogue;
  REQUIRE(catalogue.materials.size() == 1);
  const Material& material = catalogue.materials.front();
  CHECK(material.id == "fizz-salt");
  CHECK(material.name == "Fizz salt");
  CHECK(material.synonyms == std::vector<Synonym>{{"fizzing salt", {}}, {"sparkle", {"GB", "EU"}}});
  CHECK(material.inci == "Sodium Fizzate");
  CHECK(material.cas == std::vector<std::string>{"497-19-8"});
  CHECK(material.colour_index == std::vector<std::uint32_t>{42090, 77891});
  CHECK(material.form == Form::granules);
  CHECK(material.roles == (bit(Role::carbonate) | bit(Role::base) | bit(Role::filler)));
  REQUIRE(material.contents.size() == 3);
  const SubstanceIndex own = catalogue.find_substance("fizz salt").value();
  CHECK(material.contents[0].substance == own);
  CHECK(material.contents[0].active);
  CHECK(material.contents[0].share == Range(84 * 0.01, 85 * 0.01));
  CHECK(id_of(catalogue, material.contents[0].sources) == "handbook practice ");
  CHECK(catalogue.substances[material.contents[1].substance].name == "Linalool");
  CHECK(material.contents[1].share == Range(0, 0.01));
  CHECK(id_of(catalogue, material.contents[1].sources) == "memory ");
  CHECK(material.contents[2].substance == catalogue.water());
  CHECK(material.contents[2].water == WaterClass::crystal);
  REQUIRE(material.chemistry);
  CHECK(material.chemistry->molar_mass == Range(286.14));
  CHECK(material.chemistry->acid_protons == 0);
  CHECK(material.chemistry->base_protons == 2);
  CHECK(material.chemistry->carbon_dioxide == 1);
  CHECK(material.chemistry->gives[science::index_of(science::Component::sodium)] == 2);
  CHECK(material.chemistry->gives[science::index_of(science::Component::carbonate)] == 1);
  CHECK(material.chemistry->gives[science::index_of(science::Component::citrate)] == 0);
  CHECK(material.chemistry->slow);
  CHECK(material.hlb->value == Range(15));
  CHECK(material.required_hlb->value == Range(6, 7));
  CHECK(material.density->value == Range(915));
  CHECK(material.melting->value == Range(34, 38));
  CHECK(material.deliquescence->value == Range(0.75));
  CHECK(material.stable_ph->value == Range(5, 8));
  CHECK(id_of(catalogue, material.stable_ph->sources) == "memory ");
  CHECK(material.usual->value == Range(0.2, 0.37));
  CHECK(id_of(catalogue, material.usual->sources) == "practice ");
  CHECK(material.pure_colour->value == Range(0.88, 1));
  REQUIRE(material.dust);
  CHECK(material.dust->dustiness == Dustiness::high);
  CHECK(material.dust->combustible);
  CHECK_FALSE(material.dust->inert);
  CHECK(material.dust->lowest_explosible == Range(0.06));
  CHECK(material.dust->kst == 150);
  CHECK(material.hazards == std::vector<std::string>{"H315", "EUH208"});
  CHECK(id_of(catalogue, material.hazard_sources) == "practice ");
  CHECK(material.allergens == std::vector<std::string>{"milk"});
  CHECK(material.grade_unclear);
  CHECK(material.remark == "Two lines of it.");

  const Substance& substance = catalogue.substances[own];
  CHECK(substance.inci == "Sodium Fizzate");
  CHECK(substance.roles == material.roles);
  CHECK(substance.synonyms == std::vector<std::string>{"fizzing salt", "sparkle"});
}

TEST_CASE("which substances there are") {
  const Loaded loaded({R"(
materials:
  - { id: clay, name: Pale clay, synonyms: [white clay], inci: Pale, cas: 1332-58-7,
      form: fine powder, roles: clay, source: memory }
  - { id: paste, name: Soft paste 30, inci: Sodium Softate, form: paste, roles: anionic,
      source: memory, contains: [{ active: sodium softate, share: 30 % }] }
  - { id: needles, name: Soft needles, inci: Sodium Softate, form: granules, roles: anionic,
      source: memory, contains: [{ active: Sodium softate, share: 90 % },
                                 { substance: white clay, share: 1 % }] }
  - { id: linalool, name: Linalool, synonyms: [licareol], form: liquid, roles: scent,
      source: memory }
  - { id: tap-water, name: Water, form: liquid, roles: water, source: memory }
)",
                       testing::prelude()});
  REQUIRE(loaded.errors() == "");
  const Catalogue& catalogue = loaded.catalogue;
  std::vector<std::string> names;
  for (const Substance& substance : catalogue.substances) names.push_back(substance.name);
  CHECK(names == std::vector<std::string>{"Bright dye", "Bright lake", "Linalool", "Pale clay",
                                          "Sodium softate", "Sodium sulfate", "Water"});
  // listed and a material: joined
  const Substance& linalool = catalogue.substances[*catalogue.find_substance("licareol")];
  CHECK(linalool.cas == std::vector<std::string>{"78-70-6"});
  CHECK(linalool.roles == (with_implied(Role::aroma_chemical)));
  // named by the INCI name of two materials: one substance, known by both their names
  CHECK(catalogue.find_substance("soft paste 30") == catalogue.find_substance("Soft needles"));
  // nothing is stated of the contents of a material that is no water
  CHECK(catalogue.materials[catalogue.find_material("Pale clay").materials[0]].contents.empty());
  const Material& water = catalogue.materials[catalogue.find_material("water").materials[0]];
  REQUIRE(water.contents.size() == 1);
  CHECK(water.contents[0].water == WaterClass::free);
  CHECK(water.contents[0].share == Range(1));
}

TEST_CASE("water is there without a file") {
  const Loaded loaded(std::vector<std::string>{});
  CHECK(loaded.errors() == "");
  REQUIRE(loaded.catalogue.substances.size() == 1);
  CHECK(loaded.catalogue.substances[loaded.catalogue.water()].name == "Water");
}

TEST_CASE("kinds of product and tables") {
  const Loaded loaded({R"(
products:
  - name: bath cube
    synonyms: [cube]
    traits: [bath-diluted, foaming]
    fragrance category: "9"
    neighbour category: "5A"
    water: { value: 80 - 150 l, source: practice }
    temperature: { value: 38 C }
    dose: { value: 40 - 100 g }
    piece: { value: 40 g }
    minutes: { value: 30 min }
    per day: { value: 1 per day }
    about: A cube.
    source: practice
tables:
  - id: limits
    title: Limits
    columns:
      - { name: limit, unit: "%" }
      - { name: entry, word: yes }
      - { name: dose, unit: mg/kg }
    rows:
      - { name: The blues, substance: [CI 42090, linalool], limit: 1.2 %, entry: "12, part A",
          market: [GB, EU], from: 2026-01-01, until: 2028-07-31, source: handbook, remark: old }
      - { substance: 78-70-6, dose: 1 - 2 mg/kg, sources: [handbook, memory] }
)",
                       "edition: 2026\n" + testing::prelude()});
  REQUIRE(loaded.errors() == "");
  const ProductKind* cube = loaded.catalogue.find_product("Bath Cube");
  REQUIRE(cube != nullptr);
  CHECK(loaded.catalogue.find_product("cube") == cube);
  CHECK(loaded.catalogue.find_product("ball") == nullptr);
  CHECK(loaded.catalogue.near_products("bath cub") == std::vector<std::string>{"bath cube"});
  CHECK(cube->traits == std::vector<std::string>{"bath-diluted", "foaming"});
  CHECK(cube->fragrance_category == "9");
  CHECK(cube->neighbour_category == "5A");
  CHECK(cube->water->value == Range(80, 150));
  CHECK(cube->minutes->value.high == doctest::Approx(0.5));
  CHECK(cube->per_day->value.low == doctest::Approx(1.0 / 24));

  const Table* table = loaded.catalogue.find_table("limits");
  REQUIRE(table != nullptr);
  CHECK(loaded.catalogue.find_table("limit") == nullptr);
  CHECK(table->column("dose") == 2U);
  CHECK_FALSE(table->column("doses").has_value());
  REQUIRE(table->rows.size() == 2);
  const Row& blues = table->rows[0];
  // the number of the dye is the lake's too
  CHECK(blues.substances.size() == 3);
  CHECK(std::get<Range>(blues.cells[0]) == Range(1.2 * 0.01));
  CHECK(std::get<std::string>(blues.cells[1]) == "12, part A");
  CHECK(std::holds_alternative<std::monostate>(blues.cells[2]));
  CHECK(blues.markets == std::vector<std::string>{"GB", "EU"});
  CHECK(blues.from == std::chrono::year(2026) / 1 / 1);
  CHECK(blues.until == std::chrono::year(2028) / 7 / 31);
  CHECK(blues.remark == "old");
  CHECK(table->rows[1].name == "Linalool");
  CHECK(id_of(loaded.catalogue, table->rows[1].sources) == "handbook memory ");
  CHECK(loaded.catalogue.editions == std::vector<Edition>{{"file1", "2026"}});
}

TEST_CASE("a later layer replaces and adds, and the rest stays") {
  Loaded first({whole_material, testing::prelude()});
  REQUIRE(first.errors() == "");
  const SubstanceIndex own = *first.catalogue.find_substance("Fizz salt");
  const CitationIndex handbook = *first.catalogue.find_citation("handbook");
  const Loaded second({R"(
sources:
  - { id: handbook, kind: published, title: A handbook, where: 3rd edition }
  - { id: own-paper, kind: published, title: A certificate }
substances:
  - { name: linalool, roles: [scent] }
materials:
  - { id: fizz-salt, name: Fizz salt, form: fine powder, roles: carbonate, source: own-paper,
      contains: [{ active: Fizz salt, share: 99 % }] }
  - { id: aloe, name: Aloe, form: liquid, roles: botanical, source: handbook }
)"},
                      first.catalogue);
  REQUIRE(second.errors() == "");
  const Catalogue& catalogue = second.catalogue;
  REQUIRE(catalogue.materials.size() == 2);
  CHECK(catalogue.materials[0].form == Form::fine_powder);
  CHECK(catalogue.materials[0].contents.size() == 1);
  CHECK(catalogue.materials[0].contents[0].substance == own);
  CHECK(catalogue.find_material("fizzing salt").none());
  CHECK(catalogue.find_material("aloe").one());
  CHECK(catalogue.find_citation("handbook") == handbook);
  CHECK(catalogue.citations[handbook].where == "3rd edition");
  CHECK(catalogue.citations.size() == first.catalogue.citations.size() + 1);
  const SubstanceIndex linalool = *catalogue.find_substance("Linalool");
  CHECK(catalogue.substances[linalool].cas.empty());
  CHECK(catalogue.substances[linalool].roles == bit(Role::scent));
}

TEST_CASE("the order of files changes nothing") {
  std::vector<std::string> files{
      testing::prelude(),
      whole_material,
      "materials:\n  - { id: b, name: Bee, inci: Wax, form: solid, roles: wax, source: memory,\n"
      "      contains: [{ substance: Zed, share: 1 % }, { active: Wax, share: 9 % }] }\n",
      "materials:\n  - { id: a, name: Zed, synonyms: [zee], form: solid, roles: wax,\n"
      "      source: memory }\n",
      "materials:\n  - { id: c, name: Wax, synonyms: [zee], form: solid, roles: oil,\n"
      "      source: practice }\n",
      "products:\n  - { name: p, source: q }\n",
      "sources:\n  - { id: q, kind: published, title: Q }\n"};
  const Loaded reference(files);
  REQUIRE(reference.errors() == "");
  std::mt19937 random(7);
  for (int round = 0; round < 20; ++round) {
    std::shuffle(files.begin(), files.end(), random);
    const Loaded shuffled(files);
    CHECK(shuffled.catalogue.materials == reference.catalogue.materials);
    CHECK(shuffled.catalogue.substances == reference.catalogue.substances);
    CHECK(shuffled.catalogue.citations == reference.catalogue.citations);
    CHECK(shuffled.catalogue.products == reference.catalogue.products);
  }
}

TEST_CASE("keys that others read are passed over, others are not") {
  text::Sources sources;
  text::Diagnostics diagnostics;
  const auto file = sources.add("x.yaml", "rules: []\nmeasures: {}\nmeasure: {}\n");
  const auto root = text::read_yaml(sources, file, diagnostics);
  REQUIRE(root);
  constexpr std::string_view others[] = {"rules", "measures"};
  CatalogueBuilder builder(diagnostics);
  builder.add(*root, "x", others);
  CHECK(builder.finish().editions.empty());
  CHECK(testing::printed(sources, diagnostics) ==
        "3:1 unknown-key 'measure' is not a key that is known here; perhaps 'measures'\n");
}
