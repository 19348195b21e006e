// The street front's check: a formula's text through all rooms, and what came of it as plain
// values.
#include <sudsmark/check.h>
#include <sudsmark/dossier.h>

#include <algorithm>
#include <iterator>
#include <utility>

#include "blend/blend.h"
#include "blend/same_name.h"
#include "dossier/dossier.h"
#include "dossier/traces.h"
#include "formula/assemble.h"
#include "formula/messages.h"
#include "formula/vocabulary.h"
#include "front/composition.h"
#include "front/curves.h"
#include "front/fingerprint.h"
#include "front/ingredients.h"
#include "front/particulars.h"
#include "front/parts.h"
#include "front/problems.h"
#include "front/today.h"
#include "label/check.h"
#include "label/claims.h"
#include "label/label.h"
#include "measures/registry.h"
#include "measures/weighing_measures.h"
#include "rules/check.h"
#include "rules/questions.h"
#include "text/name.h"
#include "wording/citations.h"
#include "wording/figures.h"
#include "wording/words.h"
#include "worksheet/sheet.h"

namespace sudsmark {
using namespace wording;

namespace {

/// All that one check works with.
class FormulaCheck {
 public:
  /// `options` names a day.
  FormulaCheck(const Rulesets& rulesets, const CheckOptions& options)
      : parts_(front::parts(rulesets)), options_(options), on_(*options.on) {}

  /// `gather`: takes the result in, with the dossier that leans on it.
  RunResult run(const FormulaText& formula, std::optional<Dossier>* gather = nullptr) {
    RunResult run;
    const auto file = sources_.add(formula.path, formula.text);
    const auto blend = mix(file);
    if (!blend || !diagnostics_.empty()) {
      for (const text::Diagnostic& diagnostic : diagnostics_.in_order()) {
        const bool library = diagnostic.message == &formula::messages::library_named;
        if (library && formula.in_folder) {
          ++run.libraries;
          continue;
        }
        run.problems.push_back(front::problem(diagnostic, sources_));
      }
      return run;
    }
    FormulaResult result;
    result.file = formula.path;
    result.name = blend->name;
    result.on = rules::day_words(on_);
    result.filled = {
        options_.verdicts,    options_.verdicts && !options_.only_to_read && !options_.brief,
        options_.measures,    options_.curves,
        options_.particulars, options_.lines,
        options_.sheet,       options_.label};
    for (const text::Diagnostic& note : blend->notes) {
      result.notes.push_back(front::problem(note, sources_));
    }
    mix_own_base(blend->place, result);
    if (options_.verdicts) add_findings(*blend, result);
    if (options_.measures) {
      if (!(options_.brief && options_.verdicts)) {
        wording::add_measures(*blend, parts_.ruleset, result.measures);
      }
      front::add_composition(*blend, result.composition);
    }
    if (options_.sheet || options_.label) {
      FormulaResult asked;
      if (!options_.verdicts) add_findings(*blend, asked);
      result.against_making = against_making(options_.verdicts ? result.findings : asked.findings);
    }
    if (options_.sheet) {
      const wording::Page sheet = worksheet::bench_sheet(*blend, result.against_making);
      result.sheet = sheet.text();
      result.sheet_items = sheet.items();
    }
    if (options_.label) add_labels(*blend, result);
    if (options_.curves) front::add_curves(*blend, result.curves);
    if (options_.particulars) {
      front::add_particulars(*blend, result.particulars);
      front::add_ingredients(*blend, blend->whole, result.ingredients);
      front::add_portions(*blend, result.portions);
      front::add_weighings(*blend, result.weighings);
      front::add_air(*blend, result.air);
    }
    if (gather != nullptr) {
      const dossier::DossierAsk ask{label::label_markets(*blend, options_.markets), on_};
      *gather = dossier::dossier_of(*blend, std::move(result), ask);
      return run;
    }
    run.formulas.push_back(std::move(result));
    return run;
  }

 private:
  /// Why a formula must not be made as it is: what is broken at the level of an error.
  static std::vector<std::string> against_making(const std::vector<Finding>& findings) {
    std::vector<std::string> out;
    for (const Finding& one : findings) {
      const bool broken = one.kind == Kind::fail || one.kind == Kind::review;
      if (!broken || one.level != Level::error || one.allowed) continue;
      const std::string subject = one.subject.empty() ? "" : one.subject + ": ";
      out.push_back("line " + std::to_string(one.line) + ": " + subject + one.message);
    }
    return out;
  }

  /// What rules over a tweak and its base hold the formula against: what the caller gave, or what a
  /// tweak names, which the reading of the formula fills in.
  void ask_for_base(formula::AssembleOptions& reading) {
    if (options_.base) {
      const auto file = sources_.add(options_.base->path, options_.base->text);
      const auto card = formula::assemble(sources_, file, reading, diagnostics_);
      if (card) base_ = mixed(*card, diagnostics_);
    } else if (options_.own_base) {
      reading.base = &own_base_;
    }
  }

  /// What a card makes, sold where it was asked for.
  std::optional<blend::Blend> mixed(const formula::Card& card,
                                    text::Diagnostics& diagnostics) const {
    blend::MixOptions mixing;
    if (options_.rounded) mixing.weighed = measures::as_displayed;
    auto blend = blend::mix(card, parts_.catalogue, diagnostics, mixing);
    if (blend && !options_.markets.empty()) {
      blend->markets.clear();
      for (const std::string& market : options_.markets) blend->markets.push_back({market, {}});
    }
    return blend;
  }

  /// A base that makes nothing by itself may be what the tweak mends: then the tweak is checked,
  /// what it changes is not, and a note says so.
  void mix_own_base(const text::Span& place, FormulaResult& result) {
    if (!own_base_.card) return;
    text::Diagnostics& wrong = own_base_.problems;
    if (wrong.empty()) base_ = mixed(*own_base_.card, wrong);
    if (wrong.empty()) return;
    base_.reset();
    const text::Position position = sources_.position(place);
    Problem note;
    note.file = sources_.path(place);
    note.line = position.line;
    note.column = position.column;
    note.message = "what it changes is not looked at, since its base does not stand by itself: " +
                   text::sentence(wrong.in_order().front());
    result.notes.push_back(std::move(note));
  }

  void add_labels(const blend::Blend& blend, FormulaResult& result) const {
    const auto markets = label::label_markets(blend, options_.markets);
    for (const std::string& market : markets) {
      result.labels.push_back(
          label::label_for(blend, {market, on_, blend.counted_from(market, on_)}));
    }
    if (blend.batch_made) result.batch_made = rules::day_words(blend.batch_made->day);
    if (blend.on_sale_since) result.on_sale_since = rules::day_words(blend.on_sale_since->day);
    label::add_papers(blend, markets, result.papers);
  }

  std::optional<blend::Blend> mix(text::FileIndex file) {
    formula::AssembleOptions reading;
    reading.read = options_.read;
    reading.allow_outside = options_.allow_outside;
    reading.batch = options_.batch;
    reading.same_name = blend::same_name(parts_.catalogue);
    if (options_.verdicts) ask_for_base(reading);
    const auto card = formula::assemble(sources_, file, reading, diagnostics_);
    if (!card || !diagnostics_.empty()) return std::nullopt;
    auto blend = mixed(*card, diagnostics_);
    if (blend) rules::check_allows(parts_.ruleset, *blend, diagnostics_);
    if (blend) bound_questions(*blend);
    return blend;
  }

  /// A formula of so many parts that the verdicts over them would fill the memory is refused.
  void bound_questions(const blend::Blend& blend) {
    std::vector<bool> chosen;
    std::vector<std::string> unknown;
    if (!options_.only.empty() || !options_.without.empty()) {
      chosen = rules::chosen_rules(parts_.ruleset, options_.only, options_.without, unknown);
    }
    rules::check_questions(parts_.ruleset, blend, chosen, diagnostics_);
  }

  void add_findings(const blend::Blend& blend, FormulaResult& result) {
    blend::MissingTable missing;
    rules::EvaluateOptions asking;
    asking.on = on_;
    asking.markets = options_.markets;
    std::vector<std::string> unknown;
    if (!options_.only.empty() || !options_.without.empty()) {
      asking.chosen = rules::chosen_rules(parts_.ruleset, options_.only, options_.without, unknown);
    }
    asking.passes_in_full = options_.passes_in_full;
    asking.base = base_ ? &*base_ : nullptr;
    std::vector<quantity::Range> measured;
    if (options_.brief && options_.measures) asking.measures = &measured;
    rules::LeftOut left_out;
    left_out.passes_too = options_.only_to_read;
    if (options_.only_to_read || options_.brief) asking.left_out = &left_out;
    std::vector<rules::Verdict> verdicts = rules::evaluate(parts_.ruleset, blend, missing, asking);
    constexpr std::size_t beside_expressions = 16;  // faults of label, claims and traces, or so
    result.findings.reserve(verdicts.size() + beside_expressions);
    for (rules::Verdict& verdict : verdicts) {
      fill(std::move(verdict), missing, result.findings.emplace_back());
    }
    wording::add_figures(parts_.ruleset, measured, result.measures);
    for (std::size_t at = 0; at < left_out.alike.size(); ++at) {
      result.findings[at].alike_left_out = left_out.alike[at];
    }
    result.passes_left_out = left_out.passes;
    result.not_applicable_left_out = left_out.not_applicable;
    add_label_findings(blend, asking.chosen, result.findings);
    add_trace_findings(blend, asking.chosen, result.findings);
    if (options_.lines && !options_.only_to_read) front::add_fingerprints(result.findings);
  }

  /// What no expression decides: a fault of a label, or of traces. Takes its words.
  template <class Fault>
  Finding finding_of(Fault& fault, const char* subject_kind) const {
    const rules::Rule& rule = parts_.ruleset.rules[fault.rule];
    Finding out;
    out.rule = rule.id;
    out.kind = fault.kind;
    out.level = fault.level;
    out.message = std::move(fault.message);
    if (!fault.subject.empty()) out.subject_kind = subject_kind;
    out.subject = std::move(fault.subject);
    if (!options_.only_to_read) {
      out.sources = wording::notes(rule.sources, parts_.catalogue);
      out.remedy = rule.words->remedy;
    }
    add_place(fault.place, out);
    return out;
  }

  /// What the label section has wrong, and what the name and the claims say, of the rules that are
  /// asked: `chosen`, or all if empty.
  void add_label_findings(const blend::Blend& blend, const std::vector<bool>& chosen,
                          std::vector<Finding>& findings) const {
    const auto markets = label::label_markets(blend, options_.markets);
    const rules::Ruleset& ruleset = parts_.ruleset;
    auto faults = label::label_faults(blend, ruleset, markets, on_);
    for (label::LabelFault& fault : label::claim_faults(blend, ruleset)) {
      faults.push_back(std::move(fault));
    }
    for (label::LabelFault& fault : faults) {
      if (!chosen.empty() && !chosen[fault.rule]) continue;
      Finding out = finding_of(fault, "label");
      out.spelling = std::move(fault.spelling);
      allow(blend, out);
      findings.push_back(std::move(out));
    }
  }

  /// Traces above a market's figure, and those that nobody states, of the rules that are asked.
  void add_trace_findings(const blend::Blend& blend, const std::vector<bool>& chosen,
                          std::vector<Finding>& findings) const {
    const dossier::DossierAsk ask{label::label_markets(blend, options_.markets), on_};
    const rules::Ruleset& ruleset = parts_.ruleset;
    for (dossier::TraceFault& fault : dossier::trace_faults(blend, ruleset, ask)) {
      if (!chosen.empty() && !chosen[fault.rule]) continue;
      Finding out = finding_of(fault, "trace");
      out.paper = fault.paper;
      if (fault.paper) out.missing = {out.message};
      allow(blend, out);
      findings.push_back(std::move(out));
    }
  }

  /// An `allow` of the formula takes the weight off a finding that no expression decides; off
  /// others it is taken where the expression is.
  void allow(const blend::Blend& blend, Finding& finding) const {
    if (finding.level == Level::error) return;
    for (const formula::Allow& allow : blend.allows) {
      if (text::fold(allow.rule.text) != text::fold(finding.rule)) continue;
      if (allow.until && on_ > allow.until->day) {
        finding.message += "; it was allowed until " + rules::day_words(allow.until->day);
      } else {
        finding.allowed = allow.because.text;
      }
    }
  }

  void fill(rules::Verdict&& verdict, const blend::MissingTable& missing, Finding& out) const {
    const rules::Rule& rule = parts_.ruleset.rules[verdict.rule];
    out.rule = rule.id;
    out.kind = verdict.kind;
    out.level = verdict.level;
    out.subject_kind = verdict.subject_kind;
    out.subject = verdict.subject;
    out.met_from_memory = verdict.met_from_memory;
    out.paper = verdict.paper;
    if (out.kind == Kind::not_applicable) return;
    out.message = std::move(verdict.message);
    add_place(verdict.place, out);
    if (options_.lines) out.entry = entry(rule, verdict);
    if (verdict.measured) out.measured = wording::figure(*verdict.measured);
    out.bound = verdict.bound;
    if (verdict.limit) out.limit = wording::figure(*verdict.limit);
    out.missing = missing.words(verdict.missing);
    if (!options_.only_to_read) out.sources = wording::notes(verdict.sources, parts_.catalogue);
    if (verdict.allowed) out.allowed = verdict.allowed->because;
    if (!options_.only_to_read) out.remedy = rule.words->remedy;
  }

  void add_place(const text::Span& place, Finding& out) const {
    if (!place.somewhere()) return;
    const text::Position position = sources_.position(place);
    out.line = position.line;
    out.column = position.column;
    out.file = sources_.path(place);
    if (options_.lines) add_line(place, out);
  }

  void add_line(const text::Span& place, Finding& out) const {
    const text::Source& source = sources_[place.file];
    const text::Position end = source.position(place.end);
    out.end_line = end.line;
    out.end_column = end.column;
    out.line_text = source.line(out.line);
  }

  /// Which entry of the law, where the table of a rule has a column for it.
  [[nodiscard]] std::string entry(const rules::Rule& rule, const rules::Verdict& verdict) const {
    if (verdict.row == nullptr) return {};
    const auto column = parts_.catalogue.tables[rule.table].column("entry");
    if (!column) return {};
    const auto* word = std::get_if<std::string>(&verdict.row->cells[*column]);
    if (word == nullptr || word->empty() || verdict.row->markets.empty()) {
      return word == nullptr ? std::string() : *word;
    }
    return wording::joined(verdict.row->markets, "and") + ": " + *word;
  }

  const front::Parts& parts_;
  const CheckOptions& options_;
  const std::chrono::year_month_day on_;
  text::Sources sources_;
  text::Diagnostics diagnostics_;
  std::optional<blend::Blend> base_;  ///< for rules over a tweak and its base
  formula::TweakBase own_base_;
};

}  // namespace

void RunResult::add(RunResult&& other) {
  const auto append = [](auto& to, auto& from) {
    to.insert(to.end(), std::make_move_iterator(from.begin()), std::make_move_iterator(from.end()));
  };
  append(formulas, other.formulas);
  append(problems, other.problems);
  append(absent, other.absent);
  compared = compared || other.compared;
  libraries += other.libraries;
}

RunResult check(const FormulaText& formula, const Rulesets& rulesets, const CheckOptions& options) {
  const CheckOptions on_a_day = front::with_day(options);
  return FormulaCheck(rulesets, on_a_day).run(formula);
}

Result<Dossier> dossier_for(const FormulaText& formula, const Rulesets& rulesets,
                            const CheckOptions& options) {
  CheckOptions in_full = front::with_day(options);
  in_full.verdicts = in_full.measures = in_full.particulars = in_full.label = true;
  in_full.only_to_read = in_full.curves = in_full.sheet = false;
  Result<Dossier> made;
  made.problems = FormulaCheck(rulesets, in_full).run(formula, &made.value).problems;
  return made;
}

std::vector<Problem> wrong_options(const CheckOptions& options, const Rulesets& rulesets) {
  std::vector<Problem> wrong;
  const auto add = [&](std::string words) { wrong.push_back({{}, 0, 0, std::move(words), {}}); };
  const rules::Ruleset& ruleset = front::parts(rulesets).ruleset;
  std::vector<std::string> unknown;
  const std::vector<bool> chosen =
      rules::chosen_rules(ruleset, options.only, options.without, unknown);
  for (const std::string& id : unknown) {
    const auto near = ruleset.near_rules(id);
    add("'" + id + "' is no rule" +
        (near.empty() ? std::string() : "; perhaps " + text::listed(near)));
  }
  if (wrong.empty() && std::find(chosen.begin(), chosen.end(), true) == chosen.end()) {
    add("no rule is left to be asked, so nothing would be checked");
  }
  const std::vector<std::string> markets(formula::vocabulary::markets.begin(),
                                         formula::vocabulary::markets.end());
  for (const std::string& market : options.markets) {
    if (std::find(markets.begin(), markets.end(), market) == markets.end()) {
      add("'" + market + "' is no market; known are " + text::listed(markets, "and"));
    }
  }
  return wrong;
}

std::vector<std::string> renamed_rules(const CheckOptions& options, const Rulesets& rulesets) {
  std::vector<std::string> out;
  for (const auto* ids : {&options.only, &options.without}) {
    for (const std::string& id : *ids) {
      std::string words = front::parts(rulesets).ruleset.renamed(id);
      if (!words.empty()) out.push_back(std::move(words));
    }
  }
  return out;
}

}  // namespace sudsmark
