// A filter maker's technical article on combustible dust, German edition (read): half a millimetre
// on the floor fills a room with an ignitable cloud.
#include <doctest/doctest.h>

#include "science/dust_cloud.h"

using namespace sudsmark::science;

TEST_CASE("technical article on combustible dust: 0.5 mm on 50 m2 in 150 m3") {
  const double mass = layer_mass({50, 0.5, 600});
  CHECK(mass == doctest::Approx(15000).epsilon(1e-12));
  CHECK(cloud_concentration(mass, 150) == doctest::Approx(100).epsilon(1e-12));
  CHECK(cloud_of_layer(0.5, 600, 3) == doctest::Approx(100).epsilon(1e-12));
}
