#include "mending/solver.h"

#include <algorithm>
#include <limits>
#include <memory>

#include "mending/clp.h"

namespace sudsmark::mending {
namespace {

/// Clp's problem wants its factors column by column.
struct Sparse {
  std::vector<CoinBigIndex> starts;
  std::vector<int> rows;
  std::vector<double> factors;
};

Sparse by_column(const LinearProblem& problem) {
  std::vector<std::vector<std::pair<int, double>>> columns(problem.columns.size());
  for (std::size_t at = 0; at < problem.rows.size(); ++at) {
    for (const auto& [column, factor] : problem.rows[at].terms) {
      columns[column].emplace_back(static_cast<int>(at), factor);
    }
  }
  Sparse out;
  out.starts.push_back(0);
  for (const auto& column : columns) {
    for (const auto& [row, factor] : column) {
      out.rows.push_back(row);
      out.factors.push_back(factor);
    }
    out.starts.push_back(static_cast<CoinBigIndex>(out.rows.size()));
  }
  return out;
}

Solved run(const Clp& clp, const LinearProblem& problem) {
  const Sparse sparse = by_column(problem);
  std::vector<double> low;
  std::vector<double> high;
  std::vector<double> cost;
  for (const Column& column : problem.columns) {
    low.push_back(column.low);
    high.push_back(column.high);
    cost.push_back(column.cost);
  }
  std::vector<double> row_low;
  std::vector<double> row_high;
  for (const Row& row : problem.rows) {
    row_low.push_back(row.low);
    row_high.push_back(row.high);
  }
  using Model = std::unique_ptr<Clp_Simplex, void (*)(Clp_Simplex*)>;
  const auto loaded = [&] {
    Model model(clp.new_model(), clp.delete_model);
    clp.set_log_level(model.get(), 0);
    clp.load_problem(model.get(), static_cast<int>(problem.columns.size()),
                     static_cast<int>(problem.rows.size()), sparse.starts.data(),
                     sparse.rows.data(), sparse.factors.data(), low.data(), high.data(),
                     cost.data(), row_low.data(), row_high.data());
    return model;
  };
  Model model = loaded();
  constexpr double tolerance = 1e-9;
  clp.set_primal_tolerance(model.get(), tolerance);
  clp.set_dual_tolerance(model.get(), tolerance);
  clp.dual(model.get(), 0);
  // what the dual method leaves in doubt is begun anew, by the method and with the tolerance that
  // the solver itself thinks best
  constexpr int decided = 1;
  if (clp.status(model.get()) > decided) {
    model = loaded();
    clp.initial_solve(model.get());
  }
  Solved out;
  switch (clp.status(model.get())) {
    case 0:
      out.outcome = Outcome::optimal;
      break;
    case 1:
      out.outcome = Outcome::impossible;
      return out;
    default:
      return out;
  }
  out.cost = clp.objective_value(model.get());
  const double* values = clp.primal_column_solution(model.get());
  out.values.assign(values, values + problem.columns.size());
  return out;
}

}  // namespace

std::optional<std::string> solver_missing() {
  const ClpFound& found = clp();
  if (found.functions) return std::nullopt;
  return found.missing;
}

Solved solve(const LinearProblem& problem) {
  const ClpFound& found = clp();
  if (!found.functions) return {};
  try {
    return run(*found.functions, problem);
  } catch (...) {
    // Clp throws its own kind of error, which must not travel further
    return {};
  }
}

}  // namespace sudsmark::mending
