// The most of a blend of scents: certificates, constituents with a limit, several scents that share
// one, and what nobody declares. Limits are those of `fragrance-limits`, category 9: estragole
// 0.05 %, citronellal 1.4 %, cinnamyl alcohol 0.76 %, safrole 0.01 % (standards of the 49th
// Amendment; safrole as quoted). Citral is limited by a figure that could not be read.
#include <doctest/doctest.h>

#include <string>

#include "workshop_formula.h"

using namespace sudsmark;
using sudsmark::testing::WorkshopFormula;

namespace {

std::string blend_of(const std::string& lines, const std::string& scents,
                     const std::string& product = "bath fizzy") {
  return "formula \"Ebb\"\n  product " + product + "\nphase \"all\"\n  q.s. sodium bicarbonate\n" +
         lines + scents;
}

std::string scent(const std::string& name, const std::string& limit, const std::string& holds,
                  bool all_told = true) {
  return "fragrance \"" + name + "\"\n" + (limit.empty() ? "" : "  limit " + limit + "\n") +
         "  category 9\n  " + holds + "\n" + (all_told ? "  undeclared none\n" : "");
}

/// In per cent.
void check_limit(const std::string& text, double low, double high,
                 const std::string& missing = {}) {
  const WorkshopFormula of(text);
  const auto at = measures::find("fragrance.limit");
  REQUIRE(at);
  const measures::Measured limit = measures::all()[*at].compute(of.view());
  CHECK(limit.value.low * 100 == doctest::Approx(low).epsilon(1e-6));
  CHECK(limit.value.high * 100 == doctest::Approx(high).epsilon(1e-6));
  std::string reasons;
  for (std::size_t bit = 0; bit < of.missing.items().size(); ++bit) {
    if ((limit.missing >> bit & 1U) != 0) reasons += of.missing.items()[bit].what + "; ";
  }
  if (missing.empty()) {
    CHECK(reasons == "");
  } else {
    CHECK_MESSAGE(reasons.find(missing) != std::string::npos, reasons);
  }
}

}  // namespace

TEST_CASE("one scent: its certificate, or a constituent whose limit is met sooner") {
  check_limit(blend_of("  1 % reed\n", scent("reed", "2.4 %", "5 % linalool")), 2.4, 2.4);
  // estragole: 0.05 / 0.025 = 2 %
  check_limit(blend_of("  1 % reed\n", scent("reed", "4 %", "2.5 % estragole")), 2, 2);
  // a worked example of the binding trace: cinnamon leaf with 1.3 % of safrole, 0.01 / 0.013
  check_limit(blend_of("  0.2 % reed\n", scent("reed", "4 %", "1.3 % safrole")), 0.01 / 0.013,
              0.01 / 0.013);
}

TEST_CASE("the category decides: an oil with 35 % of citronellal") {
  // category 9: 1.4 / 0.35 = 4 %; the certificate allows more
  check_limit(blend_of("  1 % reed\n", scent("reed", "10 %", "35 % citronellal")), 4, 4);
}

TEST_CASE("several scents: what they share adds up, and each keeps to its certificate") {
  // 2 parts of 1.5 % and 1 part of 2.5 % are 1.8333 % of estragole in the blend
  const double both = 0.05 / ((2 * 0.015 + 0.025) / 3);
  const std::string scents =
      scent("fennel", "6 %", "1.5 % estragole") + scent("basil", "4 %", "2.5 % estragole");
  check_limit(blend_of("  2 % fennel\n  1 % basil\n", scents), both, both);
  // groups of substances are summed: safrole and isosafrole
  const std::string group =
      scent("sass", "6 %", "0.2 % safrole") + scent("nut", "6 %", "0.3 % isosafrole");
  const double grouped = 0.01 / ((0.002 + 0.003) / 2);
  check_limit(blend_of("  1 % sass\n  1 % nut\n", group), grouped, grouped);
}

TEST_CASE("below, above and ranges are taken at both of their ends") {
  check_limit(blend_of("  1 % reed\n", scent("reed", "6 %", "2 - 2.5 % estragole")), 2, 2.5);
  // below 2.5 %: a certificate of 6 % leaves room for 0.05 / 0.06 = 0.83 % of it, and no more
  check_limit(blend_of("  1 % reed\n", scent("reed", "6 %", "below 2.5 % estragole")), 6, 6);
  // the same with another that brings estragole for sure: 0.05 / ((0 to 0.83 + 1) / 2)
  const std::string both =
      scent("reed", "6 %", "below 2.5 % estragole") + scent("gull", "5 %", "1 % estragole");
  check_limit(blend_of("  1 % reed\n  1 % gull\n", both), 0.05 / ((0.05 / 6 + 0.01) / 2), 10);
  // above 2 %: at least that much, and by the certificate no more than 0.05 / 0.022
  check_limit(blend_of("  1 % reed\n", scent("reed", "2.2 %", "above 2 % estragole")), 2.2, 2.2);
}

TEST_CASE("what is not declared is no more than a certificate leaves room for") {
  check_limit(blend_of("  1 % reed\n", scent("reed", "3 %", "5 % linalool", false)), 3, 3);
  check_limit(blend_of("  1 % reed\n", scent("reed", "", "5 % linalool", false)), 0, 100,
              "the certificate of 'reed'");
  // the certificate is asked for all the more where what is limited is known to be in it
  check_limit(blend_of("  1 % reed\n", scent("reed", "", "5 % citral")), 0, 100,
              "the certificate of 'reed' (the standard limits its Citral)");
}

TEST_CASE("two certificates that share a substance of which nobody knows the limit") {
  const std::string scents =
      scent("reed", "2 %", "10 % citral") + scent("gull", "3 %", "5 % citral");
  // alone each is allowed 2 and 3 %; together all that is sure is 1 / (1/2/2 + 1/2/3) = 2.4 %
  check_limit(blend_of("  1 % reed\n  1 % gull\n", scents), 2.4, 4,
              "the standard's limit of Citral, which 'reed' and 'gull' share");
  // nothing in common: each may be used to its own certificate
  const std::string apart =
      scent("reed", "2 %", "10 % citral") + scent("gull", "3 %", "5 % linalool");
  check_limit(blend_of("  1 % reed\n  1 % gull\n", apart), 4, 4);
  // nobody says what they have in common
  const std::string mute =
      scent("reed", "2 %", "10 % citral", false) + scent("gull", "3 %", "5 % linalool", false);
  check_limit(blend_of("  1 % reed\n  1 % gull\n", mute), 2.4, 4,
              "which limited substances 'reed' and 'gull' have in common");
}
