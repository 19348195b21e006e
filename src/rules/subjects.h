// Subjects: what an `each` goes over in one formula.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "rules/figures.h"
#include "rules/ruleset.h"

namespace sudsmark::rules {

/// The subjects of one formula, gathered when a rule first asks for them.
class Subjects {
 public:
  explicit Subjects(const Figures& figures);

  [[nodiscard]] const std::vector<Subject>& of(const Rule& rule);
  /// The line that speaks of a subject.
  [[nodiscard]] Span place(const Subject& subject) const;

 private:
  std::vector<Subject> gather(Each each, std::uint16_t table);
  void gather_rows(std::uint16_t table, std::vector<Subject>& subjects);
  void gather_materials(std::vector<Subject>& subjects);
  void note_substances();
  [[nodiscard]] bool is_there_whole(const catalogue::Row& row) const;

  const Figures& figures_;
  /// By what is gone over; behind those, rows by their table.
  std::vector<std::optional<std::vector<Subject>>> gathered_;
  std::uint32_t count_ = 0;
  bool noted_ = false;
  std::vector<std::uint8_t> declared_;   ///< by substance of the catalogue: it is declared
  std::vector<std::string_view> whole_;  ///< ids of the materials that are there
  bool undeclared_ = false;              ///< some scent may hold more than it says
  Span undeclared_place_;
};

}  // namespace sudsmark::rules
