// "Easy modeling", a hygienists' magazine, April 2017 (read): 54 m3/min in 540 m3.
#include <doctest/doctest.h>

#include "science/well_mixed_room.h"

using namespace sudsmark::science;

TEST_CASE("magazine article 2017: six air changes an hour") {
  CHECK(air_changes({540, 54.0 * 60}) == doctest::Approx(6).epsilon(1e-12));
  CHECK(room_with_air_changes(540, 6).flow == doctest::Approx(54.0 * 60).epsilon(1e-12));
}
