// Which exercise a seed gives, and how a fault becomes one.
#include <algorithm>
#include <numeric>

#include <sudsmark/check.h>
#include <sudsmark/drill.h>

#include "drill/choices.h"
#include "drill/faults.h"
#include "drill/sums.h"
#include "front/parts.h"
#include "front/today.h"
#include "text/hash.h"
#include "text/name.h"
#include "wording/citations.h"

namespace sudsmark {
namespace {

using drill::Draws;

std::uint64_t mixed(std::uint64_t seed, std::uint64_t number) {
  Draws draws(seed * 0x9E3779B97F4A7C15U + number);
  return draws.next();
}

std::uint32_t lines_in(std::string_view text) {
  return static_cast<std::uint32_t>(std::count(text.begin(), text.end(), '\n'));
}

/// Rules that breakages lead to, each once, in the order of their ids.
std::vector<std::string> broken_rules(const rules::Ruleset& ruleset) {
  std::vector<std::string> out;
  for (const rules::Breakage& one : ruleset.training->breakages) out.push_back(one.rule);
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

class Maker {
 public:
  Maker(const Rulesets& rulesets, std::uint64_t seed, std::size_t number,
        const DrillOptions& options)
      : parts_(front::parts(rulesets)),
        ruleset_(parts_.ruleset),
        options_(options),
        checker_(rulesets, options.on ? *options.on : front::today()),
        faults_(ruleset_, checker_),
        seed_(seed),
        number_(number),
        draws_(mixed(seed, number)) {}

  std::optional<Exercise> made() {
    std::vector<std::string> rules;
    for (std::string& rule : broken_rules(ruleset_)) {
      if (asked_for(rule)) rules.push_back(std::move(rule));
    }
    constexpr std::size_t kinds = 10;
    const std::size_t kind = draws_.below(kinds);
    const bool sums = options_.about.empty() ? kind == 0 : asked_for(sums_name);
    if (sums && (kind == 0 || rules.empty())) {
      return as_numbered(drill::sum_exercise(parts_, checker_, draws_));
    }
    if (kind <= 2 && !options_.always_wrong) {
      if (auto fine = fine_card()) return as_numbered(std::move(*fine));
    }
    if (rules.empty()) return std::nullopt;
    // a way through all rules that comes back to none before the others had their turn
    const std::size_t size = rules.size();
    Draws order(text::hash_of("order of the rules"));
    order.shuffle(rules);
    std::size_t stride = 1 + static_cast<std::size_t>(mixed(seed_, 0) % size);
    while (std::gcd(stride, size) != 1) stride = 1 + stride % size;
    const std::size_t first = static_cast<std::size_t>(seed_ % size);
    for (std::size_t at = 0; at < size; ++at) {
      const std::size_t turn = number_ - 1 + at;
      const std::string& rule = rules[(first + turn % size * stride) % size];
      if (auto made = of_rule(rule, kind == 3)) return as_numbered(std::move(*made));
      if (options_.always_wrong) continue;
      if (auto fine = fine_card()) return as_numbered(std::move(*fine));
    }
    return std::nullopt;
  }

 private:
  [[nodiscard]] bool asked_for(const std::string& id) const {
    if (options_.about.empty()) return true;
    const auto index = ruleset_.find_rule(id);
    if (!index) {
      return std::any_of(options_.about.begin(), options_.about.end(),
                         [&](const std::string& word) { return text::fold(word) == id; });
    }
    const rules::RuleFile& file = ruleset_.files[ruleset_.rules[*index].file];
    return std::any_of(options_.about.begin(), options_.about.end(), [&](const std::string& word) {
      return text::fold(word) == text::fold(id) || text::fold(word) == text::fold(file.name) ||
             text::fold(word) == text::fold(file.subject);
    });
  }

  Exercise as_numbered(Exercise exercise) const {
    exercise.seed = seed_;
    exercise.number = number_;
    return exercise;
  }

  std::optional<Exercise> fine_card() {
    const auto& cards = ruleset_.training->cards;
    if (cards.empty()) return std::nullopt;
    constexpr int tries = 5;
    for (int at = 0; at < tries; ++at) {
      const auto card = faults_.sound(cards[draws_.below(cards.size())], draws_);
      if (!card) continue;
      Exercise out;
      out.kind = ExerciseKind::fine;
      out.subject = "A card without a fault";
      out.original = card->original;
      out.card = out.formula = out.sound_formula = drill::write(card->sheet, card->style).text;
      return out;
    }
    return std::nullopt;
  }

  std::optional<Exercise> of_rule(const std::string& id, bool compared) {
    const bool near = options_.near || draws_.once_in(5);
    auto fault = faults_.fault(id, near, draws_);
    const bool tweaked = !fault;
    if (!fault) fault = faults_.tweak(id, draws_);
    if (!fault) return std::nullopt;
    Exercise out;
    out.kind = tweaked ? ExerciseKind::tweak : ExerciseKind::fault;
    out.near = fault->near;
    describe(id, out);
    out.original = fault->original;
    out.formula = fault->broken.formula;
    out.sound_formula = fault->sound.formula;
    out.base = fault->broken.base;
    if (!find_lines(*fault, out)) return std::nullopt;
    const RunResult run = checker_.in_full(fault->broken);
    add_finding(*fault, run, out);
    const bool read = !run.formulas.empty();
    out.reasons =
        drill::reasons(ruleset_, read ? run : checker_.in_full(fault->sound), id, out.lines.front(),
                       out.is.empty() ? out.was : out.is, out.formula, draws_);
    if (out.reasons.size() < drill::choices) return std::nullopt;
    const std::uint32_t before = show(*fault, compared, out);
    for (std::uint32_t& line : out.lines) line += before;
    out.mends = drill::mends(*ruleset_.training, checker_, *fault, before, draws_);
    return out;
  }

  void describe(const std::string& id, Exercise& out) const {
    const auto index = ruleset_.find_rule(id);
    if (!index) return;
    const rules::Rule& rule = ruleset_.rules[*index];
    out.rule = id;
    out.subject = ruleset_.files[rule.file].subject;
    out.title = rule.words->title;
    out.why = rule.words->why;
    out.remedy = rule.words->remedy;
    for (const rules::Chapter& chapter : ruleset_.training->chapters) {
      const auto& own = chapter.subjects;
      const std::string& file = ruleset_.files[rule.file].name;
      if (std::find(own.begin(), own.end(), file) == own.end()) continue;
      add_cautions(chapter, out);
      return;
    }
  }

  void add_cautions(const rules::Chapter& chapter, Exercise& out) const {
    for (const rules::Caution& caution : ruleset_.training->cautions) {
      const auto& own = chapter.cautions;
      if (std::find(own.begin(), own.end(), caution.name) == own.end()) continue;
      out.cautions.push_back(caution.words + " " + caution.first_aid);
    }
  }

  /// The line that was changed and, where it is another, the one that the check points at. None: a
  /// fault without any line cannot be found.
  static bool find_lines(const drill::Fault& fault, Exercise& out) {
    const drill::Written& written = fault.written;
    const bool left_out = !fault.is.amount && fault.is.words.empty();
    const bool was_there = fault.was.amount || !fault.was.words.empty();
    if (was_there) out.was = drill::words_in(fault.sheet, fault.was, fault.style);
    if (!left_out) {
      out.is = drill::words_in(fault.sheet, fault.is, fault.style);
      out.lines.push_back(written.number(fault.place));
    }
    const std::uint32_t told = fault.weighed.line;
    // what is told of a tweak may stand in its base
    const bool here = told > 0 && told <= written.headings.size() && fault.broken.base.empty();
    if (here && (out.lines.empty() || out.lines.front() != told)) out.lines.push_back(told);
    if (out.lines.empty()) return false;
    out.section = written.headings[out.lines.front() - 1];
    std::vector<std::uint32_t> numbers;
    for (const auto& section : written.numbers) {
      numbers.insert(numbers.end(), section.begin(), section.end());
    }
    std::sort(numbers.begin(), numbers.end());
    out.card_lines = static_cast<std::uint32_t>(numbers.size());
    const auto at = std::find(numbers.begin(), numbers.end(), out.lines.front());
    if (at != numbers.end()) out.standing = static_cast<std::size_t>(at - numbers.begin()) + 1;
    return true;
  }

  void add_finding(const drill::Fault& fault, const RunResult& run, Exercise& out) const {
    int which = 0;
    for (const FormulaResult& formula : run.formulas) {
      for (const Finding& finding : formula.findings) {
        const bool same = finding.rule == fault.key.rule && finding.subject == fault.key.subject &&
                          finding.subject_kind == fault.key.subject_kind &&
                          change::weight(finding) > 0;
        if (same && which++ == fault.key.which) out.finding = finding;
      }
    }
    if (out.finding || run.problems.empty()) return;
    Finding finding;
    finding.rule = out.rule;
    finding.kind = Kind::fail;
    finding.level = Level::error;
    finding.message = run.problems.front().message;
    finding.line = run.problems.front().line;
    if (const auto index = ruleset_.find_rule(out.rule)) {
      finding.sources = wording::notes(ruleset_.rules[*index].sources, parts_.catalogue);
    }
    out.finding = std::move(finding);
  }

  /// The card as it is shown: alone, behind what it is a tweak of, or beside a sound one of its
  /// kind. Answers how many lines stand before the one with the fault.
  std::uint32_t show(const drill::Fault& fault, bool compared, Exercise& out) {
    out.card = out.formula;
    std::string before = out.base;
    if (compared && out.kind == ExerciseKind::fault) {
      const auto& cards = ruleset_.training->cards;
      const auto model =
          std::find_if(cards.begin(), cards.end(),
                       [&](const rules::ModelCard& card) { return card.name == fault.card; });
      if (const auto other = faults_.sound(*model, draws_)) {
        before = drill::write(other->sheet, other->style).text;
        out.kind = ExerciseKind::compare;
      }
    }
    if (before.empty()) return 0;
    if (out.kind == ExerciseKind::compare && draws_.once_in(2)) {
      out.card = out.formula + "\n" + before;
      return 0;
    }
    out.card = before + "\n" + out.formula;
    return lines_in(before) + 1;
  }

  const front::Parts& parts_;
  const rules::Ruleset& ruleset_;
  const DrillOptions& options_;
  drill::Checker checker_;
  drill::FaultMaker faults_;
  std::uint64_t seed_;
  std::size_t number_;
  Draws draws_;
};

/// Words of `about` that nothing is called by.
std::vector<Problem> unknown_words(const rules::Ruleset& ruleset, const DrillOptions& options) {
  std::vector<Problem> out;
  for (const std::string& word : options.about) {
    std::vector<std::string> known;
    bool found = ruleset.find_folded(word).has_value() || text::fold(word) == sums_name;
    for (const rules::RuleFile& file : ruleset.files) {
      found = found || text::fold(word) == text::fold(file.name) ||
              text::fold(word) == text::fold(file.subject);
      known.push_back(file.name);
    }
    if (found) continue;
    for (const rules::Rule& rule : ruleset.rules) known.push_back(rule.id);
    known.push_back(sums_name);
    Problem& problem = out.emplace_back();
    problem.message = "'" + word + "' is no rule and no subject of rules" +
                      text::perhaps(text::nearest(word, known));
  }
  return out;
}

}  // namespace

std::vector<std::string> drilled_rules(const Rulesets& rulesets) {
  return broken_rules(front::parts(rulesets).ruleset);
}

Result<Exercise> exercise(const Rulesets& rulesets, std::uint64_t seed, std::size_t number,
                          const DrillOptions& options) {
  Result<Exercise> out;
  out.problems = unknown_words(front::parts(rulesets).ruleset, options);
  if (!out.problems.empty()) return out;
  out.value = Maker(rulesets, seed, std::max<std::size_t>(number, 1), options).made();
  if (!out.value) {
    Problem& problem = out.problems.emplace_back();
    problem.message = "no exercise can be made of what was asked for";
  }
  return out;
}

}  // namespace sudsmark
