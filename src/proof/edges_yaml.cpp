#include "proof/edges_yaml.h"

#include <algorithm>

namespace sudsmark::proof {
namespace {

/// Plain where nothing in it could mean something else inside `{ … }`.
std::string scalar(const std::string& text) {
  const auto plain = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == ' ' ||
           c == '.' || c == '%' || c == '-' || c == '/' || c == '(' || c == ')';
  };
  const bool begins = !text.empty() && text[0] != '%' && text[0] != '-' && text[0] != ' ';
  if (begins && std::all_of(text.begin(), text.end(), plain)) return text;
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  return out + "\"";
}

std::string one_or_list(const std::vector<std::string>& texts) {
  if (texts.size() == 1) return scalar(texts[0]);
  std::string out = "[";
  for (const std::string& text : texts) out += (out.size() > 1 ? ", " : "") + scalar(text);
  return out + "]";
}

}  // namespace

std::string edges_yaml(const rules::Ruleset& ruleset, const std::vector<Offer>& offers) {
  std::string out;
  const std::string* before = nullptr;
  for (const Offer& offer : offers) {
    const std::string& id = ruleset.rules[offer.rule].id;
    const Edge& edge = offer.edge;
    if (before != &id) out += "  " + id + ":\n";
    before = &id;
    out += "    - { of: " + std::string(edge.of_pass ? "passes " : "fails ") +
           std::to_string(edge.number) + ", take: " + one_or_list(edge.take);
    if (!edge.put.empty()) out += ", put: " + one_or_list(edge.put);
    out += ", gives: " + std::string(kind_word(edge.gives)) + " }\n";
  }
  return out.empty() ? out : "edges:\n" + out;
}

}  // namespace sudsmark::proof
