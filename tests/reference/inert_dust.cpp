// Inert powder in combustible dust: J. Hazard. Mater. 307 (2016) 302-311, highlights (read): 60 to
// 80 %; US Bureau of Mines, limestone in corn starch (read): 60 % against sparks, 90 % against hot
// surfaces. BG RCI FAQ 3.18 (read): fines below 3 %.
#include <doctest/doctest.h>

#include "science/dust_cloud.h"

using namespace sudsmark::science;

TEST_CASE("inert dust: it counts above the stricter end of the published range only") {
  CHECK(inert_effect(0.59) == InertEffect::none);
  CHECK(inert_effect(0.60) == InertEffect::unsure);
  CHECK_FALSE(counts_as_inert(0.79));
  CHECK(inert_effect(0.80) == InertEffect::against_sparks);
  CHECK(counts_as_inert(0.80));
  CHECK(inert_effect(0.90) == InertEffect::against_all);
}

TEST_CASE("BG RCI: little of fines, and only where nothing segregates") {
  CHECK(fines_negligible(0.029, false));
  CHECK_FALSE(fines_negligible(0.03, false));
  CHECK_FALSE(fines_negligible(0.01, true));
}
