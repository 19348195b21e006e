// Rulesets: the catalogue and the rules that a check goes by.
#pragma once

#include <chrono>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <sudsmark/results.h>
#include <sudsmark/rules.h>

namespace sudsmark {

namespace front {
struct RulesetsAccess;
}

/// A YAML file of rules, materials, tables or measures, as text.
struct RulesetText {
  std::string path;  ///< as errors call it
  std::string text;
};

/// The rules in force. Cheap to copy, never changed, safe to use from any number of threads.
class Rulesets {
 public:
  /// What is built into the program.
  [[nodiscard]] static Rulesets built_in();

  /// Adds files to these rulesets, or replaces where an id is the same. No value, with problems, if
  /// a file cannot be used. `bare` leaves the built-in rules out and keeps the catalogue.
  [[nodiscard]] Result<Rulesets> with(const std::vector<RulesetText>& files,
                                      bool bare = false) const;

  /// The rules, in the order in which they are asked.
  [[nodiscard]] std::vector<RuleInfo> rules() const;
  /// The rule of that id, which may be spelt as people spell names.
  [[nodiscard]] std::optional<RuleInfo> rule(std::string_view id) const;
  /// The files of rules with their editions.
  [[nodiscard]] std::vector<RulesetInfo> files() const;

 private:
  struct Parts;
  friend struct front::RulesetsAccess;
  explicit Rulesets(std::shared_ptr<const Parts> parts) : parts_(std::move(parts)) {}
  std::shared_ptr<const Parts> parts_;
};

/// Runs the examples of every rule as on a day; absent: today.
[[nodiscard]] ExampleRun verify_examples(
    const Rulesets& rulesets, std::optional<std::chrono::year_month_day> on = std::nullopt);

}  // namespace sudsmark
