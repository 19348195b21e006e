// Which substances there are: those listed, and those that materials bring by their own name.
#pragma once

#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "catalogue/material.h"
#include "catalogue/shelf.h"
#include "text/yaml.h"

namespace sudsmark::catalogue {

/// Gathers substances by their folded names: what a list and several materials say of one substance
/// is joined, in the order in which they are added.
class SubstanceGathering {
 public:
  /// A substance that is listed as such.
  void add_listed(const Substance& substance);
  /// What a material brings: all of it, if it says nothing of its contents; or the content that is
  /// called like the material itself, by name or INCI name. `node` is the material's.
  void add_of_material(const Material& material, const text::Node& node);

  /// Puts all into a list, Water too. Listed substances replace those of the same name; others are
  /// joined with them. New ones are appended in the order of their names.
  void merge_into(Shelf<Substance>& substances) const;

 private:
  /// A list without repetitions, in the order of adding.
  template <class T>
  struct Unique {
    std::vector<T> list;
    std::set<T> known;

    void add(const std::vector<T>& more) {
      for (const T& item : more) {
        if (known.insert(item).second) list.push_back(item);
      }
    }
  };
  struct Gathered {
    std::string name;
    std::string inci;
    Unique<std::string> synonyms;
    Unique<std::string> cas;
    Unique<std::uint32_t> colour_index;
    Roles roles = 0;
    bool listed = false;  ///< it replaces what was there by this name

    void join(const Substance& more);
    [[nodiscard]] Substance substance() const;
  };
  Gathered& gather(const Substance& substance);

  std::map<std::string, Gathered> gathered_;
};

}  // namespace sudsmark::catalogue
