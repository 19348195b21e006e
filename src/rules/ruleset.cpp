#include "rules/ruleset.h"

#include <algorithm>
#include <array>
#include <cstdio>

#include "measures/registry.h"
#include "text/name.h"

namespace sudsmark::rules {

std::string_view authority_word(Authority authority) {
  switch (authority) {
    case Authority::law:
      return "law";
    case Authority::standard:
      return "standard";
    case Authority::craft:
      break;
  }
  return "craft";
}

std::string day_words(const Day& day) {
  std::array<char, 32> buffer{};
  const int size =
      std::snprintf(buffer.data(), buffer.size(), "%04d-%02u-%02u", static_cast<int>(day.year()),
                    static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()));
  return {buffer.data(), static_cast<std::size_t>(size)};
}

bool in_force(const Dates& dates, const Day& first_sold, const Day& today) {
  const Day later = std::max(first_sold, today);
  if (dates.until && later >= *dates.until) return false;
  if (!dates.from) return true;
  if (!dates.shelf) return later >= *dates.from;
  return first_sold >= *dates.from || today >= *dates.shelf;
}

bool Mend::selects() const {
  return kind == Kind::lower || kind == Kind::raise || kind == Kind::swap;
}

std::string_view change_word(Mend::Change change) {
  switch (change) {
    case Mend::Change::piece:
      return "piece";
    case Mend::Change::batch:
      return "batch";
    case Mend::Change::scale:
      return "scale";
    case Mend::Change::dose:
      return "dose";
    case Mend::Change::warmth:
      return "warmth";
    case Mend::Change::mask:
      return "mask";
    case Mend::Change::paper:
      break;
  }
  return "paper";
}

std::optional<std::uint32_t> Ruleset::find_rule(std::string_view id) const {
  const auto index_of = [this](const auto& is) -> std::optional<std::uint32_t> {
    const auto found = std::find_if(rules.begin(), rules.end(), is);
    if (found == rules.end()) return std::nullopt;
    return static_cast<std::uint32_t>(found - rules.begin());
  };
  // a rule that is called so now comes before one that was
  const auto now = index_of([&](const Rule& rule) { return rule.id == id; });
  if (now) return now;
  return index_of([&](const Rule& rule) {
    return std::find(rule.formerly.begin(), rule.formerly.end(), id) != rule.formerly.end();
  });
}

std::optional<std::uint32_t> Ruleset::find_folded(std::string_view id) const {
  const std::string wanted = text::fold(id);
  std::optional<std::uint32_t> before;
  for (std::uint32_t index = 0; index < rules.size(); ++index) {
    const Rule& rule = rules[index];
    if (text::fold(rule.id) == wanted) return index;
    for (const std::string& former : rule.formerly) {
      if (text::fold(former) == wanted) before = index;
    }
  }
  return before;
}

std::string Ruleset::renamed(std::string_view id) const {
  const auto rule = find_folded(id);
  if (!rule || text::fold(rules[*rule].id) == text::fold(id)) return {};
  return "'" + std::string(id) + "' is called '" + rules[*rule].id + "' now";
}

std::optional<std::uint32_t> Ruleset::find_measure(std::string_view name) const {
  const auto found = std::find_if(measures.begin(), measures.end(),
                                  [&](const NamedMeasure& one) { return one.name == name; });
  if (found == measures.end()) return std::nullopt;
  return static_cast<std::uint32_t>(found - measures.begin());
}

std::vector<std::string> Ruleset::near_rules(std::string_view id) const {
  std::vector<std::string> ids;
  for (const Rule& rule : rules) ids.push_back(rule.id);
  return text::nearest(id, ids);
}

}  // namespace sudsmark::rules
