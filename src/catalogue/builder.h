// Making a catalogue out of YAML files.
//
//     CatalogueBuilder builder(diagnostics, unpacked_built_in);   // or without a base
//     builder.add(root, "oils", other_keys);                      // each file, in any order
//     Catalogue catalogue = builder.finish();
//
// The files of one builder make one layer over the base: an entry replaces the base's entry of the
// same id, while the same id twice in the layer is an error that names both places. An entry may
// name what stands in another file of the layer, and the order of the files changes nothing.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/catalogue.h"
#include "text/diagnostic.h"
#include "text/yaml.h"

namespace sudsmark::catalogue {

class CatalogueBuilder {
 public:
  explicit CatalogueBuilder(text::Diagnostics& diagnostics, Catalogue base = {});

  /// Adds a file by its tree, which must live until `finish`. `name` is what the catalogue calls
  /// its edition by. Top-level keys are an error unless they are the catalogue's or among
  /// `keys_of_others` ("rules", "measures"), which somebody else reads from the same tree.
  void add(const text::Node& root, std::string_view name,
           std::span<const std::string_view> keys_of_others = {});

  /// Reads and links all that was added, and answers the catalogue, indexed. What is wrong with it
  /// is in the diagnostics; entries with errors hold what could be read of them.
  [[nodiscard]] Catalogue finish();

 private:
  using Nodes = std::vector<const text::Node*>;

  void add_citations();
  void add_substances_and_materials();
  void add_products();
  void add_tables();

  text::Diagnostics& diagnostics_;
  Catalogue catalogue_;
  Nodes sources_;
  Nodes substances_;
  Nodes materials_;
  Nodes products_;
  Nodes tables_;
};

}  // namespace sudsmark::catalogue
