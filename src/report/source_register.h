// The sources that one formula's page leans on, numbered, those that weigh most first.
#pragma once

#include <string>
#include <vector>

#include <sudsmark/results.h>

namespace sudsmark::report {

class SourceRegister {
 public:
  explicit SourceRegister(const FormulaResult& formula);

  /// Numbers from 1, rising, each once.
  [[nodiscard]] std::vector<std::size_t> numbers(const std::vector<SourceNote>& notes) const;
  /// Whether it stands behind something that a page tells with its number: what is not kept, and
  /// what is in the formula.
  [[nodiscard]] bool is_told(std::size_t at) const { return told_[at]; }
  /// Whether any of a kind does.
  [[nodiscard]] bool is_told(const std::string& kind) const;
  /// In the order of their numbers: published, common practice, from memory.
  [[nodiscard]] const std::vector<SourceNote>& all() const { return all_; }

 private:
  void add(const std::vector<SourceNote>& notes);
  std::vector<SourceNote> all_;
  std::vector<bool> told_;  ///< of each
};

}  // namespace sudsmark::report
