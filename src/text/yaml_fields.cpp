#include "text/yaml_fields.h"

#include <algorithm>

#include "text/name.h"
#include "text/yaml_messages.h"

namespace sudsmark::text {
namespace {

namespace messages = yaml_messages;

const std::vector<Node>& nothing() {
  static const std::vector<Node> none;
  return none;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view blanks = " \r\n";
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

std::string described(const Node& node) {
  constexpr std::size_t most = 40;
  switch (node.kind) {
    case Node::Kind::nothing:
      return "nothing";
    case Node::Kind::list:
      return "a list";
    case Node::Kind::map:
      return "keys with values";
    case Node::Kind::scalar:
      break;
  }
  std::string_view shown = trimmed(node.text);
  shown = shown.substr(0, shown.find('\n'));
  std::size_t end = std::min(shown.size(), most);
  while (end < shown.size() && end > 0 && (static_cast<unsigned char>(shown[end]) & 0xC0U) == 0x80U)
    --end;
  const bool whole = end == trimmed(node.text).size();
  return "the text '" + std::string(shown.substr(0, end)) + (whole ? "'" : "…'");
}

std::optional<std::string> text_of(const Node& node, Diagnostics& diagnostics) {
  if (node.kind != Node::Kind::scalar) {
    diagnostics.add(messages::expected, node.span, {"a text", described(node)});
    return std::nullopt;
  }
  const std::string_view text = trimmed(node.text);
  if (text.empty()) {
    diagnostics.add(messages::empty_text, node.span);
    return std::nullopt;
  }
  return std::string(text);
}

const std::vector<Node>& list_of(const Node& node, Diagnostics& diagnostics) {
  if (node.kind == Node::Kind::list) return node.items;
  diagnostics.add(messages::expected, node.span, {"a list", described(node)});
  return nothing();
}

std::vector<const Node*> texts_of(const Node& node, Diagnostics& diagnostics) {
  std::vector<const Node*> texts;
  if (node.kind == Node::Kind::list) {
    for (const Node& item : node.items) {
      if (text_of(item, diagnostics)) texts.push_back(&item);
    }
  } else if (node.kind == Node::Kind::scalar) {
    if (text_of(node, diagnostics)) texts.push_back(&node);
  } else {
    diagnostics.add(messages::expected, node.span, {"a text or a list of texts", described(node)});
  }
  return texts;
}

bool flag_of(const Node& node, Diagnostics& diagnostics) {
  const std::string_view word = node.kind == Node::Kind::scalar ? trimmed(node.text) : "";
  const bool yes = word == "yes" || word == "true";
  if (!yes && word != "no" && word != "false") {
    diagnostics.add(messages::expected, node.span, {"yes or no", described(node)});
  }
  return yes;
}

std::string hint(std::string_view name, const std::vector<std::string>& candidates) {
  const std::vector<std::string> near = nearest(name, candidates);
  return near.empty() ? std::string() : "; perhaps " + listed(near);
}

Fields::Fields(const Node& node, Diagnostics& diagnostics)
    : node_(node), map_(node.kind == Node::Kind::map ? &node : nullptr), diagnostics_(diagnostics) {
  if (map_ == nullptr) {
    diagnostics_.add(messages::expected, node.span, {"keys with values", described(node)});
  }
}

void Fields::allow(std::string_view key) {
  if (std::find(known_.begin(), known_.end(), key) == known_.end()) known_.emplace_back(key);
}

const Node* Fields::find(std::string_view key) {
  allow(key);
  return map_ == nullptr ? nullptr : map_->find(key);
}

const Node* Fields::needed(std::string_view key) {
  const Node* found = find(key);
  if (found == nullptr && map_ != nullptr) {
    diagnostics_.add(messages::key_needed, node_.span, {std::string(key)});
  }
  return found;
}

std::string Fields::text(std::string_view key) {
  const Node* found = find(key);
  return found == nullptr ? std::string() : text_of(*found, diagnostics_).value_or(std::string());
}

std::string Fields::needed_text(std::string_view key) {
  const Node* found = needed(key);
  return found == nullptr ? std::string() : text_of(*found, diagnostics_).value_or(std::string());
}

const std::vector<Node>& Fields::list(std::string_view key) {
  const Node* found = find(key);
  return found == nullptr ? nothing() : list_of(*found, diagnostics_);
}

std::vector<const Node*> Fields::texts(std::string_view key) {
  const Node* found = find(key);
  if (found == nullptr) return {};
  return texts_of(*found, diagnostics_);
}

std::vector<std::string> Fields::strings(std::string_view key) {
  std::vector<std::string> out;
  for (const Node* node : texts(key)) out.emplace_back(trimmed(node->text));
  return out;
}

bool Fields::flag(std::string_view key) {
  const Node* found = find(key);
  return found != nullptr && flag_of(*found, diagnostics_);
}

void Fields::refuse_others() const {
  if (map_ == nullptr) return;
  std::size_t reported = 0;
  for (const Node& item : map_->items) {
    if (std::find(known_.begin(), known_.end(), item.key) != known_.end()) continue;
    if (++reported > Diagnostics::most) break;
    diagnostics_.add(messages::key_unknown, item.key_span, {item.key, hint(item.key, known_)});
  }
}

}  // namespace sudsmark::text
