#include "catalogue/pack.h"

#include <doctest/doctest.h>

#include <limits>
#include <random>

#include "catalogue/loaded.h"

using namespace sudsmark;
using namespace sudsmark::catalogue;
using testing::Loaded;

namespace {

const char* const small = R"(
edition: "1"
materials:
  - { id: a, name: Aye, synonyms: [{ word: eye, market: US }], inci: Aye, cas: 497-19-8,
      colour index: 42090, form: liquid, roles: oil, source: [memory, handbook],
      contains: [{ active: Aye, share: at least 90 % }, { water: bound, share: 1 - 2 % }],
      chemistry: { molar mass: 100 - 200, gives: { fumarate: 0.5 } }, hlb: { value: 2 },
      melting: { value: below 4 C }, dust: { lowest explosible: 60 g/m3, kst: 1.5 },
      hazards: { codes: [H315] }, allergens: [oat], remark: r, grade unclear: yes }
products:
  - { name: cube, synonyms: [block], traits: [solid], piece: { value: 1 - 2 g }, source: memory }
tables:
  - id: t
    title: T
    columns: [{ name: limit, unit: mg/m3 }, { name: entry, word: yes }]
    rows:
      - { substance: Linalool, limit: 1 - 2 mg/m3, market: GB, from: 2026-01-31, source: memory }
      - { name: x, entry: y, until: 2020-12-31, source: handbook, remark: z }
)";

void check_equal(const Catalogue& a, const Catalogue& b) {
  CHECK(a.materials == b.materials);
  CHECK(a.substances == b.substances);
  CHECK(a.products == b.products);
  CHECK(a.tables == b.tables);
  CHECK(a.citations == b.citations);
  CHECK(a.editions == b.editions);
  CHECK(a.water() == b.water());
}

std::string small_packed() {
  return pack(Loaded({small, testing::prelude()}).catalogue);
}

}  // namespace

TEST_CASE("what is packed comes out as it was, look-ups too") {
  const Loaded loaded({small, testing::prelude()});
  REQUIRE(loaded.errors() == "");
  const std::string bytes = pack(loaded.catalogue);
  const auto unpacked = unpack(bytes);
  REQUIRE(unpacked);
  check_equal(*unpacked, loaded.catalogue);
  CHECK(unpacked->find_material("eye").one());
  CHECK(unpacked->find_substances("ci 42090").size() == 3);
  CHECK(unpacked->find_substance("linalool") == loaded.catalogue.find_substance("linalool"));
  CHECK(pack(*unpacked) == bytes);
}

TEST_CASE("numbers of every size come out as they were") {
  const std::vector<std::uint64_t> whole{
      0, 127, 128, 16383, 16384, 0xFFFFFFFFU, std::numeric_limits<std::uint64_t>::max()};
  const std::vector<double> broken{0.0,    -0.0,   1.5,
                                   -1e300, 5e-324, std::numeric_limits<double>::infinity()};
  std::vector<std::uint64_t> whole_again;
  std::vector<double> broken_again;
  std::int8_t negative = -5;
  std::int8_t negative_again = 0;
  REQUIRE(from_bytes(to_bytes(whole, broken, negative), whole_again, broken_again, negative_again));
  CHECK(whole_again == whole);
  CHECK(broken_again == broken);
  CHECK(negative_again == negative);
  std::uint16_t narrow = 0;
  CHECK(from_bytes(to_bytes(std::uint64_t{0xFFFF}), narrow));
  CHECK_FALSE(from_bytes(to_bytes(std::uint64_t{0x10000}), narrow));
}

TEST_CASE("bytes of another format, cut or lengthened bytes are refused") {
  const std::string bytes = small_packed();
  REQUIRE(unpack(bytes));
  CHECK_FALSE(unpack(""));
  CHECK_FALSE(unpack("sudsmark pack 0\n" + bytes.substr(format_word.size())));
  CHECK_FALSE(unpack(bytes + '\0'));
  for (std::size_t size = 0; size < bytes.size(); ++size) {
    REQUIRE_FALSE(unpack(std::string_view(bytes).substr(0, size)));
  }
}

TEST_CASE("damaged bytes are refused or give a catalogue that can be asked") {
  const std::string bytes = small_packed();
  std::mt19937 random(42);
  for (int round = 0; round < 2000; ++round) {
    std::string damaged = bytes;
    for (int times = 0; times <= round % 3; ++times) {
      damaged[format_word.size() + random() % (damaged.size() - format_word.size())] =
          static_cast<char>(random() % 256);
    }
    const auto catalogue = unpack(damaged);
    if (!catalogue) continue;
    CHECK(consistent(*catalogue));
    for (const MaterialIndex at : catalogue->find_material("aye").materials) {
      CHECK(at < catalogue->materials.size());
    }
  }
}
