// Another solver's answer to a problem in the LP format: GLPK's glpsol, run as a process. It has to
// be there: without it these tests fail.
#pragma once

#include <doctest/doctest.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <optional>
#include <sstream>
#include <string>

namespace sudsmark::testing {

/// The least cost; none if no values keep all rows and bounds. Fails the test if glpsol cannot be
/// run or says neither.
inline std::optional<double> other_optimum(const std::string& problem) {
  const auto folder =
      std::filesystem::temp_directory_path() / ("sudsmark-glpsol-" + std::to_string(::getpid()));
  std::filesystem::create_directories(folder);
  const std::string in = (folder / "problem.lp").string();
  const std::string out = (folder / "solution").string();
  std::filesystem::remove(out);
  std::ofstream(in, std::ios::binary) << problem;
  const std::string command =
      "glpsol --lp '" + in + "' --nopresol --write '" + out + "' >/dev/null 2>&1";
  const int status = std::system(command.c_str());
  std::ifstream stream(out);
  REQUIRE_MESSAGE((status == 0 && stream.good()), "glpsol (Debian: glpk-utils) did not answer");
  std::optional<double> cost;
  bool read = false;
  for (std::string line; std::getline(stream, line);) {
    // s bas ROWS COLUMNS PRIMAL DUAL COST
    std::istringstream words(line);
    std::string kind;
    std::string method;
    std::string rows;
    std::string columns;
    std::string primal;
    std::string dual;
    double value = 0;
    words >> kind;
    if (kind != "s") continue;
    words >> method >> rows >> columns >> primal >> dual >> value;
    read = true;
    if (primal == "f" && dual == "f") cost = value;
  }
  CHECK_MESSAGE(read, "glpsol wrote no solution");
  std::filesystem::remove_all(folder);
  return cost;
}

}  // namespace sudsmark::testing
