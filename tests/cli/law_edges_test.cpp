// Formulas just inside and just outside the limits of the law, and on both sides of its days
// (tests/reference/law-edges.csv), through the whole program.
#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <string>
#include <vector>

#include "process.h"
#include "where.h"

namespace {

struct Edge {
  std::string text, product, market, users, day, batch_made, amount, material, role, rule, verdict;
};

std::vector<Edge> edges() {
  std::vector<Edge> out;
  std::ifstream file(sudsmark::testing::source_dir() / "tests" / "reference" / "law-edges.csv");
  for (std::string text; std::getline(file, text);) {
    if (text.empty() || text.front() == '#') continue;
    std::vector<std::string> parts;
    for (std::size_t begin = 0; begin <= text.size();) {
      const std::size_t end = std::min(text.find("; ", begin), text.size());
      parts.push_back(text.substr(begin, end - begin));
      begin = end + 2;
    }
    REQUIRE_MESSAGE(parts.size() == 10, text);
    out.push_back({text, parts[0], parts[1], parts[2], parts[3], parts[4], parts[5], parts[6],
                   parts[7], parts[8], parts[9]});
  }
  return out;
}

std::string formula_of(const Edge& edge) {
  std::string out = "formula \"Edge\"\n  product " + edge.product + "\n  market " + edge.market +
                    "\n  users " + edge.users + "\n";
  if (edge.batch_made != "-") out += "  batch made " + edge.batch_made + "\n";
  const std::string filler = edge.product == "shampoo bar"  ? "SCI powder"
                             : edge.product == "bath salts" ? "sea salt"
                                                            : "sodium bicarbonate";
  out += "phase \"all\"\n  q.s. " + filler + "\n  " + edge.amount + "  " + edge.material + "\n";
  if (edge.role == "-") return out;
  return out + "material \"" + edge.material + "\"\n  role " + edge.role + "\n  form fine powder\n";
}

TEST_CASE("just inside a limit passes and just outside fails, on both sides of each day") {
  const test::Folder folder;
  std::size_t inside = 0;
  std::size_t outside = 0;
  for (const Edge& edge : edges()) {
    const auto ran =
        test::run("check --format lines --only " + edge.rule + " --on " + edge.day + " -",
                  folder.path(), formula_of(edge));
    const bool told = ran.out.find("[" + edge.rule + "]") != std::string::npos;
    const bool broken = told && ran.out.find(": error: ") != std::string::npos;
    CHECK_MESSAGE(ran.err.empty(), ran.err);
    CHECK_MESSAGE(broken == (edge.verdict == "breaks"), edge.text << "\n" << ran.out);
    CHECK_MESSAGE(ran.status == (edge.verdict == "breaks" ? 1 : 0), edge.text << "\n" << ran.out);
    ++(edge.verdict == "breaks" ? outside : inside);
  }
  CHECK(inside >= 20);
  CHECK(outside >= 20);
}

}  // namespace
