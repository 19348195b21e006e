#include "cli/stream.h"

#include <atomic>
#include <cerrno>
#include <iostream>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <utility>

#include <sudsmark/run_report.h>
#include <sudsmark/stream.h>

#include "cli/in_order.h"
#include "cli/kept_memory.h"
#include "cli/workers.h"
#include "text/files.h"
#include "text/input_lines.h"

namespace sudsmark::cli {
namespace {

class Stream {
 public:
  Stream(const Rulesets& rulesets, const CheckOptions& options, Inputs& inputs,
         const ReportOptions& look)
      : rulesets_(rulesets), options_(options), inputs_(inputs) {
    const Report& report = *find_report(Command::check, "json-lines");
    fill(report.wanted(look), options_);
    report_ = begin_report(report, rulesets, look);
  }

  Exit run(std::size_t jobs) {
    const std::size_t threads = threads_for(jobs);
    InOrder<std::string> answers(threads * most_ahead, [this](std::string&& line) { write(line); });
    run_workers(threads, [&] {
      std::size_t number = 0;
      while (auto formula = next(number)) answers.put(number, answer(*formula));
    });
    if (unread_ != 0) return refused("standard input cannot be read: " + text::reason_of(unread_));
    return unwritten_ ? refused("standard output cannot be written") : Exit::fine;
  }

 private:
  /// The formula of the next line, or what is wrong with it; nothing at the end.
  std::optional<Result<FormulaText>> next(std::size_t& number) {
    std::string line;
    {
      const std::lock_guard lock(mutex_);
      const auto got = ended_ || unwritten_ ? text::InputLines::Got::end : lines_.next(line);
      if (got == text::InputLines::Got::failed) unread_ = errno;
      ended_ = got == text::InputLines::Got::end || got == text::InputLines::Got::failed;
      if (ended_) return std::nullopt;
      number = read_++;
      if (got == text::InputLines::Got::too_long) {
        return Result<FormulaText>{{}, {{{}, 0, 0, "this line is longer than 8 MiB", {}}}};
      }
    }
    return read_stream_line(line);
  }

  std::string answer(Result<FormulaText>& formula) const {
    if (!formula) {
      RunResult unread;
      unread.problems = std::move(formula.problems);
      return piece(unread.problems.front().file, unread);
    }
    CheckOptions of_this = options_;
    // whoever writes a stream names files as they like: none is opened for them unless asked for
    if (inputs_.outside()) of_this.read = inputs_.reader_for({formula->path});
    return piece(formula->path, sudsmark::check(*formula, rulesets_, of_this));
  }

  [[nodiscard]] std::string piece(const std::string& file, const RunResult& run) const {
    const FormulaResult* const one = run.formulas.empty() ? nullptr : &run.formulas.front();
    return report_->piece({file, one, &run.problems});
  }

  void write(const std::string& line) {
    if (unwritten_) return;
    std::cout << line << std::flush;
    unwritten_ = !std::cout;
  }

  const Rulesets& rulesets_;
  CheckOptions options_;
  Inputs& inputs_;
  std::unique_ptr<RunReport> report_;
  std::mutex mutex_;  ///< of what stands below, but for what is atomic
  text::InputLines lines_{most_stream_line};
  std::size_t read_ = 0;
  bool ended_ = false;
  int unread_ = 0;  ///< why standard input could not be read to its end
  std::atomic<bool> unwritten_{false};
};

}  // namespace

Exit check_stream(const Rulesets& rulesets, const CheckOptions& options, Inputs& inputs,
                  std::size_t jobs, const ReportOptions& look) {
  keep_memory();
  return Stream(rulesets, options, inputs, look).run(jobs);
}

}  // namespace sudsmark::cli
