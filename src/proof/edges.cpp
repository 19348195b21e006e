#include "proof/edges.h"

#include <array>
#include <charconv>
#include <optional>
#include <utility>

#include "proof/messages.h"
#include "text/name.h"
#include "text/yaml.h"
#include "text/yaml_fields.h"

namespace sudsmark::proof {
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

std::size_t examples_of(const rules::Rule& rule, bool that_pass) {
  return that_pass ? rule.words->passes.size() + rule.words->pair_passes.size()
                   : rule.words->fails.size() + rule.words->pair_fails.size();
}

std::optional<Kind> find_kind(std::string_view word) {
  constexpr std::array kinds{Kind::pass, Kind::fail, Kind::review, Kind::open,
                             Kind::not_applicable};
  for (const Kind kind : kinds) {
    if (kind_word(kind) == word) return kind;
  }
  return std::nullopt;
}

/// `{ of: passes 1, take: 26 % SLSA, put: 36.1 % SLSA, gives: fail }`
std::optional<Edge> read_edge(const text::Node& node, const rules::Rule& rule,
                              text::Diagnostics& diagnostics) {
  text::Fields fields(node, diagnostics);
  if (!fields.valid()) return std::nullopt;
  Edge edge;
  const text::Node* of = fields.needed("of");
  const text::Node* gives = fields.needed("gives");
  static_cast<void>(fields.needed("take"));
  edge.take = fields.strings("take");
  edge.put = fields.strings("put");
  fields.refuse_others();
  if (of == nullptr || gives == nullptr || edge.take.empty()) return std::nullopt;
  const auto of_words = text::text_of(*of, diagnostics);
  const auto kind_words = text::text_of(*gives, diagnostics);
  if (!of_words || !kind_words) return std::nullopt;
  if (!read_example_name(*of_words, edge) || edge.number > examples_of(rule, edge.of_pass)) {
    diagnostics.add(messages::edge_example, of->span, {*of_words});
    return std::nullopt;
  }
  const auto kind = find_kind(*kind_words);
  if (!kind) {
    diagnostics.add(messages::edge_verdict, gives->span, {*kind_words});
    return std::nullopt;
  }
  edge.gives = *kind;
  return edge;
}

/// `{ change: …, because: … }`
std::optional<Unnoticed> read_unnoticed(const text::Node& node, text::Diagnostics& diagnostics) {
  text::Fields fields(node, diagnostics);
  if (!fields.valid()) return std::nullopt;
  static_cast<void>(fields.needed("change"));
  Unnoticed one{fields.strings("change"), fields.needed_text("because")};
  fields.refuse_others();
  return one;
}

}  // namespace

void read_edges(const text::Sources& sources, text::FileIndex file, const rules::Ruleset& ruleset,
                Edges& edges, text::Diagnostics& diagnostics) {
  const auto root = text::read_yaml(sources, file, diagnostics);
  if (!root || root->kind != text::Node::Kind::map) return;
  const text::Node nothing;
  const auto items = [&](std::string_view key) -> const std::vector<text::Node>& {
    const text::Node* const found = root->find(key);
    if (found == nullptr || !text::Fields(*found, diagnostics).valid()) return nothing.items;
    return found->items;
  };
  const auto unknown = [&](const text::Message& message, const text::Node& node) {
    diagnostics.add(message, node.key_span,
                    {node.key, text::perhaps(ruleset.near_rules(node.key))});
  };
  for (const text::Node& of_rule : items("edges")) {
    const auto at = ruleset.find_rule(of_rule.key);
    if (!at) {
      unknown(messages::edge_rule, of_rule);
      continue;
    }
    for (const text::Node& node : text::list_of(of_rule, diagnostics)) {
      auto edge = read_edge(node, ruleset.rules[*at], diagnostics);
      if (edge) edges.of_rule[*at].push_back(std::move(*edge));
    }
  }
  for (const text::Node& of_subject : items("unnoticed")) {
    const auto rule = ruleset.find_rule(of_subject.key);
    const auto measure = ruleset.find_measure(of_subject.key);
    if (!rule && !measure) {
      unknown(messages::edge_subject, of_subject);
      continue;
    }
    auto& into = rule ? edges.unnoticed_of_rule[*rule] : edges.unnoticed_of_measure[*measure];
    for (const text::Node& node : text::list_of(of_subject, diagnostics)) {
      auto one = read_unnoticed(node, diagnostics);
      if (one) into.push_back(std::move(*one));
    }
  }
}

}  // namespace sudsmark::proof
