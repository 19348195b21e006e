#include "cli/run_outputs.h"

#include <csignal>
#include <iostream>
#include <optional>
#include <utility>

#include <sudsmark/run_report.h>

#include "cli/pages.h"
#include "cli/terminal.h"
#include "text/written_file.h"
#include "wording/fold.h"

namespace sudsmark::cli {

/// One report that leaves formula by formula, and where it goes.
class RunOutputs::Leaving {
 public:
  Leaving(const Output& output, std::unique_ptr<RunReport> begun, const Inputs& inputs)
      : report(std::move(begun)), path_(output.path), inputs_(inputs) {
    if (path_.empty()) {
      columns_ = output.report->folds ? terminal_columns() : 0;
    } else if (auto lost = inputs.would_lose(path_)) {
      fail(*lost);
    } else {
      file_.emplace(path_);
      if (auto error = file_->error()) fail(*error);
    }
  }

  void write(const std::string& words) {
    if (failed_ || words.empty()) return;
    if (file_) {
      if (auto error = file_->append(words)) fail(*error);
      return;
    }
    std::cout << (columns_ > 0 ? wording::folded_to(words, columns_) : words) << std::flush;
    if (!std::cout) fail("standard output cannot be written");
  }

  void finish() {
    if (failed_ || !file_) return;
    // what was read on the way counts too
    if (auto lost = inputs_.would_lose(path_)) return fail(*lost);
    if (auto error = file_->finish()) fail(*error);
  }

  [[nodiscard]] bool failed() const { return failed_; }

  std::unique_ptr<RunReport> report;

 private:
  void fail(const std::string& words) {
    complain(words);
    failed_ = true;
  }

  std::string path_;
  const Inputs& inputs_;
  std::optional<text::WrittenFile> file_;
  std::size_t columns_ = 0;  ///< of a terminal; 0: it is none
  bool failed_ = false;
};

RunOutputs::RunOutputs(const Outputs& outputs, const Rulesets& rulesets, const Inputs& inputs)
    : outputs_(outputs), rulesets_(rulesets), inputs_(inputs) {
  for (const Output& one : outputs.all()) {
    auto begun = names_folder(one.path) ? nullptr
                                        : begin_report(*one.report, rulesets, outputs.look_of(one));
    if (begun == nullptr) {
      whole_.push_back(one);
      continue;
    }
    leaving_.push_back(std::make_unique<Leaving>(one, std::move(begun), inputs));
    leaving_.back()->write(leaving_.back()->report->head());
  }
#ifdef SIGPIPE
  // whoever reads standard output may stop early: files are written all the same
  if (outputs.all().size() > 1) std::signal(SIGPIPE, SIG_IGN);
#endif
}

RunOutputs::~RunOutputs() = default;

bool RunOutputs::hopeless() const {
  if (!whole_.empty()) return false;
  for (const auto& one : leaving_) {
    if (!one->failed()) return false;
  }
  return true;
}

namespace {

OneOfRun borrowed(const CheckedFile& one) {
  const FormulaResult* formula = one.run.formulas.empty() ? nullptr : &one.run.formulas.front();
  return {one.file, formula, &one.run.problems, one.alone, one.run.compared};
}

}  // namespace

void RunOutputs::prepare(CheckedFile& one) const {
  for (const auto& leaving : leaving_) {
    one.pieces.push_back(leaving->report->piece(borrowed(one)));
  }
}

void RunOutputs::take(CheckedFile&& one) {
  for (std::size_t at = 0; at < leaving_.size(); ++at) {
    Leaving& leaving = *leaving_[at];
    leaving.write(leaving.report->join(std::move(one.pieces[at]), borrowed(one)));
  }
  libraries_ += one.run.libraries;
  if (!whole_.empty()) run_.add(std::move(one.run));
}

void RunOutputs::take_whole(RunResult&& run) {
  const bool alone = run.formulas.size() == 1;
  for (FormulaResult& formula : run.formulas) {
    CheckedFile one;
    one.file = formula.file;
    one.alone = alone;
    one.run.compared = run.compared;
    one.run.formulas.push_back(std::move(formula));
    prepare(one);
    take(std::move(one));
  }
  // problems that follow each other in one file are what kept it from being read
  for (auto from = run.problems.begin(); from != run.problems.end();) {
    CheckedFile one;
    one.file = from->file;
    one.run.compared = run.compared;
    while (from != run.problems.end() && from->file == one.file) {
      one.run.problems.push_back(std::move(*from++));
    }
    prepare(one);
    take(std::move(one));
  }
  libraries_ = run.libraries;
}

Exit RunOutputs::finish(RunResult rest, Exit exit) {
  rest.libraries = libraries_;
  for (const auto& leaving : leaving_) {
    leaving->write(leaving->report->tail(rest));
    leaving->finish();
    if (leaving->failed()) exit = Exit::unusable;
  }
  run_.compared = rest.compared;
  run_.absent = rest.absent;
  run_.libraries = rest.libraries;
  for (const Output& one : whole_) {
    exit = outputs_.write_one(one, &run_, rulesets_, inputs_, exit);
  }
  return exit;
}

}  // namespace sudsmark::cli
