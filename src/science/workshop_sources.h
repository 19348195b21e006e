// The sources that the workshop's functions lean on: weighing, dust, banding, mixtures, exposure.
//
// A result with several figures carries its source along. A function that returns a bare number or
// class names its source in its comment, and whoever shows the number finds it here.
#pragma once

#include "science/provenance.h"

namespace sudsmark::science::sources {

// Weighing.
inline constexpr Provenance usp_41{"usp-41", "USP <41> Balances",
                                   "text official 1 August 2019, minimum weight", Standing::quoted};
inline constexpr Provenance usp_41_general{"usp-41", "USP <41> Balances",
                                           "minimum weight, solved for any tolerance",
                                           Standing::quoted, true};
inline constexpr Provenance hundred_steps{"hundred-steps",
                                          "A mass to weigh is at least 100 steps of the display",
                                          "", Standing::recalled};
inline constexpr Provenance nawi_errors{
    "si-1995-1907", "Non-automatic Weighing Instruments Regulations, SI 1995/1907",
    "Schedule 2 paragraph 4, Table 3", Standing::read};
inline constexpr Provenance oiml_r76{"oiml-r76-1", "OIML R 76-1", "minimum capacity",
                                     Standing::recalled};
inline constexpr Provenance geometric_dilution{
    "geometric-dilution", "A minor component is diluted stepwise, each step at most about 1 to 10",
    "", Standing::practice};

// Airborne dust.
inline constexpr Provenance well_mixed_teaching{
    "well-mixed-teaching-problem", "Teaching problem of a university: a gas in a well-mixed room",
    "", Standing::read};
inline constexpr Provenance two_zone_package{
    "two-zone-package", "Manual of a statistics package: two-zone model, example data 1",
    "after Zhang et al. 2009", Standing::read};
inline constexpr Provenance hemisphere{
    "near-field-hemisphere", "Near field as a hemisphere around the source",
    "geometry and half of its surface as inflow", Standing::recalled};
inline constexpr Provenance decoupling{
    "decoupling-2024", "A decoupling method to compute near field and far field concentrations",
    "Ann. Work Expo. Health 68(1) 2024, 78-85, abstract", Standing::read};
inline constexpr Provenance en_15051{"en-15051",
                                     "EN 15051 Measurement of the dustiness of bulk materials",
                                     "parts 1 to 3, 2013, class bounds", Standing::recalled};
inline constexpr Provenance osha_computation{"29-cfr-1910-1000-d",
                                             "29 CFR 1910.1000(d) computation formulae",
                                             "(d)(1)(i), (d)(2)", Standing::read};
inline constexpr Provenance eh40_short_term{"eh40", "EH40/2005 Workplace exposure limits",
                                            "no short-term limit: three times the long-term one",
                                            Standing::recalled};
inline constexpr Provenance trgs_900{"trgs-900", "TRGS 900 Arbeitsplatzgrenzwerte",
                                     "no. 2.4, general dust limit by density", Standing::quoted};

// Control banding.
inline constexpr Provenance hsg193_groups{"hsg193",
                                          "COSHH Essentials (HSG193) and its technical basis",
                                          "hazard groups", Standing::quoted};
inline constexpr Provenance hsg193_predictor{
    "hsg193", "COSHH Essentials (HSG193) and its technical basis",
    "exposure bands by amount and dustiness", Standing::quoted};
inline constexpr Provenance hsg193_matrix{"hsg193",
                                          "COSHH Essentials (HSG193) and its technical basis",
                                          "control approach", Standing::recalled, true};
inline constexpr Provenance hsg193_amounts{
    "hsg193", "COSHH Essentials (HSG193) and its technical basis",
    "amount bands, target concentrations", Standing::recalled};

// Combustible dust.
inline constexpr Provenance bgrci_explosion{
    "bg-rci-explosion-faq", "BG RCI explosion protection FAQ", "3.8 and 3.18", Standing::read};
inline constexpr Provenance nfpa_starch{"nfpa-61-68", "NFPA 61 / NFPA 68 dust tables",
                                        "corn starch", Standing::recalled};
inline constexpr Provenance osha_3371{"osha-3371",
                                      "OSHA 3371 / CPL 03-00-008 dust explosion classes",
                                      "table of Kst", Standing::quoted};
inline constexpr Provenance osha_layer_reference{
    "osha-layer-depth-2015", "OSHA memorandum on accumulation depth of combustible dusts",
    "21 April 2015, 1/32 inch at 75 lb/ft3, 5 % of the floor", Standing::read};
inline constexpr Provenance osha_layer_depth{
    "osha-layer-depth-2015", "OSHA memorandum on accumulation depth of combustible dusts",
    "21 April 2015, depth by bulk density", Standing::recalled, true};
inline constexpr Provenance inert_mixtures{
    "inert-dust-mixtures-2016",
    "Minimum ignition energy and temperature of inert and combustible dust mixtures",
    "J. Hazard. Mater. 307, 2016, 302-311, highlights", Standing::read};
inline constexpr Provenance usbm_starch{"usbm-cornstarch",
                                        "US Bureau of Mines, cornstarch explosibility",
                                        "limestone in starch", Standing::read};
inline constexpr Provenance dust_cloud_definition{
    "mass-over-volume", "Mass of dust over the volume it fills", "", Standing::practice};

// Mixture classification: Regulation (EC) No 1272/2008 (CLP), Annex I.
inline constexpr std::string_view clp_title = "Regulation (EC) No 1272/2008 (CLP), Annex I";
inline constexpr Provenance clp_relevant{"clp", clp_title, "3.2.3.3.1 and 3.3.3.3.1",
                                         Standing::read};
inline constexpr Provenance clp_extreme_ph{"clp", clp_title, "3.2.3.1.2 and 3.3.3.1.2",
                                           Standing::read};
inline constexpr Provenance clp_skin{"clp", clp_title, "Table 3.2.3", Standing::quoted};
inline constexpr Provenance clp_eye{"clp", clp_title, "Table 3.3.3", Standing::recalled};
inline constexpr Provenance clp_eye_non_additive{"clp", clp_title, "3.3.3.3.4 and Table 3.3.4",
                                                 Standing::recalled};
inline constexpr Provenance clp_airways{"clp", clp_title, "3.8.3.4.5", Standing::quoted};
inline constexpr Provenance clp_skin_sensitiser{"clp", clp_title, "Table 3.4.5",
                                                Standing::recalled};

// The person in the bath.
inline constexpr Provenance bath_definition{"bath-dilution", "Mass in the bath over its water", "",
                                            Standing::practice};
inline constexpr Provenance sccs_exposure{"sccs-1647-22",
                                          "SCCS/1647/22 Notes of Guidance, 12th revision",
                                          "May 2023, Tables 3A and 3B", Standing::quoted};
inline constexpr Provenance sccs_defaults{"sccs-1647-22",
                                          "SCCS/1647/22 Notes of Guidance, 12th revision",
                                          "default values, margin of safety", Standing::recalled};
inline constexpr Provenance child_skin{"sccs-child-ratio",
                                       "SCCS ratio of skin area to weight, child to adult",
                                       "dossier-service page 2022", Standing::quoted};
inline constexpr Provenance bath_film{"bath-film", "Film of bath water left on the skin, 0.01 cm",
                                      "", Standing::recalled};
inline constexpr Provenance skin_load_survey{"dandruff-shampoo-survey",
                                             "Danish EPA survey of dandruff shampoo",
                                             "chapter 4, 2005", Standing::read};

}  // namespace sudsmark::science::sources
