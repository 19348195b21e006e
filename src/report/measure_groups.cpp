#include "report/measure_groups.h"

#include <algorithm>
#include <array>

#include "measures/registry.h"

namespace sudsmark::report {
namespace {

/// A measure belongs to the first subject that has its name, or the beginning of it up to a dot.
struct Subject {
  std::string_view words;
  std::array<std::string_view, 12> names;
};

constexpr std::array subjects{
    Subject{"The mix",
            {"powders", "liquids", "wet_to_dry", "water", "water.bound", "water.crystal",
             "humectants", "oils", "butters", "scent", "colour", "portions."}},
    Subject{"Foam", {"surfactant", "surfactant."}},
    Subject{"Emulsifier and oil", {"emulsifier", "emulsifier.", "hlb."}},
    Subject{"Acid, base and gas", {"acid.", "base.", "carbon_dioxide", "gas."}},
    Subject{"The bath", {"dose.", "bath.", "water.", "solution."}},
    Subject{"Scent and skin", {"fragrance.", "exposure."}},
    Subject{"What the law counts together", {"element.", "as."}},
    Subject{"The batch and the workshop",
            {"batch.", "piece.", "forming.", "room.", "humidity.", "weighing.", "task."}},
    Subject{"Dust and vapour", {"dust.", "vapour."}}};

bool belongs(std::string_view name, std::string_view to) {
  return !to.empty() && (to.ends_with('.') ? name.starts_with(to) : name == to);
}

std::string_view subject_of(const std::string& name) {
  if (!measures::find(name)) return "What the rules work out";
  for (const Subject& subject : subjects) {
    for (const std::string_view one : subject.names) {
      if (belongs(name, one)) return subject.words;
    }
  }
  return "Others";
}

bool is_nothing(const MeasureResult& measure) {
  return measure.figure.low == 0.0 && measure.figure.high == 0.0 && measure.missing.empty();
}

}  // namespace

GroupedMeasures by_subject(const FormulaResult& formula) {
  GroupedMeasures out;
  for (const Subject& subject : subjects) out.groups.push_back({subject.words, {}});
  for (const MeasureResult& measure : formula.measures) {
    if (is_nothing(measure)) {
      out.none.push_back(measure.name);
      continue;
    }
    const std::string_view subject = subject_of(measure.name);
    auto group = std::find_if(out.groups.begin(), out.groups.end(),
                              [&](const MeasureGroup& one) { return one.subject == subject; });
    if (group == out.groups.end()) group = out.groups.insert(group, {subject, {}});
    group->measures.push_back(&measure);
  }
  std::erase_if(out.groups, [](const MeasureGroup& one) { return one.measures.empty(); });
  return out;
}

std::string meaning_of(const MeasureResult& measure, const front::Parts& parts) {
  if (const auto at = measures::find(measure.name)) {
    return std::string(measures::all()[*at].meaning);
  }
  const auto named = parts.ruleset.find_measure(measure.name);
  return named ? parts.ruleset.measures[*named].meaning : std::string();
}

}  // namespace sudsmark::report
