// What a check costs, stage by stage: start-up with everything built in, parsing, blend, rules, and
// the whole way from text to verdicts; and what asks for many checks.
#include <benchmark/benchmark.h>

#include <string>

#include <sudsmark/check.h>
#include <sudsmark/leeway.h>
#include <sudsmark/report.h>
#include <sudsmark/suggest.h>

#include "blend/blend.h"
#include "formula/assemble.h"
#include "front/parts.h"
#include "rules/check.h"

namespace {

/// Twenty ingredient lines in one file, so that no stage waits for a disk.
const std::string& twenty_lines() {
  static const std::string text = R"(formula "Ebb Line"
  product bubble bar
  forming pressed
  market GB, EU
  batch 2 kg
  piece 85 g
  bath 28 g in 150 l at 38 C
  water medium
  users adults

phase "dry"
  43 % sodium bicarbonate
  14 % cream of tartar
  18 % SLSA
  4 % SCI
  5 % corn starch
  2 % tapioca starch
  1.5 % kaolin
  0.5 % magnesium carbonate
  0.1 % titanium dioxide
  0.2 % mica
phase "wet"
  2 % glycerin
  2 % cocamidopropyl betaine
  1.5 % polysorbate 80
  0.7 % rice bran oil
  0.5 % sweet almond oil
  0.5 % cocoa butter
  1 % "Sea Fig"
  0.1 % tocopherol
  2.9 % sodium sulfate
  0.5 % PEG-7 glyceryl cocoate
fragrance "Sea Fig"
  limit 11.4 %
  6 - 8 % linalool
)";
  return text;
}

/// As it comes in by the thousand: nobody says who uses it, which mask is worn and which scale
/// there is, and a fifth of the scent is not declared.
const std::string& half_known() {
  static const std::string text = R"(formula "Half Known"
  product bubble bar
  forming pressed
  market GB, EU
  piece 80 g
  bath 27 g in 150 l at 38 C
  water medium
phase "dry"
  313 g sodium bicarbonate
  141 g cream of tartar
  268 g SLSA
  187 g corn starch
  36 g kaolin
  55 g citric acid
phase "wet"
  20 g glycerin
  30 g cocamidopropyl betaine
  12 g polysorbate 80
  14 g rice bran oil
  8 g cocoa butter
  12 g "Sea Fig"
fragrance "Sea Fig"
  limit 11 %
  6 - 8 % linalool
  0.5 % citral
)";
  return text;
}

/// What reports that show little ask for.
sudsmark::CheckOptions to_read() {
  sudsmark::CheckOptions options;
  options.only_to_read = true;
  options.passes_in_full = false;
  options.lines = true;
  return options;
}

std::optional<sudsmark::formula::Card> sheet_of(sudsmark::text::Sources& sources,
                                                sudsmark::text::Diagnostics& diagnostics) {
  const auto file = sources.add("ebb-line.formula", twenty_lines());
  return sudsmark::formula::assemble(sources, file, {}, diagnostics);
}

void start_up(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(sudsmark::Rulesets::built_in());
}
BENCHMARK(start_up)->Unit(benchmark::kMicrosecond);

void parse(benchmark::State& state) {
  for (auto _ : state) {
    sudsmark::text::Sources sources;
    sudsmark::text::Diagnostics diagnostics;
    benchmark::DoNotOptimize(sheet_of(sources, diagnostics));
  }
}
BENCHMARK(parse)->Unit(benchmark::kMicrosecond);

void blend(benchmark::State& state) {
  const auto rulesets = sudsmark::Rulesets::built_in();
  sudsmark::text::Sources sources;
  sudsmark::text::Diagnostics diagnostics;
  const auto card = sheet_of(sources, diagnostics);
  for (auto _ : state) {
    benchmark::DoNotOptimize(
        sudsmark::blend::mix(*card, sudsmark::front::parts(rulesets).catalogue, diagnostics));
  }
  if (!diagnostics.empty()) state.SkipWithError("the formula does not mix");
}
BENCHMARK(blend)->Unit(benchmark::kMicrosecond);

void rules(benchmark::State& state) {
  const auto rulesets = sudsmark::Rulesets::built_in();
  const sudsmark::front::Parts& parts = sudsmark::front::parts(rulesets);
  sudsmark::text::Sources sources;
  sudsmark::text::Diagnostics diagnostics;
  const auto card = sheet_of(sources, diagnostics);
  const auto blend = sudsmark::blend::mix(*card, parts.catalogue, diagnostics);
  sudsmark::rules::EvaluateOptions options;
  options.on = std::chrono::year_month_day(std::chrono::year(2026), std::chrono::month(11),
                                           std::chrono::day(30));
  for (auto _ : state) {
    sudsmark::blend::MissingTable missing;
    benchmark::DoNotOptimize(sudsmark::rules::evaluate(parts.ruleset, *blend, missing, options));
  }
}
BENCHMARK(rules)->Unit(benchmark::kMicrosecond);

void whole_of(benchmark::State& state, const std::string& text,
              const sudsmark::CheckOptions& options) {
  const auto rulesets = sudsmark::Rulesets::built_in();
  for (auto _ : state) {
    sudsmark::RunResult run = sudsmark::check({"bar.formula", text}, rulesets, options);
    if (run.formulas.empty()) state.SkipWithError("the formula cannot be checked");
    benchmark::DoNotOptimize(run);
  }
}

void whole(benchmark::State& state) {
  whole_of(state, twenty_lines(), {});
}
BENCHMARK(whole)->Unit(benchmark::kMicrosecond);

void whole_to_read(benchmark::State& state) {
  whole_of(state, twenty_lines(), to_read());
}
BENCHMARK(whole_to_read)->Unit(benchmark::kMicrosecond);

void whole_half_known(benchmark::State& state) {
  whole_of(state, half_known(), to_read());
}
BENCHMARK(whole_half_known)->Unit(benchmark::kMicrosecond);

void whole_with_report(benchmark::State& state) {
  const auto rulesets = sudsmark::Rulesets::built_in();
  const auto* text = sudsmark::find_report(sudsmark::Command::check, "text");
  for (auto _ : state) {
    sudsmark::RunResult run = sudsmark::check({"ebb-line.formula", twenty_lines()}, rulesets, {});
    benchmark::DoNotOptimize(text->write(&run, rulesets, {}));
  }
}
BENCHMARK(whole_with_report)->Unit(benchmark::kMicrosecond);

void suggest(benchmark::State& state) {
  const auto rulesets = sudsmark::Rulesets::built_in();
  for (auto _ : state) {
    const auto made = sudsmark::suggest({"bar.formula", half_known()}, rulesets, {}, {});
    if (!made) state.SkipWithError("nothing is suggested");
    benchmark::DoNotOptimize(made);
  }
}
BENCHMARK(suggest)->Unit(benchmark::kMillisecond);

void leeway(benchmark::State& state) {
  const auto rulesets = sudsmark::Rulesets::built_in();
  for (auto _ : state) {
    const auto made = sudsmark::leeway({"bar.formula", half_known()}, rulesets, {}, {});
    if (!made) state.SkipWithError("no leeway is told");
    benchmark::DoNotOptimize(made);
  }
}
BENCHMARK(leeway)->Unit(benchmark::kMillisecond);

}  // namespace
