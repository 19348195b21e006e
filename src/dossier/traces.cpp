// Heading 4: traces and the pack.
#include "dossier/traces.h"

#include <algorithm>

#include "dossier/gathering.h"
#include "label/rows.h"
#include "quantity/number.h"
#include "rules/deciders.h"
#include "wording/citations.h"
#include "wording/words.h"

namespace sudsmark::dossier {
namespace {

using quantity::Range;

constexpr std::string_view table_name = "trace-limits";

measures::View whole_of(const blend::Blend& blend, blend::MissingTable& missing) {
  return {&blend, &blend.whole, nullptr, &missing, nullptr};
}

std::string ppm(const Range& share) {
  return quantity::printed(share, *quantity::find_unit("ppm"));
}

void keep(std::vector<std::string>& list, const std::string& word) {
  if (std::find(list.begin(), list.end(), word) == list.end()) list.push_back(word);
}

}  // namespace

std::vector<TraceOf> traces_of(const blend::Blend& blend, const DossierAsk& ask) {
  std::vector<TraceOf> out;
  const catalogue::Table* table = blend.catalogue->find_table(table_name);
  if (table == nullptr) return out;
  blend::MissingTable missing;
  const measures::View view = whole_of(blend, missing);
  for (const std::string& market : ask.markets) {
    const label::LabelAsk of{market, ask.on, blend.counted_from(market, ask.on)};
    for (const catalogue::Row* row : label::rows_for(blend, table_name, of)) {
      measures::TraceSum sum = measures::trace_sum(view, *table, *row);
      if (sum.stated.empty() && sum.silent.empty()) continue;
      out.push_back({market, row, std::move(sum)});
    }
  }
  return out;
}

std::vector<SilentTraces> silent_traces(const std::vector<TraceOf>& traces) {
  std::vector<SilentTraces> out;
  for (const TraceOf& one : traces) {
    if (one.sum.silent.empty()) continue;
    const auto known = std::find_if(out.begin(), out.end(), [&](const SilentTraces& silent) {
      return silent.materials == one.sum.silent;
    });
    if (known == out.end()) {
      out.push_back({{one.row->name}, one.sum.silent, 1});
    } else {
      keep(known->traces, one.row->name);
      ++known->rows;
    }
  }
  return out;
}

std::vector<TraceFault> trace_faults(const blend::Blend& blend, const rules::Ruleset& ruleset,
                                     const DossierAsk& ask) {
  std::vector<TraceFault> out;
  const auto legal = ruleset.find_rule("trace-over-legal-limit");
  const auto advised = ruleset.find_rule("trace-over-guidance");
  const auto silent = ruleset.find_rule("traces-not-stated");
  const std::vector<TraceOf> traces = traces_of(blend, ask);
  for (const TraceOf& one : traces) {
    const bool law = label::word_of(blend, table_name, *one.row, "weight") == "law";
    const auto rule = law ? legal : advised;
    const Range limit = label::figure_of(blend, table_name, *one.row, "limit");
    if (!rule || !limit.known() || one.sum.stated.empty()) continue;
    const quantity::Certainty kept = quantity::less_or_equal(
        Range(one.sum.share.low,
              std::max(one.sum.share.low,
                       one.sum.silent.empty() ? one.sum.share.high : one.sum.share.low)),
        limit);
    if (kept == quantity::Certainty::yes) continue;
    const rules::Rule& of = ruleset.rules[*rule];
    const std::string condition = label::word_of(blend, table_name, *one.row, "condition");
    std::string message = rules::case_message(
        of, "",
        {{"trace", one.row->name},
         {"sum", ppm(one.sum.share)},
         {"limit", ppm(limit)},
         {"materials", wording::joined(one.sum.stated)},
         {"entry", one.market + ": " + label::word_of(blend, table_name, *one.row, "entry") +
                       (condition.empty() ? "" : "; " + condition)}});
    out.push_back({*rule, kept == quantity::Certainty::no ? Kind::fail : Kind::review, of.otherwise,
                   std::move(message), one.row->name, one.sum.place, false});
  }
  if (!silent) return out;
  std::string words;
  for (const SilentTraces& one : silent_traces(traces)) {
    words += (words.empty() ? "" : "; ") + wording::joined(one.traces) + " in " +
             wording::joined(one.materials);
  }
  if (!words.empty()) {
    const rules::Rule& of = ruleset.rules[*silent];
    out.push_back({*silent,
                   Kind::open,
                   of.undecided,
                   rules::case_message(of, "", {{"traces", words}}),
                   {},
                   blend.place,
                   true});
  }
  return out;
}

void add_traces(const Gathering& to) {
  const std::vector<TraceOf> traces = traces_of(to.blend, to.ask);
  DossierTable table{"Traces in the product",
                     {"Trace", "Market", "In it", "At most", "Whose figure", "Silent"},
                     {}};
  for (const TraceOf& one : traces) {
    const Range limit = label::figure_of(to.blend, table_name, *one.row, "limit");
    const bool none = one.sum.stated.empty();
    DossierCell sum = none ? DossierCell{"not known"} : cell(one.sum.share, "ppm");
    table.rows.push_back(
        {{one.row->name},
         {one.market},
         std::move(sum),
         limit.known() ? cell(limit, "ppm") : DossierCell{"no figure was found"},
         {label::word_of(to.blend, table_name, *one.row, "entry") + " (" +
          wording::words(wording::notes(one.row->sources_in(one.market), *to.blend.catalogue)) +
          ")"},
         {wording::joined(one.sum.silent)}});
  }
  if (!table.rows.empty()) to.heading(4).tables.push_back(std::move(table));
  for (const SilentTraces& one : silent_traces(traces)) {
    to.question({4, Answerer::supplier,
                 "What does a certificate of analysis say of " + wording::joined(one.traces) +
                     " in this, lot by lot?",
                 "State it as `traces` of the material, e.g. `traces lead 2 ppm`.", one.materials,
                 one.rows});
  }
  const MeasureResult* freed = to.measure("formaldehyde.freed");
  if (freed != nullptr && freed->figure.high.value_or(1) > 0) {
    to.entry(4, "formaldehyde",
             wording::printed(freed->figure) +
                 " can be freed at most, by the formulas of its preservatives. " + freed->from);
    to.question(
        {4, Answerer::laboratory, "How much free formaldehyde does the product hold, measured?",
         "The sum by formulas is an upper bound; over 10 ppm the label says that it releases "
         "formaldehyde."});
  }
  to.entry(4, "pack", "the formula says nothing of it: see the questions.");
}

}  // namespace sudsmark::dossier
