#include "fuzz/writers.h"

#include <sudsmark/baseline.h>
#include <sudsmark/run_report.h>
#include <sudsmark/stream.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>
#include <utility>

#include "fuzz/asking.h"
#include "fuzz/targets.h"
#include "written.h"

namespace sudsmark::fuzz {
namespace {

/// A run held against its own baseline has nothing new and nothing that is gone.
void mark_by_itself(const RunResult& run) {
  const auto marked = with_baseline(run, baseline_text(run), "");
  must(marked.value.has_value(), "a baseline that was written is read");
  must(marked.value->absent.empty(), "nothing of it is gone");
  for (const FormulaResult& formula : marked.value->formulas) {
    for (const Finding& finding : formula.findings) {
      must(finding.standing != Standing::fresh, "nothing is new");
    }
  }
}

void answer_line(std::string_view line) {
  static const auto report =
      begin_report(*find_report(Command::check, "json-lines"), rulesets(), {});
  const auto formula = read_stream_line(line);
  RunResult run;
  if (formula.value) {
    const Files none;
    const CheckOptions options = reading(none);
    run = check(*formula.value, rulesets(), options);
    hold_together(run);
  } else {
    must(!formula.problems.empty(), "a line is read or says why not");
    run.problems = formula.problems;
  }
  const std::string file = formula.value ? formula.value->path : run.problems.front().file;
  const FormulaResult* const one = run.formulas.empty() ? nullptr : &run.formulas.front();
  const std::string answer = report->piece({file, one, &run.problems});
  must(answer.find('\n') == answer.size() - 1, "an answer is one line");
  must(nlohmann::json::accept(answer), "an answer is JSON");
}

}  // namespace

void write_reports(std::string_view input) {
  const Files none;
  CheckOptions options = reading(none);
  options.lines = options.measures = options.curves = options.particulars = true;
  options.sheet = options.label = true;
  RunResult run = check({"main.formula", std::string(input), false}, rulesets(), options);
  for (const std::string_view word : {"json", "sarif"}) {
    const std::string text = testing::written(Command::check, word, &run);
    must(nlohmann::json::accept(text), "JSON is JSON");
  }
  const std::string page = testing::written(Command::check, "html", &run);
  for (const char c : page) {
    const auto byte = static_cast<unsigned char>(c);
    must(byte >= 0x20 || c == '\n' || c == '\t', "no control character on a page");
  }
  mark_by_itself(run);
}

void answer_stream(std::string_view input) {
  if (!input.starts_with('{')) {
    const nlohmann::json line{{"file", "main.formula"}, {"text", input}};
    return answer_line(line.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace));
  }
  while (!input.empty()) {
    const std::size_t end = std::min(input.find('\n'), input.size());
    answer_line(input.substr(0, end));
    input.remove_prefix(std::min(end + 1, input.size()));
  }
}

}  // namespace sudsmark::fuzz
