#include "report/check/sarif_text.h"

#include "wording/words.h"

namespace sudsmark::report {
using namespace wording;

namespace {

bool plain_in_uri(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
         c == '_' || c == '.' || c == '~' || c == '/';
}

}  // namespace

std::string sarif_words(std::string_view text) {
  const std::string safe = harmless(text);
  // "[words](address)" would be a link
  const bool link = safe.find("](") != std::string::npos;
  std::string out;
  for (const char c : safe) {
    if (c == '{' || c == '}') out += c;
    if (link && (c == '[' || c == ']')) out += '\\';
    out += c;
  }
  return out;
}

std::string uri_of_path(std::string_view path) {
  constexpr std::string_view hex = "0123456789ABCDEF";
  std::string out;
  if (path.starts_with("//")) {
    while (path.starts_with("//")) path.remove_prefix(1);
  }
  if (path.starts_with('/')) out = "file://";
  for (const char c : path) {
    if (plain_in_uri(c)) {
      out += c;
      continue;
    }
    const auto byte = static_cast<unsigned char>(c);
    out += '%';
    out += hex[byte >> 4U];
    out += hex[byte & 15U];
  }
  return out;
}

}  // namespace sudsmark::report
