// A rule that no expression decides: `decided by: label` with the messages of its cases.
#include <algorithm>

#include "rules/builder.h"
#include "rules/messages.h"
#include "text/name.h"

namespace sudsmark::rules {

void RulesetBuilder::read_decider(text::Fields& fields, Rule& rule) {
  rule.decided_by = fields.text("decided by");
  const text::Span place = fields.find("decided by")->span;
  std::vector<std::string> deciders;
  std::vector<std::string> ids;
  const DecidedRule* decided = nullptr;
  for (const DecidedRule& one : decided_rules()) {
    if (deciders.empty() || deciders.back() != one.decider) deciders.emplace_back(one.decider);
    if (one.decider != rule.decided_by) continue;
    ids.emplace_back(one.id);
    if (one.id == rule.id) decided = &one;
  }
  if (decided == nullptr) {
    if (ids.empty()) {
      diagnostics_.add(messages::unknown_decider, place,
                       {rule.decided_by, text::listed(deciders, "and")});
    } else if (!rule.id.empty()) {
      diagnostics_.add(messages::not_decided, rule.span,
                       {rule.id, rule.decided_by, text::hint(rule.id, ids)});
    }
    // one mistake, one message: what the rule says would be read if anything decided it
    for (const char* key : {"message", "messages"}) static_cast<void>(fields.find(key));
    failed_ = true;
    return;
  }
  if (decided->cases.size() == 1) {
    read_case(fields, "message", decided->cases.front(), rule);
  } else if (!decided->cases.empty()) {
    const text::Node* node = fields.needed("messages");
    failed_ = failed_ || node == nullptr;
    if (node == nullptr) return;
    text::Fields cases(*node, diagnostics_);
    for (const DecidedCase& one : decided->cases) read_case(cases, one.name, one, rule);
    cases.refuse_others();
  }
}

void RulesetBuilder::read_case(text::Fields& fields, std::string_view key, const DecidedCase& one,
                               Rule& rule) {
  CaseMessage message{std::string(one.name), {}};
  const std::string words = fields.needed_text(key);
  for (const char c : text::trimmed(words)) {
    message.text += c == '\n' ? ' ' : c;
  }
  const std::string_view odd = odd_hole(message.text, one.holes);
  if (!odd.empty()) {
    std::vector<std::string> holes;
    for (const std::string_view hole : one.holes) holes.push_back("{" + std::string(hole) + "}");
    diagnostics_.add(
        messages::hole_unknown, fields.find(key)->span,
        {std::string(odd), holes.empty() ? "" : "; known are " + text::listed(holes, "and")});
  }
  failed_ = failed_ || message.text.empty() || !odd.empty();
  rule.words->cases.push_back(std::move(message));
}

}  // namespace sudsmark::rules
