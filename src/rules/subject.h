// Subjects: what a rule is asked about.
#pragma once

#include <cstdint>
#include <string_view>

#include "blend/blend.h"
#include "catalogue/table.h"
#include "rules/program.h"
#include "text/source.h"

namespace sudsmark::rules {

using text::Span;

/// The product, or one row, portion, material, premix or task.
struct Subject {
  Each each = Each::product;
  std::size_t part = 0;      ///< of the figures' parts: whose figures are asked for
  std::uint32_t number = 0;  ///< told apart from all other subjects of a check
  std::string_view name;
  Span place;
  const catalogue::Row* row = nullptr;
  const catalogue::Table* table = nullptr;
  bool declared = true;  ///< the row's substance is in what the formula declares
  bool aroma = false;    ///< the row's substance is an aroma chemical
  const blend::Ingredient* ingredient = nullptr;  ///< of a material
  const blend::Task* task = nullptr;
};

}  // namespace sudsmark::rules
