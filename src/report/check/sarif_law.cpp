#include "report/check/sarif_law.h"

#include <algorithm>
#include <utility>

#include "wording/citations.h"
#include "wording/words.h"

namespace sudsmark::report {
using namespace wording;

void SarifLaw::note(const FormulaResult& formula, const RuleIndex& rules) {
  for (const Finding& finding : formula.findings) {
    if (finding.entry.empty() || finding.kind == Kind::pass) continue;
    const rules::Rule* rule = rules.of(finding);
    if (rule == nullptr || !is_law(*rule)) continue;
    std::vector<std::string>& entries = noted_[rule->file];
    if (std::find(entries.begin(), entries.end(), finding.entry) == entries.end()) {
      entries.push_back(finding.entry);
    }
  }
}

void SarifLaw::list(const std::vector<const rules::Rule*>& rules) {
  for (const rules::Rule* rule : rules) {
    if (!is_law(*rule)) continue;
    const auto [at, fresh] = by_file_.try_emplace(rule->file, taxonomies_.size());
    if (fresh) taxonomies_.emplace_back().file = rule->file;
    for (const std::string& place : places(*rule)) add(taxonomies_[at->second], place);
  }
  for (Taxonomy& taxonomy : taxonomies_) {
    for (const std::string& entry : noted_[taxonomy.file]) add(taxonomy, entry);
  }
}

bool SarifLaw::is_law(const rules::Rule& rule) const {
  return parts_.ruleset.files[rule.file].authority == rules::Authority::law;
}

void SarifLaw::add(Taxonomy& taxonomy, const std::string& id) {
  const auto [at, fresh] = taxonomy.index.try_emplace(id, taxonomy.taxa.size());
  if (fresh) taxonomy.taxa.push_back(id);
}

std::vector<std::string> SarifLaw::places(const rules::Rule& rule) const {
  std::vector<std::string> out;
  for (const SourceNote& note : notes(rule.sources, parts_.catalogue)) {
    std::string words = note.title;
    if (!note.where.empty()) words += (words.empty() ? "" : ", ") + note.where;
    if (!words.empty()) out.push_back(harmless(words));
  }
  return out;
}

const SarifLaw::Taxonomy* SarifLaw::of(const rules::Rule& rule) const {
  const auto at = by_file_.find(rule.file);
  return at == by_file_.end() ? nullptr : &taxonomies_[at->second];
}

Json SarifLaw::taxonomies() const {
  Json out = Json::array();
  for (const Taxonomy& taxonomy : taxonomies_) {
    const rules::RuleFile& file = parts_.ruleset.files[taxonomy.file];
    Json taxa = Json::array();
    for (const std::string& id : taxonomy.taxa) {
      taxa.push_back({{"id", id}});
    }
    std::string about = file.subject;
    if (!file.markets.empty()) about += " (" + joined(file.markets) + ")";
    Json one{{"name", file.name}};
    if (!file.edition.empty()) one["version"] = file.edition;
    one["shortDescription"] = {{"text", about}};
    one["isComprehensive"] = false;
    one["taxa"] = std::move(taxa);
    out.push_back(std::move(one));
  }
  return out;
}

Json SarifLaw::supported() const {
  Json out = Json::array();
  for (std::size_t at = 0; at < taxonomies_.size(); ++at) {
    out.push_back({{"name", parts_.ruleset.files[taxonomies_[at].file].name}, {"index", at}});
  }
  return out;
}

Json SarifLaw::relationships(const rules::Rule& rule) const {
  Json out = Json::array();
  const Taxonomy* taxonomy = of(rule);
  if (taxonomy == nullptr) return out;
  const auto at = static_cast<std::size_t>(taxonomy - taxonomies_.data());
  std::vector<std::string> seen;
  for (const std::string& place : places(rule)) {
    if (std::find(seen.begin(), seen.end(), place) != seen.end()) continue;
    seen.push_back(place);
    Json target{{"id", place},
                {"index", taxonomy->index.at(place)},
                {"toolComponent", {{"name", parts_.ruleset.files[rule.file].name}, {"index", at}}}};
    out.push_back({{"target", std::move(target)}, {"kinds", Json::array({"relevant"})}});
  }
  return out;
}

Json SarifLaw::taxa(const rules::Rule& rule, const Finding& finding) const {
  Json out = Json::array();
  if (!is_law(rule) || finding.entry.empty() || finding.kind == Kind::pass) return out;
  out.push_back(
      {{"id", finding.entry}, {"toolComponent", {{"name", parts_.ruleset.files[rule.file].name}}}});
  return out;
}

}  // namespace sudsmark::report
