// The parts of a formula's check sheet. html.cpp puts them together.
#pragma once

#include "report/formula_page.h"
#include "report/verdict_mark.h"

namespace sudsmark::report {

void write_head(const FormulaPage& view);     ///< name, particulars, verdict in words, tally
void write_strip(const FormulaPage& view);    ///< the limits that a maker knows by name
void write_broken(const FormulaPage& view);   ///< what must or should change
void write_noted(const FormulaPage& view);    ///< what breaks a rule and is only worth knowing
void write_perhaps(const FormulaPage& view);  ///< what straddles its limit
void write_undecided(
    const FormulaPage& view);  ///< what is not known, and which paper would decide it
void write_set_aside(const FormulaPage& view);  ///< allowed findings, limits from memory, notes
void write_kept(const FormulaPage& view);       ///< by subject
void write_figures(const FormulaPage& view);    ///< how each figure came about
void write_bath(const FormulaPage& view);       ///< pH against gas left and dose
void write_workshop(const FormulaPage& view);   ///< dust and weighings
void write_rest(const FormulaPage& view);       ///< rules that do not apply, by title

/// How many verdicts there are of each kind, with their marks.
void write_tally(Markup& page, const FormulaResult& formula);

}  // namespace sudsmark::report
