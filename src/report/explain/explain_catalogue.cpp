#include "report/explain/explain_catalogue.h"

#include <algorithm>
#include <set>
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

/// Each source once, under a number that figures are marked with.
class Numbered {
 public:
  explicit Numbered(const Catalogue& catalogue) : catalogue_(catalogue) {}

  /// "64 to 72 % [1, 3]".
  std::string mark(std::string what, const Citations& citations) {
    std::set<std::size_t> cited;
    for (const SourceNote& note : notes(citations, catalogue_))
      cited.insert(number_of(words(note)));
    std::string numbers;
    for (const std::size_t one : cited) {
      numbers += (numbers.empty() ? "" : ", ") + std::to_string(one);
    }
    if (!numbers.empty()) what += " [" + numbers + "]";
    return what;
  }

  void write(Page& page) const {
    for (std::size_t at = 0; at < known_.size(); ++at) {
      page.entry("source " + std::to_string(at + 1), known_[at]);
    }
  }

 private:
  std::size_t number_of(const std::string& source) {
    const auto found = std::find(known_.begin(), known_.end(), source);
    const auto at = static_cast<std::size_t>(found - known_.begin());
    if (found == known_.end()) known_.push_back(source);
    return at + 1;
  }

  const Catalogue& catalogue_;
  std::vector<std::string> known_;
};

std::string in(const quantity::Range& value, std::string_view unit) {
  return quantity::printed(value, unit);
}

void figure(Page& page, std::string_view label, const std::optional<Sourced>& sourced,
            std::string_view unit, Numbered& sources) {
  if (sourced) page.entry(label, sources.mark(in(sourced->value, unit), sourced->sources));
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
  Numbered sources(catalogue);
  page.heading(material.name + ", a material");
  page.gap();
  if (!material.synonyms.empty()) page.entry("also called", synonym_list(material));
  if (!material.inci.empty()) page.entry("INCI", material.inci);
  if (!material.cas.empty()) page.entry("CAS", joined(material.cas));
  page.entry("supplied as", catalogue::form_word(material.form));
  page.entry("roles", role_list(material.roles, 0, catalogue::role_count));
  page.entry("marks", role_list(material.roles, catalogue::role_count, catalogue::trait_count));
  for (const catalogue::Content& content : material.contents) {
    page.entry("holds", sources.mark(content_words(content, catalogue), content.sources));
  }
  if (material.chemistry) {
    const catalogue::Chemistry& chemistry = *material.chemistry;
    page.entry("molar mass",
               sources.mark(in(chemistry.molar_mass, "1") + " g/mol", chemistry.sources));
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
    page.entry("in water", sources.mark(in(solution.ph, "pH") + " at " + in(solution.strength, "%"),
                                        solution.sources));
  }
  figure(page, "HLB", material.hlb, "1", sources);
  figure(page, "required HLB", material.required_hlb, "1", sources);
  figure(page, "density", material.density, "g/ml", sources);
  figure(page, "melts at", material.melting, "C", sources);
  figure(page, "draws water", material.deliquescence, "%", sources);
  figure(page, "stable at", material.stable_ph, "pH", sources);
  figure(page, "pure dye", material.pure_colour, "%", sources);
  figure(page, "usual share", material.usual, "%", sources);
  if (!material.hazards.empty()) {
    page.entry("hazards", sources.mark(joined(material.hazards) +
                                           "; your supplier's safety data sheet comes first",
                                       material.hazard_sources));
  }
  if (!material.allergens.empty()) page.entry("may bring", joined(material.allergens));
  if (material.grade_unclear) {
    page.entry("grades",
               "sold in grades that differ by a factor under one name: state yours with "
               "a `material` section");
  }
  page.entry("as a whole", sources.mark("it leans on", material.sources));
  sources.write(page);
  if (!material.remark.empty()) {
    page.gap();
    page.paragraph(material.remark);
  }
}

void explain_product(const catalogue::ProductKind& kind, const Catalogue& catalogue, Page& page) {
  Numbered sources(catalogue);
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
  figure(page, "water", kind.water, "l", sources);
  figure(page, "warmth", kind.temperature, "C", sources);
  figure(page, "dose", kind.dose, "g", sources);
  figure(page, "piece", kind.piece, "g", sources);
  figure(page, "contact", kind.minutes, "min", sources);
  figure(page, "how often", kind.per_day, "per day", sources);
  page.entry("as a whole", sources.mark("it leans on", kind.sources));
  sources.write(page);
  if (!kind.about.empty()) {
    page.gap();
    page.paragraph(kind.about);
  }
}

}  // namespace sudsmark::report
