// Measures as a table for spreadsheets, as RFC 4180 has it: a head, a row for each measure of each
// formula, lines that end in CR LF. An end that nobody knows is an empty field. The reminder is the
// last row, alone in its first field.
#include <sudsmark/report.h>

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "quantity/number.h"
#include "wording/code_points.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

/// A name out of a file may begin as a spreadsheet's sums do; an apostrophe keeps it a text there.
std::string text_alone(std::string_view text) {
  const bool sum = text.size() > 1 && std::string_view("=+-@").find(text.front()) < 4;
  return (sum ? "'" : "") + wording::harmless(text);
}

/// In quotes where it holds what parts fields; a quote inside is doubled.
std::string field(std::string_view text) {
  if (text.find_first_of(",\"\r\n") == std::string_view::npos) return std::string(text);
  std::string out = "\"";
  for (const char one : text) out += one == '"' ? std::string("\"\"") : std::string(1, one);
  return out + '"';
}

std::string row(std::span<const std::string> fields) {
  std::string out;
  for (const std::string& one : fields) out += field(one) + ",";
  out.pop_back();
  return out + "\r\n";
}

std::string end_of(const std::optional<double>& end) {
  const std::string digits = end ? quantity::machine_number(*end) : "null";
  return digits == "null" ? std::string() : digits;
}

}  // namespace

std::string measure_csv(const RunResult& run, const Rulesets&, const ReportOptions& options) {
  std::string out =
      row(std::array<std::string, 7>{"file", "formula", "measure", "low", "high", "unit", "needs"});
  for (const FormulaResult& formula : run.formulas) {
    for (const MeasureResult& measure : formula.measures) {
      out += row(std::array{
          text_alone(formula.file), text_alone(formula.name), measure.name,
          end_of(measure.figure.low), end_of(measure.figure.high), measure.figure.unit,
          measure.missing.empty() ? std::string() : text_alone(wording::joined(measure.missing))});
    }
  }
  if (!run.formulas.empty()) out += row(std::array<std::string, 7>{std::string(reminder)});
  return options.ascii ? wording::in_ascii(out) : out;
}

}  // namespace sudsmark::report
