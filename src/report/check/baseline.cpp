// Baselines: written as JSON, read strictly, and held against a run.
#include <sudsmark/baseline.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <map>
#include <set>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include "report/json_document.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace {

using nlohmann::json;
using report::Json;
using report::JsonDocument;

constexpr int version = 1;
constexpr std::array kinds{Kind::fail, Kind::review, Kind::open};
constexpr std::array levels{Level::none, Level::note, Level::warning, Level::error};

/// A path as it is the same however it was typed: "./a//b" is "a/b".
std::string plain(const std::string& path) {
  return std::filesystem::path(path).lexically_normal().generic_string();
}

bool counts(const Finding& finding) {
  return !finding.fingerprint.empty() && !finding.allowed;
}

/// How heavy a kind is: what is broken weighs more than what may be, and that more than what is not
/// known.
int weight(Kind kind) {
  return kind == Kind::fail ? 2 : kind == Kind::review ? 1 : 0;
}

bool heavier(const Finding& now, const AbsentFinding& before) {
  return std::pair(now.level, weight(now.kind)) > std::pair(before.level, weight(before.kind));
}

std::string text_of(const json& object, const char* key) {
  const auto found = object.find(key);
  return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
}

template <typename Word, std::size_t count>
std::optional<Word> word_of(const std::string& text, const std::array<Word, count>& words,
                            std::string_view (*spelled)(Word)) {
  for (const Word word : words) {
    if (spelled(word) == text) return word;
  }
  return std::nullopt;
}

std::optional<AbsentFinding> finding_of(const json& object) {
  if (!object.is_object()) return std::nullopt;
  AbsentFinding out;
  out.file = text_of(object, "file");
  out.rule = text_of(object, "rule");
  out.subject = text_of(object, "subject");
  out.message = text_of(object, "message");
  out.fingerprint = text_of(object, "fingerprint");
  const auto kind = word_of(text_of(object, "kind"), kinds, &wording::kind_word);
  const auto level = word_of(text_of(object, "level"), levels, &wording::level_word);
  if (out.file.empty() || out.rule.empty() || out.fingerprint.empty() || !kind || !level) {
    return std::nullopt;
  }
  out.kind = *kind;
  out.level = *level;
  const auto line = object.find("line");
  if (line != object.end()) {
    if (!line->is_number_unsigned()) return std::nullopt;
    out.line = line->get<std::uint32_t>();
  }
  return out;
}

using Known = std::map<std::pair<std::string, std::string>, AbsentFinding>;

std::optional<std::string> read(std::string_view text, Known& known) {
  const json document = json::parse(text, nullptr, false);
  if (document.is_discarded()) return "it is no JSON";
  if (!document.is_object() || !document.contains("baseline") || !document.contains("findings") ||
      !document["findings"].is_array()) {
    return "it is no baseline of sudsmark";
  }
  if (document["baseline"] != version) return "it is a baseline of another version";
  std::size_t at = 0;
  for (const json& object : document["findings"]) {
    ++at;
    auto finding = finding_of(object);
    if (!finding) return "finding " + std::to_string(at) + " of it is not whole";
    std::pair key{finding->file, finding->fingerprint};
    known.emplace(std::move(key), std::move(*finding));
  }
  return std::nullopt;
}

}  // namespace

std::string baseline_text(const RunResult& run) {
  std::map<std::pair<std::string, std::string>, Json> entries;
  for (const FormulaResult& formula : run.formulas) {
    const std::string file = plain(formula.file);
    for (const Finding& finding : formula.findings) {
      if (!counts(finding)) continue;
      Json entry{{"file", file}, {"rule", finding.rule}};
      if (!finding.subject.empty()) entry["subject"] = finding.subject;
      entry["kind"] = wording::kind_word(finding.kind);
      entry["level"] = wording::level_word(finding.level);
      entry["line"] = finding.line;
      entry["message"] = finding.message;
      entry["fingerprint"] = finding.fingerprint;
      entries.emplace(std::pair(file, finding.fingerprint), std::move(entry));
    }
  }
  JsonDocument document(false);
  document.member("baseline", version);
  document.begin_list("findings");
  for (const auto& [key, entry] : entries) document.item_line(entry);
  return document.finished();
}

Result<RunResult> with_baseline(RunResult run, std::string_view text) {
  Known known;
  if (auto error = read(text, known)) return {{}, {{{}, 0, 0, std::move(*error), {}}}};
  run.compared = true;
  std::set<std::string> files;
  std::set<std::pair<std::string, std::string>> met;
  for (FormulaResult& formula : run.formulas) {
    const std::string file = plain(formula.file);
    files.insert(file);
    for (Finding& finding : formula.findings) {
      if (!counts(finding)) continue;
      const auto before = known.find({file, finding.fingerprint});
      if (before != known.end()) met.insert(before->first);
      const bool fresh = before == known.end() || heavier(finding, before->second);
      finding.standing = fresh ? Standing::fresh : Standing::unchanged;
    }
  }
  for (auto& [key, finding] : known) {
    if (met.count(key) == 0 && files.count(key.first) != 0) {
      run.absent.push_back(std::move(finding));
    }
  }
  return {std::move(run), {}};
}

}  // namespace sudsmark
