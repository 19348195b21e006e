// Making a ruleset out of YAML files.
//
//     RulesetBuilder builder(sources, diagnostics, built_in_ruleset);   // or without a base
//     builder.add(root, "surfactant-load");                             // each file, in any order
//     Ruleset ruleset = builder.finish(catalogue, false);
//
// The files of one builder make one layer over the base: a rule or measure replaces the base's of
// the same id and keeps its index, while the same id twice in the layer is an error that names both
// places. The catalogue must be the base's with the same layer's files on top of it, so that the
// indices in the base's programs stay what they were.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "catalogue/catalogue.h"
#include "rules/compiler.h"
#include "rules/deciders.h"
#include "rules/ruleset.h"
#include "text/diagnostic.h"
#include "text/source.h"
#include "text/yaml.h"
#include "text/yaml_fields.h"

namespace sudsmark::rules {

/// The top-level keys that a file of rules has beside the catalogue's.
[[nodiscard]] std::span<const std::string_view> rule_keys();

/// Most rules, and most measures, of a ruleset.
inline constexpr std::size_t most_rules = 10'000;
inline constexpr std::size_t most_measures = 2'000;

class RulesetBuilder {
 public:
  RulesetBuilder(const text::Sources& sources, text::Diagnostics& diagnostics, Ruleset base = {});

  /// Adds a file by its tree, which must live until `finish`. `name` is the file's, without folder
  /// and ending. Keys that are not of rules are the catalogue's to judge.
  void add(const text::Node& root, std::string_view name);

  /// Compiles what was added. What is wrong is in the diagnostics; a rule or measure with an error
  /// is left out. Built-in rules must have their why, remedy, sources and both kinds of example.
  [[nodiscard]] Ruleset finish(const catalogue::Catalogue& catalogue, bool built_in);

 private:
  struct Declared {
    const text::Node* node = nullptr;
    const text::Node* expression = nullptr;
    std::string text;
    Tree tree;
    std::string meaning;
    std::string unit;
    enum class State : std::uint8_t { waiting, open, done, wrong } state = State::waiting;
  };
  struct Pending {
    const text::Node* node = nullptr;
    std::uint32_t file = 0;
  };

  // builder.cpp
  void add_measures(const text::Node& node);
  void compile_measures();
  void check_measures();
  int depth_of(std::uint32_t measure, std::vector<int>& depths, std::vector<std::uint32_t>& path);
  void refuse_circle(const std::vector<std::string>& path);
  bool compile_measure(const std::string& name, std::vector<std::string>& path);
  void keep_measure(const std::string& name, Declared& declared, const Program& program,
                    const quantity::Dimension& dimension, const Source& source);
  void compile_rules();
  void check_former_ids();
  void use_new_tables(const catalogue::Catalogue& catalogue);
  void note_table(std::uint16_t table);

  // read_rule.cpp
  std::optional<Rule> read_rule(const text::Node& node, std::uint32_t file);
  void read_id(text::Fields& fields, Rule& rule);
  void read_each(text::Fields& fields, Rule& rule);
  void read_levels(text::Fields& fields, Rule& rule);
  void read_dates(text::Fields& fields, Rule& rule);
  void read_sources(text::Fields& fields, Rule& rule);
  void read_former_ids(text::Fields& fields, Rule& rule);

  // read_training.cpp
  void add_training(text::Fields& file);
  Breakage read_breakage(text::Fields& fields);
  void check_training(const text::Span& place);
  // read_telling.cpp
  void read_telling(text::Fields& fields, Rule& rule);
  /// `concerns` of a file or a rule; `usual` where it is not said.
  Concern read_concern(text::Fields& fields, Authority authority, Concern usual);

  // read_mend.cpp
  void read_mends(text::Fields& fields, Rule& rule);
  bool read_mend(const text::Node& node, const Rule& rule, Mend& mend);
  bool read_swap(const text::Node& node, const Rule& rule, Mend& mend);
  std::optional<std::uint32_t> read_selection(const text::Node& node, const Rule& rule);
  std::optional<catalogue::MaterialIndex> read_material(const text::Node& node);

  // read_rule.cpp
  void read_examples(text::Fields& fields, Rule& rule);
  void read_example(const text::Node& node, const Rule& rule, std::vector<std::string>& alone,
                    std::vector<PairExample>& pairs);
  void read_place(text::Fields& fields, Rule& rule);
  void read_expressions(text::Fields& fields, Rule& rule);
  void read_decider(text::Fields& fields, Rule& rule);
  void read_case(text::Fields& fields, std::string_view key, const DecidedCase& one, Rule& rule);
  /// What `message` or `paper` says, its holes compiled.
  std::vector<MessagePart> read_message(const text::Node& node, Rule& rule);
  void ask_for_everything(text::Fields& fields, const Rule& rule);
  std::optional<Level> read_level(const text::Node& node, std::string_view levels);
  std::optional<Day> read_day(text::Fields& fields, std::string_view key);
  std::optional<Program> truth(const text::Node& node, const Rule& rule, bool tests);

  /// Parses the stretch of a scalar's text that begins at `offset`; reports what is wrong.
  std::optional<Tree> parse(const text::Node& node, std::string_view text, std::size_t offset,
                            bool as_selection = false);
  /// Where bytes of such a stretch stand in the file.
  [[nodiscard]] Placing placing(const text::Node& node, std::size_t offset) const;

  const text::Sources& sources_;
  text::Diagnostics& diagnostics_;
  Ruleset ruleset_;
  const catalogue::Catalogue* catalogue_ = nullptr;
  Compiler* compiler_ = nullptr;
  bool built_in_ = false;
  bool failed_ = false;  ///< the rule that is read has an error
  std::unordered_map<std::string, Declared> measures_;
  std::vector<std::string> measure_order_;
  std::vector<Pending> pending_;
  std::unordered_map<std::string, const text::Node*> ids_;    ///< of this layer
  std::unordered_map<std::string, std::uint32_t> positions_;  ///< of all rules, by former ids too
  std::vector<const text::Node*> tables_;                     ///< of this layer
  std::optional<text::Span> training_;                        ///< where this layer has any
};

}  // namespace sudsmark::rules
