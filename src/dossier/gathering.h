// What the parts of the dossier share: what they look at, and where they write.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "dossier/dossier.h"
#include "measures/registry.h"

namespace sudsmark::dossier {

struct Gathering {
  const blend::Blend& blend;
  const FormulaResult& checked;
  const DossierAsk& ask;
  const measures::View& whole;
  Dossier& out;

  [[nodiscard]] DossierHeading& heading(int number) const {
    return out.part_a[static_cast<std::size_t>(number - 1)];
  }
  void entry(int number, std::string what, std::string words,
             std::vector<SourceNote> sources = {}) const {
    heading(number).entries.push_back({std::move(what), std::move(words), std::move(sources)});
  }
  void question(DossierQuestion question) const { out.questions.push_back(std::move(question)); }
  /// A measure of the product; null if it was not asked for.
  [[nodiscard]] const MeasureResult* measure(std::string_view name) const;
  /// Checks that wait for something whose name holds these words.
  [[nodiscard]] std::size_t waiting_for(std::string_view words) const;
  [[nodiscard]] std::vector<SourceNote> sources(const catalogue::Row& row) const;
};

/// A figure as a cell, in a unit.
[[nodiscard]] DossierCell cell(const quantity::Range& base, std::string_view unit);
[[nodiscard]] DossierCell cell(const Figure& figure);

void add_composition(const Gathering& to);   ///< heading 1
void add_physics(const Gathering& to);       ///< heading 2
void add_microbiology(const Gathering& to);  ///< heading 3
void add_traces(const Gathering& to);        ///< heading 4
void add_use(const Gathering& to);           ///< heading 5
void add_exposure(const Gathering& to);      ///< headings 6 and 7
void add_toxicology(const Gathering& to);    ///< heading 8
void add_records(const Gathering& to);       ///< headings 9 and 10
/// Questions out of the table, the papers and what the checks leave open; then the order.
void add_questions(const Gathering& to);

}  // namespace sudsmark::dossier
