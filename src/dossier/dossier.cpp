#include "dossier/dossier.h"

#include <algorithm>
#include <array>
#include <utility>

#include "dossier/gathering.h"
#include "wording/citations.h"
#include "wording/figures.h"
#include "wording/words.h"

namespace sudsmark {

std::string_view answerer_word(Answerer who) {
  constexpr std::array<std::string_view, 4> words{"supplier", "laboratory", "assessor", "maker"};
  return words[static_cast<std::size_t>(who)];
}

namespace dossier {

const MeasureResult* Gathering::measure(std::string_view name) const {
  const auto found = std::find_if(checked.measures.begin(), checked.measures.end(),
                                  [&](const MeasureResult& one) { return one.name == name; });
  return found == checked.measures.end() ? nullptr : &*found;
}

std::size_t Gathering::waiting_for(std::string_view words) const {
  const auto waits = [&](const Finding& finding) {
    return finding.kind == Kind::open &&
           std::any_of(finding.missing.begin(), finding.missing.end(), [&](const std::string& one) {
             return one.find(words) != std::string::npos;
           });
  };
  return static_cast<std::size_t>(
      std::count_if(checked.findings.begin(), checked.findings.end(), waits));
}

std::vector<SourceNote> Gathering::sources(const catalogue::Row& row) const {
  return wording::notes(row.sources, *blend.catalogue);
}

DossierCell cell(const Figure& figure) {
  return {wording::printed(figure), figure};
}

DossierCell cell(const quantity::Range& base, std::string_view unit) {
  return cell(wording::figure(base, unit));
}

Dossier dossier_of(const blend::Blend& blend, FormulaResult checked, const DossierAsk& ask) {
  // Annex I, part A: the ten headings, in our words.
  constexpr std::array<const char*, 10> titles{
      "What is in it, and how much",
      "Physics, chemistry and stability",
      "Microbiology",
      "Impurities, traces and the pack",
      "Normal use, and what can be foreseen",
      "Exposure to the product",
      "Exposure to the substances",
      "Toxicology of the substances",
      "Undesirable effects",
      "Further information on the product",
  };
  Dossier out;
  out.checked = std::move(checked);
  for (const char* title : titles) {
    out.part_a.push_back({static_cast<int>(out.part_a.size()) + 1, title});
  }
  blend::MissingTable missing;
  const measures::View whole{&blend, &blend.whole, nullptr, &missing, nullptr};
  const Gathering to{blend, out.checked, ask, whole, out};
  add_composition(to);
  add_physics(to);
  add_microbiology(to);
  add_traces(to);
  add_use(to);
  add_exposure(to);
  add_toxicology(to);
  add_records(to);
  add_questions(to);
  out.part_b =
      "Conclusion, warnings and directions, reasoning, and the assessor's name, qualification and "
      "signature: empty here. Only a qualified safety assessor writes it, and it does not follow "
      "from anything above.";
  return out;
}

}  // namespace dossier
}  // namespace sudsmark
