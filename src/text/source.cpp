#include "text/source.h"

#include <algorithm>
#include <utility>

#include "text/utf8.h"

namespace sudsmark::text {

Source::Source(std::string path, std::string text)
    : path_(std::move(path)), text_(std::move(text)) {
  starts_.push_back(0);
  for (std::size_t at = 0; at < text_.size(); ++at) {
    if (text_[at] == '\n') starts_.push_back(static_cast<std::uint32_t>(at + 1));
  }
}

Position Source::position(std::size_t offset) const {
  const auto at = static_cast<std::uint32_t>(std::min(offset, text_.size()));
  const auto after = std::upper_bound(starts_.begin(), starts_.end(), at);
  const auto line = static_cast<std::uint32_t>(after - starts_.begin());
  std::size_t begin = starts_[line - 1];
  if (line == 1 && starts_with_mark(text_)) begin = std::min<std::size_t>(mark_size, at);
  const std::string_view before = std::string_view(text_).substr(begin, at - begin);
  return {line, static_cast<std::uint32_t>(count_code_points(before)) + 1};
}

std::string_view Source::line(std::uint32_t number) const {
  if (number == 0 || number > starts_.size()) return {};
  const std::size_t begin = starts_[number - 1];
  const std::size_t end = number < starts_.size() ? starts_[number] : text_.size();
  std::string_view bytes = std::string_view(text_).substr(begin, end - begin);
  while (!bytes.empty() && (bytes.back() == '\n' || bytes.back() == '\r')) bytes.remove_suffix(1);
  return bytes;
}

FileIndex Sources::add(std::string path, std::string text) {
  files_.emplace_back(std::move(path), std::move(text));
  return static_cast<FileIndex>(files_.size() - 1);
}

Position Sources::position(const Span& span) const {
  return span.somewhere() ? files_[span.file].position(span.begin) : Position{};
}

std::string_view Sources::path(const Span& span) const {
  return span.somewhere() ? std::string_view(files_[span.file].path()) : std::string_view{};
}

}  // namespace sudsmark::text
