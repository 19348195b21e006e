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
    std::string words = name_of(*finding);
    if (!words.empty()) {
      words = "on " + words + lines_of({finding});
    } else if (rule != nullptr && !rule->words->telling.in_short.empty()) {
      words = rule->words->telling.in_short;
    } else {
      words = once_joined({finding}, 1) + lines_of({finding});
    }
    if (std::find(named.begin(), named.end(), words) == named.end()) named.push_back(words);
  }
  return joined(named);
}

std::string waiting_words(const Waiting& waiting) {
  constexpr std::size_t most = 3;
  const bool one = waiting.checks == 1;
  return std::to_string(waiting.checks) + (one ? " check waits for: " : " checks wait for: ") +
         (waiting.missing.empty() ? waiting.first->message : once_joined({waiting.first}, most));
}

}  // namespace sudsmark::report
