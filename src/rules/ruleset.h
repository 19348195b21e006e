// Rulesets: rules and measures out of strict YAML, compiled once and evaluated many times.
//
//     load (loader.h)   YAML files of one layer -> a Ruleset, against a Catalogue
//     check (check.h)   a Ruleset and a Blend -> verdicts
//     verify (verify.h) runs the rules' own examples
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/catalogue.h"
#include "catalogue/later.h"
#include "rules/program.h"
#include "rules/telling.h"
#include "rules/training.h"
#include "rules/verdict.h"
#include "text/source.h"

namespace sudsmark::rules {

enum class Authority : std::uint8_t { law, standard, craft };
[[nodiscard]] std::string_view authority_word(Authority authority);

/// A piece of a message: text, and then an expression whose value is printed.
struct MessagePart {
  std::string text;
  std::string value_text;  ///< the expression as written; empty: none
  std::optional<Program> value;
};

using Day = std::chrono::year_month_day;

/// "2027-06-30".
[[nodiscard]] std::string day_words(const Day& day);

/// When a rule or a row holds.
struct Dates {
  std::optional<Day> from;   ///< for what is first placed on the market on this day or later
  std::optional<Day> shelf;  ///< from this day for all; none: the day `from` for all
  std::optional<Day> until;  ///< no longer from this day on
};
/// Whether it holds on a day for what was first sold on another.
[[nodiscard]] bool in_force(const Dates& dates, const Day& first_sold, const Day& today);

/// An example of a rule over a tweak and its base.
struct PairExample {
  std::string base;   ///< a formula
  std::string tweak;  ///< edits alone, or a formula in full
};

/// What mends a formula that breaks a rule, for whoever looks for a way to mend it.
struct Mend {
  enum class Kind : std::uint8_t {
    lower,  ///< less of what is selected
    raise,  ///< more of it
    add,    ///< a material that need not be there yet
    swap,   ///< what is selected goes out, a material comes in
    change  ///< a statement that is no amount
  };
  enum class Change : std::uint8_t { piece, batch, scale, dose, warmth, mask, paper };

  Kind kind = Kind::lower;
  std::string text;             ///< what is lowered, raised, added or taken out, as written
  std::uint32_t selection = 0;  ///< of the pool, of `lower`, `raise` and `swap`
  catalogue::MaterialIndex material = 0;  ///< that comes in, of `add` and `swap`
  std::string phase;                      ///< where an added one goes; empty: not said
  Change change = Change::piece;          ///< of `change`

  [[nodiscard]] bool selects() const;
  [[nodiscard]] bool brings_in() const { return kind == Kind::add || kind == Kind::swap; }
};
[[nodiscard]] std::string_view change_word(Mend::Change change);

/// What a rule that no expression decides says in one of its cases (see deciders.h).
struct CaseMessage {
  std::string name;  ///< "by weight"; empty: the rule has but one
  std::string text;  ///< with holes that whatever decides it fills: "there is {share} of it"
};

/// What of a rule is read when somebody tells of it, and when nothing broke it by nobody.
struct RuleWords {
  std::string title;
  std::string when_text;  ///< as written; empty: always
  std::string expect_text;
  std::vector<CaseMessage> cases;  ///< of a rule that no expression decides
  std::string message_text;
  std::vector<MessagePart> message;
  std::vector<MessagePart> paper;  ///< what has to be asked for; such a rule is open, not failed
  std::string why;
  std::string remedy;
  Telling telling;
  std::vector<Mend> mends;          ///< the likeliest first
  std::string place_text;           ///< as written; empty: found out
  std::vector<std::string> passes;  ///< example formulas of a rule over one
  std::vector<std::string> fails;
  std::vector<PairExample> pair_passes;
  std::vector<PairExample> pair_fails;
};

struct Rule {
  std::string id;
  std::vector<std::string> formerly;  ///< ids that it had before and that makers may still write
  std::uint32_t file = 0;             ///< index into Ruleset::files
  Each each = Each::product;
  std::uint16_t table = nothing;  ///< of the catalogue, for Each::row
  std::string
      decided_by;  ///< "label", "reading": what decides it, where no expression does; or empty
  Program when;
  Program expect;
  Level otherwise = Level::warning;
  Level undecided = Level::note;
  std::vector<Origin> places;  ///< of `place`
  catalogue::Citations sources;
  Dates dates;
  bool pair = false;  ///< over a tweak and its base: it asks for both
  bool built_in = false;
  catalogue::Later<RuleWords> words;
  text::Span span;  ///< of the rule's id in its file; nowhere in a packed ruleset
};

/// One file of rules: a subject under one authority.
struct RuleFile {
  std::string name;     ///< its name without folder and ending: "surfactant-load"
  std::string subject;  ///< title
  std::string edition;
  Authority authority = Authority::craft;
  std::vector<std::string> markets;  ///< for law
  Concern concern = Concern::craft;  ///< of its rules, but where one says another
};

/// A measure written in YAML.
struct NamedMeasure {
  std::string name;
  std::string meaning;
  std::string unit;
  std::string text;  ///< the expression as written
  quantity::Dimension dimension;
  Program program;
  std::vector<Origin> origins;
  bool built_in = false;
  text::Span span;
};

/// The columns of a table as rules were compiled against them: a user's table may change them.
struct TableUse {
  std::uint16_t table = 0;
  std::vector<catalogue::Column> columns;
};

class Ruleset {
 public:
  std::vector<RuleFile> files;
  std::vector<NamedMeasure> measures;
  std::vector<Rule> rules;
  std::vector<TableUse> tables;
  Pool pool;
  catalogue::Later<Training> training;

  /// By its id, or else by one that it had before.
  [[nodiscard]] std::optional<std::uint32_t> find_rule(std::string_view id) const;
  /// The same, names compared folded: what a maker wrote in `allow`.
  [[nodiscard]] std::optional<std::uint32_t> find_folded(std::string_view id) const;
  /// "'old-id' is called 'new-id' now"; empty if the id is no rule's former one.
  [[nodiscard]] std::string renamed(std::string_view id) const;
  [[nodiscard]] std::optional<std::uint32_t> find_measure(std::string_view name) const;
  [[nodiscard]] std::vector<std::string> near_rules(std::string_view id) const;
};

}  // namespace sudsmark::rules
