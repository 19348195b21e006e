#include "report/explain/explain_law.h"

#include <algorithm>
#include <array>
#include <string>
#include <variant>
#include <vector>

#include "rules/ruleset.h"
#include "wording/citations.h"
#include "wording/words.h"

namespace sudsmark::report {
using namespace wording;

namespace {

using catalogue::Catalogue;
using catalogue::Citation;
using catalogue::Row;
using catalogue::SourceKind;
using catalogue::Table;

std::string word(const Table& table, const Row& row, std::string_view column) {
  const auto at = table.column(column);
  const auto* found = at ? std::get_if<std::string>(&row.cells[*at]) : nullptr;
  return found == nullptr ? std::string() : *found;
}

bool holds_in(const Row& row, std::string_view market) {
  return std::find(row.markets.begin(), row.markets.end(), market) != row.markets.end();
}

/// "from 1 July 2027", "from … for new goods, from … for all".
std::string days(const Row& row) {
  std::string out;
  if (row.from) out += "from " + rules::day_words(*row.from);
  if (row.shelf) {
    out += (out.empty() ? "" : " for what is new, ") + std::string("from ") +
           rules::day_words(*row.shelf) + " for all";
  }
  if (row.until)
    out += (out.empty() ? "" : ", ") + std::string("until ") + rules::day_words(*row.until);
  return out;
}

/// Act, entry, day and how it was come by, behind what is asked for.
std::string behind(const Row& row, const std::string& entry, std::string_view market,
                   const Catalogue& catalogue) {
  std::string out = " [" + entry;
  const std::string from = days(row);
  if (!from.empty()) out += "; " + from;
  return out + "; " + wording::words(notes(row.sources_in(market), catalogue)) + "]";
}

void write_points(const Catalogue& catalogue, std::string_view market, Page& page) {
  const Table* table = catalogue.find_table("label-points");
  if (table == nullptr) return;
  page.paragraph("On the pack:", 2);
  for (const Row& row : table->rows) {
    if (!holds_in(row, market)) continue;
    std::string words = word(*table, row, "what");
    const std::string but = word(*table, row, "condition");
    if (!but.empty()) words += " But: " + but;
    page.entry(row.name, words + behind(row, word(*table, row, "entry"), market, catalogue));
  }
  page.gap();
}

void write_duties(const Catalogue& catalogue, std::string_view market, Page& page) {
  const Table* table = catalogue.find_table("market-duties");
  if (table == nullptr) return;
  page.paragraph("On paper, and duties:", 2);
  for (const Row& row : table->rows) {
    if (!holds_in(row, market)) continue;
    std::string words = word(*table, row, "paper");
    words += (words.empty() ? "" : ": ") + word(*table, row, "what");
    const std::string user = word(*table, row, "user");
    if (user != "anyone") words += " (users " + user + ")";
    page.entry(row.name, words + behind(row, word(*table, row, "entry"), market, catalogue));
  }
  page.gap();
}

void write_pending(const Catalogue& catalogue, std::string_view market, Page& page) {
  const Table* table = catalogue.find_table("pending-law");
  if (table == nullptr) return;
  bool fresh = true;
  for (const Row& row : table->rows) {
    if (!holds_in(row, market)) continue;
    if (fresh) page.paragraph("May become law, and what was looked at:", 2);
    fresh = false;
    page.entry(row.name, word(*table, row, "what") +
                             behind(row, word(*table, row, "state"), market, catalogue));
  }
  if (!fresh) page.gap();
}

/// How the rows of a table were come by in a market: the weakest source of each row counts.
struct Trust {
  std::size_t read = 0;
  std::size_t quoted = 0;
  std::size_t recalled = 0;
  [[nodiscard]] std::size_t all() const { return read + quoted + recalled; }
};

Trust trust_of(const Table& table, std::string_view market, const Catalogue& catalogue) {
  Trust out;
  for (const Row& row : table.rows) {
    if (!holds_in(row, market)) continue;
    bool recalled = row.sources_in(market).empty();
    bool quoted = false;
    for (const auto at : row.sources_in(market)) {
      const Citation& source = catalogue.citations[at];
      recalled = recalled || source.kind != SourceKind::published;
      quoted = quoted || source.quoted;
    }
    ++(recalled ? out.recalled : quoted ? out.quoted : out.read);
  }
  return out;
}

void write_trust(const Catalogue& catalogue, std::string_view market, Page& page) {
  page.paragraph("How sure the tables are, rows for this market by their weakest source:", 2);
  for (const Table& table : catalogue.tables) {
    const Trust trust = trust_of(table, market, catalogue);
    if (trust.all() == 0) continue;
    page.entry(table.id, std::to_string(trust.all()) + ": " + std::to_string(trust.read) +
                             " read, " + std::to_string(trust.quoted) + " quoted, " +
                             std::to_string(trust.recalled) + " recalled. " + table.title + ".");
  }
  page.gap();
}

}  // namespace

void explain_law(const Catalogue& catalogue, Page& page) {
  struct Market {
    std::string_view word;
    std::string_view name;
  };
  constexpr std::array markets{Market{"EU", "European Union"}, Market{"NI", "Northern Ireland"},
                               Market{"GB", "Great Britain"}, Market{"US", "United States"},
                               Market{"CA", "Canada"}};
  page.heading("The law by market: what applies to a maker, and what she holds on paper");
  page.paragraph(
      "Days count for each batch that goes on the market in the EU, Northern Ireland and Great "
      "Britain (`batch made`), and for the product in Canada (`on sale since`). What was not read "
      "in "
      "the act itself says so: quoted, or from memory.");
  page.gap();
  for (const Market& market : markets) {
    page.heading(std::string(market.name) + " (" + std::string(market.word) + ")");
    write_points(catalogue, market.word, page);
    write_duties(catalogue, market.word, page);
    write_pending(catalogue, market.word, page);
    write_trust(catalogue, market.word, page);
  }
}

}  // namespace sudsmark::report
