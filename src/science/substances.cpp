#include "science/substances.h"

#include <algorithm>

namespace sudsmark::science {
namespace {

using C = Component;

constexpr Substance all_substances[] = {
    // name, formula, CAS, g/mol, acid protons, bicarbonate, carbonate, parts
    {"sodium bicarbonate", "NaHCO3", "144-55-8", 84.007, 0, 1, 0,
     {{{C::sodium, 1}, {C::carbonate, 1}}}},
    {"potassium bicarbonate", "KHCO3", "298-14-6", 100.115, 0, 1, 0,
     {{{C::potassium, 1}, {C::carbonate, 1}}}},
    {"sodium carbonate", "Na2CO3", "497-19-8", 105.988, 0, 0, 1,
     {{{C::sodium, 2}, {C::carbonate, 1}}}},
    {"sodium carbonate monohydrate", "Na2CO3.H2O", "5968-11-6", 124.003, 0, 0, 1,
     {{{C::sodium, 2}, {C::carbonate, 1}}}},
    {"sodium carbonate decahydrate", "Na2CO3.10H2O", "6132-02-1", 286.141, 0, 0, 1,
     {{{C::sodium, 2}, {C::carbonate, 1}}}},
    {"sodium sesquicarbonate", "Na2CO3.NaHCO3.2H2O", "533-96-0", 226.03, 0, 1, 1,
     {{{C::sodium, 3}, {C::carbonate, 2}}}},
    {"potassium carbonate", "K2CO3", "", 138.205, 0, 0, 1,
     {{{C::potassium, 2}, {C::carbonate, 1}}}},
    {"magnesium carbonate", "MgCO3", "546-93-0", 84.314, 0, 0, 1,
     {{{C::magnesium, 1}, {C::carbonate, 1}}}},
    {"calcium carbonate", "CaCO3", "471-34-1", 100.087, 0, 0, 1,
     {{{C::calcium, 1}, {C::carbonate, 1}}}},
    {"borax decahydrate", "Na2B4O7.10H2O", "1303-96-4", 381.37, 0, 0, 0,
     {{{C::sodium, 2}, {C::borate, 4}}}},
    {"boric acid", "H3BO3", "", 61.832, 0, 0, 0, {{{C::borate, 1}}}},
    {"citric acid", "C6H8O7", "77-92-9", 192.124, 3, 0, 0, {{{C::citrate, 1}}}},
    {"citric acid monohydrate", "C6H8O7.H2O", "5949-29-1", 210.139, 3, 0, 0, {{{C::citrate, 1}}}},
    {"monosodium citrate", "NaC6H7O7", "", 214.105, 2, 0, 0, {{{C::sodium, 1}, {C::citrate, 1}}}},
    {"disodium citrate", "Na2C6H6O7", "", 236.087, 1, 0, 0, {{{C::sodium, 2}, {C::citrate, 1}}}},
    {"trisodium citrate dihydrate", "Na3C6H5O7.2H2O", "6132-04-3", 294.099, 0, 0, 0,
     {{{C::sodium, 3}, {C::citrate, 1}}}},
    {"tartaric acid", "C4H6O6", "87-69-4", 150.087, 2, 0, 0, {{{C::tartrate, 1}}}},
    {"potassium hydrogen tartrate", "KC4H5O6", "868-14-4", 188.177, 1, 0, 0,
     {{{C::potassium, 1}, {C::tartrate, 1}}}},
    {"malic acid", "C4H6O5", "6915-15-7", 134.087, 2, 0, 0, {{{C::malate, 1}}}},
    {"lactic acid", "C3H6O3", "50-21-5", 90.078, 1, 0, 0, {{{C::lactate, 1}}}},
    {"sodium lactate", "NaC3H5O3", "", 112.060, 0, 0, 0, {{{C::sodium, 1}, {C::lactate, 1}}}},
    {"adipic acid", "C6H10O4", "124-04-9", 146.142, 2, 0, 0, {{{C::adipate, 1}}}},
    {"ascorbic acid", "C6H8O6", "50-81-7", 176.124, 1, 0, 0, {{{C::ascorbate, 1}}}},
    {"fumaric acid", "C4H4O4", "110-17-8", 116.073, 2, 0, 0, {{{C::other_anion, 2}}}, 2},
    {"succinic acid", "C4H6O4", "110-15-6", 118.088, 2, 0, 0, {{{C::other_anion, 2}}}, 2},
    {"glucono-delta-lactone", "C6H10O6", "", 178.14, 1, 0, 0, {{{C::other_anion, 1}}}, 1},
    {"sodium acid pyrophosphate", "Na2H2P2O7", "", 221.94, 2, 0, 0,
     {{{C::sodium, 2}, {C::other_anion, 4}}}, 2},
    // 8/3 protons where calcium phosphate falls out as leavening tables take it: 3 of it and
    // 8 NaHCO3 make Ca3(PO4)2 and 4 Na2HPO4. Dissolved, without that solid, it gives 2.
    {"monocalcium phosphate monohydrate", "Ca(H2PO4)2.H2O", "", 252.07, 8.0 / 3.0, 0, 0,
     {{{C::calcium, 1}, {C::phosphate, 2}}}},
    {"monosodium phosphate", "NaH2PO4", "", 119.98, 1, 0, 0,
     {{{C::sodium, 1}, {C::phosphate, 1}}}},
    {"disodium phosphate", "Na2HPO4", "", 141.96, 0, 0, 0, {{{C::sodium, 2}, {C::phosphate, 1}}}},
    {"sodium bisulfate", "NaHSO4", "", 120.06, 1, 0, 0, {{{C::sodium, 1}, {C::sulfate, 1}}}},
    {"sodium sulfate", "Na2SO4", "", 142.04, 0, 0, 0, {{{C::sodium, 2}, {C::sulfate, 1}}}},
    {"magnesium sulfate heptahydrate", "MgSO4.7H2O", "", 246.48, 0, 0, 0,
     {{{C::magnesium, 1}, {C::sulfate, 1}}}},
    {"magnesium sulfate", "MgSO4", "", 120.37, 0, 0, 0,
     {{{C::magnesium, 1}, {C::sulfate, 1}}}},
    {"sodium chloride", "NaCl", "", 58.44, 0, 0, 0, {{{C::sodium, 1}, {C::chloride, 1}}}},
    {"potassium chloride", "KCl", "", 74.55, 0, 0, 0, {{{C::potassium, 1}, {C::chloride, 1}}}},
    {"magnesium chloride hexahydrate", "MgCl2.6H2O", "", 203.30, 0, 0, 0,
     {{{C::magnesium, 1}, {C::chloride, 2}}}},
    {"calcium chloride", "CaCl2", "", 110.98, 0, 0, 0, {{{C::calcium, 1}, {C::chloride, 2}}}},
    {"sodium hydroxide", "NaOH", "", 39.997, 0, 0, 0, {{{C::sodium, 1}}}},
    {"potassium hydroxide", "KOH", "", 56.106, 0, 0, 0, {{{C::potassium, 1}}}},
    // Soap counted as if all of it were one chain; a noodle's own mean molar mass serves better.
    {"sodium laurate", "NaC12H23O2", "", 222.30, 0, 0, 0, {{{C::sodium, 1}, {C::fatty_acid, 1}}}},
    {"sodium palmitate", "NaC16H31O2", "", 278.41, 0, 0, 0,
     {{{C::sodium, 1}, {C::fatty_acid, 1}}}},
    {"sodium oleate", "NaC18H33O2", "", 304.45, 0, 0, 0, {{{C::sodium, 1}, {C::fatty_acid, 1}}}},
    {"sodium stearate", "NaC18H35O2", "", 306.46, 0, 0, 0, {{{C::sodium, 1}, {C::fatty_acid, 1}}}},
    {"stearic acid", "C18H36O2", "", 284.48, 0, 0, 0, {{{C::fatty_acid, 1}}}},
};

}  // namespace

std::span<const Substance> bath_substances() { return all_substances; }

const Substance* find_substance(std::string_view name_or_cas) {
  if (name_or_cas.empty()) return nullptr;
  const auto* const found =
      std::find_if(std::begin(all_substances), std::end(all_substances),
                   [name_or_cas](const Substance& one) {
                     return one.name == name_or_cas || one.cas == name_or_cas;
                   });
  return found == std::end(all_substances) ? nullptr : found;
}

}  // namespace sudsmark::science
