// Headings 6 and 7: what of the product and of its substances stays on the skin. Without any
// toxicology.
#include <array>
#include <string>
#include <variant>
#include <vector>

#include "dossier/gathering.h"
#include "measures/exposure_measures.h"
#include "quantity/number.h"
#include "science/bath_exposure.h"
#include "text/name.h"
#include "wording/citations.h"
#include "wording/figures.h"
#include "wording/words.h"

namespace sudsmark::dossier {
namespace {

using measures::SkinProducts;
using quantity::Range;

constexpr const char* daily = "mg/kg";  // of body and day

const SourceNote film_note{"from memory", "Film of bath water left on the skin",
                           "0.01 cm on 17,500 cm2 of skin, 60 kg of body"};
const SourceNote ratio_note{"published", "SCCS ratio of skin area to weight, child to adult",
                            "as a dossier service restates it, 2022", true};
const SourceNote absorption_note{"from memory", "SCCS Notes of Guidance",
                                 "50 % through the skin where nobody measured it"};

/// A way by which something of the product stays on the skin.
struct Way {
  std::string name;
  Range product;  ///< a day, as a share of body weight
};

std::vector<Way> ways_of(const SkinProducts& products) {
  std::vector<Way> out;
  if (products.guidance.value.known()) {
    out.push_back({products.own_row ? products.row->name + ", by the guidance"
                                    : "as " + text::fold(products.row->name) + ", by the guidance",
                   products.guidance.value});
  }
  if (products.film.value.known()) out.push_back({"film of bath water", products.film.value});
  if (products.dose.value.known()) {
    out.push_back({"1 % of the dose, worst case", products.dose.value});
  }
  return out;
}

/// The bands of the ratio that users of a formula fall into.
std::vector<science::ChildRatio> bands_for(const blend::Blend& blend) {
  std::vector<science::ChildRatio> out;
  constexpr double small = 3;
  const auto bands = science::child_ratios();
  for (std::size_t at = 0; at < bands.size(); ++at) {
    const double end = at + 1 < bands.size() ? bands[at + 1].years : 100;
    const bool under = blend.used_by("children under 3") && bands[at].years < small;
    const bool over = blend.used_by("children over 3") && end > small;
    if (under || over) out.push_back(bands[at]);
  }
  return out;
}

std::string age_words(const science::ChildRatio& band) {
  return "child from " + quantity::printed(band.years) + " years, times " +
         quantity::printed(band.ratio);
}

void add_product(const Gathering& to, const std::vector<Way>& ways) {
  const auto bands = bands_for(to.blend);
  DossierTable table{std::string("Product that stays on the skin a day, mg for each kg of body") +
                         (ways.size() > 1 ? ": bounds side by side, never one figure" : ""),
                     {"Way", "Adult"},
                     {}};
  for (const science::ChildRatio& band : bands) table.columns.push_back(age_words(band));
  for (const Way& way : ways) {
    std::vector<DossierCell> row{{way.name}, cell(way.product, daily)};
    for (const science::ChildRatio& band : bands) {
      row.push_back(cell(way.product * band.ratio, daily));
    }
    table.rows.push_back(std::move(row));
  }
  to.heading(6).tables.push_back(std::move(table));
  if (!bands.empty()) {
    to.entry(6, "children",
             "the ratio of skin to weight is within the factor of 100 on sound skin, as the "
             "guidance is quoted; the nappy area needs more.",
             {ratio_note});
  }
}

/// What of the product lies on a square centimetre [mg].
void add_load(const Gathering& to) {
  const auto& blend = to.blend;
  if (!blend.dose || !blend.bath_volume || !(blend.bath_volume->value.low > 0)) return;
  const Range in_water = blend.dose->value / blend.bath_volume->value;  // g/l
  if (!in_water.known()) return;
  const Figure load{science::film_load(in_water.low), science::film_load(in_water.high), "mg"};
  to.entry(6, "on each square centimetre",
           wording::printed(load) + " of product in the film of bath water.", {film_note});
}

void add_frequency(const Gathering& to, const SkinProducts& products) {
  if (products.row != nullptr) {
    const auto* table = to.blend.catalogue->find_table("exposure-of-products");
    const auto used = table->column("used");
    const auto* amount = used ? std::get_if<Range>(&products.row->cells[*used]) : nullptr;
    to.entry(
        6, "by the guidance",
        products.row->name +
            (amount == nullptr ? std::string()
                               : ", " + quantity::printed(*amount, "g") + " a day") +
            ", 1 % of it stays" +
            (products.own_row ? "."
                              : ": for what goes into a bath the guidance has no row, and what "
                                "is put on neat is no measure of what is diluted."),
        to.sources(*products.row));
  }
  if (!products.bath) return;
  to.entry(6, "by the bath",
           "one bath a day is counted. The film stands for a diluted product; 1 % "
           "of the dose is for what is put on neat, and here the worst case.",
           {film_note});
}

void add_substances(const Gathering& to, const std::vector<Way>& ways) {
  DossierTable table{"Substances that stay on the skin a day, mg for each kg of body of an adult",
                     {"Substance", "In the product"},
                     {}};
  for (const Way& way : ways) table.columns.push_back(way.name);
  constexpr double percent = 100;
  constexpr double mg_per_kg = 1e6;
  for (const CompositionRow& one : to.checked.composition) {
    if (one.substance == "Water") continue;
    std::vector<DossierCell> row{{one.substance}, cell(one.share)};
    for (const Way& way : ways) {
      Figure dose{std::nullopt, std::nullopt, daily};
      if (one.share.low) dose.low = way.product.low * mg_per_kg * *one.share.low / percent;
      if (one.share.high) dose.high = way.product.high * mg_per_kg * *one.share.high / percent;
      row.push_back(cell(dose));
    }
    table.rows.push_back(std::move(row));
  }
  to.heading(7).tables.push_back(std::move(table));
  to.entry(7, "into the body",
           "what goes through the skin is a part of that: half of it where nobody measured it, all "
           "of it in older practice. Breathing in and swallowing are not counted.",
           {absorption_note});
}

}  // namespace

void add_exposure(const Gathering& to) {
  const SkinProducts products = measures::skin_products(to.whole);
  const std::vector<Way> ways = ways_of(products);
  if (ways.empty()) {
    to.entry(6, "product", "not known: no published amount and no dose.");
    return;
  }
  add_product(to, ways);
  add_frequency(to, products);
  add_load(to);
  add_substances(to, ways);
  if (products.bath) {
    to.question({6,
                 Answerer::assessor,
                 "Which of the three bounds holds for this product?",
                 "The guidance has no row for what goes into a bath.",
                 {},
                 to.checked.composition.size()});
  }
}

}  // namespace sudsmark::dossier
