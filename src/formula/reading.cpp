#include "formula/reading.h"

#include <utility>

#include "formula/messages.h"
#include "formula/scan.h"

namespace sudsmark::formula {
namespace {

constexpr std::size_t most_shown = 40;

bool follows_in_sequence(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

}  // namespace

bool Reading::refuse(const text::Message& message, Span place,
                     std::vector<text::Argument> arguments) {
  if (!refusal_) refusal_ = text::Diagnostic{&message, std::move(arguments), {place}};
  return false;
}

bool Reading::expected(std::string_view words, Iterator at, Iterator last) {
  if (refusal_) return false;
  while (at != last && is_blank(*at)) ++at;
  const Token token = token_at(at, last);
  return refuse(messages::expected, span(token.begin, token.end),
                {std::string(words), found(at, last)});
}

void Reading::report(text::Diagnostics& diagnostics) {
  if (refusal_) diagnostics.add(std::move(*refusal_));
  refusal_.reset();
}

std::string shown(std::string_view text) {
  if (text.size() <= most_shown) return "'" + std::string(text) + "'";
  std::size_t cut = most_shown;
  while (cut > 0 && follows_in_sequence(text[cut])) --cut;
  return "'" + std::string(text.substr(0, cut)) + "…'";
}

std::string found(Iterator at, Iterator last) {
  const Token token = token_at(at, last);
  if (token.begin == token.end) return "the end of the line";
  return shown(token.text());
}

}  // namespace sudsmark::formula
