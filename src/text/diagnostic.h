// Diagnostics: what is wrong with an input, where, and in which words.
//
// A diagnostic names a Message (an id and a sentence with numbered holes), the arguments for the
// holes and one or more places. Rooms declare their messages as constants in a header of their own
// (`formula/messages.h`), so every sentence of a room can be read on one page. The sentence is only
// made when a sink asks for it.
#pragma once

#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "text/source.h"

namespace sudsmark::text {

/// A kind of diagnostic: a stable id and a sentence with holes `{0}`, `{1}`, …
struct Message {
  std::string_view id;
  std::string_view pattern;
  /// The argument that could stand at the first place as it is, where only the spelling is wrong:
  /// what a report may offer as a change. An argument that is not given or empty offers none.
  int instead = -1;
};

/// What fills a hole: words as they are, or a number, printed with at most six digits.
using Argument = std::variant<std::string, double>;

/// One thing that is wrong. The first place is where it is; others are what it conflicts with.
struct Diagnostic {
  const Message* message = nullptr;
  std::vector<Argument> arguments;
  std::vector<Span> places;
};

/// The sentence of a diagnostic, its holes filled.
[[nodiscard]] std::string sentence(const Diagnostic& diagnostic);

/// What could stand at the first place, as it is; empty where that is not for spelling to say.
[[nodiscard]] std::string instead(const Diagnostic& diagnostic);

/// Gathers diagnostics of one reading. Past `most` for one file, more are counted and not kept.
class Diagnostics {
 public:
  /// Most diagnostics kept for one file.
  static constexpr std::size_t most = 100;

  void add(const Message& message, Span place, std::vector<Argument> arguments = {});
  void add(const Message& message, std::initializer_list<Span> places,
           std::vector<Argument> arguments = {});
  void add(Diagnostic diagnostic);

  [[nodiscard]] bool empty() const { return items_.empty(); }
  /// How many were added, kept or not.
  [[nodiscard]] std::size_t count() const { return count_; }
  /// In the order of places: by file, then by offset; equal places stay in the order of arrival.
  [[nodiscard]] std::vector<Diagnostic> in_order() const;

 private:
  std::vector<Diagnostic> items_;
  std::size_t count_ = 0;
};

}  // namespace sudsmark::text
