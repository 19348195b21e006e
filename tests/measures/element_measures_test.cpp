// Shares of elements and acids, from chemical formulas by hand: K 39.0983, Al 26.9815, S 32.06,
// O 15.999, H 1.008, Zn 65.38, P 30.974, C 12.011, Na 22.990 g/mol.
#include <doctest/doctest.h>

#include <string>

#include "workshop_formula.h"

using namespace sudsmark;
using sudsmark::testing::WorkshopFormula;

namespace {

std::string salts(const std::string& lines, const std::string& own) {
  return "formula \"Ebb\"\n  product bath salts\nphase \"all\"\n  q.s. sea salt\n" + lines + own;
}

std::string own(const std::string& name) {
  return "material \"" + name + "\"\n  role salt\n  form fine powder\n";
}

measures::Measured measured(const WorkshopFormula& of, const char* name) {
  const auto at = measures::find(name);
  REQUIRE(at);
  return measures::all()[*at].compute(of.view());
}

void check_share(const char* name, const std::string& text, double low, double high) {
  const WorkshopFormula of(text);
  const measures::Measured share = measured(of, name);
  CHECK(share.value.low * 100 == doctest::Approx(low).epsilon(1e-3));
  CHECK(share.value.high * 100 == doctest::Approx(high).epsilon(1e-3));
}

}  // namespace

TEST_CASE("aluminium, zinc and etidronic acid out of their compounds") {
  // KAl(SO4)2.12H2O is 474.39 g/mol, of which 26.98 is aluminium
  check_share("element.aluminium", salts("  10 % potassium alum\n", own("potassium alum")), 0.5688,
              0.5688);
  // ZnSO4.H2O is 179.46 g/mol
  check_share("element.zinc", salts("  10 % zinc sulfate\n", own("zinc sulfate")), 3.643, 3.643);
  // tetrasodium etidronate is 293.95 g/mol, the acid 206.03
  check_share("as.etidronic_acid",
              salts("  1 % tetrasodium etidronate\n", own("tetrasodium etidronate")), 0.7009,
              0.7009);
  check_share("element.aluminium", salts("", ""), 0, 0);
}

TEST_CASE("what the entry excepts counts for nothing, what it does not name is counted apart") {
  check_share("element.aluminium", salts("  10 % kaolin\n", ""), 0, 0);
  check_share("element.aluminium.unsettled", salts("  10 % kaolin\n", ""), 0, 0);
  // muscovite is 20.32 % aluminium
  check_share("element.aluminium", salts("  10 % mica\n", ""), 0, 0);
  check_share("element.aluminium.unsettled", salts("  10 % mica\n", ""), 2.032, 2.032);
}

TEST_CASE("where nobody knows how much, the figure says so") {
  const std::string name = "aluminium starch octenylsuccinate";
  const WorkshopFormula of(salts("  10 % " + name + "\n", own(name)));
  const measures::Measured share = measured(of, "element.aluminium.unsettled");
  CHECK(share.value.low == 0);
  CHECK(share.value.high == doctest::Approx(0.1));
  CHECK_FALSE(share.missing.empty());
}
