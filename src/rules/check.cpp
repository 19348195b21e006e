#include "rules/check.h"

#include <algorithm>
#include <cmath>
#include <memory>
#include <utility>

#include "measures/registry.h"
#include "rules/limit_sources.h"
#include "rules/machine.h"
#include "rules/messages.h"
#include "rules/sentences.h"
#include "rules/subjects.h"
#include "rules/words.h"
#include "text/name.h"
#include "text/yaml_fields.h"

namespace sudsmark::rules {
namespace {

/// Whether the measured side of a test is a bound of what it is about.
bool is_bound(const Test& test) {
  if (test.origins.empty() || test.origins.front().kind != Origin::Kind::measure) return false;
  return measures::all()[test.origins.front().index].bound;
}

using catalogue::Citations;

/// Truths with what would decide them.
struct Answer {
  Certainty truth = Certainty::yes;
  MissingSet missing;
};

Answer both(const Answer& a, const Answer& b) {
  if (a.truth == Certainty::no || b.truth == Certainty::no) return {Certainty::no, {}};
  if (a.truth == Certainty::yes) return b;
  if (b.truth == Certainty::yes) return a;
  return {Certainty::depends, a.missing | b.missing};
}

class Check {
 public:
  Check(const Ruleset& ruleset, const blend::Blend& blend, blend::MissingTable& missing,
        const EvaluateOptions& options)
      : ruleset_(ruleset),
        blend_(blend),
        missing_(missing),
        options_(options),
        machine_(ruleset, blend, missing, options.markets, options.on, options.base),
        subjects_(machine_.figures()),
        sold_(ruleset.files.size()) {
    for (const formula::Allow& allow : blend.allows) {
      allows_.push_back(ruleset.find_folded(allow.rule.text));
    }
  }

  std::vector<Verdict> run() {
    // most rules over materials do not apply to most of them, and are accounted for all the same
    constexpr std::size_t a_rule = 3;
    if (options_.left_out == nullptr) verdicts_.reserve(a_rule * ruleset_.rules.size());
    for (std::uint32_t at = 0; at < ruleset_.rules.size(); ++at) {
      if (!ruleset_.rules[at].decided_by.empty()) continue;
      if (options_.chosen.empty() || options_.chosen[at]) ask(at);
    }
    if (options_.measures != nullptr) gather_measures(*options_.measures);
    return std::move(verdicts_);
  }

 private:
  /// Most were worked out for the rules.
  void gather_measures(std::vector<Range>& out) {
    const auto count = static_cast<std::uint32_t>(measures::all().size());
    out.reserve(count + ruleset_.measures.size());
    for (std::uint32_t at = 0; at < count; ++at) {
      out.push_back(machine_.figures().measure(at, Subject{}).value);
    }
    for (const NamedMeasure& measure : ruleset_.measures) {
      out.push_back(machine_.run(measure.program, Subject{}).range);
    }
  }

  void ask(std::uint32_t index) {
    const Rule& rule = ruleset_.rules[index];
    const Answer& sold = sold_in(rule.file);
    const bool holds = !rule.expect.empty() && sold.truth != Certainty::no &&
                       (!rule.pair || machine_.has_base()) &&
                       machine_.figures().in_force(rule.dates, ruleset_.files[rule.file].markets);
    open_rows_.clear();
    bool asked = false;
    if (holds && is_never_asked(rule)) {
      const std::size_t count = subjects_.of(rule).size();
      options_.left_out->not_applicable += count;
      asked = count > 0;
    } else if (holds) {
      for (const Subject& subject : subjects_.of(rule)) {
        ask(index, subject, sold);
        asked = true;
      }
    }
    // a rule without anything to ask about is accounted for all the same
    if (!asked) does_not_apply(index, Subject{});
  }

  /// Whether a rule applies to none of its subjects, where they are only counted. Where no market
  /// is stated, rows are asked all the same: that it is not becomes a reason in their order.
  bool is_never_asked(const Rule& rule) const {
    return options_.left_out != nullptr && rule.each != Each::product && !rule.when.empty() &&
           machine_.figures().words(StatedWords::market, Subject{}).stated &&
           machine_.never(rule.when);
  }

  void ask(std::uint32_t index, const Subject& subject, const Answer& sold) {
    const Rule& rule = ruleset_.rules[index];
    if (subject.row != nullptr && sold_in(subject).truth == Certainty::no) {
      return does_not_apply(index, subject);
    }
    // most rules do not apply, and that shows before any figure is asked for
    std::optional<bool> plain;
    if (options_.asked == nullptr && !rule.when.empty()) plain = machine_.plain(rule.when, subject);
    if (plain == false) return does_not_apply(index, subject);
    Answer applies = sold;
    if (subject.row != nullptr) applies = both(applies, sold_in(subject));
    if (!plain && !rule.when.empty()) {
      const Value when = machine_.run(rule.when, subject, options_.asked ? &asked_when_ : nullptr);
      applies = both(applies, {when.truth, when.missing});
    }
    if (applies.truth == Certainty::no) return does_not_apply(index, subject);
    const Value expected = machine_.run(rule.expect, subject, &tried_);
    if (rule.pair && no_news(rule, subject, applies, expected)) {
      return does_not_apply(index, subject);
    }
    const Decider decider = decide(rule, expected.truth);
    if (expected.truth == Certainty::yes) return pass(index, subject, decider);
    const MissingSet missing = machine_.without_doubles(applies.missing | expected.missing);
    const bool fails = applies.truth == Certainty::yes && expected.truth == Certainty::no;
    if (!fails && told(index, subject, missing)) return;
    Verdict& verdict = add(index, subject, &decider);
    verdict.sources = sources_of(rule, subject, decider);
    verdict.place = place(rule, subject, decider);
    // what nothing in the formula speaks of is to be written where its lack is felt
    if (!verdict.place.somewhere()) verdict.place = place_of(missing);
    if (!verdict.place.somewhere()) verdict.place = blend_.place;
    if (!rule.words->paper.empty() && missing.empty()) {
      ask_for_paper(rule, subject, decider, verdict);
    } else if (fails) {
      fail(rule, subject, decider, verdict);
    } else {
      if (!missing.empty()) {
        open(rule, subject, missing, verdict);
      } else {
        review(rule, subject, decider, applies.truth, verdict);
      }
    }
    allow(rule, verdict);
  }

  void does_not_apply(std::uint32_t index, const Subject& subject) {
    if (options_.left_out != nullptr) {
      ++options_.left_out->not_applicable;
    } else {
      add(index, subject, nullptr).kind = Kind::not_applicable;
    }
  }

  /// Counts a row on which the rule is open for the reasons of a row before, where that is enough.
  bool told(std::uint32_t index, const Subject& subject, const MissingSet& missing) {
    const bool countable = options_.left_out != nullptr && subject.row != nullptr &&
                           !missing.empty() &&
                           std::find(allows_.begin(), allows_.end(), index) == allows_.end();
    if (!countable) return false;
    for (const OpenRow& row : open_rows_) {
      if (row.missing != missing) continue;
      ++options_.left_out->alike[row.verdict];
      return true;
    }
    open_rows_.push_back({missing, verdicts_.size()});
    return false;
  }

  /// Whether a rule over a tweak and its base cannot be decided, and of the base held against
  /// itself neither, and stands there as it stands here. Then the doubt is not of the change: what
  /// is wide or unknown in a formula stays so in every tweak of it.
  bool no_news(const Rule& rule, const Subject& subject, const Answer& applies,
               const Value& expected) {
    const bool fails = applies.truth == Certainty::yes && expected.truth == Certainty::no;
    if (fails || expected.truth == Certainty::yes) return false;
    const Subject there = machine_.in_base(subject);
    if (subject.ingredient != nullptr && there.ingredient == nullptr) return false;
    if (!unchanged_) {
      unchanged_ = std::make_unique<Machine>(ruleset_, *options_.base, unchanged_missing_,
                                             options_.markets, options_.on, options_.base);
    }
    Value when;
    when.truth = Certainty::yes;
    if (!rule.when.empty()) when = unchanged_->run(rule.when, there);
    if (when.truth == Certainty::no) return false;
    const Value then = unchanged_->run(rule.expect, there, &tried_before_);
    if (then.truth != Certainty::depends) return false;
    MissingSet before = when.missing | then.missing;
    unchanged_->figures().sold_in(ruleset_.files[rule.file].markets, before);
    if (there.row != nullptr) unchanged_->figures().sold_in(there.row->markets, before);
    if (machine_.doubts(applies.missing | expected.missing) != unchanged_->doubts(before)) {
      return false;
    }
    for (std::size_t at = 0; at < tried_.size(); ++at) {
      const bool both = tried_[at].asked && tried_before_[at].asked;
      if (both && !stands(tried_[at].measured, tried_before_[at].measured)) return false;
    }
    return true;
  }

  /// Whether a range lies where another lay, but for a small part of its width.
  static bool stands(const Range& now, const Range& before) {
    constexpr double small = 0.1;
    const double width = before.high - before.low;
    const auto moved = [&](double a, double b) {
      return a != b && !(std::abs(a - b) <= small * width);
    };
    return !moved(now.low, before.low) && !moved(now.high, before.high);
  }

  /// `decider`: what a rule that applies was decided by.
  Verdict& add(std::uint32_t index, const Subject& subject, const Decider* decider) {
    if (options_.asked != nullptr) {
      Asked& asked = options_.asked->emplace_back();
      asked.when = std::exchange(asked_when_, {});
      if (decider != nullptr) asked.expect = tried_;
    }
    if (options_.left_out != nullptr) options_.left_out->alike.push_back(0);
    Verdict& verdict = verdicts_.emplace_back();
    verdict.rule = index;
    if (subject.each != Each::product) {
      verdict.subject_kind = each_word(subject.each);
      verdict.subject = subject.name;
    }
    verdict.row = subject.row;
    if (decider != nullptr && decider->compares()) {
      verdict.measured = Quantity{decider->tried.measured, decider->test->unit};
      verdict.bound = is_bound(*decider->test);
      if (const auto limit = limit_of(*decider)) {
        verdict.limit = Quantity{*limit, decider->test->unit};
      }
    }
    return verdict;
  }

  const Answer& sold_in(std::uint32_t file) {
    std::optional<Answer>& sold = sold_[file];
    if (!sold) {
      sold.emplace();
      sold->truth = machine_.figures().sold_in(ruleset_.files[file].markets, sold->missing);
    }
    return *sold;
  }

  /// Whether the formula is sold where the subject's row holds, worked out once for all rules.
  const Answer& sold_in(const Subject& subject) {
    if (sold_rows_.size() <= subject.number) sold_rows_.resize(subject.number + 1);
    std::optional<Answer>& sold = sold_rows_[subject.number];
    if (!sold) {
      sold.emplace();
      sold->truth = machine_.figures().sold_in(subject.row->markets, sold->missing);
    }
    return *sold;
  }

  /// The first test that turned out as the whole did; for a pass one that compares, if there is
  /// one.
  Decider decide(const Rule& rule, Certainty truth) const {
    const Test* tests = ruleset_.pool.tests.data() + rule.expect.first_test;
    const auto first = [&](const auto& fits) -> Decider {
      for (std::size_t at = 0; at < tried_.size(); ++at) {
        if (tried_[at].asked && fits(tests[at], tried_[at])) return {&tests[at], tried_[at]};
      }
      return {};
    };
    Decider decider;
    if (truth == Certainty::yes) {
      decider = first([](const Test& test, const Tried& tried) {
        return test.compares && tried.truth == Certainty::yes;
      });
    }
    if (decider.test == nullptr) {
      decider = first([&](const Test&, const Tried& tried) { return tried.truth == truth; });
    }
    if (decider.test == nullptr) {
      decider =
          first([](const Test&, const Tried& tried) { return tried.truth != Certainty::yes; });
    }
    return decider;
  }

  /// Where the limit comes from: the material's own figure, the row, or the rule.
  [[nodiscard]] Citations sources_of(const Rule& rule, const Subject& subject,
                                     const Decider& decider) {
    if (has_sources(subject.row)) return machine_.figures().sources(*subject.row);
    return sources_beside_rows(rule, subject, decider);
  }

  static bool has_sources(const catalogue::Row* row) {
    return row != nullptr && !row->sources.empty();
  }

  [[nodiscard]] const Citations& sources_beside_rows(const Rule& rule, const Subject& subject,
                                                     const Decider& decider) const {
    if (subject.ingredient == nullptr || !decider.compares() || !decider.test->field_limit) {
      return rule.sources;
    }
    const Citations* own =
        sources_of_field(decider.test->field, blend_.material(subject.ingredient->material));
    return own != nullptr ? *own : rule.sources;
  }

  void pass(std::uint32_t index, const Subject& subject, const Decider& decider) {
    const Rule& rule = ruleset_.rules[index];
    Figures& figures = machine_.figures();
    const bool memory = has_sources(subject.row)
                            ? figures.leans_on_memory(*subject.row)
                            : figures.from_memory(sources_beside_rows(rule, subject, decider)) ||
                                  figures.from_memory(rule.sources);
    if (!memory && options_.left_out != nullptr && options_.left_out->passes_too) {
      ++options_.left_out->passes;
      return;
    }
    Verdict& verdict = add(index, subject, &decider);
    verdict.kind = memory ? Kind::review : Kind::pass;
    verdict.met_from_memory = memory;
    if (memory) verdict.level = Level::note;
    if (memory || options_.passes_in_full) {
      verdict.sources = sources_of(rule, subject, decider);
      verdict.place = place(rule, subject, decider);
      if (!verdict.place.somewhere()) verdict.place = blend_.place;
      verdict.message = headline(rule, subject, decider);
    }
    if (!memory) return;
    verdict.message =
        "the limit is from memory and is to be looked up: " + std::move(verdict.message);
    allow(rule, verdict);
  }

  /// The rule's words, and the limit where they do not say it themselves.
  std::string message(const Rule& rule, const Subject& subject, const Decider& decider) {
    bool told = false;
    std::string out = filled(rule.words->message, subject, machine_, decider, &told);
    return told ? out : with_limit(std::move(out), rule, decider);
  }

  /// What only a paper shows is open until somebody holds the paper.
  void ask_for_paper(const Rule& rule, const Subject& subject, const Decider& decider,
                     Verdict& verdict) {
    const std::string paper = filled(rule.words->paper, subject, machine_, decider);
    open(rule, subject, missing_.add(paper, verdict.place), verdict);
    verdict.message =
        "not known: " + paper + "; " + filled(rule.words->message, subject, machine_, decider);
    verdict.paper = true;
  }

  void fail(const Rule& rule, const Subject& subject, const Decider& decider, Verdict& verdict) {
    verdict.kind = Kind::fail;
    verdict.level = rule.otherwise;
    verdict.message = message(rule, subject, decider);
  }

  void review(const Rule& rule, const Subject& subject, const Decider& decider, Certainty applies,
              Verdict& verdict) {
    verdict.kind = Kind::review;
    verdict.level = rule.otherwise;
    verdict.message = applies == Certainty::depends
                          ? "it depends on the true figures whether this applies: "
                          : "it depends on the true figures: ";
    verdict.message += message(rule, subject, decider);
  }

  void open(const Rule& rule, const Subject& subject, const MissingSet& missing, Verdict& verdict) {
    verdict.kind = Kind::open;
    verdict.level = rule.undecided;
    verdict.missing = missing;
    verdict.message = "not known: ";
    verdict.message += listed(missing, missing_);
    verdict.message += "; would decide ";
    verdict.message += question(rule, subject);
  }

  static std::string with_limit(std::string message, const Rule& rule, const Decider& decider) {
    const std::string limit = limit_words(decider, rule);
    return limit.empty() ? message : std::move(message) + "; " + limit;
  }

  /// A rule by its title, as what is asked; with the row of a table, which no report names beside.
  static std::string question(const Rule& rule, const Subject& subject) {
    const std::string row =
        subject.row != nullptr ? " of '" + std::string(subject.name) + "'" : std::string();
    return "\"" + rule.words->title + "\"" + row;
  }

  Span place(const Rule& rule, const Subject& subject, const Decider& decider) {
    const auto first_of = [&](const std::vector<Origin>& origins) {
      for (const Origin& origin : origins) {
        const Span found = machine_.figures().place(origin, subject);
        if (found.somewhere()) return found;
      }
      return Span{};
    };
    Span found = first_of(rule.places);
    if (!found.somewhere() && subject.each != Each::product) found = subjects_.place(subject);
    if (!found.somewhere() && decider.test != nullptr) found = first_of(decider.test->origins);
    return found;
  }

  [[nodiscard]] Span place_of(const MissingSet& missing) const {
    Span found;
    missing.each([&](std::size_t index) {
      if (!found.somewhere()) found = missing_.items()[index].place;
    });
    return found;
  }

  void allow(const Rule& rule, Verdict& verdict) {
    for (std::size_t at = 0; at < allows_.size(); ++at) {
      if (allows_[at] != verdict.rule) continue;
      const formula::Allow& allow = blend_.allows[at];
      const std::string renamed = ruleset_.renamed(allow.rule.text);
      if (!renamed.empty()) verdict.message += "; " + renamed;
      const bool by_law = ruleset_.files[rule.file].authority == Authority::law;
      if (by_law && verdict.level == Level::error) {
        verdict.message += "; what the law calls an error cannot be allowed";
      } else if (allow.until && options_.on > allow.until->day) {
        verdict.message += "; it was allowed until " + day_words(allow.until->day);
      } else {
        verdict.allowed = Allowed{allow.because.text, allow.place};
        return;
      }
    }
  }

  const Ruleset& ruleset_;
  const blend::Blend& blend_;
  blend::MissingTable& missing_;
  const EvaluateOptions& options_;
  Machine machine_;
  Subjects subjects_;
  std::vector<std::optional<Answer>> sold_;           ///< by file
  std::vector<std::optional<Answer>> sold_rows_;      ///< by the subject's number
  std::vector<std::optional<std::uint32_t>> allows_;  ///< their rules
  std::vector<Tried> tried_;                          ///< of the expectation that is asked
  std::vector<Tried> asked_when_;  ///< of its condition, where somebody wants to know
  std::vector<Verdict> verdicts_;
  /// Rows on which the rule at hand is open, one for each set of reasons.
  struct OpenRow {
    MissingSet missing;
    std::size_t verdict = 0;  ///< its index
  };
  std::vector<OpenRow> open_rows_;
  std::unique_ptr<Machine> unchanged_;  ///< the base held against itself, where somebody asks
  blend::MissingTable unchanged_missing_;
  std::vector<Tried> tried_before_;  ///< what its expectation came to
};

}  // namespace

std::vector<Verdict> evaluate(const Ruleset& ruleset, const blend::Blend& blend,
                              blend::MissingTable& missing, const EvaluateOptions& options) {
  return Check(ruleset, blend, missing, options).run();
}

std::vector<bool> chosen_rules(const Ruleset& ruleset, const std::vector<std::string>& only,
                               const std::vector<std::string>& without,
                               std::vector<std::string>& unknown) {
  std::vector<bool> chosen(ruleset.rules.size(), only.empty());
  const auto mark = [&](const std::vector<std::string>& ids, bool as) {
    for (const std::string& id : ids) {
      if (const auto at = ruleset.find_rule(id)) {
        chosen[*at] = as;
      } else {
        unknown.push_back(id);
      }
    }
  };
  mark(only, true);
  mark(without, false);
  return chosen;
}

void check_allows(const Ruleset& ruleset, const blend::Blend& blend,
                  text::Diagnostics& diagnostics) {
  for (const formula::Allow& allow : blend.allows) {
    if (ruleset.find_folded(allow.rule.text)) continue;
    std::vector<std::string> ids;
    for (const Rule& rule : ruleset.rules) ids.push_back(rule.id);
    diagnostics.add(messages::unknown_allow, allow.rule.place,
                    {allow.rule.text, text::hint(allow.rule.text, ids)});
  }
}

}  // namespace sudsmark::rules
