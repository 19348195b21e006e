// A university's teaching problem on a gas in a well-mixed room (read): 1.2e-6 m3/s into 40 m3 with
// 0.003 m3/s of fresh air; when does it pass 0.00012? "About 1.3 h".
#include <doctest/doctest.h>

#include "science/well_mixed_room.h"

using namespace sudsmark::science;

TEST_CASE("teaching problem: steady state, rate and time in a well-mixed room") {
  constexpr double seconds = 3600;
  const Room room{40, 0.003 * seconds};
  const double release = 1.2e-6 * seconds;
  CHECK(room_bound(room, release, 1000) == doctest::Approx(0.0004).epsilon(1e-12));
  CHECK(air_changes(room) / seconds == doctest::Approx(7.5e-5).epsilon(1e-12));
  CHECK(room_bound(room, release, 1.321) == doctest::Approx(0.00012).epsilon(1e-4));
}
