#include "cli/outputs.h"

#include <algorithm>
#include <array>
#include <iostream>
#include <set>
#include <utility>

#include <sudsmark/report.h>

#include "cli/run.h"
#include "cli/terminal.h"
#include "text/files.h"
#include "wording/fold.h"

namespace sudsmark::cli {
namespace {

constexpr std::array<std::pair<std::string_view, Format>, 4> words{{{"text", Format::text},
                                                                    {"json", Format::json},
                                                                    {"sarif", Format::sarif},
                                                                    {"html", Format::html}}};

std::string listed(std::initializer_list<Format> formats) {
  std::string out;
  for (const auto& [word, format] : words) {
    if (std::find(formats.begin(), formats.end(), format) == formats.end()) continue;
    out += (out.empty() ? "" : ", ") + std::string(word);
  }
  return out;
}

bool names_folder(const std::string& path) {
  return path.ends_with('/') || text::is_folder(path);
}

std::optional<Output> output_of(const std::string& typed, std::initializer_list<Format> known) {
  const std::size_t equals = typed.find('=');
  const std::string word = typed.substr(0, equals);
  const auto found = std::find_if(words.begin(), words.end(),
                                  [&](const auto& format) { return format.first == word; });
  if (found == words.end() || std::find(known.begin(), known.end(), found->second) == known.end()) {
    complain("'" + word + "' is no format here; known are " + listed(known));
    return std::nullopt;
  }
  Output out{found->second, equals == std::string::npos ? "" : typed.substr(equals + 1)};
  if (equals != std::string::npos && out.path.empty()) {
    complain("--format " + typed + " names no file after the '='");
    return std::nullopt;
  }
  return out;
}

/// The file name of a formula's page: its path with everything odd replaced, and no other's.
std::string page_name(const std::string& path, std::set<std::string>& taken) {
  std::string stem = path == "-" ? "standard-input" : path;
  constexpr std::string_view ending = ".formula";
  if (stem.ends_with(ending)) stem.resize(stem.size() - ending.size());
  while (stem.starts_with("./")) stem.erase(0, 2);
  for (char& c : stem) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    if (!plain && c != '_') c = '-';
  }
  constexpr std::size_t most = 100;
  if (stem.size() > most) stem.erase(0, stem.size() - most);
  std::string name = stem;
  for (int number = 2; !taken.insert(name).second; ++number) {
    name = stem + "-" + std::to_string(number);
  }
  return name + ".html";
}

}  // namespace

std::optional<std::vector<Output>> outputs_of(const Arguments& arguments,
                                              std::initializer_list<Format> known) {
  std::vector<Output> out;
  std::set<std::string> paths;
  bool sound = true;
  bool bare = false;
  for (const std::string& typed : arguments.formats) {
    auto one = output_of(typed, known);
    if (!one) {
      sound = false;
      continue;
    }
    if (one->path.empty()) {
      if (bare) complain("one format alone can go to standard output; give others a =PATH");
      sound = sound && !bare;
      bare = true;
      one->path = arguments.output;
    }
    out.push_back(std::move(*one));
  }
  if (!bare) out.insert(out.begin(), Output{Format::text, arguments.output});
  for (const Output& one : out) {
    if (one.path.empty()) continue;
    if (!paths.insert(one.path).second) {
      complain("two formats cannot be written to '" + one.path + "'");
      sound = false;
    }
    if (one.format != Format::html && names_folder(one.path)) {
      complain("'" + one.path + "' is a folder; only html can be written into one");
      sound = false;
    }
  }
  if (!sound) return std::nullopt;
  // files first: whoever reads standard output may stop early
  std::stable_partition(out.begin(), out.end(),
                        [](const Output& one) { return !one.path.empty(); });
  return out;
}

bool wants(const std::vector<Output>& outputs, Format format) {
  return std::any_of(outputs.begin(), outputs.end(),
                     [&](const Output& output) { return output.format == format; });
}

Exit write(const Output& output, const std::string& report, Exit exit) {
  if (output.path.empty()) {
    const std::size_t columns = output.format == Format::text ? terminal_columns() : 0;
    std::cout << (columns > 0 ? wording::folded_to(report, columns) : report) << std::flush;
    if (std::cout) return exit;
    complain("standard output cannot be written");
    return Exit::unusable;
  }
  if (const auto error = text::write_file(output.path, report)) {
    complain(*error);
    return Exit::unusable;
  }
  return exit;
}

Exit write_pages(const Output& output, const RunResult& run, const Rulesets& rulesets, bool ascii,
                 Exit exit) {
  if (output.path.empty() || !names_folder(output.path)) {
    return write(output, html_report(run, rulesets, {ascii, {}}), exit);
  }
  if (const auto error = text::make_folder(output.path)) {
    complain(*error);
    return Exit::unusable;
  }
  const std::string folder = output.path.ends_with('/') ? output.path : output.path + "/";
  const Output front{Format::html, folder + "index.html"};
  if (run.formulas.size() == 1) return write(front, html_report(run, rulesets, {ascii, {}}), exit);
  std::set<std::string> taken{"index"};
  std::vector<std::string> pages;
  for (const FormulaResult& formula : run.formulas) {
    pages.push_back(page_name(formula.file, taken));
    RunResult alone;
    alone.formulas.push_back(formula);
    alone.compared = run.compared;
    exit = write({Format::html, folder + pages.back()},
                 html_report(alone, rulesets, {ascii, "index.html"}), exit);
    if (exit == Exit::unusable && run.problems.empty()) return exit;
  }
  return write(front, html_overview(run, pages, {ascii, {}}), exit);
}

}  // namespace sudsmark::cli
