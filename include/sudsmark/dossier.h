// The dossier: what a safety assessor asks a maker for, by the headings of part A of Annex I to
// Regulation (EC) No 1223/2009.
//
//     const auto made = sudsmark::dossier_for({"harbour.formula", text}, rulesets, {});
//     if (made) for (const auto& question : made->questions) { ... }
//
// It gathers and asks; it assesses nothing. Part B of the report is the assessor's, and stays
// empty.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/check.h>
#include <sudsmark/results.h>
#include <sudsmark/rulesets.h>

namespace sudsmark {

/// Who can answer a question.
enum class Answerer : std::uint8_t { supplier, laboratory, assessor, maker };
[[nodiscard]] std::string_view answerer_word(Answerer who);  ///< "supplier"

/// Something known, under what it is called.
struct DossierEntry {
  std::string what;
  std::string words;
  std::vector<SourceNote> sources = {};
};

/// A cell: words, and the figure where they are one.
struct DossierCell {
  std::string words;
  std::optional<Figure> figure = std::nullopt;
};

struct DossierTable {
  std::string caption;
  std::vector<std::string> columns;
  std::vector<std::vector<DossierCell>> rows;
};

/// One heading of part A.
struct DossierHeading {
  int number = 0;  ///< 1 to 10
  std::string title;
  std::vector<DossierEntry> entries = {};
  std::vector<DossierTable> tables = {};
};

/// A gap, as a question.
struct DossierQuestion {
  int heading = 0;  ///< of part A, under which the answer goes
  Answerer who = Answerer::maker;
  std::string question;
  std::string why = {};
  std::vector<std::string> about = {};  ///< materials; empty: the product
  std::size_t decides = 1;              ///< how many checks or figures wait for the answer
};

struct Dossier {
  FormulaResult checked;  ///< verdicts, measures, particulars and labels, on which it leans
  std::vector<DossierHeading> part_a;      ///< ten, in the order of the annex
  std::vector<DossierQuestion> questions;  ///< those that decide most first
  std::string part_b;                      ///< why it is empty
};

/// Checks a formula and gathers its dossier; what an option asks to fill does not matter. None,
/// with problems, if the formula cannot be read.
[[nodiscard]] Result<Dossier> dossier_for(const FormulaText& formula, const Rulesets& rulesets,
                                          const CheckOptions& options);

}  // namespace sudsmark
