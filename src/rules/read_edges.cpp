// Edges of rules, and changes that go unnoticed, by the id of the rule or the name of the measure.
#include <array>
#include <charconv>

#include "rules/builder.h"
#include "rules/messages.h"
#include "text/name.h"

namespace sudsmark::rules {
namespace {

/// "passes 1", "fails 2".
bool read_example_name(std::string_view words, Edge& edge) {
  constexpr std::string_view passes = "passes ";
  constexpr std::string_view fails = "fails ";
  edge.of_pass = words.starts_with(passes);
  if (!edge.of_pass && !words.starts_with(fails)) return false;
  words.remove_prefix(edge.of_pass ? passes.size() : fails.size());
  const char* const end = words.data() + words.size();
  const auto [stop, error] = std::from_chars(words.data(), end, edge.number);
  if (error != std::errc() || stop != end || edge.number == 0) return false;
  return true;
}

std::size_t examples_of(const Rule& rule, bool that_pass) {
  return that_pass ? rule.passes.size() + rule.pair_passes.size()
                   : rule.fails.size() + rule.pair_fails.size();
}

std::optional<Kind> find_kind(std::string_view word) {
  constexpr std::array kinds{Kind::pass, Kind::fail, Kind::review, Kind::open,
                             Kind::not_applicable};
  for (const Kind kind : kinds) {
    if (kind_word(kind) == word) return kind;
  }
  return std::nullopt;
}

}  // namespace

void RulesetBuilder::read_edges(const text::Node& of_rules) {
  text::Fields ids(of_rules, diagnostics_);
  if (!ids.valid()) return;
  for (const text::Node& of_rule : of_rules.items) {
    const auto at = ruleset_.find_rule(of_rule.key);
    if (!at) {
      diagnostics_.add(messages::edge_rule, of_rule.key_span,
                       {of_rule.key, text::perhaps(ruleset_.near_rules(of_rule.key))});
      continue;
    }
    for (const text::Node& edge : text::list_of(of_rule, diagnostics_)) {
      read_edge(edge, ruleset_.rules[*at]);
    }
  }
}

/// `{ of: passes 1, take: 26 % SLSA, put: 36.1 % SLSA, gives: fail }`
void RulesetBuilder::read_edge(const text::Node& node, Rule& rule) {
  text::Fields fields(node, diagnostics_);
  if (!fields.valid()) return;
  Edge edge;
  edge.span = node.span;
  const text::Node* of = fields.needed("of");
  const text::Node* gives = fields.needed("gives");
  edge.take = fields.strings("take");
  edge.put = fields.strings("put");
  static_cast<void>(fields.needed("take"));
  fields.refuse_others();
  if (of == nullptr || gives == nullptr || edge.take.empty()) return;
  const auto of_words = text::text_of(*of, diagnostics_);
  const auto kind_words = text::text_of(*gives, diagnostics_);
  if (!of_words || !kind_words) return;
  if (!read_example_name(*of_words, edge) || edge.number > examples_of(rule, edge.of_pass)) {
    diagnostics_.add(messages::edge_example, of->span, {*of_words});
    return;
  }
  const auto kind = find_kind(*kind_words);
  if (!kind) {
    diagnostics_.add(messages::edge_verdict, gives->span, {*kind_words});
    return;
  }
  edge.gives = *kind;
  rule.edges.push_back(std::move(edge));
}

/// `{ change: …, because: … }` below the id of a rule or the name of a measure.
void RulesetBuilder::read_unnoticed(const text::Node& of_subjects) {
  text::Fields names(of_subjects, diagnostics_);
  if (!names.valid()) return;
  for (const text::Node& of_subject : of_subjects.items) {
    const auto rule = ruleset_.find_rule(of_subject.key);
    const auto measure = ruleset_.find_measure(of_subject.key);
    if (!rule && !measure) {
      diagnostics_.add(messages::edge_subject, of_subject.key_span,
                       {of_subject.key, text::perhaps(ruleset_.near_rules(of_subject.key))});
      continue;
    }
    for (const text::Node& node : text::list_of(of_subject, diagnostics_)) {
      text::Fields fields(node, diagnostics_);
      if (!fields.valid()) continue;
      Unnoticed one;
      one.span = node.span;
      static_cast<void>(fields.needed("change"));
      one.changes = fields.strings("change");
      one.because = fields.needed_text("because");
      fields.refuse_others();
      (rule ? ruleset_.rules[*rule].unnoticed : ruleset_.measures[*measure].unnoticed)
          .push_back(std::move(one));
    }
  }
}

}  // namespace sudsmark::rules
