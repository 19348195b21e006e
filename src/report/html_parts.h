// The parts of a formula's page. html.cpp puts them together.
#pragma once

#include <string>

#include <sudsmark/results.h>

#include "front/parts.h"
#include "report/markup.h"
#include "report/source_register.h"
#include "report/svg_scale.h"

namespace sudsmark::report {

/// What every part writes with.
struct Sheet {
  Markup& page;
  const front::Parts& parts;
  const FormulaResult& formula;
  const SourceRegister& sources;
  std::string prefix;  ///< of ids, so that several formulas share a page: "f1-"
  int level = 2;       ///< of the headings of sections
};

/// Opens a section with its heading; the caller closes it twice (its body, and itself).
void open_section(const Sheet& sheet, const std::string& id, std::string_view title);
void heading(const Sheet& sheet, std::string_view words);
void close_section(const Sheet& sheet);

/// The mark of a verdict: a shape, never a colour alone; the words stand beside it.
enum class Mark { broken, noted, perhaps, unknown, kept, allowed, outside };
void draw_mark(Markup& page, Mark mark);
/// How loud the picture beside a mark is.
[[nodiscard]] Tone tone_of(Mark mark);

/// "[2, 5]" as links to the list of sources; nothing for none.
void write_references(const Sheet& sheet, const std::vector<SourceNote>& notes);

/// How many verdicts there are of each kind, with their marks.
void write_tally(Markup& page, const FormulaResult& formula);

void write_head(const Sheet& sheet);         ///< name, particulars, verdict in words, tally
void write_broken(const Sheet& sheet);       ///< what must or should change
void write_noted(const Sheet& sheet);        ///< what breaks a rule and is only worth knowing
void write_perhaps(const Sheet& sheet);      ///< what straddles its limit
void write_undecided(const Sheet& sheet);    ///< what is not known, and which paper would decide it
void write_set_aside(const Sheet& sheet);    ///< allowed findings, limits from memory, notes
void write_limits(const Sheet& sheet);       ///< every limit with its margin
void write_bath(const Sheet& sheet);         ///< pH against gas left and dose
void write_workshop(const Sheet& sheet);     ///< dust and weighings
void write_portions(const Sheet& sheet);     ///< side by side
void write_composition(const Sheet& sheet);  ///< pictures and tables
void write_measures(const Sheet& sheet);     ///< how each figure came about
void write_sources(const Sheet& sheet);
void write_rest(const Sheet& sheet);  ///< rules that were kept or do not apply, by title

}  // namespace sudsmark::report
