// The verdicts of a page: what is broken, what may be, what is not known, what was set aside.
#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "report/check/html_parts.h"
#include "report/digest.h"
#include "report/prose.h"
#include "report/subject_words.h"
#include "report/svg_scale.h"
#include "report/verdict_words.h"
#include "wording/margin.h"
#include "wording/words.h"

namespace sudsmark::report {
using namespace wording;

namespace {

std::string subject(const Finding& finding) {
  return subject_prefix(finding.subject_kind, finding.subject);
}

std::string said_of(const Finding& finding) {
  return subject(finding) + std::string(message_under_heading(finding));
}

void write_where(const FormulaPage& view, const Finding& finding) {
  Markup& page = view.page;
  page.open("p", {{"class", "where"}});
  page.element("code", finding.rule);
  if (finding.line > 0) {
    page.text(", ");
    if (finding.file != view.formula.file) {
      page.name(finding.file);
      page.text(" ");
    }
    page.text("line " + std::to_string(finding.line));
  }
  if (!finding.sources.empty()) {
    std::vector<std::string> kinds;
    for (const SourceNote& note : finding.sources) {
      if (std::find(kinds.begin(), kinds.end(), note.kind) == kinds.end()) {
        kinds.push_back(note.kind);
      }
    }
    page.text(", " + joined(kinds) + " ");
    write_references(view, finding.sources);
  }
  if (finding.standing == Standing::fresh) page.text(", new since the baseline");
  if (finding.standing == Standing::unchanged) page.text(", known from the baseline");
  page.close();
}

/// Findings of one rule, which are told together: the first in full, the others by what they say.
void write_findings(const FormulaPage& view, const Findings& of, VerdictMark mark,
                    std::string_view word, bool at_length) {
  Markup& page = view.page;
  const Finding& finding = *of.front();
  page.open("li", {{"class", "finding"}});
  page.open("p", {{"class", "what"}});
  draw_mark(page, mark);
  const std::string said = said_of(finding);
  if (!word.empty()) {
    page.element("b", word);
    page.text(": ");
  }
  write_prose(page, word.empty() ? capital(said) : said);
  page.close();
  // beside none at all a figure needs no picture
  if (!nothing_to_show(finding) && finding.limit->high != 0.0) {
    const Margin margin = wording::margin(*finding.measured, *finding.limit);
    draw_scale(page, *finding.measured, *finding.limit,
               shown_beside(*finding.measured, *finding.limit) + ": " + margin.words,
               tone_of(mark));
    page.element("small", margin.words);
  }
  if (of.size() > 1) {
    page.open("ul", {{"class", "decides"}});
    for (std::size_t at = 1; at < of.size(); ++at) {
      const Finding& other = *of[at];
      page.open("li");
      write_prose(page, word.empty() ? capital(said_of(other)) : said_of(other));
      if (other.line > 0) page.text(", line " + std::to_string(other.line));
      page.text(" ");
      write_references(view, other.sources);
      page.close();
    }
    page.close();
  }
  if (at_length) {
    if (!finding.remedy.empty()) {
      page.open("p", {{"class", "remedy"}});
      page.element("b", finding.level > Level::note ? "What to change." : "What to do.");
      page.text(" ");
      write_prose(page, finding.remedy);
      page.close();
    }
    const rules::Rule* rule = rule_of(view, finding);
    if (rule != nullptr && !rule->words->why.empty()) {
      prose_element(page, "p", {{"class", "why"}}, rule->words->why);
    }
  }
  write_where(view, finding);
  page.close();
}

/// One after the other, those of one rule and level in one place.
template <typename Word>
void write_list(const FormulaPage& view, const Findings& list, VerdictMark mark, const Word& word,
                bool at_length) {
  std::vector<Findings> groups;
  for (const Finding* finding : list) {
    const auto same = std::find_if(groups.begin(), groups.end(), [&](const Findings& group) {
      return group.front()->rule == finding->rule && group.front()->level == finding->level;
    });
    if (same == groups.end()) {
      groups.push_back({finding});
    } else {
      same->push_back(finding);
    }
  }
  view.page.open("ul", {{"class", "findings"}});
  for (const Findings& group : groups) {
    write_findings(view, group, mark, word(*group.front()), at_length);
  }
  view.page.close();
}

template <typename Test>
Findings findings(const FormulaPage& view, const Test& test) {
  Findings out;
  for (const Finding& finding : view.formula.findings) {
    if (test(finding)) out.push_back(&finding);
  }
  const RuleIndex rules(view.parts);
  std::stable_sort(out.begin(), out.end(), [&](const Finding* a, const Finding* b) {
    return a->level != b->level ? a->level > b->level : weighs_more(*a, *b, rules);
  });
  return out;
}

}  // namespace

void write_broken(const FormulaPage& view) {
  const Findings list = findings(view, [](const Finding& finding) {
    return finding.kind == Kind::fail && finding.level > Level::note && !finding.allowed;
  });
  if (list.empty()) return;
  open_section(view, "broken", "What must or should change");
  write_list(
      view, list, VerdictMark::broken,
      [](const Finding& finding) {
        return finding.level == Level::error ? "Must change" : "Should change";
      },
      true);
  close_section(view);
}

void write_noted(const FormulaPage& view) {
  const Findings list = findings(view, [](const Finding& finding) {
    return finding.kind == Kind::fail && finding.level <= Level::note && !finding.allowed;
  });
  if (list.empty()) return;
  open_section(view, "noted", "Worth knowing");
  write_list(
      view, list, VerdictMark::noted, [](const Finding&) { return std::string_view(); }, true);
  close_section(view);
}

void write_perhaps(const FormulaPage& view) {
  const Findings list = findings(view, [](const Finding& finding) {
    return finding.kind == Kind::review && !finding.met_from_memory && !finding.allowed;
  });
  if (list.empty()) return;
  open_section(view, "perhaps", "What depends on true figures");
  view.page.element("p",
                    "A range reaches over the limit: which side the true figure lies on, the "
                    "supplier or a weighing can tell.");
  write_list(
      view, list, VerdictMark::perhaps,
      [](const Finding& finding) {
        return finding.level == Level::error     ? "Depends, and perhaps must change"
               : finding.level == Level::warning ? "Depends, and perhaps should change"
                                                 : "Depends, and perhaps worth knowing";
      },
      true);
  close_section(view);
}

namespace {

/// The rules that something would decide, each once with all that it is asked about.
void write_decided(const FormulaPage& view, const Findings& list) {
  Markup& page = view.page;
  std::vector<std::string> seen;
  page.open("ul", {{"class", "decides"}});
  for (const Finding* finding : list) {
    if (std::find(seen.begin(), seen.end(), finding->rule) != seen.end()) continue;
    seen.push_back(finding->rule);
    const rules::Rule* rule = rule_of(view, *finding);
    std::vector<std::string> subjects;
    std::vector<SourceNote> sources;
    for (const Finding* other : list) {
      if (other->rule != finding->rule) continue;
      sources.insert(sources.end(), other->sources.begin(), other->sources.end());
      const bool known =
          std::find(subjects.begin(), subjects.end(), other->subject) != subjects.end();
      if (!other->subject.empty() && !known) subjects.push_back(other->subject);
    }
    // a scent that declares nothing could hold all that the law knows: a few of it say enough
    constexpr std::size_t most = 8;
    constexpr std::size_t first_of_many = 5;
    const bool many = subjects.size() > most;
    const std::vector<std::string> others(
        subjects.begin() + static_cast<std::ptrdiff_t>(many ? first_of_many : subjects.size()),
        subjects.end());
    subjects.resize(subjects.size() - others.size());
    if (many) subjects.push_back(std::to_string(others.size()) + " more");
    page.open("li");
    write_prose(page, rule == nullptr ? finding->message : rule->words->title);
    if (!subjects.empty()) page.text(": " + joined(subjects));
    page.text(" ");
    page.element("code", finding->rule);
    page.text(" ");
    write_references(view, sources);
    if (many) {
      page.open("details");
      page.element("summary", "the " + std::to_string(others.size()) + " more");
      page.element("p", joined(others));
      page.close();
    }
    page.close();
  }
  page.close();
}

}  // namespace

void write_undecided(const FormulaPage& view) {
  const std::vector<Undecided> list = undecided(view.formula);
  if (list.empty()) return;
  Markup& page = view.page;
  open_section(view, "unknown", "What is not known, and what would decide it");
  page.open("ul", {{"class", "findings"}});
  for (const Undecided& one : list) {
    page.open("li", {{"class", "finding long"}});
    page.open("p", {{"class", "what"}});
    draw_mark(page, VerdictMark::unknown);
    page.element("b", one.level >= Level::warning ? "Find out" : "Worth finding out");
    page.text(" ");
    write_prose(page, one.missing.empty() ? "what decides this" : joined(one.missing));
    page.text(". It would decide:");
    page.close();
    write_decided(view, one.findings);
    page.close();
  }
  page.close();
  close_section(view);
}

void write_set_aside(const FormulaPage& view) {
  Markup& page = view.page;
  const Findings allowed =
      findings(view, [](const Finding& finding) { return finding.allowed.has_value(); });
  const Findings memory = findings(
      view, [](const Finding& finding) { return finding.met_from_memory && !finding.allowed; });
  if (!allowed.empty()) {
    open_section(view, "allowed", "What the maker allows");
    page.open("ul", {{"class", "findings"}});
    for (const Finding* finding : allowed) {
      page.open("li", {{"class", "finding"}});
      page.open("p", {{"class", "what"}});
      draw_mark(page, VerdictMark::allowed);
      page.element("b", "Allowed");
      page.text(" because ");
      page.element("q", *finding->allowed);
      page.close();
      prose_element(page, "p", {{"class", "why"}}, capital(subject(*finding) + finding->message));
      write_where(view, *finding);
      page.close();
    }
    page.close();
    close_section(view);
  }
  if (!memory.empty()) {
    open_section(view, "memory", "Kept, but by a limit from memory");
    page.element("p",
                 "Nobody has looked these limits up. They can warn, and they cannot reassure: "
                 "find the figure before leaning on it.");
    write_list(
        view, memory, VerdictMark::kept, [](const Finding&) { return "Look up"; }, false);
    close_section(view);
  }
  if (!view.formula.notes.empty()) {
    open_section(view, "odd", "Odd, and no error");
    page.open("ul");
    for (const Problem& note : view.formula.notes) {
      prose_element(page, "li", {}, place(note.file, note.line, note.column) + ": " + note.message);
    }
    page.close();
    close_section(view);
  }
}

}  // namespace sudsmark::report
