#include "science/elements.h"

#include <doctest/doctest.h>

#include <string>

using doctest::Approx;
using namespace sudsmark::science;

namespace {

double mass(std::string_view formula) {
  return molar_mass(formula).value_or(-1.0);
}

}  // namespace

TEST_CASE("molar masses of what goes into a bath") {
  // each worked out by hand from the atomic masses
  CHECK(mass("H2O") == Approx(18.015).epsilon(1e-6));
  CHECK(mass("CaCO3") == Approx(100.086).epsilon(1e-6));
  CHECK(mass("NaHCO3") == Approx(84.006).epsilon(1e-5));
  CHECK(mass("C6H8O7") == Approx(192.123).epsilon(1e-5));
  CHECK(mass("Ca(H2PO4)2.H2O") == Approx(252.064).epsilon(1e-4));
}

TEST_CASE("brackets and joined parts multiply what is in them") {
  CHECK(atoms_of("KAl2(AlSi3O10)(OH)2", "Al") == 3.0);
  CHECK(atoms_of("KAl2(AlSi3O10)(OH)2", "O") == 12.0);
  CHECK(atoms_of("K[Al{Si(OH)2}3]2", "O") == 12.0);
  CHECK(atoms_of("2ZnCO3.3Zn(OH)2", "Zn") == 5.0);
  CHECK(atoms_of("2ZnCO3.3Zn(OH)2", "O") == 12.0);
  CHECK(atoms_of("Na2CO3\xC2\xB7"
                 "10H2O",
                 "H") == 20.0);
  CHECK(atoms_of("CO", "Co") == 0.0);
  CHECK(atoms_of("Co", "Co") == 1.0);
}

TEST_CASE("shares of elements that laws limit") {
  // Worked out by hand: muscovite 3 * 26.981538 / 398.303; zinc oxide 65.38 / 81.379; and so on.
  CHECK(*element_share("KAl2(AlSi3O10)(OH)2", "Al") == Approx(0.20322).epsilon(1e-4));
  CHECK(*element_share("ZnO", "Zn") == Approx(0.80340).epsilon(1e-4));
  CHECK(*element_share("ZnSO4.7H2O", "Zn") == Approx(0.22738).epsilon(1e-4));
  CHECK(*element_share("C9H9HgNaO2S", "Hg") == Approx(0.4955).epsilon(2e-3));  // thiomersal
  CHECK(*element_share("AgCl", "Ag") == Approx(0.75265).epsilon(1e-4));
  CHECK(*element_share("Na2B4O7.10H2O", "B") == Approx(0.11338).epsilon(1e-4));
  CHECK(*element_share("NaCl", "Hg") == 0.0);
}

TEST_CASE("a substance as its acid") {
  CHECK(*share_as("Na2B4O7.10H2O", "B", "H3BO3") == Approx(0.6485).epsilon(2e-4));
  CHECK(*share_as("NaC7H5O2", "C", "C7H6O2") == Approx(0.8474).epsilon(2e-4));
  CHECK(*share_as("H3BO3", "B", "H3BO3") == Approx(1.0));
  // anhydrous borax holds more boron than boric acid does
  CHECK(*share_as("Na2B4O7", "B", "H3BO3") > 1.0);
  CHECK_FALSE(share_as("NaCl", "Na", "HCl").has_value());
}

TEST_CASE("all the elements of one formula weigh what it weighs") {
  for (const std::string_view formula :
       {"KAl2(AlSi3O10)(OH)2", "Mg3Si4O10(OH)2", "Fe4[Fe(CN)6]3", "Na2CO3.10H2O", "TiO2"}) {
    const auto all = read_formula(formula);
    REQUIRE(all.has_value());
    double sum = 0.0;
    for (const Atoms& atoms : *all) {
      sum += *element_share(formula, atoms.symbol);
    }
    CHECK(sum == Approx(1.0));
  }
}

TEST_CASE("what is no formula is none") {
  for (const std::string_view text :
       {"", " ", "Na Cl", "nacl", "Xx2", "H0", "Na2CO3.", ".H2O", "(OH", "OH)", "[OH)", "()", "Na+",
        "H1.5", "2", "H20001", "((((((((((H))))))))))", "NaCl\n"}) {
    CAPTURE(text);
    CHECK_FALSE(read_formula(text).has_value());
  }
  CHECK_FALSE(read_formula(std::string(201, 'H')).has_value());
  CHECK_FALSE(atomic_mass("Xx").has_value());
  CHECK_FALSE(element_share("NaCl", "Xx").has_value());
}
