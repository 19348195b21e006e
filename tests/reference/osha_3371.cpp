// OSHA 3371 / CPL 03-00-008, dust explosion classes (as quoted on three pages).
#include <doctest/doctest.h>

#include "science/dust_cloud.h"

using namespace sudsmark::science;

TEST_CASE("OSHA 3371 (quoted): classes by Kst") {
  CHECK(explosion_class(0) == ExplosionClass::st0);
  CHECK(explosion_class(0.1) == ExplosionClass::st1);
  CHECK(explosion_class(200) == ExplosionClass::st1);
  CHECK(explosion_class(200.1) == ExplosionClass::st2);
  CHECK(explosion_class(300) == ExplosionClass::st2);
  CHECK(explosion_class(300.1) == ExplosionClass::st3);
  CHECK(class_word(ExplosionClass::st2) == "St2");
}

TEST_CASE("Kst lists: starch, flour, milk-like dusts in their classes") {
  // Wheat flour 53 to 100 (read, millers' association), corn starch 202 (NFPA, from memory).
  CHECK(explosion_class(53) == ExplosionClass::st1);
  CHECK(explosion_class(100) == ExplosionClass::st1);
  CHECK(explosion_class(202) == ExplosionClass::st2);
}
