#include "report/explain/explain_catalogue.h"

#include <string>
#include <vector>

#include "quantity/number.h"
#include "wording/citations.h"
#include "wording/words.h"

namespace sudsmark::report {
using namespace wording;

namespace {

using catalogue::Catalogue;
using catalogue::Citations;
using catalogue::Material;
using catalogue::Sourced;
using catalogue::WaterClass;

std::string with_sources(std::string what, const Citations& citations, const Catalogue& catalogue) {
  if (!citations.empty()) what += " (" + words(notes(citations, catalogue)) + ")";
  return what;
}

std::string in(const quantity::Range& value, std::string_view unit) {
  return quantity::printed(value, *quantity::find_unit(unit));
}

void figure(Page& page, std::string_view label, const std::optional<Sourced>& sourced,
            std::string_view unit, const Catalogue& catalogue) {
  if (sourced) {
    page.entry(label, with_sources(in(sourced->value, unit), sourced->sources, catalogue));
  }
}

/// The words of those traits whose numbers are from `begin` up to before `end`.
std::string role_list(catalogue::Roles roles, int begin, int end) {
  std::vector<std::string> out;
  for (int at = begin; at < end; ++at) {
    const auto role = static_cast<catalogue::Role>(at);
    if ((roles & bit(role)) != 0) out.emplace_back(catalogue::role_word(role));
  }
  return joined(out);
}

std::string content_words(const catalogue::Content& content, const Catalogue& catalogue) {
  std::string out = catalogue.substances[content.substance].name;
  switch (content.water) {
    case WaterClass::none:
      break;
    case WaterClass::free:
      out += ", free at once";
      break;
    case WaterClass::bound:
      out += ", bound and slow";
      break;
    case WaterClass::crystal:
      out += ", in crystals until warmed";
      break;
  }
  if (content.active) out += " (active matter)";
  return out + " " + in(content.share, "%");
}

std::string synonym_list(const Material& material) {
  std::vector<std::string> out;
  for (const catalogue::Synonym& synonym : material.synonyms) {
    std::string word = synonym.word;
    if (!synonym.markets.empty()) word += " (" + joined(synonym.markets) + ")";
    out.push_back(std::move(word));
  }
  return joined(out);
}

}  // namespace

void explain_material(const Material& material, const Catalogue& catalogue, Page& page) {
  page.heading(material.name + ", a material");
  page.gap();
  if (!material.synonyms.empty()) page.entry("also called", synonym_list(material));
  if (!material.inci.empty()) page.entry("INCI", material.inci);
  if (!material.cas.empty()) page.entry("CAS", joined(material.cas));
  page.entry("supplied as", catalogue::form_word(material.form));
  page.entry("roles", role_list(material.roles, 0, catalogue::role_count));
  page.entry("marks", role_list(material.roles, catalogue::role_count, catalogue::trait_count));
  for (const catalogue::Content& content : material.contents) {
    page.entry("holds",
               with_sources(content_words(content, catalogue), content.sources, catalogue));
  }
  if (material.chemistry) {
    const catalogue::Chemistry& chemistry = *material.chemistry;
    page.entry("molar mass", with_sources(in(chemistry.molar_mass, "1") + " g/mol",
                                          chemistry.sources, catalogue));
    if (chemistry.acid_protons > 0) {
      page.entry("as an acid", "gives " + quantity::printed(chemistry.acid_protons) +
                                   " mol of protons per mol to bicarbonate" +
                                   (chemistry.slow ? "; dissolves slowly in the cold" : ""));
    }
    if (chemistry.base_protons > 0) {
      page.entry("as a base", "takes " + quantity::printed(chemistry.base_protons) +
                                  " mol of protons per mol and frees " +
                                  quantity::printed(chemistry.carbon_dioxide) + " mol of CO2");
    }
  }
  if (material.in_water) {
    const catalogue::InWater& solution = *material.in_water;
    page.entry("in water", with_sources(in(solution.ph, "pH") + " at " + in(solution.strength, "%"),
                                        solution.sources, catalogue));
  }
  figure(page, "HLB", material.hlb, "1", catalogue);
  figure(page, "required HLB", material.required_hlb, "1", catalogue);
  figure(page, "density", material.density, "g/ml", catalogue);
  figure(page, "melts at", material.melting, "C", catalogue);
  figure(page, "draws water", material.deliquescence, "%", catalogue);
  figure(page, "stable at", material.stable_ph, "pH", catalogue);
  figure(page, "pure dye", material.pure_colour, "%", catalogue);
  figure(page, "usual share", material.usual, "%", catalogue);
  if (!material.hazards.empty()) {
    page.entry("hazards", with_sources(joined(material.hazards) +
                                           "; your supplier's safety data sheet comes first",
                                       material.hazard_sources, catalogue));
  }
  if (!material.allergens.empty()) page.entry("may bring", joined(material.allergens));
  if (material.grade_unclear) {
    page.entry("grades",
               "sold in grades that differ by a factor under one name: state yours with "
               "a `material` section");
  }
  page.entry("sources", words(notes(material.sources, catalogue)));
  if (!material.remark.empty()) {
    page.gap();
    page.paragraph(material.remark);
  }
}

void explain_product(const catalogue::ProductKind& kind, const Catalogue& catalogue, Page& page) {
  page.heading(kind.name + ", a kind of product");
  page.gap();
  if (!kind.synonyms.empty()) page.entry("also called", joined(kind.synonyms));
  page.entry("traits", joined(kind.traits));
  if (!kind.fragrance_category.empty()) {
    std::string category = kind.fragrance_category;
    if (!kind.neighbour_category.empty()) {
      category += "; might be taken for " + kind.neighbour_category;
    }
    page.entry("scent category", category);
  }
  figure(page, "water", kind.water, "l", catalogue);
  figure(page, "warmth", kind.temperature, "C", catalogue);
  figure(page, "dose", kind.dose, "g", catalogue);
  figure(page, "piece", kind.piece, "g", catalogue);
  figure(page, "contact", kind.minutes, "min", catalogue);
  figure(page, "how often", kind.per_day, "per day", catalogue);
  page.entry("sources", words(notes(kind.sources, catalogue)));
  if (!kind.about.empty()) {
    page.gap();
    page.paragraph(kind.about);
  }
}

}  // namespace sudsmark::report
