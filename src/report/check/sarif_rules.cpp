#include "report/check/sarif_rules.h"

#include <utility>

#include "report/check/sarif_text.h"
#include "wording/citations.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

/// Words of several lines: the line ends stay, all else that acts is made harmless.
std::string lines(std::string_view words) {
  std::string out;
  while (true) {
    const std::size_t end = words.find('\n');
    out += sarif_words(words.substr(0, end));
    if (end == std::string_view::npos) return out;
    out += '\n';
    words.remove_prefix(end + 1);
  }
}

/// "EmulsifierToOil" of "emulsifier-to-oil": a name as the format likes them.
std::string name_of(std::string_view id) {
  std::string out;
  bool start = true;
  for (const char c : id) {
    if (c == '-') {
      start = true;
      continue;
    }
    out += start && c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    start = false;
  }
  return out;
}

/// What stands in the help, in plain words or in Markdown; why there is such a rule stands in its
/// description, and the reminder in the driver's.
std::string help(const rules::Rule& rule, const front::Parts& parts, bool markdown) {
  const std::string bold = markdown ? "**" : "";
  const auto code = [&](const std::string& words) { return markdown ? "`" + words + "`" : words; };
  std::string out;
  const auto add = [&](const std::string& head, const std::string& words) {
    out += (out.empty() ? "" : "\n\n") + bold + head + bold + " " + words;
  };
  if (!rule.words->remedy.empty()) add("What to change:", rule.words->remedy);
  if (markdown) {
    if (!rule.words->expect_text.empty()) add("Must hold:", code(rule.words->expect_text));
    return out;
  }
  if (rule.decided_by == "label") {
    out += "\n\nHeld against: what `sudsmark label` says of the formula.";
  }
  if (rule.pair) out += "\nAsked of: a tweak and its base";
  // of a law its places stand among the taxonomies
  const bool law = parts.ruleset.files[rule.file].authority == rules::Authority::law;
  if (law && !out.empty()) return out;
  for (const SourceNote& note : wording::notes(rule.sources, parts.catalogue)) {
    out += "\nSource: " + wording::words(note);
  }
  return out;
}

}  // namespace

bool has_result(const Finding& finding) {
  return finding.kind == Kind::fail || finding.kind == Kind::open ||
         (finding.kind == Kind::review && !finding.met_from_memory);
}

void SarifRules::note(const FormulaResult& formula) {
  for (const Finding& finding : formula.findings) {
    if (has_result(finding) && !noted_.contains(finding.rule)) noted_.insert(finding.rule);
  }
}

std::vector<const rules::Rule*> SarifRules::listed() const {
  std::vector<const rules::Rule*> out;
  for (const rules::Rule& rule : parts_.ruleset.rules) {
    if (all_ || noted_.contains(rule.id)) out.push_back(&rule);
  }
  return out;
}

void SarifRules::write(const SarifLaw& law, JsonDocument& document) const {
  document.begin_list("rules");
  for (const rules::Rule* rule : listed()) document.item_line(descriptor(*rule, law));
  document.end();
}

Json SarifRules::descriptor(const rules::Rule& rule, const SarifLaw& law) const {
  const rules::RuleFile& file = parts_.ruleset.files[rule.file];
  Json out{{"id", rule.id}, {"name", name_of(rule.id)}};
  out["shortDescription"] = {{"text", sarif_words(rule.words->title)}};
  out["fullDescription"] = {
      {"text", lines(rule.words->why.empty() ? rule.words->title : rule.words->why)}};
  out["helpUri"] = "urn:sudsmark:rule:" + rule.id;
  out["help"] = {{"text", lines(help(rule, parts_, false))},
                 {"markdown", lines(help(rule, parts_, true))}};
  out["defaultConfiguration"] = {{"level", wording::level_word(rule.otherwise)}};
  Json relationships = law.relationships(rule);
  if (!relationships.empty()) out["relationships"] = std::move(relationships);
  Json properties{{"subject", file.subject},
                  {"authority", rules::authority_word(file.authority)},
                  {"concern", rules::concern_word(rule.words->telling.concern)}};
  if (!file.markets.empty()) properties["markets"] = file.markets;
  if (rule.pair) properties["askedOf"] = "a tweak and its base";
  properties["tags"] = Json::array({file.name});
  out["properties"] = std::move(properties);
  return out;
}

}  // namespace sudsmark::report
