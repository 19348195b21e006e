#include "cli/outputs.h"

#include <algorithm>
#include <filesystem>
#include <iostream>
#include <utility>

#include "cli/pages.h"
#include "cli/terminal.h"
#include "text/written_file.h"
#include "wording/fold.h"
#include "wording/words.h"

namespace sudsmark::cli {
namespace {

bool can_be_folder(const Report& report) {
  return report.begin_overview != nullptr || report.write_pages != nullptr;
}

std::vector<std::string> words_of(Command command, bool of_folders) {
  std::vector<std::string> words;
  for (const Report& report : reports(command)) {
    if (!of_folders || can_be_folder(report)) words.emplace_back(report.word);
  }
  return words;
}

std::string path_of(const std::string& typed) {
  return typed == "-" ? std::string() : typed;
}

std::optional<Output> output_of(const std::string& typed, Command command) {
  const std::size_t equals = typed.find('=');
  const std::string word = typed.substr(0, equals);
  const Report* report = find_report(command, word);
  if (report == nullptr) {
    std::string known;
    for (const std::string& one : words_of(command, false)) {
      known += (known.empty() ? "" : ", ") + one;
    }
    complain("'" + word + "' is no format here; known are " + known);
    return std::nullopt;
  }
  if (equals == std::string::npos) return Output{report, {}};
  if (equals + 1 == typed.size()) {
    complain("--format " + typed + " names no file after the '='");
    return std::nullopt;
  }
  return Output{report, path_of(typed.substr(equals + 1))};
}

/// Why a report cannot be written into a folder.
std::string no_folder(const std::string& path, const std::vector<std::string>& can) {
  return "'" + path + "' is a folder; " +
         (can.empty() ? "name a file in it"
                      : "only " + wording::joined(can, "and") + " can be written into one");
}

}  // namespace

void OutputOptions::declare(Options& options, Command command, const std::string& formats_help) {
  options.heading("Report");
  const std::vector<std::string> known = words_of(command, false);
  if (known.size() > 1) {
    options.texts(
        "--format", "FORMAT[=PATH]", formats,
        (formats_help.empty() ? wording::joined(known, "or") : formats_help) +
            "; several times with =PATH to write files beside standard output" +
            (words_of(command, true).empty() ? ""
                                             : "; a PATH that ends in / takes a folder of pages"));
    options.begins("--format", known);
    options.usually("--format", known.front());
  }
  options.text("--output", "FILE", output, "write the report to this file");
  options.usually("--output", "-, standard output");
  options.flag("--ascii", ascii, "write ASCII characters alone");
  options.choice("--color", {"auto", "always", "never"}, color, "auto: on a terminal");
}

std::optional<Outputs> Outputs::read(const OutputOptions& typed, Command command,
                                     const ReportOptions& look) {
  Outputs out;
  out.look_ = look;
  out.look_.ascii = typed.ascii;
  out.color_ = wants_color(typed.color);
  const std::string usual = path_of(typed.output);
  bool sound = true;
  bool bare = false;
  for (const std::string& format : typed.formats) {
    auto one = output_of(format, command);
    if (!one) {
      sound = false;
      continue;
    }
    if (one->path.empty()) {
      if (bare) complain("one format alone can go to standard output; give others a =PATH");
      sound = sound && !bare;
      bare = true;
      one->path = usual;
    }
    out.all_.push_back(std::move(*one));
  }
  if (!bare) out.all_.insert(out.all_.begin(), Output{&reports(command).front(), usual});
  for (const Output& one : out.all_) {
    if (!can_be_folder(*one.report) && names_folder(one.path)) {
      complain(no_folder(one.path, words_of(command, true)));
      sound = false;
    }
  }
  if (!out.sound() || !sound) return std::nullopt;
  // files first: whoever reads standard output may stop early
  std::stable_partition(out.all_.begin(), out.all_.end(),
                        [](const Output& one) { return !one.path.empty(); });
  return out;
}

bool Outputs::sound() const {
  for (auto one = all_.begin(); one != all_.end(); ++one) {
    const bool twice =
        !one->path.empty() && std::any_of(all_.begin(), one, [&](const Output& other) {
          return !other.path.empty() && same_place(one->path, other.path);
        });
    if (!twice) continue;
    complain("two formats cannot be written to '" + one->path + "'");
    return false;
  }
  return true;
}

bool Outputs::have(std::string_view word) const {
  return std::any_of(all_.begin(), all_.end(),
                     [&](const Output& one) { return one.report->word == word; });
}

bool Outputs::take(const std::string& path) const {
  return std::any_of(all_.begin(), all_.end(), [&](const Output& one) {
    return !one.path.empty() && same_place(one.path, path);
  });
}

Details Outputs::wanted() const {
  Details out;
  for (const Output& one : all_) out = out | one.report->wanted(look_);
  return out;
}

ReportOptions Outputs::look_of(const Output& one) const {
  ReportOptions look = look_;
  look.color = color_ && one.path.empty();
  const std::size_t columns = one.path.empty() ? terminal_columns() : 0;
  if (columns > 0) look.columns = columns;
  return look;
}

Exit Outputs::write(const Outcome& outcome, const Rulesets& rulesets, const Inputs& inputs,
                    Exit exit) const {
  for (const Output& one : all_) exit = write_one(one, outcome, rulesets, inputs, exit);
  return exit;
}

Exit Outputs::write_one(const Output& one, const Outcome& outcome, const Rulesets& rulesets,
                        const Inputs& inputs, Exit exit) const {
  const ReportOptions look = look_of(one);
  if (names_folder(one.path) && one.report->write_pages != nullptr) {
    return write_pages(one.report->write_pages(outcome, rulesets, look), one.path, inputs, exit);
  }
  if (names_folder(one.path)) {
    return write_pages(*one.report, one.path, *std::get<const RunResult*>(outcome), rulesets, look,
                       inputs, exit);
  }
  return write_words(one.path, one.report->write(outcome, rulesets, look), one.report->folds,
                     inputs, exit);
}

Exit write_words(const std::string& path, const std::string& words, bool folds,
                 const Inputs& inputs, Exit exit) {
  if (path.empty()) {
    const std::size_t columns = folds ? terminal_columns() : 0;
    std::cout << (columns > 0 ? wording::folded_to(words, columns) : words) << std::flush;
    return std::cout ? exit : refused("standard output cannot be written");
  }
  if (const auto lost = inputs.would_lose(path)) return refused(*lost);
  if (const auto error = text::write_file(path, words)) return refused(*error);
  return exit;
}

bool same_place(const std::string& one, const std::string& other) {
  namespace fs = std::filesystem;
  std::error_code error;
  if (fs::equivalent(one, other, error)) return true;
  std::error_code unknown;
  return fs::weakly_canonical(fs::absolute(one), unknown) ==
             fs::weakly_canonical(fs::absolute(other), error) &&
         !error && !unknown;
}

}  // namespace sudsmark::cli
