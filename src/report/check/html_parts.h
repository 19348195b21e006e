// The parts of a formula's page. html.cpp puts them together.
#pragma once

#include <string>

#include <sudsmark/results.h>

#include "front/parts.h"
#include "report/markup.h"
#include "report/source_register.h"
#include "report/verdict_mark.h"

namespace sudsmark::report {

/// What every part writes with.
struct FormulaPage {
  Markup& page;
  const front::Parts& parts;
  const FormulaResult& formula;
  const SourceRegister& sources;
  std::string prefix;  ///< of ids, so that several formulas share a page: "f1-"
  int level = 2;       ///< of the headings of sections
};

/// The rule of a finding; null: what is found is no matter of a ruleset.
[[nodiscard]] const rules::Rule* rule_of(const FormulaPage& view, const Finding& finding);

/// Opens a section with its heading; the caller closes it twice (its body, and itself).
void open_section(const FormulaPage& view, const std::string& id, std::string_view title);
void heading(const FormulaPage& view, std::string_view words);
void close_section(const FormulaPage& view);

/// "[2, 5]" as links to the list of sources; nothing for none.
void write_references(const FormulaPage& view, const std::vector<SourceNote>& notes);

/// How many verdicts there are of each kind, with their marks.
void write_tally(Markup& page, const FormulaResult& formula);

void write_head(const FormulaPage& view);     ///< name, particulars, verdict in words, tally
void write_strip(const FormulaPage& view);    ///< the limits that a maker knows by name
void write_broken(const FormulaPage& view);   ///< what must or should change
void write_noted(const FormulaPage& view);    ///< what breaks a rule and is only worth knowing
void write_perhaps(const FormulaPage& view);  ///< what straddles its limit
void write_undecided(
    const FormulaPage& view);  ///< what is not known, and which paper would decide it
void write_set_aside(const FormulaPage& view);    ///< allowed findings, limits from memory, notes
void write_limits(const FormulaPage& view);       ///< every limit with its margin
void write_bath(const FormulaPage& view);         ///< pH against gas left and dose
void write_workshop(const FormulaPage& view);     ///< dust and weighings
void write_portions(const FormulaPage& view);     ///< side by side
void write_composition(const FormulaPage& view);  ///< pictures and tables
void write_measures(const FormulaPage& view);     ///< how each figure came about
void write_sources(const FormulaPage& view);
void write_rest(const FormulaPage& view);  ///< rules that were kept or do not apply, by title

}  // namespace sudsmark::report
