// Kinds of product: what they are, and how one is used.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "catalogue/material.h"

namespace sudsmark::catalogue {

struct ProductKind {
  std::string id;  ///< folded name
  std::string name;
  std::vector<std::string> synonyms;
  std::vector<std::string> traits;     ///< "bath-diluted", "foaming", "rinse-off", …
  std::string fragrance_category;      ///< of the fragrance standard
  std::string neighbour_category;      ///< the category that it might be taken for; empty if clear
  std::optional<Sourced> water;        ///< l of one bath
  std::optional<Sourced> temperature;  ///< C
  std::optional<Sourced> dose;         ///< g in one bath or wash
  std::optional<Sourced> piece;        ///< g
  std::optional<Sourced> minutes;      ///< h (the base unit): how long one is in contact
  std::optional<Sourced> per_day;      ///< per hour (the base unit): how often
  std::string about;                   ///< two or three sentences for `explain`
  Citations sources;
  friend bool operator==(const ProductKind&, const ProductKind&) = default;
};

}  // namespace sudsmark::catalogue
