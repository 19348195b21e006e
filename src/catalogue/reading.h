// What the readers of single entries (a material, a table row, …) share: where to report, and the
// catalogue so far, whose citations and substances the entries name.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "catalogue/catalogue.h"
#include "quantity/unit.h"
#include "text/diagnostic.h"
#include "text/yaml_fields.h"

namespace sudsmark::catalogue {

/// What the readers work with.
class Reading {
 public:
  /// Citations of the catalogue must be complete; substances once contents and rows are read.
  Reading(const Catalogue& of, text::Diagnostics& report_to);

  const Catalogue& catalogue;
  text::Diagnostics& diagnostics;

  [[nodiscard]] std::optional<CitationIndex> find_citation(const std::string& id) const;
  /// The end of a sentence about a name that nobody knows, near names in it.
  [[nodiscard]] std::string substance_hint(std::string_view name) const;
  [[nodiscard]] std::string citation_hint(std::string_view name) const;

 private:
  /// Near names take a while to find; a file that is wrong throughout gets no more than these.
  static constexpr int most_hints = 200;
  bool spend_hint() const { return ++hints_ <= most_hints; }

  std::unordered_map<std::string, CitationIndex> citations_;
  mutable int hints_ = 0;
};

/// `source` or `sources`: ids of citations. Without either the inherited ones answer; where none
/// can be inherited (null) that is an error which says that `what` ("a table row") needs a source.
[[nodiscard]] Citations read_sources(text::Fields& fields, const Citations* inherited,
                                     std::string_view what, const Reading& reading);

/// `KEY: { value: …, source: … }`, the value of this dimension in its base unit; none if the key is
/// absent or wrong.
[[nodiscard]] std::optional<Sourced> read_sourced(text::Fields& fields, std::string_view key,
                                                  const quantity::Dimension& dimension,
                                                  const Citations& inherited,
                                                  const Reading& reading);

/// Like read_sourced for a share, which must not exceed the whole.
[[nodiscard]] std::optional<Sourced> read_sourced_share(text::Fields& fields, std::string_view key,
                                                        const Citations& inherited,
                                                        const Reading& reading);

/// The position of a word in a fixed list (folded); reported with the nearest if it is not in it.
/// `kind` is for the sentence: "a form".
[[nodiscard]] std::optional<std::size_t> read_choice(const text::Node& node,
                                                     std::span<const std::string_view> words,
                                                     std::string_view kind, const Reading& reading);

/// `roles`, each with what it implies, and `marks`.
[[nodiscard]] Roles read_roles(text::Fields& fields, const Reading& reading);
/// `cas`: one or several CAS numbers whose check digits are right.
[[nodiscard]] std::vector<std::string> read_cas(text::Fields& fields, const Reading& reading);
/// `colour index`: one or several numbers.
[[nodiscard]] std::vector<std::uint32_t> read_colour_indices(text::Fields& fields,
                                                             const Reading& reading);
/// `market`: one or several of the markets that a formula can name.
[[nodiscard]] std::vector<std::string> read_markets(text::Fields& fields, const Reading& reading);
/// Reports an id that is not made of lower case letters, digits and single hyphens.
void check_id(const text::Node* node, const Reading& reading);
/// Checks a CAS number; reports it where it is wrong.
[[nodiscard]] bool check_cas(const text::Node& node, const Reading& reading);

}  // namespace sudsmark::catalogue
