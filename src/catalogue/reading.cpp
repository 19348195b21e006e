#include "catalogue/reading.h"

#include <algorithm>
#include <array>

#include "catalogue/figure.h"
#include "catalogue/messages.h"
#include "catalogue/numbers.h"
#include "text/name.h"

namespace sudsmark::catalogue {
namespace {

constexpr std::array<std::string_view, 5> markets{"GB", "EU", "NI", "US", "CA"};

std::vector<std::string> strings(std::span<const std::string_view> words) {
  return {words.begin(), words.end()};
}

void add_once(Citations& list, CitationIndex index) {
  if (std::find(list.begin(), list.end(), index) == list.end()) list.push_back(index);
}

}  // namespace

Reading::Reading(const Catalogue& of, text::Diagnostics& report_to)
    : catalogue(of), diagnostics(report_to) {
  for (std::size_t at = 0; at < of.citations.size(); ++at) {
    citations_.emplace(of.citations[at].id, static_cast<CitationIndex>(at));
  }
}

std::optional<CitationIndex> Reading::find_citation(const std::string& id) const {
  const auto found = citations_.find(id);
  if (found == citations_.end()) return std::nullopt;
  return found->second;
}

std::string Reading::substance_hint(std::string_view name) const {
  if (!spend_hint()) return {};
  return text::hint(name, catalogue.near_substances(name));
}

std::string Reading::citation_hint(std::string_view name) const {
  if (!spend_hint()) return {};
  std::vector<std::string> known;
  for (const Citation& citation : catalogue.citations) known.push_back(citation.id);
  return text::hint(name, known);
}

Citations read_sources(text::Fields& fields, const Citations* inherited, std::string_view what,
                       const Reading& reading) {
  const text::Node* one = fields.find("source");
  const text::Node* several = fields.find("sources");
  if (one != nullptr && several != nullptr) {
    reading.diagnostics.add(messages::source_twice, {several->key_span, one->key_span});
  }
  const text::Node* node = one != nullptr ? one : several;
  if (node == nullptr) {
    if (inherited != nullptr) return *inherited;
    if (fields.valid()) {
      reading.diagnostics.add(messages::source_needed, fields.node().span, {std::string(what)});
    }
    return {};
  }
  Citations sources;
  for (const text::Node* id : text::texts_of(*node, reading.diagnostics)) {
    const std::string word(text::trimmed(id->text));
    if (const auto index = reading.find_citation(word)) {
      add_once(sources, *index);
      continue;
    }
    reading.diagnostics.add(messages::unknown_source, id->span,
                            {word, reading.citation_hint(word)});
  }
  if (node->kind == text::Node::Kind::list && node->items.empty()) {
    reading.diagnostics.add(messages::source_needed, node->span, {std::string(what)});
  }
  return sources;
}

std::optional<Sourced> read_sourced(text::Fields& fields, std::string_view key,
                                    const quantity::Dimension& dimension,
                                    const Citations& inherited, const Reading& reading) {
  const text::Node* node = fields.find(key);
  if (node == nullptr) return std::nullopt;
  text::Fields figure(*node, reading.diagnostics);
  const text::Node* value = figure.needed("value");
  Citations sources = read_sources(figure, &inherited, key, reading);
  figure.refuse_others();
  if (value == nullptr) return std::nullopt;
  const auto range = read_figure(*value, dimension, reading.diagnostics);
  if (!range) return std::nullopt;
  return Sourced{*range, std::move(sources)};
}

std::optional<Sourced> read_sourced_share(text::Fields& fields, std::string_view key,
                                          const Citations& inherited, const Reading& reading) {
  auto share = read_sourced(fields, key, quantity::dimension::share, inherited, reading);
  if (share && share->value.high > 1) {
    reading.diagnostics.add(messages::over_whole, fields.find(key)->find("value")->span);
    return std::nullopt;
  }
  return share;
}

std::optional<std::size_t> read_choice(const text::Node& node,
                                       std::span<const std::string_view> words,
                                       std::string_view kind, const Reading& reading) {
  const auto word = text::text_of(node, reading.diagnostics);
  if (!word) return std::nullopt;
  const auto found = std::find(words.begin(), words.end(), text::fold(*word));
  if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
  constexpr std::size_t few = 6;
  const std::vector<std::string> known = strings(words);
  std::string end = text::hint(*word, known);
  if (end.empty() && known.size() <= few) end = ": it is " + text::listed(known);
  reading.diagnostics.add(messages::unknown_word, node.span,
                          {*word, std::string(kind), std::move(end)});
  return std::nullopt;
}

namespace {

/// The roles under one key, or the marks under another.
Roles read_traits(text::Fields& fields, std::string_view key, bool marks, std::string_view kind,
                  const Reading& reading) {
  Roles traits = 0;
  const auto words = marks ? role_words().subspan(role_count) : role_words().first(role_count);
  for (const text::Node* node : fields.texts(key)) {
    const std::string_view word = text::trimmed(node->text);
    const auto role = find_role(word);
    if (role && is_mark(*role) == marks) {
      traits |= with_implied(*role);
    } else {
      reading.diagnostics.add(
          messages::unknown_word, node->span,
          {std::string(word), std::string(kind), text::hint(word, strings(words))});
    }
  }
  return traits;
}

}  // namespace

Roles read_roles(text::Fields& fields, const Reading& reading) {
  return read_traits(fields, "roles", false, "a role", reading) |
         read_traits(fields, "marks", true, "a mark", reading);
}

bool check_cas(const text::Node& node, const Reading& reading) {
  const std::string cas(text::trimmed(node.text));
  if (!looks_like_cas(cas)) {
    reading.diagnostics.add(messages::bad_cas, node.span, {cas});
    return false;
  }
  const int digit = cas_check_digit(cas);
  if (cas.back() - '0' == digit) return true;
  reading.diagnostics.add(messages::cas_check_digit, node.span, {cas, static_cast<double>(digit)});
  return false;
}

std::vector<std::string> read_cas(text::Fields& fields, const Reading& reading) {
  std::vector<std::string> numbers;
  for (const text::Node* node : fields.texts("cas")) {
    if (check_cas(*node, reading)) numbers.emplace_back(text::trimmed(node->text));
  }
  return numbers;
}

std::vector<std::uint32_t> read_colour_indices(text::Fields& fields, const Reading& reading) {
  std::vector<std::uint32_t> numbers;
  for (const text::Node* node : fields.texts("colour index")) {
    const std::string_view word = text::trimmed(node->text);
    if (const auto number = read_colour_index(word)) {
      numbers.push_back(*number);
    } else {
      reading.diagnostics.add(messages::bad_colour_index, node->span, {std::string(word)});
    }
  }
  return numbers;
}

std::vector<std::string> read_markets(text::Fields& fields, const Reading& reading) {
  std::vector<std::string> out;
  for (const text::Node* node : fields.texts("market")) {
    const std::string word(text::trimmed(node->text));
    if (std::find(markets.begin(), markets.end(), word) != markets.end()) {
      out.push_back(word);
    } else {
      reading.diagnostics.add(messages::bad_market, node->span, {word});
    }
  }
  return out;
}

void check_id(const text::Node* node, const Reading& reading) {
  if (node == nullptr || node->kind != text::Node::Kind::scalar) return;
  const std::string_view id = text::trimmed(node->text);
  const bool letters = std::all_of(id.begin(), id.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
  });
  if (id.empty() || (letters && id.front() != '-' && id.back() != '-')) return;
  reading.diagnostics.add(messages::bad_id, node->span, {std::string(id)});
}

}  // namespace sudsmark::catalogue
