// The questions: out of the table, of the papers, of what checks leave open; then their order.
#include <algorithm>
#include <array>
#include <utility>

#include "catalogue/role.h"
#include "dossier/gathering.h"
#include "label/rows.h"
#include "text/name.h"
#include "wording/words.h"

namespace sudsmark::dossier {
namespace {

constexpr std::string_view questions_table = "dossier-questions";

std::vector<std::string> words_of(const std::string& list) {
  std::vector<std::string> out;
  std::size_t at = 0;
  while (at < list.size()) {
    const std::size_t end = std::min(list.find(',', at), list.size());
    out.push_back(text::fold(std::string_view(list).substr(at, end - at)));
    at = end + 1;
  }
  return out;
}

bool any_trait(const blend::Blend& blend, const std::string& list) {
  const auto& traits = blend.product->traits;
  for (const std::string& one : words_of(list)) {
    const auto same = [&](const std::string& trait) { return text::fold(trait) == one; };
    if (std::any_of(traits.begin(), traits.end(), same)) return true;
  }
  return list.empty();
}

/// Materials that a row is about: of its roles, or holding its substances.
std::vector<std::string> about(const blend::Blend& blend, const catalogue::Row& row,
                               const std::string& roles) {
  catalogue::Roles wanted = 0;
  for (const std::string& one : words_of(roles)) {
    if (const auto role = catalogue::find_role(one)) wanted |= catalogue::bit(*role);
  }
  std::vector<std::string> out;
  for (const blend::Ingredient& one : blend.whole.composition.ingredients) {
    const catalogue::Material& material = blend.material(one.material);
    const auto& contents = blend.contents(one.material);
    const bool holds =
        std::any_of(contents.begin(), contents.end(), [&](const blend::ContentView& content) {
          return content.substance != nullptr &&
                 std::find(row.substances.begin(), row.substances.end(), content.substance_id) !=
                     row.substances.end();
        });
    if (one.mass.high > 0 && (holds || (material.roles & wanted) != 0)) {
      out.push_back(material.name);
    }
  }
  return out;
}

Answerer answerer(const std::string& word) {
  for (const Answerer who :
       {Answerer::supplier, Answerer::laboratory, Answerer::assessor, Answerer::maker}) {
    if (answerer_word(who) == word) return who;
  }
  return Answerer::maker;
}

void add_of_table(const Gathering& to) {
  const catalogue::Table* table = to.blend.catalogue->find_table(questions_table);
  if (table == nullptr) return;
  for (const catalogue::Row& row : table->rows) {
    const auto word = [&](std::string_view column) {
      return label::word_of(to.blend, questions_table, row, column);
    };
    if (!any_trait(to.blend, word("traits"))) continue;
    std::vector<std::string> materials = about(to.blend, row, word("roles"));
    const bool needs = !word("roles").empty() || !row.substances.empty();
    if (needs && materials.empty()) continue;
    const double heading = label::figure_of(to.blend, questions_table, row, "heading").low;
    to.question({static_cast<int>(heading), answerer(word("who")), word("question"), word("why"),
                 std::move(materials)});
  }
}

/// What a paper's checks name among what is missing; empty: nothing waits for it there.
std::string_view waits_as(const std::string& paper) {
  struct Waits {
    std::string_view paper;
    std::string_view missing;
  };
  constexpr std::array all{Waits{"certificate of conformity", "certificate"},
                           Waits{"allergen declaration", "undeclared"},
                           Waits{"safety data sheet", "safety data sheet"}};
  for (const Waits& one : all) {
    if (paper.starts_with(one.paper)) return one.missing;
  }
  return {};
}

void add_of_papers(const Gathering& to) {
  for (const LabelPaper& paper : to.checked.papers) {
    // traces, germs and the product itself have questions of their own
    if (paper.about.empty() || paper.paper.starts_with("specification with purity") ||
        paper.paper.starts_with("microbiological specification")) {
      continue;
    }
    const std::string_view waits = waits_as(paper.paper);
    const std::size_t decides = waits.empty() ? 1 : std::max<std::size_t>(1, to.waiting_for(waits));
    const bool toxic = paper.paper.starts_with("safety data sheet");
    const int heading = toxic ? 8 : paper.entry.empty() ? 1 : 4;
    to.question({heading, Answerer::supplier, "Can you send us this: " + paper.paper + "?",
                 paper.why + (paper.entry.empty() ? "" : " [" + paper.entry + "]"), paper.about,
                 decides});
  }
}

/// Whether something missing is of the workshop or the scale, which no assessor asks for, or is
/// asked already.
bool asked_elsewhere(const std::string& missing) {
  constexpr std::array<std::string_view, 8> elsewhere{
      "`workshop",  "mask",    "safety data sheet", "certificate",
      "undeclared", "`takes`", "toxicological",     "`users`"};
  return std::any_of(elsewhere.begin(), elsewhere.end(),
                     [&](std::string_view one) { return missing.find(one) != std::string::npos; });
}

void add_of_checks(const Gathering& to) {
  std::vector<std::pair<std::string, std::size_t>> waiting;
  for (const Finding& finding : to.checked.findings) {
    if (finding.kind != Kind::open || finding.paper) continue;
    for (const std::string& one : finding.missing) {
      if (asked_elsewhere(one)) continue;
      const auto known = std::find_if(waiting.begin(), waiting.end(),
                                      [&](const auto& pair) { return pair.first == one; });
      if (known == waiting.end()) {
        waiting.emplace_back(one, 1);
      } else {
        ++known->second;
      }
    }
  }
  for (auto& [what, count] : waiting) {
    const bool statement = what.find('`') != std::string::npos;
    to.question({2,
                 statement ? Answerer::maker : Answerer::supplier,
                 "What is this: " + what + "?",
                 "Checks wait for it.",
                 {},
                 count});
  }
}

}  // namespace

void add_questions(const Gathering& to) {
  add_of_table(to);
  add_of_papers(to);
  add_of_checks(to);
  std::stable_sort(to.out.questions.begin(), to.out.questions.end(),
                   [](const DossierQuestion& a, const DossierQuestion& b) {
                     if (a.decides != b.decides) return a.decides > b.decides;
                     return a.heading < b.heading;
                   });
}

}  // namespace sudsmark::dossier
