// What pages of one formula share: its sections, references to its sources, its tables.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/results.h>

#include "front/parts.h"
#include "report/markup.h"
#include "report/measure_groups.h"
#include "report/source_register.h"

namespace sudsmark::report {

/// A section, for the list of contents.
struct SectionName {
  std::string id;
  std::string title;
};

/// What every part writes with.
struct FormulaPage {
  Markup& page;
  const front::Parts& parts;
  const FormulaResult& formula;
  const SourceRegister& sources;
  std::string prefix;  ///< of ids, so that several formulas share a page: "f1-"
  int level = 2;       ///< of the headings of sections
  std::vector<SectionName>* contents = nullptr;  ///< takes each section that is opened
};

/// The rule of a finding; null: what is found is no matter of a ruleset.
[[nodiscard]] const rules::Rule* rule_of(const FormulaPage& view, const Finding& finding);

/// Opens a section with its heading; close_section closes it.
void open_section(const FormulaPage& view, const std::string& id, std::string_view title);
void close_section(const FormulaPage& view);

/// "[2, 5]" as links to the list of sources; nothing for none.
void write_references(const FormulaPage& view, const std::vector<SourceNote>& notes);

/// The formula's name as the heading of all sections.
void write_name(const FormulaPage& view);
/// The path of its file.
void write_file(const FormulaPage& view);
/// What it says of itself.
void write_particulars(const FormulaPage& view);

/// Links to the sections.
void write_contents(const FormulaPage& view, const std::vector<SectionName>& contents);

void write_portions(const FormulaPage& view);     ///< side by side
void write_composition(const FormulaPage& view);  ///< pictures and tables
/// How each figure of a subject came about.
void write_measures(const FormulaPage& view, const MeasureGroup& group);
void write_sources(const FormulaPage& view);

}  // namespace sudsmark::report
