// The register of reports: one row for each command and format. Every report is the file of its
// name in the folder of its command.
#include <algorithm>
#include <array>
#include <memory>

#include <sudsmark/report.h>

#include "report/run_report.h"

namespace sudsmark {
namespace report {

/// What is known of the outcome's kind, of the rules in force, and of how it is to look.
template <class Kind>
using Sink = std::string(const Kind&, const Rulesets&, const ReportOptions&);

/// The same of a run that leaves formula by formula.
using Beginning = std::unique_ptr<RunReport>(const Rulesets&, const ReportOptions&);

/// The page that leads to a page of each formula.
using Leading = std::unique_ptr<Overview>(const Rulesets&, const ReportOptions&);

Beginning check_text;
Beginning check_lines;
Beginning check_json;
Beginning check_json_lines;
Beginning check_sarif;
Sink<RunResult> check_html;
Leading check_html_overview;
Sink<Comparison> compare_text;
Sink<Comparison> compare_lines;
Sink<Comparison> compare_json;
Sink<Comparison> compare_html;
Sink<RunResult> measure_text;
Sink<RunResult> measure_json;
Sink<RunResult> measure_html;
Sink<RunResult> measure_csv;
Leading measure_html_overview;
Sink<RunResult> sheet_text;
Sink<RunResult> sheet_html;
Leading sheet_html_overview;
Sink<RunResult> label_text;
Sink<RunResult> label_json;
Sink<RunResult> label_html;
Leading label_html_overview;
Sink<Dossier> dossier_text;
Sink<Dossier> dossier_json;
Sink<Dossier> dossier_html;
Sink<Suggestion> suggest_text;
Sink<Suggestion> suggest_json;
Sink<Suggestion> suggest_html;
Sink<Swaps> swap_text;
Sink<Swaps> swap_json;
Sink<Swaps> swap_html;
Sink<Leeway> leeway_text;
Sink<Leeway> leeway_json;
Sink<Leeway> leeway_html;
Sink<LeewayMap> leeway_map_text;
Sink<LeewayMap> leeway_map_json;
Sink<LeewayMap> leeway_map_html;
template <class Kind>
using PageSink = std::vector<ReportPage>(const Kind&, const Rulesets&, const ReportOptions&);

Sink<Topic> explain_text;
Sink<Topic> explain_json;
Sink<Topic> explain_html;
PageSink<Topic> explain_pages;
Sink<Rulesets> rules_text;
Sink<Handout> drill_text;
Sink<Handout> drill_html;
PageSink<Handout> drill_pages;

namespace {

template <class Kind>
Kind of_sink(Sink<Kind>& sink);

/// A sink of one kind of outcome, as the register calls all of them.
template <auto& sink>
std::string write(const Outcome& outcome, const Rulesets& rulesets, const ReportOptions& options) {
  using Kind = decltype(of_sink(sink));
  return sink(*std::get<const Kind*>(outcome), rulesets, options);
}

template <class Kind>
Kind of_pages(PageSink<Kind>& sink);

template <auto& sink>
std::vector<ReportPage> write_all(const Outcome& outcome, const Rulesets& rulesets,
                                  const ReportOptions& options) {
  using Kind = decltype(of_pages(sink));
  return sink(*std::get<const Kind*>(outcome), rulesets, options);
}

/// The whole of a report that could have left formula by formula.
template <auto& begin>
std::string write_begun(const Outcome& outcome, const Rulesets& rulesets,
                        const ReportOptions& options) {
  return written_whole(*begin(rulesets, options), *std::get<const RunResult*>(outcome));
}

constexpr bool folds = true;

constexpr Details to_read{.verdicts = Verdicts::to_read, .lines = true};
constexpr Details kept_by_name{.verdicts = Verdicts::kept, .measures = true};
constexpr Details page{
    .verdicts = Verdicts::in_full, .measures = true, .curves = true, .particulars = true};
constexpr Details both_sides{.verdicts = Verdicts::in_full, .measures = true, .particulars = true};

// word, wants, wants more if verbose, folds, write, begin_overview
constexpr std::array check_reports{
    // it keeps to the columns it is told by itself
    Report{"text", to_read, Verdicts::in_full, !folds, write_begun<check_text>},
    Report{"lines", to_read, Verdicts::in_full, !folds, write_begun<check_lines>},
    Report{"json", kept_by_name, Verdicts::in_full, !folds, write_begun<check_json>},
    Report{"json-lines", kept_by_name, Verdicts::in_full, !folds, write_begun<check_json_lines>},
    Report{"sarif",
           {.verdicts = Verdicts::all, .lines = true},
           Verdicts::in_full,
           !folds,
           write_begun<check_sarif>},
    Report{"html", page, {}, !folds, write<check_html>, check_html_overview}};

/// Those of `check` that leave formula by formula.
struct Begun {
  std::string_view word;
  Beginning* begin;
};
constexpr std::array begun_reports{Begun{"text", check_text}, Begun{"lines", check_lines},
                                   Begun{"json", check_json}, Begun{"json-lines", check_json_lines},
                                   Begun{"sarif", check_sarif}};

constexpr std::array compare_reports{Report{"text", both_sides, {}, folds, write<compare_text>},
                                     Report{"lines", both_sides, {}, !folds, write<compare_lines>},
                                     Report{"json", both_sides, {}, !folds, write<compare_json>},
                                     Report{"html", both_sides, {}, !folds, write<compare_html>}};

constexpr std::array measure_reports{
    Report{"text", {.measures = true}, {}, folds, write<measure_text>},
    Report{"json", {.measures = true, .curves = true}, {}, !folds, write<measure_json>},
    Report{"csv", {.measures = true}, {}, !folds, write<measure_csv>},
    Report{"html",
           {.measures = true, .particulars = true},
           {},
           !folds,
           write<measure_html>,
           measure_html_overview}};

constexpr std::array sheet_reports{
    Report{"text", {.sheet = true}, {}, folds, write<sheet_text>},
    Report{"html", {.sheet = true}, {}, !folds, write<sheet_html>, sheet_html_overview}};

constexpr std::array label_reports{
    Report{"text", {.labels = true}, {}, folds, write<label_text>},
    Report{"json", {.labels = true}, {}, !folds, write<label_json>},
    Report{"html", {.labels = true}, {}, !folds, write<label_html>, label_html_overview}};

constexpr std::array dossier_reports{Report{"text", {}, {}, folds, write<dossier_text>},
                                     Report{"json", {}, {}, !folds, write<dossier_json>},
                                     Report{"html", {}, {}, !folds, write<dossier_html>}};

constexpr std::array suggest_reports{Report{"text", both_sides, {}, folds, write<suggest_text>},
                                     Report{"json", both_sides, {}, !folds, write<suggest_json>},
                                     Report{"html", both_sides, {}, !folds, write<suggest_html>}};

constexpr std::array swap_reports{Report{"text", both_sides, {}, folds, write<swap_text>},
                                  Report{"json", both_sides, {}, !folds, write<swap_json>},
                                  Report{"html", both_sides, {}, !folds, write<swap_html>}};

constexpr std::array leeway_reports{Report{"text", {}, {}, folds, write<leeway_text>},
                                    Report{"json", {}, {}, !folds, write<leeway_json>},
                                    Report{"html", {}, {}, !folds, write<leeway_html>}};

constexpr std::array leeway_map_reports{Report{"text", {}, {}, folds, write<leeway_map_text>},
                                        Report{"json", {}, {}, !folds, write<leeway_map_json>},
                                        Report{"html", {}, {}, !folds, write<leeway_map_html>}};

constexpr std::array explain_reports{
    Report{"text", {}, {}, folds, write<explain_text>},
    Report{"json", {}, {}, !folds, write<explain_json>},
    Report{"html", {}, {}, !folds, write<explain_html>, nullptr, write_all<explain_pages>}};
constexpr std::array rules_reports{Report{"text", {}, {}, folds, write<rules_text>}};
constexpr std::array drill_reports{
    Report{"text", {}, {}, folds, write<drill_text>},
    Report{"html", {}, {}, !folds, write<drill_html>, nullptr, write_all<drill_pages>}};

}  // namespace
}  // namespace report

std::span<const Report> reports(Command command) {
  switch (command) {
    case Command::check:
      return report::check_reports;
    case Command::compare:
      return report::compare_reports;
    case Command::measure:
      return report::measure_reports;
    case Command::sheet:
      return report::sheet_reports;
    case Command::label:
      return report::label_reports;
    case Command::dossier:
      return report::dossier_reports;
    case Command::suggest:
      return report::suggest_reports;
    case Command::swap:
      return report::swap_reports;
    case Command::leeway:
      return report::leeway_reports;
    case Command::leeway_map:
      return report::leeway_map_reports;
    case Command::explain:
      return report::explain_reports;
    case Command::rules:
      return report::rules_reports;
    case Command::drill:
      break;
  }
  return report::drill_reports;
}

std::unique_ptr<RunReport> begin_report(const Report& report, const Rulesets& rulesets,
                                        const ReportOptions& options) {
  if (&report != find_report(Command::check, report.word)) return nullptr;
  for (const report::Begun& one : report::begun_reports) {
    if (one.word == report.word) return one.begin(rulesets, options);
  }
  return nullptr;
}

const Report* find_report(Command command, std::string_view word) {
  for (const Report& one : reports(command)) {
    if (one.word == word) return &one;
  }
  return nullptr;
}

}  // namespace sudsmark
