#include "proof/verify.h"

#include <utility>

#include "proof/example.h"
#include "proof/messages.h"
#include "rules/messages.h"
#include "text/diagnostic.h"

namespace sudsmark::proof {
namespace {

std::string sentence(const text::Message& message, std::vector<text::Argument> arguments) {
  return text::sentence({&message, std::move(arguments), {}});
}

/// What is wrong with an example; empty: it does as it should.
std::string fault(const rules::Ruleset& ruleset, std::uint32_t rule, const Example& example,
                  const catalogue::Catalogue& catalogue, const rules::Day& on) {
  const std::string& id = ruleset.rules[rule].id;
  if (!example.missing_line.empty()) {
    return sentence(messages::edge_line, {id, example.name(), example.missing_line});
  }
  const auto made = make(example.words, catalogue);
  if (!made->blend) {
    const text::Message& unreadable = made->wrong_in_base ? rules::messages::base_unreadable
                                                          : rules::messages::example_unreadable;
    return sentence(unreadable, {id, example.name(), made->wrong});
  }
  std::string message;
  const Kind gives = outcome(ruleset, rule, *made, on, &message);
  if (gives == example.gives) return {};
  if (!message.empty()) message = " (" + message + ")";
  const std::string expected =
      example.edge ? ", and should give " + std::string(kind_word(example.gives)) : std::string();
  return sentence(rules::messages::example_wrong,
                  {id, example.name(), std::string(kind_word(gives)), message + expected});
}

}  // namespace

Verified verify(const rules::Ruleset& ruleset, const catalogue::Catalogue& catalogue,
                const Edges& edges, const rules::Day& on) {
  Verified out;
  for (std::uint32_t at = 0; at < ruleset.rules.size(); ++at) {
    const rules::Rule& rule = ruleset.rules[at];
    if (!rule.decided_by.empty()) continue;  // what decides it is not there to be asked
    const auto note = [&](std::string message) {
      out.findings.push_back({at, std::move(message)});
    };
    const auto note_missing = [&](bool there, std::string kind) {
      if (!there) note(sentence(rules::messages::example_missing, {rule.id, std::move(kind)}));
    };
    note_missing(!rule.words->passes.empty() || !rule.words->pair_passes.empty(), "passes");
    for (const Example& example : examples_of(rule, edges.of_rule[at])) {
      ++out.ran;
      std::string wrong = fault(ruleset, at, example, catalogue, on);
      if (!wrong.empty()) note(std::move(wrong));
    }
    note_missing(!rule.words->fails.empty() || !rule.words->pair_fails.empty(), "fails");
  }
  return out;
}

}  // namespace sudsmark::proof
