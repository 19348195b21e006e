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
  /// In the order of their numbers: published, common practice, from memory.
  [[nodiscard]] const std::vector<SourceNote>& all() const { return all_; }

 private:
  void add(const std::vector<SourceNote>& notes);
  std::vector<SourceNote> all_;
};

}  // namespace sudsmark::report
