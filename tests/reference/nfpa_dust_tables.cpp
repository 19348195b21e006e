// NFPA 61 / NFPA 68 dust tables, corn starch 60 g/m3 (from memory; mass computed).
#include <doctest/doctest.h>

#include "science/dust_cloud.h"

using namespace sudsmark::science;

TEST_CASE("NFPA dust tables (from memory): starch that a 20 l bucket needs") {
  CHECK(mass_to_limit(typical_explosion_limit, 0.02) == doctest::Approx(1.2).epsilon(1e-12));
}
