// Baselines: written as JSON, read strictly, and held against a run.
#include <sudsmark/baseline.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <filesystem>
#include <map>
#include <set>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include "report/check/baseline_reader.h"
#include "report/json_document.h"
#include "wording/margin.h"
#include "wording/words.h"

namespace sudsmark {
using namespace wording;

namespace {

using nlohmann::json;
using report::Json;
using report::JsonDocument;
using report::number;

constexpr int version = 2;
constexpr std::array kinds{Kind::fail, Kind::review, Kind::open};
constexpr std::array levels{Level::none, Level::note, Level::warning, Level::error};

/// A path as it is the same however it was typed and wherever the program was called: from the
/// folder of the baseline's file. Standard input stays what it is.
std::string plain(const std::string& path, const std::string& baseline) {
  namespace fs = std::filesystem;
  if (path == "-") return path;
  std::error_code error;
  const fs::path file = fs::absolute(path, error).lexically_normal();
  const fs::path folder = fs::absolute(baseline.empty() ? "." : baseline, error).lexically_normal();
  const fs::path from = baseline.empty() ? folder : folder.parent_path();
  const std::string out = file.lexically_proximate(from).generic_string();
  return error || out.empty() ? path : out;
}

bool counts(const Finding& finding) {
  return !finding.fingerprint.empty() && !finding.allowed;
}

/// How heavy a kind is: what is broken weighs more than what may be, and that more than what is not
/// known.
int weight(Kind kind) {
  return kind == Kind::fail ? 2 : kind == Kind::review ? 1 : 0;
}

/// What a baseline knows of a finding.
struct Entry {
  AbsentFinding finding;
  std::optional<double> room;  ///< see room_of
};

/// How far a figure is from its limit, in shares of the limit: less is worse.
std::optional<double> room_of(const Finding& finding) {
  if (!finding.measured || !finding.limit) return std::nullopt;
  const double room = wording::margin(*finding.measured, *finding.limit).relative;
  return std::isfinite(room) ? std::optional(room) : std::nullopt;
}

Standing standing(const Finding& now, const Entry& before) {
  const std::pair weight_now(now.level, weight(now.kind));
  const std::pair weight_then(before.finding.level, weight(before.finding.kind));
  if (weight_now != weight_then) {
    return weight_now > weight_then ? Standing::fresh : Standing::better;
  }
  const auto room = room_of(now);
  if (!room || !before.room) return Standing::unchanged;
  // the file keeps ten digits
  const double same = 1e-8 * std::max(1.0, std::abs(*before.room));
  if (std::abs(*room - *before.room) <= same) return Standing::unchanged;
  return *room < *before.room ? Standing::fresh : Standing::better;
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

using Known = std::map<std::pair<std::string, std::string>, Entry>;

std::optional<std::string> read(std::string_view text, Known& known) {
  return read_baseline(text, version, [&known](const json& object) {
    auto finding = finding_of(object);
    if (!finding) return false;
    std::pair key{finding->file, finding->fingerprint};
    const auto room = object.find("room");
    const bool figure = room != object.end() && room->is_number();
    known.emplace(
        std::move(key),
        Entry{std::move(*finding), figure ? std::optional(room->get<double>()) : std::nullopt});
    return true;
  });
}

/// What is odd where a baseline and a run have findings and no file in common.
std::optional<std::string> no_path_met(const Known& known,
                                       const std::map<std::string, std::string>& files,
                                       bool some_fresh) {
  const auto met = [&](const auto& entry) { return files.contains(entry.first.first); };
  if (known.empty() || !some_fresh || std::any_of(known.begin(), known.end(), met)) {
    return std::nullopt;
  }
  return "no file of this run is in it: it knows '" + known.begin()->first.first +
         "', and this run has '" + files.begin()->first + "', both as seen from its own folder";
}

}  // namespace

std::string baseline_text(const RunResult& run, const std::string& path) {
  std::map<std::pair<std::string, std::string>, Json> entries;
  for (const FormulaResult& formula : run.formulas) {
    const std::string file = plain(formula.file, path);
    for (const Finding& finding : formula.findings) {
      if (!counts(finding)) continue;
      Json entry{{"file", file}, {"rule", finding.rule}};
      if (!finding.subject.empty()) entry["subject"] = finding.subject;
      entry["kind"] = wording::kind_word(finding.kind);
      entry["level"] = wording::level_word(finding.level);
      entry["line"] = finding.line;
      entry["message"] = finding.message;
      if (const auto room = room_of(finding)) entry["room"] = number(room);
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

Result<RunResult> with_baseline(RunResult run, std::string_view text, const std::string& path) {
  Known known;
  if (auto error = read(text, known)) return {{}, {{{}, 0, 0, std::move(*error), {}}}};
  run.compared = true;
  std::map<std::string, std::string> files;  // as the baseline calls them and as the run does
  std::set<std::pair<std::string, std::string>> met;
  bool some_fresh = false;
  for (FormulaResult& formula : run.formulas) {
    const std::string file = plain(formula.file, path);
    files.emplace(file, formula.file);
    for (Finding& finding : formula.findings) {
      if (!counts(finding)) continue;
      const auto before = known.find({file, finding.fingerprint});
      if (before != known.end()) met.insert(before->first);
      finding.standing =
          before == known.end() ? Standing::fresh : standing(finding, before->second);
      some_fresh = some_fresh || finding.standing == Standing::fresh;
    }
  }
  for (auto& [key, entry] : known) {
    const auto file = files.find(key.first);
    if (met.contains(key) || file == files.end()) continue;
    run.absent.push_back(std::move(entry.finding));
    run.absent.back().file = file->second;
  }
  Result<RunResult> out{std::move(run), {}};
  if (auto hint = no_path_met(known, files, some_fresh)) {
    out.problems.push_back({{}, 0, 0, std::move(*hint), {}});
  }
  return out;
}

}  // namespace sudsmark
