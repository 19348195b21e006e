// `material is listed in TABLE`: colours and the like, which the law allows by a list.
#include <algorithm>
#include <vector>

#include "rules/bringers.h"
#include "rules/figures.h"
#include "rules/words.h"

namespace sudsmark::rules {
namespace {

using catalogue::Material;

/// The colour index numbers in an INCI name: "Mica (and) CI 77891 (and) CI 77491" has two.
std::vector<std::string_view> index_numbers(std::string_view inci) {
  constexpr std::string_view mark = "CI ";
  std::vector<std::string_view> out;
  for (std::size_t at = inci.find(mark); at != std::string_view::npos; at = inci.find(mark, at)) {
    std::size_t end = at + mark.size();
    while (end < inci.size() && inci[end] >= '0' && inci[end] <= '9') ++end;
    if (end > at + mark.size()) out.push_back(inci.substr(at, end - at));
    at = end;
  }
  return out;
}

}  // namespace

bool Figures::in_force(const catalogue::Row& row) const {
  if (!row.from && !row.shelf && !row.until) return true;
  return in_force({row.from, row.shelf, row.until}, row.markets);
}

bool Figures::in_force(const Dates& dates, const std::vector<std::string>& markets) const {
  if (!dates.from && !dates.shelf && !dates.until) return true;
  // where no day is stated, every market counts from today
  if (!blend_.batch_made && !blend_.on_sale_since) return rules::in_force(dates, today_, today_);
  // each market counts from a day of its own
  bool sold = false;
  const std::uint32_t said = words_[static_cast<std::size_t>(StatedWords::market)].bits;
  const std::span<const std::string_view> known = info(StatedWords::market).known;
  for (std::size_t index = 0; index < known.size(); ++index) {
    const bool of_law =
        markets.empty() || std::find(markets.begin(), markets.end(), known[index]) != markets.end();
    if ((said & (1U << index)) == 0 || !of_law) continue;
    sold = true;
    if (rules::in_force(dates, blend_.counted_from(known[index], today_), today_)) return true;
  }
  const std::string_view alone = markets.size() == 1 ? std::string_view(markets.front()) : "";
  return !sold && rules::in_force(dates, blend_.counted_from(alone, today_), today_);
}

/// Whether a table has what the subject's material is bought for, in each of the formula's markets
/// that the table speaks of, on the machine's days.
Value Figures::is_listed(std::uint32_t index, const Subject& subject) {
  const catalogue::Table& table = blend_.catalogue->tables[index];
  const Material& of = material(subject);
  std::vector<std::uint32_t> wanted;
  std::vector<std::uint32_t> all;
  for (const blend::ContentView& content : blend_.contents(subject.ingredient->material)) {
    if (content.substance_id >= blend_.catalogue->substances.size()) continue;
    all.push_back(content.substance_id);
    if (content.active) wanted.push_back(content.substance_id);
  }
  if (wanted.empty()) wanted = all;
  const auto holds_in = [](const catalogue::Row& row, std::string_view market) {
    return row.markets.empty() || market.empty() ||
           std::find(row.markets.begin(), row.markets.end(), market) != row.markets.end();
  };
  const std::span<const std::string_view> known = info(StatedWords::market).known;
  const std::uint32_t sold = words_[static_cast<std::size_t>(StatedWords::market)].bits;
  std::vector<const catalogue::Row*> rows;
  const auto listed_where_sold = [&](std::uint32_t substance) {
    // most substances stand in no row, and then no market has to be asked
    rows.clear();
    for (const catalogue::RowOf& one : table.rows_of(substance)) {
      rows.push_back(&table.rows[one.row]);
    }
    for (const std::uint32_t at : table.of_others) {
      if (holds_whole(table.rows[at], of)) rows.push_back(&table.rows[at]);
    }
    const auto listed = [&](std::string_view market) {
      return std::any_of(rows.begin(), rows.end(), [&](const catalogue::Row* row) {
        return holds_in(*row, market) && in_force(*row);
      });
    };
    if (sold == 0) return listed({});
    for (std::size_t at = 0; at < known.size(); ++at) {
      if (((sold >> at) & 1U) == 0 || listed(known[at])) continue;
      if (table.speaks_of(known[at])) return false;
    }
    return true;
  };
  const auto identified = [&](std::uint32_t at) {
    const catalogue::Substance& substance = blend_.catalogue->substances[at];
    return !substance.cas.empty() || !substance.inci.empty() || !substance.colour_index.empty();
  };
  Value value;
  value.truth = Certainty::yes;
  // the numbers of a colour say more than its name: "Mica (and) CI 77891" is two things
  const std::vector<std::string_view> numbers = index_numbers(of.inci);
  for (const std::string_view number : numbers) {
    const auto known_as = blend_.catalogue->find_substances(number);
    if (std::any_of(known_as.begin(), known_as.end(), listed_where_sold)) continue;
    value.truth = Certainty::no;
    return value;
  }
  if (!numbers.empty()) return value;
  const bool own = subject.ingredient->material >= blend_.catalogue->materials.size();
  if (own && (of.roles & catalogue::bit(catalogue::Role::mica)) != 0) {
    value.truth = Certainty::depends;
    value.missing = lacks(
        "the colour index numbers of what coats '" + of.name + "' (`inci \"Mica (and) CI …\"`)",
        subject.place);
    return value;
  }
  for (const std::uint32_t substance : wanted) {
    if (listed_where_sold(substance)) continue;
    // what has no number and no name of the trade may be anything that is listed
    value.truth = identified(substance) ? Certainty::no : Certainty::depends;
    if (value.truth == Certainty::no) return value;
  }
  if (wanted.empty()) value.truth = Certainty::depends;
  if (value.truth == Certainty::depends) {
    value.missing = lacks_of(
        of.cas.empty() ? "the CAS or colour index number" : "the colour index number", subject);
  }
  return value;
}

}  // namespace sudsmark::rules
