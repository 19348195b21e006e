#include "drill/layout.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <optional>

#include "quantity/number.h"

namespace sudsmark::drill {
namespace {

/// Grams of the batch; none where it is not stated in grams or kilograms.
std::optional<double> batch_of(const Sheet& sheet) {
  const auto place = find_line(sheet, "batch");
  if (!place) return std::nullopt;
  const std::string& stated = sheet.at(*place).words;
  const std::size_t digit = stated.find_first_of("0123456789");
  const std::size_t end = stated.find(' ', digit);
  if (digit == std::string::npos || end == std::string::npos) return std::nullopt;
  const auto figure = quantity::read_number(std::string_view(stated).substr(digit, end - digit));
  const std::string unit = stated.substr(end + 1);
  if (!figure || (unit != "g" && unit != "kg")) return std::nullopt;
  return *figure * (unit == "kg" ? 1000 : 1);
}

bool in_whole(const Section& section) {
  return section.heading.starts_with("phase");
}

/// What the lines of all phases leave of a whole for the one that fills up, where each is written
/// as `shown` has it.
template <class Shown>
double left(const Sheet& sheet, double whole, Shown shown) {
  for (const Section& section : sheet.sections) {
    if (!in_whole(section)) continue;
    for (const Line& line : section.lines) {
      if (line.amount && !line.fills) whole -= shown(line.amount->drawn);
    }
  }
  return whole;
}

double as_drawn(double share) {
  return share;
}

/// Whether every phase is written in per cent.
bool all_shares(const Sheet& sheet) {
  for (const Section& section : sheet.sections) {
    if (!in_whole(section)) continue;
    for (const Line& line : section.lines) {
      if (line.amount && line.amount->unit != "%") return false;
    }
  }
  return true;
}

std::vector<std::size_t> by_order(std::size_t size, auto&& order_of) {
  std::vector<std::size_t> out(size);
  std::iota(out.begin(), out.end(), std::size_t{0});
  std::stable_sort(out.begin(), out.end(),
                   [&](std::size_t a, std::size_t b) { return order_of(a) < order_of(b); });
  return out;
}

/// Sections that stand before the one with the fault, as bits, and the lines before the fault in
/// it.
struct Way {
  std::uint32_t before = 0;
  std::size_t lines = 0;
};

/// The ways that bring the fault nearest to where it is wanted: so many lines before it.
std::vector<Way> ways_to(std::size_t wanted, const std::vector<std::size_t>& sizes,
                         std::size_t own) {
  constexpr std::size_t most = 12;  // more sections are left where they fall
  std::vector<Way> out;
  std::size_t least = std::numeric_limits<std::size_t>::max();
  const std::uint32_t end = 1U << std::min(sizes.size(), most);
  for (std::uint32_t before = 0; before < end; ++before) {
    std::size_t lines = 0;
    for (std::size_t at = 0; at < sizes.size() && at < most; ++at) {
      if ((before >> at & 1U) != 0) lines += sizes[at];
    }
    for (std::size_t in = 0; in < own; ++in) {
      const std::size_t there = lines + in;
      const std::size_t off = there > wanted ? there - wanted : wanted - there;
      if (off < least) out.clear();
      least = std::min(least, off);
      if (off == least) out.push_back({before, in});
    }
  }
  return out;
}

}  // namespace

std::vector<Style> styles(const Sheet& sheet) {
  std::vector<Style> out{Style::fills};
  if (!all_shares(sheet) || left(sheet, 100, as_drawn) <= 0) return out;
  out.push_back(Style::per_cent);
  if (batch_of(sheet)) out.push_back(Style::grams);
  return out;
}

void lay_out(Sheet& sheet, const Place& fault, Draws& draws) {
  std::vector<std::size_t> sizes;  // of the other sections
  std::size_t all = 0;
  for (std::size_t at = 0; at < sheet.sections.size(); ++at) {
    all += sheet.sections[at].lines.size();
    if (at != fault.section) sizes.push_back(sheet.sections[at].lines.size());
  }
  const Section& own = sheet.sections[fault.section];
  const auto ways = ways_to(draws.below(all), sizes, own.lines.size());
  const Way& way = ways[draws.below(ways.size())];
  std::size_t other = 0;
  for (std::size_t at = 0; at < sheet.sections.size(); ++at) {
    Section& section = sheet.sections[at];
    const bool is_own = at == fault.section;
    const bool before = !is_own && (way.before >> std::min<std::size_t>(other, 31) & 1U) != 0;
    section.order = is_own ? 1 : before ? draws.share() : 1 + draws.share() + 1e-9;
    other += is_own ? 0 : 1;
    std::vector<double> orders;
    for (std::size_t in = 0; in < section.lines.size(); ++in)
      orders.push_back(static_cast<double>(in));
    if (is_own) orders.erase(orders.begin() + static_cast<std::ptrdiff_t>(way.lines));
    draws.shuffle(orders);
    if (is_own) {
      orders.insert(orders.begin() + static_cast<std::ptrdiff_t>(fault.line),
                    static_cast<double>(way.lines));
    }
    for (std::size_t in = 0; in < section.lines.size(); ++in) {
      section.lines[in].order = orders[in];
    }
  }
}

std::string words_in(const Sheet& sheet, const Line& line, Style style) {
  if (!line.amount || style == Style::fills) return words(line);
  Line shown = line;
  shown.fills = false;
  Amount& amount = *shown.amount;
  const double batch = batch_of(sheet).value_or(0);
  const auto weighed = [&](double share) { return rounded(share * batch / 100); };
  if (style == Style::grams && amount.unit == "%") {
    amount.drawn = line.fills ? left(sheet, batch, weighed) : weighed(amount.drawn);
    amount.unit = "g";
  } else if (line.fills) {
    amount.drawn = left(sheet, 100, as_drawn);
  }
  constexpr double finest = 1e4;  // of a per cent or a gram; more than any scale shows
  amount.drawn = std::round(amount.drawn * finest) / finest;
  return words(shown);
}

Written write(const Sheet& sheet, Style style) {
  Written out;
  out.numbers.resize(sheet.sections.size());
  std::uint32_t number = 0;
  const auto line = [&](const std::string& words, const std::string& heading) {
    out.text += words + "\n";
    out.headings.push_back(heading);
    ++number;
  };
  const auto sections =
      by_order(sheet.sections.size(), [&](std::size_t at) { return sheet.sections[at].order; });
  for (const std::size_t at : sections) {
    const Section& section = sheet.sections[at];
    if (number > 0) line("", {});
    line(section.heading, section.heading);
    out.numbers[at].resize(section.lines.size());
    for (const std::size_t in :
         by_order(section.lines.size(), [&](std::size_t i) { return section.lines[i].order; })) {
      // shares of a premix are of its own mass, and doses come on top
      const bool whole = in_whole(section);
      const Line& own = section.lines[in];
      line("  " + (whole ? words_in(sheet, own, style) : words(own)), section.heading);
      out.numbers[at][in] = number;
    }
  }
  return out;
}

}  // namespace sudsmark::drill
