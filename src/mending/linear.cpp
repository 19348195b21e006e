#include "mending/linear.h"

#include <cmath>

#include "text/digits.h"

namespace sudsmark::mending {
namespace {

std::string term(double factor, const std::string& name) {
  return (factor < 0 ? " - " : " + ") + text::shortest_digits(std::abs(factor)) + " " + name;
}

std::string numbered(char letter, std::size_t number) {
  return letter + std::to_string(number);
}

/// A comment ends with its line.
std::string one_line(std::string words) {
  for (char& c : words) {
    if (static_cast<unsigned char>(c) < ' ') c = ' ';
  }
  return words;
}

}  // namespace

std::string lp_text(const LinearProblem& problem) {
  std::string notes;
  std::string goal = "minimize\n cost:";
  std::string rows = "subject to\n";
  std::string bounds = "bounds\n";
  for (std::size_t at = 0; at < problem.columns.size(); ++at) {
    const Column& column = problem.columns[at];
    const std::string name = numbered('x', at);
    notes += "\\ " + name + ": " + one_line(column.name) + "\n";
    goal += term(column.cost, name) + (at % 4 == 3 ? "\n" : "");
    const std::string low = std::isfinite(column.low) ? text::shortest_digits(column.low) : "-inf";
    const std::string high =
        std::isfinite(column.high) ? text::shortest_digits(column.high) : "+inf";
    bounds += " " + low + " <= " + name + " <= " + high + "\n";
  }
  for (std::size_t at = 0; at < problem.rows.size(); ++at) {
    const Row& row = problem.rows[at];
    const std::string name = numbered('r', at);
    notes += "\\ " + name + ": " + one_line(row.name) + "\n";
    std::string sum;
    for (const auto& [column, factor] : row.terms) sum += term(factor, numbered('x', column));
    // a sum of nothing still has to be written
    if (sum.empty()) sum = " 0 x0";
    if (row.low == row.high) {
      rows += " " + name + "e:" + sum + " = " + text::shortest_digits(row.low) + "\n";
      continue;
    }
    if (std::isfinite(row.low))
      rows += " " + name + "l:" + sum + " >= " + text::shortest_digits(row.low) + "\n";
    if (std::isfinite(row.high))
      rows += " " + name + "u:" + sum + " <= " + text::shortest_digits(row.high) + "\n";
  }
  // readers of the format want a row at least
  if (problem.rows.empty()) rows += " none: 0 x0 <= 1\n";
  return notes + goal + "\n" + rows + bounds + "end\n";
}

}  // namespace sudsmark::mending
