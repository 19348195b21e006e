#include "measures/element_measures.h"

#include <algorithm>
#include <array>
#include <string>

#include "measures/selection.h"
#include "measures/sums.h"
#include "quantity/number.h"
#include "science/elements.h"

namespace sudsmark::measures {
namespace {

constexpr std::string_view source =
    "chemical formulas of the table `element-content`, standard atomic masses";

/// What is counted: an element, or the acid that holds it.
struct Counted {
  std::string_view word;    ///< in the column `element`
  std::string_view symbol;  ///< of the element
  std::string_view acid;    ///< formula of the acid; empty: the element itself
};

constexpr Counted aluminium{"aluminium", "Al", ""};
constexpr Counted zinc{"zinc", "Zn", ""};
constexpr Counted boron{"boron", "B", ""};
constexpr Counted mercury{"mercury", "Hg", ""};
constexpr Counted silver{"silver", "Ag", ""};
constexpr Counted etidronic{"etidronic acid", "P", "C2H8O7P2"};

bool is_in(const void* context, const Candidate& candidate) {
  const auto& row = *static_cast<const catalogue::Row*>(context);
  const std::string& id = candidate.material->id;
  const auto& whole = row.materials;
  if (!id.empty() && std::find(whole.begin(), whole.end(), id) != whole.end()) return true;
  if (candidate.content == nullptr) return false;
  const auto& substances = row.substances;
  return std::find(substances.begin(), substances.end(), candidate.content->substance_id) !=
         substances.end();
}

/// Part of a substance that counts [fraction]; all of it may where nobody has told.
Range part_of(const catalogue::Table& table, const catalogue::Row& row, const Counted& counted) {
  if (const std::string_view formula = table.word(row, "formula"); !formula.empty()) {
    const auto part = counted.acid.empty()
                          ? science::element_share(formula, counted.symbol)
                          : science::share_as(formula, counted.symbol, counted.acid);
    if (part) return *part;
  }
  const auto index = table.column("share");
  const auto* figure = index ? std::get_if<Range>(&row.cells[*index]) : nullptr;
  return figure != nullptr ? *figure : Range(0.0, 1.0);
}

/// Sum over the rows that count in one way ("yes", "ask").
Measured held(const View& view, const Counted& counted, std::string_view counts) {
  Measured out{0.0, {}};
  const catalogue::Table* table = view.blend->catalogue->find_table("element-content");
  if (table == nullptr) return out;
  for (const catalogue::Row& row : table->rows) {
    if (table->word(row, "element") != counted.word || table->word(row, "counts") != counts)
      continue;
    const Measured there = share(view, {&is_in, &row, false});
    if (!(there.value.high > 0)) continue;
    const Range part = part_of(*table, row, counted);
    out.value += there.value * part;
    out.missing |= there.missing;
    if (part.low == 0.0 && part.high >= 1.0) {
      out.missing |=
          view.missing->add("how much " + std::string(counted.word) + " '" + row.name + "' holds",
                            place(view, {&is_in, &row, false}));
    }
    if (view.trace == nullptr) continue;
    const auto percent = *quantity::find_unit("%");
    trace(view, row.name + " " + quantity::printed(there.value, percent) + " x " +
                    quantity::printed(part, percent));
  }
  out.value = quantity::clamp(out.value, 0.0, 1.0);
  return out;
}

template <const Counted& counted>
Measured counting(const View& view) {
  return held(view, counted, "yes");
}

template <const Counted& counted>
Measured unsettled(const View& view) {
  return held(view, counted, "ask");
}

template <const Counted& counted>
Span most_of(const View& view) {
  const catalogue::Table* table = view.blend->catalogue->find_table("element-content");
  Span found;
  double most = 0.0;
  if (table == nullptr) return found;
  for (const catalogue::Row& row : table->rows) {
    const std::string_view how = table->word(row, "counts");
    if (table->word(row, "element") != counted.word || how.empty() || how == "no") continue;
    const Selector selector{&is_in, &row, false};
    const double amount = share(view, selector).value.high * part_of(*table, row, counted).high;
    if (!(amount > most)) continue;
    most = amount;
    found = place(view, selector);
  }
  return found;
}

constexpr std::array element_table{
    Measure{"element.aluminium", "%", "aluminium of what the EU counts as holding it", source,
            counting<aluminium>, most_of<aluminium>},
    Measure{"element.aluminium.unsettled", "%",
            "aluminium of what an assessor has to say whether it counts", source,
            unsettled<aluminium>, most_of<aluminium>},
    Measure{"element.zinc", "%", "zinc of its water-soluble salts", source, counting<zinc>,
            most_of<zinc>},
    Measure{"element.zinc.unsettled", "%",
            "zinc of salts of which it is not settled whether they are soluble", source,
            unsettled<zinc>, most_of<zinc>},
    Measure{"element.boron", "%", "boron of boric acid and borates", source, counting<boron>,
            most_of<boron>},
    Measure{"element.mercury", "%", "mercury of its compounds", source, counting<mercury>,
            most_of<mercury>},
    Measure{"element.silver", "%", "silver of its citrate", source, counting<silver>,
            most_of<silver>},
    Measure{"as.etidronic_acid", "%", "etidronic acid, its salts counted as the acid", source,
            counting<etidronic>, most_of<etidronic>},
};

}  // namespace

std::span<const Measure> element_measures() {
  return element_table;
}

}  // namespace sudsmark::measures
