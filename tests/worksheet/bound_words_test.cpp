// Dust in air is never more than an upper bound here, and no output may call it anything else.
#include <cctype>
#include <nlohmann/json.hpp>

#include <sudsmark/report.h>

#include "estuary.h"
#include "written.h"

namespace {

using namespace sudsmark;
using namespace sudsmark::testing;

RunResult checked_in_full(const std::string& name) {
  CheckOptions options = in_full();
  options.sheet = true;
  RunResult run = check({name, file_contents(golden(name))}, Rulesets::built_in(), options);
  for (const Problem& problem : run.problems) FAIL(problem.message);
  return run;
}

std::string lower(std::string text) {
  for (char& letter : text)
    letter = static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
  return text;
}

/// The entry, sentence or line around a place: what stands between blank lines or full stops.
std::string around(const std::string& text, std::size_t at) {
  const std::size_t reach = 320;
  const std::size_t from = at < reach ? 0 : at - reach;
  return lower(text.substr(from, 2 * reach));
}

void check_words(const std::string& text, const std::string& called) {
  std::size_t found = 0;
  for (std::size_t at = text.find("mg/m3"); at != std::string::npos;
       at = text.find("mg/m3", at + 1)) {
    ++found;
    const std::string near = around(text, at);
    const bool named = near.find("bound") != std::string::npos ||
                       near.find("limit") != std::string::npos ||
                       near.find("trigger") != std::string::npos;
    CHECK_MESSAGE(named, called, ": ", near);
  }
  CHECK_MESSAGE(found > 0, called);
  const std::string all = lower(text);
  for (const char* wrong :
       {"measured concentration", "predicted", "concentration is", "concentration of dust is",
        "you breathe", "expected concentration", "estimated", "measured dust", "dust level of",
        "exposure is", "is safe", "safe level of"}) {
    for (std::size_t at = all.find(wrong); at != std::string::npos; at = all.find(wrong, at + 1)) {
      // "no safe level", "not the same as safe", "never a prediction" say the opposite
      const std::string before = all.substr(at < 12 ? 0 : at - 12, at < 12 ? at : 12);
      const bool denied = before.find("no ") != std::string::npos ||
                          before.find("not ") != std::string::npos ||
                          before.find("never ") != std::string::npos;
      CHECK_MESSAGE(denied, called, ": ", around(text, at));
    }
  }
}

/// Every figure in mg/m3 or g/m3 stands under a name that says what it is.
void check_keys(const nlohmann::json& node, const std::string& key) {
  if (node.is_object() && node.contains("unit")) {
    const std::string unit = node["unit"].is_string() ? node["unit"].get<std::string>() : "";
    if (unit == "mg/m3" || unit == "g/m3") {
      const std::string name = node.value("name", key);  // an axis has a name of its own
      const bool named = name.find("bound") != std::string::npos || key == "limit" ||
                         key == "dust.cloud" || key.starts_with("vapour.");
      CHECK_MESSAGE(named, key);
    }
  }
  if (node.is_object()) {
    for (const auto& [name, child] : node.items()) check_keys(child, name);
  } else if (node.is_array()) {
    for (const auto& child : node) check_keys(child, key);
  }
}

}  // namespace

TEST_CASE("no output names a bound as measured or predicted") {
  const Rulesets rulesets = Rulesets::built_in();
  for (const char* name : {"twenty-bags.formula", "tenth-of-a-gram.formula"}) {
    const RunResult run = checked_in_full(name);
    check_words(written(Command::check, "text", &run, {true, false, false}),
                std::string(name) + " text");
    check_words(written(Command::measure, "text", &run), std::string(name) + " measures");
    check_words(written(Command::sheet, "text", &run), std::string(name) + " sheet");
    check_words(written(Command::check, "html", &run, rulesets), std::string(name) + " html");
    check_keys(nlohmann::json::parse(written(Command::check, "json", &run, rulesets)), "json");
    check_keys(nlohmann::json::parse(written(Command::measure, "json", &run)), "measures");
    check_keys(nlohmann::json::parse(written(Command::check, "sarif", &run, rulesets)), "sarif");
  }
}

TEST_CASE("the words of the program about dust: explain") {
  const Rulesets rulesets = Rulesets::built_in();
  for (const char* name : {"dust.bound", "dust.bound_respirable", "dust.bound_short",
                           "dust.of_limit", "dust-bound-over-trigger", "dust-bound-over-limits"}) {
    const auto topic = find_topic(name, rulesets);
    REQUIRE_MESSAGE(topic, name);
    const std::string page = lower(written(Command::explain, "text", &*topic, rulesets));
    CHECK_MESSAGE(page.find("bound") != std::string::npos, name);
    CHECK_MESSAGE(page.find("predicted") == std::string::npos, name);
    CHECK_MESSAGE(page.find("measured concentration") == std::string::npos, name);
  }
}
