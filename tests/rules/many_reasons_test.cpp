// More reasons than one word holds: each is told by its name.
#include <doctest/doctest.h>

#include "rules/workbench.h"

using namespace sudsmark;
using namespace sudsmark::testing;

namespace {

/// A formula with this many scents of which nobody knows the rest.
std::string with_scents(int count) {
  std::string lines;
  std::string sections;
  for (int number = 1; number <= count; ++number) {
    const std::string name = "Scent " + std::to_string(number);
    lines += " 0.1 % " + name + "\n";
    sections += "fragrance \"" + name + "\"\n 1 % linalool\n";
  }
  return "formula \"test\"\n product bubble bar\nphase \"all\"\n" + lines + " q.s. bicarb\n" +
         sections;
}

}  // namespace

TEST_CASE("each scent of a hundred whose rest nobody knows is told by its name") {
  for (const int count : {20, 63, 64, 65, 100}) {
    Workbench bench(rule_file("    expect: share(citral) <= 0.001 %\n    message: m\n"));
    REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
    const blend::Blend blend = bench.mix(with_scents(count));
    const Asked found = ask(bench, blend);
    const std::vector<std::string> words = found.missing.words(found.verdicts.front().missing);
    REQUIRE(words.size() == static_cast<std::size_t>(count));
    CHECK(words.front() == "what 'Scent 1' holds undeclared");
    CHECK(words.back() == "what 'Scent " + std::to_string(count) + "' holds undeclared");
  }
}

TEST_CASE("a rule over each scent needs that scent's paper alone") {
  Workbench bench(
      rule_file("    each: material\n    when: material is fragrance\n    expect: supplied <= "
                "material.certificate\n    message: m\n"));
  REQUIRE_MESSAGE(bench.diagnostics.empty(), bench.errors());
  const blend::Blend blend = bench.mix(with_scents(80));
  const Asked found = ask(bench, blend);
  int scents = 0;
  for (const rules::Verdict& verdict : found.verdicts) {
    if (verdict.kind != sudsmark::Kind::open) continue;
    const std::vector<std::string> words = found.missing.words(verdict.missing);
    REQUIRE(words.size() == 1);
    CHECK(words.front() == "the certificate of fragrance '" + std::string(verdict.subject) + "'");
    ++scents;
  }
  CHECK(scents == 80);
}
