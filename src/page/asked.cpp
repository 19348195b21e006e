#include "page/asked.h"

#include <nlohmann/json.hpp>

namespace sudsmark::page {
namespace {

using nlohmann::json;

FormulaText formula_text(const json& from) {
  return {from.value("file", "card.formula"), from.value("text", "")};
}

/// A day as 2027-01-15; none if it is written otherwise.
std::optional<std::chrono::year_month_day> day(const std::string& written) {
  int year = 0;
  unsigned month = 0;
  unsigned of_month = 0;
  if (std::sscanf(written.c_str(), "%4d-%2u-%2u", &year, &month, &of_month) != 3) {
    return std::nullopt;
  }
  const std::chrono::year_month_day read{std::chrono::year(year), std::chrono::month(month),
                                         std::chrono::day(of_month)};
  return read.ok() ? std::optional(read) : std::nullopt;
}

Asked from_json(const json& sent) {
  Asked out;
  out.what = sent.value("what", "");
  out.command = sent.value("command", "check");
  out.format = sent.value("format", "json");
  if (sent.contains("card")) out.card = formula_text(sent["card"]);
  if (sent.contains("base")) out.base = formula_text(sent["base"]);
  out.files = sent.value("files", out.files);
  for (const json& file : sent.value("rules", json::array())) {
    out.rules.push_back({file.value("path", ""), file.value("text", "")});
  }
  out.name = sent.value("name", "");
  out.typed = sent.value("typed", "");
  out.number = sent.value("number", std::size_t{0});
  out.deal = sent.value("deal", 1U);
  out.verbose = sent.value("verbose", false);
  out.options.markets = sent.value("markets", std::vector<std::string>());
  out.options.rounded = sent.value("rounded", false);
  out.options.on = day(sent.value("on", ""));
  if (sent.contains("batch")) out.options.batch = sent["batch"].get<double>();
  return out;
}

}  // namespace

Result<Asked> read_asked(std::string_view json_text) {
  try {
    return {from_json(json::parse(json_text)), {}};
  } catch (const json::exception& wrong) {
    Problem problem;
    problem.message = wrong.what();
    return {std::nullopt, {problem}};
  }
}

}  // namespace sudsmark::page
