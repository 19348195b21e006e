#include "report/short_words.h"

#include <algorithm>
#include <vector>

#include "report/maker_words.h"
#include "report/prose.h"
#include "wording/margin.h"
#include "wording/words.h"

namespace sudsmark::report {
namespace {

using wording::harmless;
using wording::joined;

std::string once_joined(const Findings& findings, std::size_t most) {
  std::vector<std::string> things;
  for (const Finding* finding : findings) {
    for (const std::string& thing : finding->missing) {
      if (std::find(things.begin(), things.end(), thing) == things.end()) things.push_back(thing);
    }
  }
  if (things.size() <= most) return joined(things);
  const std::size_t more = things.size() - most + 1;
  things.resize(most - 1);
  things.push_back(std::to_string(more) + " more");
  return joined(things);
}

/// What a short word is said of; empty where its line says it well enough.
std::string name_of(const Finding& finding) {
  if (finding.subject_kind == "material") return maker_name(finding);
  if (finding.subject_kind == "row") return harmless(uncapital(finding.subject));
  return {};
}

/// The figure of the whole product beside its limit, where it tells something: "0.36 instead
/// of at least 0.5".
std::string figure_of(const Finding& finding) {
  const bool whole = finding.subject.empty() && !finding.bound;
  if (!whole || wording::nothing_to_show(finding)) return {};
  if (finding.limit->high == 0.0) return {};
  const std::string shown = wording::shown(*finding.measured);
  const std::string limit = wording::wanted(*finding.limit);
  return limit.find(shown) == std::string::npos ? shown + " instead of " + limit : std::string();
}

/// "peroxide value of limonene": the paper without its terms.
std::string paper_on(const std::string& name, const Finding& finding) {
  std::string words = once_joined({&finding}, 1);
  words.resize(std::min({words.find(','), words.find(" ("), words.size()}));
  constexpr std::string_view of_it = "the material";
  if (words.ends_with(of_it)) return words.substr(0, words.size() - of_it.size()) + name;
  const bool named = words.find(finding.subject) != std::string::npos;
  return named ? words : words + " for " + name;
}

}  // namespace

std::string lines_of(const Findings& findings) {
  std::vector<std::uint32_t> lines;
  for (const Finding* finding : findings) {
    if (finding->line > 0) lines.push_back(finding->line);
  }
  std::sort(lines.begin(), lines.end());
  lines.erase(std::unique(lines.begin(), lines.end()), lines.end());
  std::string out;
  for (const std::uint32_t line : lines) out += (out.empty() ? " (" : ", ") + std::to_string(line);
  return out.empty() ? out : out + ")";
}

std::string in_short(const InShort& one) {
  std::vector<std::string> named;
  Findings unnamed;
  Findings of = one.of;
  std::stable_partition(of.begin(), of.end(),
                        [](const Finding* finding) { return finding->kind == Kind::fail; });
  for (const Finding* finding : of) {
    std::string name = name_of(*finding);
    if (name.empty()) name = figure_of(*finding);
    if (name.empty()) {
      unnamed.push_back(finding);
      continue;
    }
    if (finding->kind == Kind::review) name = "perhaps " + name;
    if (finding->subject_kind != "row") name += lines_of({finding});
    if (std::find(named.begin(), named.end(), name) == named.end()) named.push_back(name);
  }
  std::string out = one.words + lines_of(unnamed);
  for (std::size_t at = 0; at < named.size(); ++at) out += (at == 0 ? ": " : ", ") + named[at];
  return out;
}

std::string papers_in_short(const Findings& papers, const RuleIndex& rules) {
  std::vector<std::string> named;
  for (const Finding* finding : papers) {
    const rules::Rule* rule = rules.of(*finding);
    const std::string name = name_of(*finding);
    std::string words;
    if (!name.empty()) {
      words = paper_on(name, *finding) + lines_of({finding});
    } else if (rule != nullptr && !rule->words->telling.in_short.empty()) {
      words = rule->words->telling.in_short;
    } else {
      words = once_joined({finding}, 1) + lines_of({finding});
    }
    if (std::find(named.begin(), named.end(), words) == named.end()) named.push_back(words);
  }
  return joined(named);
}

std::string waited_for(const Waiting& waiting) {
  constexpr std::size_t most = 3;
  return waiting.missing.empty() ? waiting.first->message : once_joined({waiting.first}, most);
}

std::string waiting_words(const Waiting& waiting) {
  const bool one = waiting.checks == 1;
  return std::to_string(waiting.checks) + (one ? " check waits for: " : " checks wait for: ") +
         waited_for(waiting);
}

}  // namespace sudsmark::report
