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
inline constexpr Provenance en_15051{"en-15051",
                                     "EN 15051 Measurement of the dustiness of bulk materials",
                                     "parts 1 to 3, 2013, class bounds", Standing::recalled};

// Control banding.
inline constexpr Provenance hsg193_groups{"hsg193",
                                          "COSHH Essentials (HSG193) and its technical basis",
                                          "hazard groups", Standing::quoted};
inline constexpr Provenance hsg193_matrix{"hsg193",
                                          "COSHH Essentials (HSG193) and its technical basis",
                                          "control approach", Standing::recalled, true};

// Combustible dust.
inline constexpr Provenance osha_layer_depth{
    "osha-layer-depth-2015", "OSHA memorandum on accumulation depth of combustible dusts",
    "21 April 2015, depth by bulk density", Standing::recalled, true};

// Mixture classification: Regulation (EC) No 1272/2008 (CLP), Annex I.
inline constexpr std::string_view clp_title = "Regulation (EC) No 1272/2008 (CLP), Annex I";
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

}  // namespace sudsmark::science::sources
