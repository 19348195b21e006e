#include "catalogue/entries.h"
#include "catalogue/figure.h"
#include "text/name.h"

namespace sudsmark::catalogue {

ProductKind read_product(const text::Node& node, const Reading& reading) {
  namespace dimension = quantity::dimension;
  text::Fields fields(node, reading.diagnostics);
  ProductKind product;
  product.name = fields.needed_text("name");
  product.id = text::fold(product.name);
  product.sources = read_sources(fields, nullptr, "a kind of product", reading);
  product.synonyms = fields.strings("synonyms");
  product.traits = fields.strings("traits");
  product.fragrance_category = fields.text("fragrance category");
  product.neighbour_category = fields.text("neighbour category");
  const auto figure = [&](std::string_view key, const quantity::Dimension& of) {
    return read_sourced(fields, key, of, product.sources, reading);
  };
  product.water = figure("water", dimension::volume);
  product.temperature = figure("temperature", dimension::temperature);
  product.dose = figure("dose", dimension::mass);
  product.piece = figure("piece", dimension::mass);
  product.minutes = figure("minutes", dimension::time);
  product.per_day = figure("per day", dimension::rate);
  product.about = fields.text("about");
  fields.refuse_others();
  return product;
}

}  // namespace sudsmark::catalogue
