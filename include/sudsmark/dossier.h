// The dossier: what a safety assessor asks a maker for, by the headings of part A of Annex I to
// Regulation (EC) No 1223/2009.
//
//     sudsmark::CheckOptions options;
//     sudsmark::fill(sudsmark::find_report(sudsmark::Command::dossier, "text")->wants, options);
//     const auto run = sudsmark::check({"harbour.formula", text}, rulesets, options);
//     for (const auto& question : run.formulas.front().dossier->questions) { ... }
//
// It gathers and asks; it assesses nothing. Part B of the report is the assessor's, and stays empty.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/figure.h>

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
  std::vector<DossierHeading> part_a;      ///< ten, in the order of the annex
  std::vector<DossierQuestion> questions;  ///< those that decide most first
  std::string part_b;                      ///< why it is empty
};

}  // namespace sudsmark
