#include "report/check/baseline_reader.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <utility>

namespace sudsmark {
namespace {

using nlohmann::json;
using Event = json::parse_event_t;

/// A baseline is an object, its findings a list, a finding an object of texts and figures; what
/// else somebody adds may be this deep. The reader keeps a bit for every bracket that is open.
constexpr int most_depth = 64;
constexpr std::array<std::string_view, 9> members{
    "file", "rule", "subject", "kind", "level", "line", "message", "room", "fingerprint"};

/// Ends the reading with words.
struct Stopped {
  std::string words;
};

class Reader {
 public:
  Reader(int version, const std::function<bool(const json&)>& take)
      : version_(version), take_(take) {}

  /// Whether the reader of JSON keeps what it is at.
  bool operator()(int depth, Event event, json& parsed) {
    if (depth > most_depth) throw Stopped{"its brackets stand more than 64 deep"};
    const bool begins = event == Event::object_start || event == Event::array_start;
    if (depth == 0) return outermost(event);
    if (depth == 1) return member(event, parsed);
    if (depth == 2 && in_findings_) return finding(event, parsed);
    if (event == Event::key) return std::count(members.begin(), members.end(), name(parsed)) > 0;
    return !begins;
  }

  [[nodiscard]] std::optional<std::string> judged() const {
    if (!findings_ || !numbered_) return "it is no baseline of sudsmark";
    if (!of_version_) return of_another().words;
    return std::nullopt;
  }

 private:
  static Stopped of_another() { return {"it is a baseline of another version"}; }

  static std::string_view name(const json& key) { return key.get_ref<const std::string&>(); }

  static bool outermost(Event event) {
    if (event == Event::array_start || event == Event::value) {
      throw Stopped{"it is no baseline of sudsmark"};
    }
    return true;
  }

  /// A member of the document, or a list or an object that one is.
  bool member(Event event, const json& parsed) {
    if (event == Event::key) {
      key_ = name(parsed);
      numbered_ = numbered_ || key_ == "baseline";
      return key_ == "baseline" || key_ == "findings";
    }
    if (event == Event::value && key_ == "baseline" && parsed != version_) throw of_another();
    of_version_ = of_version_ || (event == Event::value && key_ == "baseline");
    in_findings_ = event == Event::array_start && key_ == "findings";
    findings_ = findings_ || in_findings_;
    return in_findings_;
  }

  bool finding(Event event, const json& parsed) {
    if (event == Event::object_start) return true;
    ++at_;
    const bool whole = event == Event::object_end && take_(parsed);
    if (!whole) throw Stopped{"finding " + std::to_string(at_) + " of it is not whole"};
    return false;
  }

  int version_;
  const std::function<bool(const json&)>& take_;
  std::string key_;
  std::size_t at_ = 0;
  bool numbered_ = false;
  bool of_version_ = false;
  bool findings_ = false;
  bool in_findings_ = false;
};

}  // namespace

std::optional<std::string> read_baseline(std::string_view text, int version,
                                         const std::function<bool(const json&)>& take) {
  Reader reader(version, take);
  try {
    const auto ask = [&reader](int depth, Event event, json& parsed) {
      return reader(depth, event, parsed);
    };
    if (json::parse(text, ask, false).is_discarded()) return "it is no JSON";
  } catch (Stopped& stopped) {
    return std::move(stopped.words);
  }
  return reader.judged();
}

}  // namespace sudsmark
