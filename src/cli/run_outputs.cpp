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
  Leaving() = default;
  Leaving(const Leaving&) = delete;
  Leaving& operator=(const Leaving&) = delete;
  virtual ~Leaving() = default;

  [[nodiscard]] virtual std::string piece(const CheckedFile& one) const = 0;
  virtual void take(std::string piece, const CheckedFile& one) = 0;
  virtual void finish(const RunResult& rest) = 0;
  [[nodiscard]] virtual bool failed() const = 0;
};

namespace {

OneOfRun borrowed(const CheckedFile& one) {
  const FormulaResult* formula = one.run.formulas.empty() ? nullptr : &one.run.formulas.front();
  return {one.file, formula, &one.run.problems, one.alone, one.run.compared};
}

}  // namespace

/// As one file, or on standard output.
class RunOutputs::InOneFile : public Leaving {
 public:
  InOneFile(const Output& output, std::unique_ptr<RunReport> begun, const Inputs& inputs)
      : report_(std::move(begun)), path_(output.path), inputs_(inputs) {
    if (path_.empty()) {
      columns_ = output.report->folds ? terminal_columns() : 0;
    } else if (auto lost = inputs.would_lose(path_)) {
      fail(*lost);
    } else {
      file_.emplace(path_);
      if (auto error = file_->error()) fail(*error);
    }
    write(report_->head());
  }

  [[nodiscard]] std::string piece(const CheckedFile& one) const override {
    return report_->piece(borrowed(one));
  }

  void take(std::string piece, const CheckedFile& one) override {
    write(report_->join(std::move(piece), borrowed(one)));
  }

  void finish(const RunResult& rest) override {
    write(report_->tail(rest));
    if (failed_ || !file_) return;
    // what was read on the way counts too
    if (auto lost = inputs_.would_lose(path_)) return fail(*lost);
    if (auto error = file_->finish()) fail(*error);
  }

  [[nodiscard]] bool failed() const override { return failed_; }

 private:
  void write(const std::string& words) {
    if (failed_ || words.empty()) return;
    if (file_) {
      if (auto error = file_->append(words)) fail(*error);
      return;
    }
    std::cout << (columns_ > 0 ? wording::folded_to(words, columns_) : words) << std::flush;
    if (!std::cout) fail("standard output cannot be written");
  }

  void fail(const std::string& words) {
    complain(words);
    failed_ = true;
  }

  std::unique_ptr<RunReport> report_;
  std::string path_;
  const Inputs& inputs_;
  std::optional<text::WrittenFile> file_;
  std::size_t columns_ = 0;  ///< of a terminal; 0: it is none
  bool failed_ = false;
};

/// As a folder with a page for each formula.
class RunOutputs::InFolder : public Leaving {
 public:
  InFolder(const Output& output, const Rulesets& rulesets, const ReportOptions& look,
           const Inputs& inputs)
      : pages_(*output.report, output.path, rulesets, look, inputs) {}

  [[nodiscard]] std::string piece(const CheckedFile& one) const override {
    return one.run.formulas.empty() ? std::string() : pages_.page_of(one.run, one.alone);
  }

  void take(std::string piece, const CheckedFile& one) override {
    pages_.take(piece, one.run, one.alone);
  }

  void finish(const RunResult& rest) override { pages_.finish(rest); }
  [[nodiscard]] bool failed() const override { return pages_.failed(); }

 private:
  PageFolder pages_;
};

RunOutputs::RunOutputs(const Outputs& outputs, const Rulesets& rulesets, const Inputs& inputs)
    : outputs_(outputs), rulesets_(rulesets), inputs_(inputs) {
  for (const Output& one : outputs.all()) {
    const ReportOptions look = outputs.look_of(one);
    if (names_folder(one.path)) {
      leaving_.push_back(std::make_unique<InFolder>(one, rulesets, look, inputs));
    } else if (auto begun = begin_report(*one.report, rulesets, look)) {
      leaving_.push_back(std::make_unique<InOneFile>(one, std::move(begun), inputs));
    } else {
      whole_.push_back(one);
    }
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

void RunOutputs::prepare(CheckedFile& one) const {
  for (const auto& leaving : leaving_) {
    one.pieces.push_back(leaving->piece(one));
  }
}

void RunOutputs::take(CheckedFile&& one) {
  for (std::size_t at = 0; at < leaving_.size(); ++at) {
    leaving_[at]->take(std::move(one.pieces[at]), one);
  }
  libraries_ += one.run.libraries;
  if (!whole_.empty()) run_.add(std::move(one.run));
}

void RunOutputs::take_whole(RunResult&& run) {
  const bool alone = run.formulas.size() == 1 && run.problems.empty();
  for (FormulaResult& formula : run.formulas) {
    CheckedFile one;
    one.file = formula.file;
    one.alone = alone;
    one.run.compared = run.compared;
    if (alone) one.run.absent = run.absent;  // its page has no other to tell of them
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
    leaving->finish(rest);
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
