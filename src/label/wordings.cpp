// What stands on a pack beside the ingredient list: words because of a substance or of the kind of
// product, further points, and the papers and duties of a market.
#include <algorithm>
#include <utility>

#include "label/label.h"
#include "label/rows.h"
#include "measures/trace_sums.h"
#include "wording/citations.h"

namespace sudsmark::label {
using namespace wording;

namespace {

using catalogue::Role;
using catalogue::Row;

/// Whether rows that are for some users alone concern a product; unknown users may be any.
bool concerns(const blend::Blend& blend, const std::string& user) {
  if (user != "under 3") return true;
  return !blend.states_age() || blend.used_by("children under 3");
}

LabelWords words_of(const blend::Blend& blend, std::string_view table, const Row& row,
                    const std::string& market) {
  LabelWords out;
  out.name = row.name;
  out.words = word_of(blend, table, row, "wording");
  out.exact = word_of(blend, table, row, "exact") == "yes";
  out.entry = word_of(blend, table, row, "entry");
  out.condition = word_of(blend, table, row, "condition");
  out.sources = notes(row.sources_in(market), *blend.catalogue);
  return out;
}

/// Put into a bath, and with a surface-active agent in it: what 21 CFR 740.17 speaks of.
bool foams_in_a_bath(const blend::Blend& blend) {
  const auto& ingredients = blend.whole.composition.ingredients;
  return has_trait(blend, "bath-diluted") &&
         std::any_of(ingredients.begin(), ingredients.end(), [&](const blend::Ingredient& one) {
           return one.mass.high > 0 &&
                  (blend.material(one.material).roles & bit(Role::surfactant)) != 0;
         });
}

enum class Needed { no, perhaps, yes };

/// Whether a row of `label-cautions` is asked for, by what its column `asked-for` says of it.
Needed needed(const blend::Blend& blend, std::string_view asked_for) {
  if (asked_for.empty()) return Needed::perhaps;
  if (!foams_in_a_bath(blend)) return Needed::no;
  const bool children = blend.used_by("children under 3") || blend.used_by("children over 3");
  if (asked_for == "foam, adults alone") return children ? Needed::no : Needed::perhaps;
  if (asked_for == "foam, children") return children ? Needed::perhaps : Needed::no;
  // that it is meant for adults frees from nothing until the label says so
  return Needed::yes;
}

/// Whether words that hang on an amount are due: by the formaldehyde that can be freed, until a
/// measurement shows less; by the form of a powder that children may breathe in.
Needed needed_by_amount(const blend::Blend& blend, const Row& row, std::string_view table) {
  if (word_of(blend, table, row, "form") == "loose powder") {
    const bool meant =
        word_of(blend, table, row, "user") != "under 3" || blend.used_by("children under 3");
    return meant && has_trait(blend, "loose") ? Needed::yes : Needed::perhaps;
  }
  const quantity::Range most = figure_of(blend, table, row, "freed-over");
  if (!most.known()) return Needed::perhaps;
  blend::MissingTable missing;
  const measures::View whole{&blend, &blend.whole, nullptr, &missing, nullptr};
  const quantity::Range freed = measures::freed_formaldehyde(whole).value;
  if (freed.low > most.high) return Needed::yes;
  return freed.high <= most.low ? Needed::no : Needed::perhaps;
}

}  // namespace

void add_label_words(const blend::Blend& blend, const LabelAsk& ask, std::vector<LabelWords>& out) {
  for (const Row* row : rows_for(blend, "label-cautions", ask)) {
    const std::string asked_for = word_of(blend, "label-cautions", *row, "asked-for");
    const Needed need = needed(blend, asked_for);
    if (need == Needed::no) continue;
    out.push_back(words_of(blend, "label-cautions", *row, ask.market));
    out.back().certain = need == Needed::yes;
    out.back().of_foam = !asked_for.empty();
  }
  constexpr std::string_view table = "label-wordings";
  for (const Row* row : rows_for(blend, table, ask)) {
    if (!(declared_share(blend, *row).high > 0)) continue;
    if (!concerns(blend, word_of(blend, table, *row, "user"))) continue;
    if (word_of(blend, table, *row, "used-on") == "hair" && !has_trait(blend, "for-hair")) continue;
    const Needed need = needed_by_amount(blend, *row, table);
    if (need == Needed::no) continue;
    LabelWords words = words_of(blend, table, *row, ask.market);
    words.certain =
        need == Needed::yes || (words.condition.empty() && declared_share(blend, *row).low > 0);
    const bool told = std::any_of(out.begin(), out.end(), [&](const LabelWords& one) {
      return one.words == words.words && one.entry == words.entry && one.certain == words.certain;
    });
    if (!told) out.push_back(std::move(words));
  }
}

void add_label_points(const blend::Blend& blend, const LabelAsk& ask,
                      std::vector<LabelPoint>& out) {
  constexpr std::string_view table = "label-points";
  for (const Row* row : rows_for(blend, table, ask)) {
    std::string small = word_of(blend, table, *row, "small");
    if (small == "no") small.clear();
    out.push_back({row->name, word_of(blend, table, *row, "what"), std::move(small),
                   word_of(blend, table, *row, "condition"), word_of(blend, table, *row, "entry"),
                   notes(row->sources_in(ask.market), *blend.catalogue)});
  }
}

void add_label_duties(const blend::Blend& blend, const LabelAsk& ask,
                      std::vector<LabelPaper>& out) {
  constexpr std::string_view table = "market-duties";
  for (const Row* row : rows_for(blend, table, ask)) {
    if (!concerns(blend, word_of(blend, table, *row, "user"))) continue;
    const bool of_food = word_of(blend, table, *row, "only-if") == "looks like food";
    if (of_food && !blend.looks_like_food) continue;
    std::string paper = word_of(blend, table, *row, "paper");
    if (paper.empty()) paper = row->name;
    out.push_back({std::move(paper),
                   word_of(blend, table, *row, "what"),
                   {},
                   word_of(blend, table, *row, "entry")});
  }
}

}  // namespace sudsmark::label
