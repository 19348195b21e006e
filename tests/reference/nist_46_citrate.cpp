// NIST Critical Stability Constants 46.2 as carried by the USGS file minteq.v4.dat (published):
// citrate, cumulative protonation 6.396, 11.157, 14.285 at 25 C, and its enthalpies.

#include <doctest/doctest.h>

#include <cmath>

#include "science/thermodynamics.h"

using namespace sudsmark::science;

namespace {

double log_beta(double celsius, std::size_t protons) {
  const std::size_t citrate = index_of(Component::citrate) - first_acid;
  return std::log10(Thermodynamics::at(celsius).beta[citrate][protons]);
}

}  // namespace

TEST_CASE("NIST 46.2: protonation of citrate at 25 C") {
  CHECK(std::abs(log_beta(25.0, 1) - 6.396) <= 0.002);
  CHECK(std::abs(log_beta(25.0, 2) - 11.157) <= 0.002);
  CHECK(std::abs(log_beta(25.0, 3) - 14.285) <= 0.002);
}

// Half a kilojoule is 0.004 in pK from 25 to 38 C: two sources do not agree better than that.
TEST_CASE("NIST 46.2: enthalpies of dissociation of citric acid 4.06, 2.05, -3.35 kJ/mol") {
  const double enthalpies[] = {4.06, 2.05, -3.35};
  for (std::size_t step = 1; step <= 3; ++step) {
    const auto log_k = [step](double celsius) {
      return log_beta(celsius, 3 - step) - log_beta(celsius, 4 - step);
    };
    const double slope = (log_k(26.0) - log_k(24.0)) / (1.0 / 297.15 - 1.0 / 299.15);
    CAPTURE(step);
    CHECK(std::abs(slope * std::log(10.0) * 8.314462618e-3 - enthalpies[step - 1]) <= 0.5);
  }
}
