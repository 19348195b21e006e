// The solver's border on generated problems: the same optimum as another solver finds, the same
// verdict that there is none, and conflicts that are minimal.
#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <random>

#include "mending/mending.h"
#include "mending/other_solver.h"
#include "mending/solver.h"

using namespace sudsmark::mending;
using sudsmark::testing::other_optimum;

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

LinearProblem generated(std::mt19937& random) {
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  LinearProblem problem;
  const std::size_t columns = 3 + random() % 10;
  for (std::size_t at = 0; at < columns; ++at) {
    problem.columns.push_back({"column\nof two lines", between(0.01, 1), 0,
                               random() % 3 == 0 ? infinity : between(0, 10)});
  }
  const std::size_t rows = 1 + random() % 8;
  for (std::size_t at = 0; at < rows; ++at) {
    Row row{"row", between(-3, 6), infinity, {}};
    if (random() % 3 == 0) row.high = row.low + between(0, 2);
    if (random() % 8 == 0) row.high = row.low;
    for (std::size_t column = 0; column < columns; ++column) {
      if (random() % 2 == 0) row.terms.emplace_back(column, between(-1, 1));
    }
    problem.rows.push_back(std::move(row));
  }
  return problem;
}

std::vector<std::size_t> all_rows(const LinearProblem& problem) {
  std::vector<std::size_t> out;
  for (std::size_t at = 0; at < problem.rows.size(); ++at) out.push_back(at);
  return out;
}

/// The problem with some of its rows alone.
LinearProblem with_rows(const LinearProblem& problem, const std::vector<std::size_t>& rows) {
  LinearProblem out;
  out.columns = problem.columns;
  for (const std::size_t row : rows) out.rows.push_back(problem.rows[row]);
  return out;
}

}  // namespace

TEST_CASE("generated problems: the same optimum, and conflicts of which no row can be left out") {
  std::mt19937 random(7);
  std::size_t solved = 0;
  std::size_t impossible = 0;
  for (int at = 0; at < 150; ++at) {
    const LinearProblem problem = generated(random);
    const Solved ours = solve(problem);
    const auto other = other_optimum(lp_text(problem));
    REQUIRE(ours.outcome != Outcome::failed);
    REQUIRE((ours.outcome == Outcome::optimal) == other.has_value());
    const auto rows = conflict(problem, all_rows(problem));
    if (other) {
      ++solved;
      CHECK(std::abs(ours.cost - *other) <= 1e-6);
      CHECK(rows.empty());
      continue;
    }
    ++impossible;
    REQUIRE_FALSE(rows.empty());
    CHECK_FALSE(other_optimum(lp_text(with_rows(problem, rows))).has_value());
    for (const std::size_t without : rows) {
      std::vector<std::size_t> rest;
      for (const std::size_t row : rows) {
        if (row != without) rest.push_back(row);
      }
      CHECK(other_optimum(lp_text(with_rows(problem, rest))).has_value());
    }
  }
  CHECK(solved >= 30);
  CHECK(impossible >= 20);
}

TEST_CASE("a problem without rows, and one that nothing can satisfy by its bounds") {
  LinearProblem problem;
  problem.columns.push_back({"x", 1, 2, 5});
  CHECK(solve(problem).cost == doctest::Approx(2));
  problem.rows.push_back({"more", 6, infinity, {{0, 1}}});
  CHECK(solve(problem).outcome == Outcome::impossible);
  problem.rows.back().terms.clear();
  CHECK(solve(problem).outcome == Outcome::impossible);
}
