// Rulesets: the catalogue and the rules that a check goes by.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <sudsmark/results.h>

namespace sudsmark {

/// A YAML file of rules, materials, tables or measures, as text.
struct RulesetText {
  std::string path;  ///< as errors call it
  std::string text;
};

/// The rules in force. Cheap to copy, never changed, safe to use from any number of threads.
class Rulesets {
 public:
  struct Parts;

  /// What is built into the program.
  [[nodiscard]] static Rulesets built_in();

  /// Adds files to these rulesets, or replaces where an id is the same. Errors go to `problems`;
  /// with any, the result is the same as before. `bare` leaves the built-in rules out and keeps the
  /// catalogue.
  [[nodiscard]] Rulesets with(const std::vector<RulesetText>& files, bool bare,
                              std::vector<Problem>& problems) const;

  [[nodiscard]] const Parts& parts() const { return *parts_; }

 private:
  explicit Rulesets(std::shared_ptr<const Parts> parts) : parts_(std::move(parts)) {}
  std::shared_ptr<const Parts> parts_;
};

}  // namespace sudsmark
