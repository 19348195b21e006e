// The dossier in words: the questions first, then what is known by heading.
#include <sudsmark/report.h>

#include <string>
#include <vector>

#include "wording/citations.h"
#include "wording/code_points.h"
#include "wording/page.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace {

using wording::Page;

std::string waits(std::size_t decides) {
  return decides > 1 ? " Decides " + std::to_string(decides) + "." : std::string();
}

void write_questions(const Dossier& dossier, Page& page) {
  page.heading("Questions, those that decide most first");
  std::size_t number = 0;
  for (const DossierQuestion& one : dossier.questions) {
    const std::string label = std::to_string(++number) + ". " + std::string(answerer_word(one.who));
    page.entry(label, one.question + waits(one.decides) + " (to heading " +
                          std::to_string(one.heading) + ")");
    if (!one.about.empty()) page.entry("", "of: " + harmless(joined(one.about)));
    if (!one.why.empty()) page.entry("", one.why);
  }
  page.gap();
}

void write_table(const DossierTable& table, Page& page) {
  page.paragraph(table.caption + ":", 2);
  for (const auto& row : table.rows) {
    std::string words;
    for (std::size_t at = 1; at < row.size(); ++at) {
      if (row[at].words.empty()) continue;
      words += (words.empty() ? "" : "; ") + table.columns[at] + " " + row[at].words;
    }
    page.paragraph(harmless(row.front().words) + ": " + harmless(words), 4);
  }
}

void write(const Dossier& dossier, Page& page) {
  page.heading("Dossier of \"" + harmless(dossier.checked.name) + "\", by the law of " +
               dossier.checked.on);
  page.paragraph(
      "For a safety assessor: part A of Annex I to Regulation (EC) No 1223/2009, as far as the "
      "formula and the tables say it, and what has to be asked. It is no safety report.");
  page.gap();
  write_questions(dossier, page);
  for (const DossierHeading& heading : dossier.part_a) {
    page.heading("A " + std::to_string(heading.number) + ". " + heading.title);
    for (const DossierEntry& one : heading.entries) {
      page.entry(harmless(one.what), harmless(one.words));
      if (!one.sources.empty()) page.entry("", "source: " + words(one.sources));
    }
    for (const DossierTable& table : heading.tables) write_table(table, page);
    if (heading.entries.empty() && heading.tables.empty()) {
      page.paragraph("Nothing is known here.", 2);
    }
    page.gap();
  }
  page.heading("B. Safety assessment");
  page.paragraph(dossier.part_b, 2);
  page.gap();
}

}  // namespace

namespace report {

std::string dossier_text(const Dossier& dossier, const Rulesets&, const ReportOptions& options) {
  Page page;
  write(dossier, page);
  page.paragraph(reminder);
  return options.ascii ? wording::in_ascii(page.text()) : page.text();
}

}  // namespace report
}  // namespace sudsmark
