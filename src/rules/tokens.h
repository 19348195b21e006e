// Tokens of an expression: what the grammar's terms scan by hand.
//
// A scanner answers false and leaves `first` where it was if its token does not stand there. What
// can never be right (a decimal comma, a unit nobody knows) becomes the Scan's refusal, and from
// then on every scanner answers false, so that the grammar ends at the first mistake.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "rules/expression.h"
#include "rules/grammar.h"

namespace sudsmark::rules {

using Iterator = const char*;

/// One run over one text: its bounds, the tree that grows, and the mistake that ended it.
class Scan {
 public:
  explicit Scan(std::string_view text) : begin_(text.data()), end_(text.data() + text.size()) {}

  [[nodiscard]] std::uint32_t offset(Iterator at) const {
    return static_cast<std::uint32_t>(at - begin_);
  }
  [[nodiscard]] Iterator begin() const { return begin_; }
  [[nodiscard]] Iterator end() const { return end_; }

  /// Adds a node that covers its parts, or [from, to) where that is wider.
  NodeIndex add(Op op, std::vector<NodeIndex> parts, Iterator from = nullptr, Iterator to = nullptr,
                std::string text = {});
  NodeIndex add(Node node);

  /// Keeps the first mistake only; answers false, so that a scanner can return it.
  bool refuse(const text::Message& message, Iterator from, Iterator to,
              std::vector<text::Argument> arguments = {});
  /// "expected …, found …", or the mistake that people usually make where that was found.
  bool expected(std::string_view words, Iterator at);
  [[nodiscard]] bool refused() const { return error.message != nullptr; }

  Tree tree;
  SyntaxError error;
  int depth = 0;
  bool compared = false;  ///< a comparison ends right here, so that another would be a chain

 private:
  Iterator begin_;
  Iterator end_;
};

[[nodiscard]] bool is_blank(char c);

/// A keyword with no letter, digit or inner hyphen after it.
[[nodiscard]] bool scan_keyword(Iterator& first, Iterator last, std::string_view word);
/// Whether a keyword of the language stands here.
[[nodiscard]] bool at_keyword(Iterator first, Iterator last);
/// A sign that is not the beginning of a longer one: "<" is not found in "<=".
[[nodiscard]] bool scan_sign(Iterator& first, Iterator last, std::string_view sign);
/// A '-' with a blank on each side.
[[nodiscard]] bool scan_minus(Iterator& first, Iterator last, const Scan& scan);

/// Words between blanks up to a keyword or a sign, as one name. In a selection a word may begin
/// with a digit and hold slashes.
[[nodiscard]] bool scan_name(Iterator& first, Iterator last, bool selection, std::string& name);
/// One word with '(' behind it, which is left.
[[nodiscard]] bool scan_function(Iterator& first, Iterator last, std::string& name);
/// Text in double or single quotes; in double quotes `\"` and `\\` are escapes.
[[nodiscard]] bool scan_quoted(Iterator& first, Iterator last, Scan& scan, std::string& text);
/// A figure with its unit: `0.5`, `1 %`, `1/3 kg`, `0.6 g per kg`.
[[nodiscard]] bool scan_figure(Iterator& first, Iterator last, Scan& scan, Node& figure);

}  // namespace sudsmark::rules
