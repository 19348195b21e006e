// Linear problems as plain data: what is to be least, within which bounds and rows.
#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

namespace sudsmark::mending {

/// Something to be found, at least `low` and at most `high` (both may be infinite).
struct Column {
  std::string name;
  double cost = 0;
  double low = 0;
  double high = 0;
};

/// low <= sum of factor times column <= high.
struct Row {
  std::string name;
  double low = 0;
  double high = 0;
  std::vector<std::pair<std::size_t, double>> terms;  ///< index of the column, factor
};

/// Find columns within their bounds and rows whose cost in all is least.
struct LinearProblem {
  std::vector<Column> columns;
  std::vector<Row> rows;
};

/// The problem as a text in the LP format, which other solvers read. Rows and columns go by number
/// there, and comments say their names.
[[nodiscard]] std::string lp_text(const LinearProblem& problem);

}  // namespace sudsmark::mending
