#include "proof/draft.h"

#include <algorithm>
#include <utility>

#include "text/yaml_fields.h"

namespace sudsmark::proof {

Draft::Draft(const rules::Rule& rule, bool of_pass, std::size_t number)
    : example_(words_of(rule, of_pass, number)), of_pass_(of_pass), number_(number) {
  for (const std::string* text : {&example_.formula, &example_.base}) {
    std::size_t begin = 0;
    while (begin < text->size()) {
      const std::size_t end = std::min(text->find('\n', begin), text->size());
      std::string line(text::trimmed(std::string_view(*text).substr(begin, end - begin)));
      // of two equal lines an edge means the first
      const bool known = std::find(original_.begin(), original_.end(), line) != original_.end();
      if (!line.empty() && !known) original_.push_back(std::move(line));
      begin = end + 1;
    }
  }
}

Draft::Draft(const rules::Rule& rule, const Edge& edge) : Draft(rule, edge.of_pass, edge.number) {
  for (std::size_t at = 0; at < edge.take.size(); ++at) {
    const auto line = std::find(original_.begin(), original_.end(), edge.take[at]);
    if (line == original_.end()) continue;
    std::vector<std::string>& there = changed_[static_cast<std::size_t>(line - original_.begin())];
    const std::size_t end = at + 1 == edge.take.size() ? edge.put.size() : at + 1;
    for (std::size_t put = at; put < std::min(end, edge.put.size()); ++put) {
      there.push_back(edge.put[put]);
    }
  }
}

std::vector<Draft::Line> Draft::lines() const {
  std::vector<Line> out;
  for (std::size_t at = 0; at < original_.size(); ++at) {
    const auto changed = changed_.find(at);
    if (changed == changed_.end()) {
      out.push_back({at, 0, original_[at]});
      continue;
    }
    for (std::size_t part = 0; part < changed->second.size(); ++part) {
      out.push_back({at, part, changed->second[part]});
    }
  }
  return out;
}

void Draft::replace(const Line& line, std::string text) {
  auto& there = changed_.try_emplace(line.origin, 1, original_[line.origin]).first->second;
  there[line.part] = std::move(text);
}

bool Draft::may_add(const Line& line) const {
  return std::all_of(changed_.begin(), changed_.end(), [&](const auto& one) {
    return one.second.size() <= 1 || one.first == line.origin;
  });
}

void Draft::add_behind(const Line& line, std::string text) {
  auto& there = changed_.try_emplace(line.origin, 1, original_[line.origin]).first->second;
  there.insert(there.begin() + static_cast<std::ptrdiff_t>(line.part) + 1, std::move(text));
}

void Draft::remove(const Line& line) {
  changed_[line.origin].clear();
}

Edge Draft::edge() const {
  Edge edge;
  edge.of_pass = of_pass_;
  edge.number = number_;
  const auto add = [&](const auto& one) {
    edge.take.push_back(original_[one.first]);
    edge.put.insert(edge.put.end(), one.second.begin(), one.second.end());
  };
  // lines that go and leave nothing come last, and before them the one with several in its place
  for (const auto& one : changed_) {
    if (one.second.size() == 1) add(one);
  }
  for (const auto& one : changed_) {
    if (one.second.size() > 1) add(one);
  }
  for (const auto& one : changed_) {
    if (one.second.empty()) add(one);
  }
  return edge;
}

Words Draft::words() const {
  Words out = example_;
  const Edge changes = edge();
  change_lines(out, changes.take, changes.put);
  return out;
}

}  // namespace sudsmark::proof
