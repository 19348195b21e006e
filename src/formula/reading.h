// What a line is read with: where its bytes lie, and the first thing that had to be refused.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "text/diagnostic.h"
#include "text/source.h"

namespace sudsmark::formula {

using text::Span;

/// All grammars of this room read plain bytes.
using Iterator = const char*;

/// The reading of one line. A line gives at most one error: the first that is refused is kept, and
/// whatever a grammar tries after that is not heard.
class Reading {
 public:
  Reading(text::FileIndex file, std::string_view text) : file_(file), begin_(text.data()) {}

  /// The place of [begin, end) in the file.
  [[nodiscard]] Span span(Iterator begin, Iterator end) const {
    return {file_, static_cast<std::uint32_t>(begin - begin_),
            static_cast<std::uint32_t>(end - begin_)};
  }

  /// Refuses the line. Always false, so that a rule can end with it.
  bool refuse(const text::Message& message, Span place, std::vector<text::Argument> arguments = {});
  /// Refuses with "expected …, found …": `words` say what was expected at `at`.
  bool expected(std::string_view words, Iterator at, Iterator last);

  /// Refuses with a diagnostic of several places, whatever was refused before.
  void refuse_as(text::Diagnostic diagnostic) { refusal_ = std::move(diagnostic); }

  [[nodiscard]] bool refused() const { return refusal_.has_value(); }
  void forget() { refusal_.reset(); }
  /// Hands the refusal, if there is one, to the diagnostics and forgets it.
  void report(text::Diagnostics& diagnostics);

 private:
  text::FileIndex file_;
  Iterator begin_;
  std::optional<text::Diagnostic> refusal_;
};

/// What a grammar reads: the bytes of a line from one place on.
struct Rest {
  Iterator first = nullptr;
  Iterator last = nullptr;
};

/// What stands at a place, for a sentence: a word or a text in quotes, or "the end of the line".
[[nodiscard]] std::string found(Iterator at, Iterator last);

/// Text in single quotes for a sentence, cut at 40 bytes.
[[nodiscard]] std::string shown(std::string_view text);
[[nodiscard]] inline std::string shown(Iterator begin, Iterator end) {
  return shown(std::string_view(begin, static_cast<std::size_t>(end - begin)));
}

}  // namespace sudsmark::formula
