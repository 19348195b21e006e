// Heading 4: traces and the pack.
#include "dossier/traces.h"

#include <algorithm>
#include <optional>

#include "dossier/gathering.h"
#include "label/rows.h"
#include "quantity/number.h"
#include "rules/deciders.h"
#include "wording/citations.h"
#include "wording/words.h"

namespace sudsmark::dossier {
namespace {

using quantity::Range;

constexpr std::string_view traces_table = "trace-limits";

measures::View whole_of(const blend::Blend& blend, blend::MissingTable& missing) {
  return {&blend, &blend.whole, nullptr, &missing, nullptr};
}

/// How the weakest of a row's sources was come by, in a word.
std::string standing(const std::vector<SourceNote>& notes) {
  std::string out = "read";
  for (const SourceNote& note : notes) {
    if (note.kind != "published") return note.kind;
    if (note.quoted) out = "as quoted";
  }
  return notes.empty() ? "no source" : out;
}

/// "Annex III 186, read".
DossierCell whose_figure(const Gathering& to, const TraceOf& trace) {
  const auto notes = wording::notes(trace.row->sources_in(trace.market), *to.blend.catalogue);
  return {label::word_of(to.blend, traces_table, *trace.row, "entry") + ", " + standing(notes)};
}

std::string ppm(const Range& share) {
  return quantity::printed(share, "ppm");
}

/// A figure that is not kept, once for all markets that have it.
struct Above {
  std::uint32_t rule = 0;
  const TraceOf* trace = nullptr;
  Range limit;
  std::vector<std::string> markets = {};
  bool certain = false;
};

Above& of_figure(std::vector<Above>& all, std::uint32_t rule, const TraceOf& trace,
                 const Range& limit) {
  const auto known = std::find_if(all.begin(), all.end(), [&](const Above& one) {
    return one.rule == rule && one.trace->row->name == trace.row->name && one.limit == limit;
  });
  if (known != all.end()) return *known;
  all.push_back({rule, &trace, limit});
  return all.back();
}

void keep(std::vector<std::string>& list, const std::string& word) {
  if (std::find(list.begin(), list.end(), word) == list.end()) list.push_back(word);
}

}  // namespace

std::vector<TraceOf> traces_of(const blend::Blend& blend, const DossierAsk& ask) {
  std::vector<TraceOf> out;
  const catalogue::Table* table = blend.catalogue->find_table(traces_table);
  if (table == nullptr) return out;
  blend::MissingTable missing;
  const measures::View view = whole_of(blend, missing);
  std::vector<std::optional<measures::TraceSum>> sums(table->rows.size());
  for (const std::string& market : ask.markets) {
    const label::LabelAsk of{market, ask.on, blend.counted_from(market, ask.on)};
    for (std::size_t at = 0; at < sums.size(); ++at) {
      const catalogue::Row& row = table->rows[at];
      if (!label::holds_for(row, of)) continue;
      std::optional<measures::TraceSum>& sum = sums[at];  // markets share rows
      if (!sum) sum = measures::trace_sum(view, *table, row);
      if (sum->stated.empty() && sum->silent.empty()) continue;
      out.push_back({market, &row, *sum});
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
  std::vector<Above> all;
  for (const TraceOf& one : traces) {
    if (one.sum.stated.empty()) continue;
    const bool law = label::word_of(blend, traces_table, *one.row, "weight") == "law";
    const auto rule = law ? legal : advised;
    const Range limit = label::figure_of(blend, traces_table, *one.row, "limit");
    if (!rule || !limit.known()) continue;
    const quantity::Certainty kept = quantity::less_or_equal(
        Range(one.sum.share.low,
              std::max(one.sum.share.low,
                       one.sum.silent.empty() ? one.sum.share.high : one.sum.share.low)),
        limit);
    if (kept == quantity::Certainty::yes) continue;
    Above& above = of_figure(all, *rule, one, limit);
    above.markets.push_back(one.market);
    above.certain = kept == quantity::Certainty::no;
  }
  for (const Above& one : all) {
    const rules::Rule& of = ruleset.rules[one.rule];
    const catalogue::Row& row = *one.trace->row;
    const std::string condition = label::word_of(blend, traces_table, row, "condition");
    std::string message =
        rules::case_message(of, "",
                            {{"trace", row.name},
                             {"sum", ppm(one.trace->sum.share)},
                             {"limit", ppm(one.limit)},
                             {"materials", wording::joined(one.trace->sum.stated)},
                             {"entry", wording::joined(one.markets) + ": " +
                                           label::word_of(blend, traces_table, row, "entry") +
                                           (condition.empty() ? "" : "; " + condition)}});
    out.push_back({one.rule, one.certain ? Kind::fail : Kind::review, of.otherwise,
                   std::move(message), row.name, one.trace->sum.place, false});
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
  DossierTable table{
      "Traces in the product",
      {"Trace", "Market", "In it", "At most", "Whose figure", "Nothing is stated of"},
      {}};
  for (const TraceOf& one : traces) {
    const Range limit = label::figure_of(to.blend, traces_table, *one.row, "limit");
    const bool none = one.sum.stated.empty();
    std::vector<DossierCell> row{
        {one.row->name},
        {one.market},
        none ? DossierCell{"not known"} : cell(one.sum.share, "ppm"),
        limit.known() ? cell(limit, "ppm") : DossierCell{"no figure was found"},
        limit.known() ? whose_figure(to, one) : DossierCell{},
        {wording::joined(one.sum.silent)}};
    const auto same = [&](const std::vector<DossierCell>& other) {
      return other[0].words == row[0].words && other[3].words == row[3].words &&
             other[4].words == row[4].words;
    };
    const auto known = std::find_if(table.rows.begin(), table.rows.end(), same);
    if (known == table.rows.end()) {
      table.rows.push_back(std::move(row));
    } else {
      (*known)[1].words += ", " + one.market;
    }
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
