// Inert powder in combustible dust: J. Hazard. Mater. 307 (2016) 302-311, highlights (read): 60 to
// 80 %; US Bureau of Mines, limestone in corn starch (read): 60 % against sparks, 90 % against hot
// surfaces.
#include <doctest/doctest.h>

#include "science/dust_cloud.h"

using namespace sudsmark::science;

TEST_CASE("inert dust: it counts above the stricter end of the published range only") {
  CHECK_FALSE(counts_as_inert(0.60));
  CHECK_FALSE(counts_as_inert(0.79));
  CHECK(counts_as_inert(0.80));
}
