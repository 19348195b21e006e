// Which material a name means, however it is spelled on a bag.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/material.h"
#include "catalogue/shelf.h"
#include "catalogue/word_index.h"

namespace sudsmark::catalogue {

/// The names of a list of materials. Answers are indices into that list, ascending.
class MaterialNames {
 public:
  using Targets = std::vector<WordIndex::Target>;

  void index(const Shelf<Material>& materials);

  /// The first of these that knows the name answers:
  /// the name as it stands, among names and synonyms, then INCI names, then CAS numbers;
  /// its words in any order and in one spelling; the same without a strength or the word of a form,
  /// if the material has them; what stands before, in and behind brackets or a stroke, if they
  /// agree; the words without where it was grown; the ending of a name ("… fragrance oil").
  [[nodiscard]] Targets find(std::string_view name, const Shelf<Material>& materials) const;

  [[nodiscard]] bool all_below(std::size_t size) const;

  template <class Archive>
  friend void visit(Archive& archive, typename Archive::template Of<MaterialNames>& names) {
    archive(names.exact_, names.keys_, names.endings_);
  }

 private:
  [[nodiscard]] Targets by_words(std::string_view name, const Shelf<Material>& materials) const;
  [[nodiscard]] Targets by_key(const std::vector<std::string>& words) const;
  [[nodiscard]] Targets by_parts(std::string_view name, const Shelf<Material>& materials) const;
  [[nodiscard]] Targets without_origin(std::string_view name,
                                       const Shelf<Material>& materials) const;
  [[nodiscard]] Targets by_ending(std::string_view name, const Shelf<Material>& materials) const;
  [[nodiscard]] Targets of_part(std::string_view part, const Shelf<Material>& materials) const;

  WordIndex exact_;
  WordIndex keys_;     ///< words in any order, and run together
  WordIndex endings_;  ///< likewise, of endings
};

}  // namespace sudsmark::catalogue
