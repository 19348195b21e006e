// Whole outputs of one formula in every format. SUDSMARK_RENEW=1 writes them anew.
#include <algorithm>
#include <array>
#include <string_view>

#include <sudsmark/baseline.h>
#include <sudsmark/compare.h>
#include <sudsmark/dossier.h>
#include <sudsmark/report.h>

#include "estuary.h"
#include "without_style.h"
#include "written.h"

namespace {

using namespace sudsmark;
using namespace sudsmark::testing;

/// A few measures and points stand for all, so that these files speak of the formats and do not
/// change with every new measure.
RunResult in_short(RunResult run) {
  constexpr std::array<std::string_view, 5> kept{"powders", "scent", "bath.ph", "dust.bound",
                                                 "fragrance.limit"};
  for (FormulaResult& formula : run.formulas) {
    std::erase_if(formula.measures, [&](const MeasureResult& measure) {
      return std::find(kept.begin(), kept.end(), measure.name) == kept.end();
    });
    for (Curve& curve : formula.curves) {
      std::vector<CurvePoint> points;
      for (std::size_t at = 0; at < curve.points.size(); at += 8)
        points.push_back(curve.points[at]);
      curve.points = points;
    }
  }
  return run;
}

}  // namespace

TEST_CASE("whole outputs of every format") {
  const Rulesets rulesets = estuary_rulesets();
  const RunResult run = in_short(estuary(rulesets));
  REQUIRE(run.problems.empty());
  check_expected(golden("estuary.txt"), written(Command::check, "text", &run));
  check_expected(golden("estuary.verbose.txt"),
                 written(Command::check, "text", &run, {true, true, false}));
  check_expected(golden("estuary.json"), written(Command::check, "json", &run, rulesets));
  check_expected(golden("estuary.measures.json"), written(Command::measure, "json", &run));
  check_expected(golden("estuary.sarif"), written(Command::check, "sarif", &run, rulesets));
  check_expected(golden("estuary.html"),
                 without_style(written(Command::check, "html", &run, rulesets)));
  check_expected(golden("estuary.baseline.json"), baseline_text(run));
  check_expected(golden("estuary.sheet.html"),
                 without_style(written(Command::sheet, "html", &run)));
  check_expected(golden("estuary.measures.txt"), written(Command::measure, "text", &run));
  check_expected(golden("estuary.measures.csv"), written(Command::measure, "csv", &run));
  check_expected(golden("estuary.measures.html"),
                 without_style(written(Command::measure, "html", &run)));
}

TEST_CASE("whole outputs of a run with an input that cannot be read, against a baseline") {
  const Rulesets rulesets = estuary_rulesets();
  std::string text = file_contents(golden("estuary.formula"));
  // the lines move, one figure changes, one finding goes
  text.replace(text.find("2.5 - 4 %"), 9, "2.5 - 5 %");
  text.replace(text.find("3 g per kg"), 10, "1 g per kg");
  RunResult run = checked("estuary.formula", "\n\n" + text, rulesets);
  run.add(check({"broken.formula", "formula \"Half\"\n  product bubble bar\n  batch 0,5 kg\n"},
                rulesets, in_full()));
  REQUIRE(run.problems.size() > 0);
  auto marked = with_baseline(std::move(run), file_contents(golden("estuary.baseline.json")));
  REQUIRE(marked);
  run = in_short(std::move(*marked));
  check_expected(golden("changed.txt"), written(Command::check, "text", &run));
  check_expected(golden("changed.sarif"), written(Command::check, "sarif", &run, rulesets));
  const auto overview = find_report(Command::check, "html")->begin_overview(rulesets, {});
  overview->add(run.formulas.front(), "estuary.html");
  check_expected(golden("changed.overview.html"), without_style(overview->written(run)));
}

TEST_CASE("a whole dossier in every format") {
  const Rulesets rulesets = estuary_rulesets();
  const auto made = dossier_for({"estuary.formula", file_contents(golden("estuary.formula"))},
                                rulesets, in_full());
  REQUIRE(made);
  CHECK(made.problems.empty());
  check_expected(golden("estuary.dossier.txt"), written(Command::dossier, "text", &*made));
  check_expected(golden("estuary.dossier.json"),
                 written(Command::dossier, "json", &*made, rulesets));
  check_expected(golden("estuary.dossier.html"),
                 without_style(written(Command::dossier, "html", &*made, rulesets)));
}

TEST_CASE("a whole comparison in every format") {
  const Rulesets rulesets = estuary_rulesets();
  CheckOptions options = in_full();
  options.read = [](const std::string& path) { return file_contents(golden(path)); };
  const FormulaText tweak{"estuary-tweak.formula", file_contents(golden("estuary-tweak.formula"))};
  const auto base = base_of(tweak, options);
  REQUIRE(base);
  auto compared = compare(*base, tweak, rulesets, options);
  REQUIRE(compared);
  CHECK(compared.problems.empty());
  std::erase_if(compared->measures, [](const MeasureChange& one) {
    return one.name != "powders" && one.name != "scent" && one.name != "oils";
  });
  check_expected(golden("comparison.html"),
                 without_style(written(Command::compare, "html", &*compared, rulesets)));
  check_expected(golden("comparison.json"),
                 written(Command::compare, "json", &*compared, rulesets));
  check_expected(golden("comparison.txt"), written(Command::compare, "text", &*compared));
}
