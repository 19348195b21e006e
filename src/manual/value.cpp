#include "manual/value.h"

#include "formula/vocabulary.h"
#include "front/parts.h"
#include "measures/registry.h"

namespace sudsmark::manual {

Value value_of(const cli::DeclaredOption& option) {
  if (option.shape.ends_with("[=PATH]")) return Value::words_with_path;
  if (!option.choices.empty()) return Value::words;
  if (option.shape.starts_with("RULE")) return Value::rules;
  if (option.shape.starts_with("MARKET")) return Value::markets;
  if (option.shape.ends_with("FILE") || option.shape == "DIR") return Value::file;
  return Value::nothing;
}

Value value_of_words(const cli::Declaration& command) {
  if (command.words == "NAME") return Value::topic;
  return command.words.empty() ? Value::nothing : Value::formula;
}

Names built_in_names() {
  const Rulesets rulesets = Rulesets::built_in();
  const rules::Ruleset& ruleset = front::parts(rulesets).ruleset;
  Names out;
  for (const rules::Rule& rule : ruleset.rules) out.rules.push_back(rule.id);
  out.topics = out.rules;
  for (const rules::RuleFile& file : ruleset.files) out.topics.push_back(file.name);
  for (const measures::Measure& measure : measures::all()) out.topics.emplace_back(measure.name);
  for (const rules::NamedMeasure& measure : ruleset.measures) out.topics.push_back(measure.name);
  out.markets.assign(formula::vocabulary::markets.begin(), formula::vocabulary::markets.end());
  return out;
}

std::string in_a_row(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : " ") + word;
  return out;
}

}  // namespace sudsmark::manual
