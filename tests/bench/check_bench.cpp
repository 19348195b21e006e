// What a check costs, stage by stage: start-up with everything built in, parsing, blend, rules, and
// the whole way from text to verdicts.
#include <benchmark/benchmark.h>

#include <string>

#include <sudsmark/check.h>
#include <sudsmark/report.h>

#include "blend/blend.h"
#include "formula/assemble.h"
#include "front/parts.h"

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

void whole(benchmark::State& state) {
  const auto rulesets = sudsmark::Rulesets::built_in();
  for (auto _ : state) {
    sudsmark::RunResult run = sudsmark::check({"ebb-line.formula", twenty_lines()}, rulesets, {});
    if (run.formulas.empty()) state.SkipWithError("the formula cannot be checked");
    benchmark::DoNotOptimize(run);
  }
}
BENCHMARK(whole)->Unit(benchmark::kMicrosecond);

void whole_with_report(benchmark::State& state) {
  const auto rulesets = sudsmark::Rulesets::built_in();
  const auto* text = sudsmark::find_report(sudsmark::Command::check, "text");
  for (auto _ : state) {
    sudsmark::RunResult run = sudsmark::check({"ebb-line.formula", twenty_lines()}, rulesets, {});
    benchmark::DoNotOptimize(text->write(&run, rulesets, {}));
  }
}
BENCHMARK(whole_with_report)->Unit(benchmark::kMicrosecond);

}  // namespace
