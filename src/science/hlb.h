#pragma once

#include <optional>
#include <span>
#include <string_view>

/// Hydrophile-lipophile balance by Griffin: one number for what emulsifiers supply, one for what
/// oils require, both from 0 to 20. They are two scales and two types here, since a fatty substance
/// can have one of each (glyceryl stearate supplies 3.8 as an emulsifier and requires far more as
/// an oil) and published work has mixed them up.

namespace sudsmark::science {

/// What an emulsifier or a blend of them supplies, Griffin's scale [1]. Numbers of ionic
/// surfactants on Davies' group scale (sodium lauryl sulfate 40) are no such value.
struct SuppliedHlb {
  double value = 0.0;
};

/// What an oil or a blend of them requires for an oil-in-water emulsion [1].
struct RequiredHlb {
  double value = 0.0;
};

struct EmulsifierShare {
  double mass = 0.0;  ///< any unit of mass, the same for all
  SuppliedHlb hlb;
};

struct OilShare {
  double mass = 0.0;  ///< any unit of mass, the same for all
  RequiredHlb hlb;
};

/// Mean by mass. Nothing if there is no mass, a mass is negative or a value is not finite.
/// Error: additivity is an assumption; measured blends differ by about 1.
/// Source: Griffin 1949 and 1954, as quoted by textbooks.
std::optional<SuppliedHlb> supplied_hlb(std::span<const EmulsifierShare> emulsifiers);
std::optional<RequiredHlb> required_hlb(std::span<const OilShare> oils);

/// Supplied less required: above 0 the blend is more water-loving than the oils ask for.
double hlb_surplus(SuppliedHlb supplied, RequiredHlb required);

/// Share by mass [1] of the first of two emulsifiers that together meet `wanted`. Nothing if
/// `wanted` lies outside what the two can make, or they are alike.
std::optional<double> share_of_first(SuppliedHlb first, SuppliedHlb second, RequiredHlb wanted);

/// Griffin's formulas for nonionics. 20 times the share by mass of the water-loving part.
SuppliedHlb griffin_by_mass(double hydrophile_molar_mass, double molar_mass);
/// Ethoxylates of alcohols: a fifth of the ethylene oxide and polyol, both in % by mass.
SuppliedHlb griffin_by_ethylene_oxide(double ethylene_oxide_percent, double polyol_percent = 0.0);
/// Esters of polyols: 20 (1 - S/A), S the saponification number of the ester, A the acid number of
/// the acid [both mg KOH/g].
SuppliedHlb griffin_by_saponification(double saponification_number, double acid_number);

/// What the number does not say, for a reader.
std::string_view hlb_caveat();

}  // namespace sudsmark::science
