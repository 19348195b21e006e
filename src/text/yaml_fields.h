// Reading a YAML tree with expectations: what a node must be, and which keys a map may have.
//
//     Fields fields(node, diagnostics);
//     const std::string id = fields.needed_text("id");
//     for (const Node* word : fields.texts("synonyms")) …
//     fields.refuse_others();   // every key that nobody asked for is an error
//
// Whatever is wrong is reported at its place, and an empty value answered, so that reading goes on.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "text/diagnostic.h"
#include "text/yaml.h"

namespace sudsmark::text {

/// "a list", "nothing", "the text 'abc'": what a node is, for a sentence.
[[nodiscard]] std::string described(const Node& node);

/// The node's text, trimmed, if it is a scalar that is not empty; null after an error.
[[nodiscard]] std::optional<std::string> text_of(const Node& node, Diagnostics& diagnostics);
/// A list's items; none after an error.
[[nodiscard]] const std::vector<Node>& list_of(const Node& node, Diagnostics& diagnostics);
/// One text or a list of texts: the nodes, each of which is a scalar that is not empty.
[[nodiscard]] std::vector<const Node*> texts_of(const Node& node, Diagnostics& diagnostics);
/// `yes` or `no` (`true` or `false`).
[[nodiscard]] bool flag_of(const Node& node, Diagnostics& diagnostics);
/// Text without the blanks and line ends around it.
[[nodiscard]] std::string_view trimmed(std::string_view text);

/// "; perhaps 'a' or 'b'", or nothing: the end of a sentence about a name nobody knows.
[[nodiscard]] std::string hint(std::string_view name, const std::vector<std::string>& candidates);

/// The keys of one map. Asking for a key makes it a known one.
class Fields {
 public:
  /// Reports a node that is no map, and has no keys then.
  Fields(const Node& node, Diagnostics& diagnostics);

  /// Whether the node is a map.
  [[nodiscard]] bool valid() const { return map_ != nullptr; }
  [[nodiscard]] const Node& node() const { return node_; }

  /// The value of a key; null if the key is absent.
  [[nodiscard]] const Node* find(std::string_view key);
  /// The value of a key; reported if the key is absent.
  [[nodiscard]] const Node* needed(std::string_view key);
  /// The text of a key; empty if absent.
  [[nodiscard]] std::string text(std::string_view key);
  [[nodiscard]] std::string needed_text(std::string_view key);
  /// The items of the key's list; none if absent.
  [[nodiscard]] const std::vector<Node>& list(std::string_view key);
  /// One text or a list of them; none if absent.
  [[nodiscard]] std::vector<const Node*> texts(std::string_view key);
  [[nodiscard]] std::vector<std::string> strings(std::string_view key);
  [[nodiscard]] bool flag(std::string_view key);
  /// A key that somebody else reads.
  void allow(std::string_view key);

  /// Reports every key that nobody asked for, with the nearest that somebody did.
  void refuse_others() const;

 private:
  const Node& node_;
  const Node* map_;
  Diagnostics& diagnostics_;
  std::vector<std::string> known_;
};

}  // namespace sudsmark::text
