// The rulesets in use: subjects, authority, edition, rules by id and title.
#include <string>

#include <sudsmark/report.h>

#include "front/parts.h"
#include "wording/code_points.h"
#include "wording/page.h"
#include "wording/words.h"

namespace sudsmark::report {
using wording::Page;

std::string rules_text(const Rulesets& rulesets, const Rulesets&, const ReportOptions& options) {
  const front::Parts& parts = front::parts(rulesets);
  Page page;
  for (std::size_t file = 0; file < parts.ruleset.files.size(); ++file) {
    const rules::RuleFile& of = parts.ruleset.files[file];
    std::string title =
        of.subject + " (" + of.name + ", " + std::string(authority_word(of.authority));
    if (!of.markets.empty()) title += " in " + wording::joined(of.markets);
    if (!of.edition.empty()) title += ", edition " + of.edition;
    page.heading(title + ")");
    for (const rules::Rule& rule : parts.ruleset.rules) {
      if (rule.file != file) continue;
      page.paragraph(rule.id + ": " + rule.words->title, 2);
      if (options.verbose && !rule.words->why.empty()) page.paragraph(rule.words->why, 6);
    }
  }
  page.gap();
  page.paragraph(reminder);
  return options.ascii ? wording::in_ascii(page.text()) : page.text();
}

}  // namespace sudsmark::report
