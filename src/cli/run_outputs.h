// The reports of a run while it goes on: what can leave formula by formula does.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "cli/exit.h"
#include "cli/outputs.h"
#include "cli/run_files.h"

namespace sudsmark::cli {

class RunOutputs {
 public:
  /// Begins them. All three outlive it.
  RunOutputs(const Outputs& outputs, const Rulesets& rulesets, const Inputs& inputs);
  ~RunOutputs();
  RunOutputs(const RunOutputs&) = delete;
  RunOutputs& operator=(const RunOutputs&) = delete;

  /// Whether nothing can be written, which was told on standard error: no work is worth its while.
  [[nodiscard]] bool hopeless() const;

  void prepare(CheckedFile& one) const;
  void take(CheckedFile&& one);
  /// What a run had that was made before: the same, formula by formula.
  void take_whole(RunResult&& run);
  /// Ends them. `rest`: what a baseline has and the run has not. `exit`, or unusable if one of them
  /// could not be written.
  [[nodiscard]] Exit finish(RunResult rest, Exit exit);

 private:
  class Leaving;
  class InOneFile;
  class InFolder;

  const Outputs& outputs_;
  const Rulesets& rulesets_;
  const Inputs& inputs_;
  std::vector<std::unique_ptr<Leaving>> leaving_;
  std::vector<Output> whole_;  ///< reports that are written when the run is whole
  RunResult run_;              ///< for those
  std::size_t libraries_ = 0;  ///< files that hold no formula
};

}  // namespace sudsmark::cli
