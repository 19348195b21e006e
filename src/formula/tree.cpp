#include "formula/tree.h"

#include <algorithm>
#include <filesystem>
#include <utility>

#include "formula/messages.h"
#include "formula/reading.h"

namespace sudsmark::formula {
namespace {

constexpr std::size_t most_files = 64;
constexpr std::size_t most_bytes = std::size_t{8} << 20U;

std::filesystem::path plain(std::string_view path) {
  return std::filesystem::path(path).lexically_normal();
}

}  // namespace

std::string path_beside(std::string_view file, std::string_view path) {
  const std::filesystem::path folder = std::filesystem::path(file).parent_path();
  return (folder / std::filesystem::path(path)).lexically_normal().generic_string();
}

bool leaves_folder(std::string_view path, std::string_view folder) {
  const std::filesystem::path from = folder.empty() ? "." : plain(folder);
  const std::filesystem::path relative = plain(path).lexically_relative(from);
  return relative.empty() || *relative.begin() == "..";
}

Tree::Tree(text::Sources& sources, text::FileIndex named, const AssembleOptions& options,
           text::Diagnostics& diagnostics)
    : sources_(sources),
      options_(options),
      diagnostics_(diagnostics),
      folder_(plain(sources[named].path()).parent_path().generic_string()),
      bytes_(sources[named].text().size()) {
  known_.insert(plain(sources[named].path()).generic_string());
}

void Tree::enter(text::FileIndex file) {
  open_.push_back(plain(sources_[file].path()).generic_string());
}

void Tree::leave() {
  open_.pop_back();
}

bool Tree::in_circle(const std::string& path, const Word& word) {
  const auto first = std::find(open_.begin(), open_.end(), path);
  if (first == open_.end()) return false;
  std::string round;
  for (auto at = first; at != open_.end(); ++at) round += *at + " -> ";
  diagnostics_.add(messages::circle, word.place, {round + path});
  return true;
}

std::optional<text::FileIndex> Tree::open(text::FileIndex file, const Word& word) {
  const std::string path = path_beside(sources_[file].path(), word.text);
  if (in_circle(path, word)) return std::nullopt;
  if (!options_.allow_outside && leaves_folder(path, folder_)) {
    diagnostics_.add(messages::outside, word.place, {shown(word.text)});
    return std::nullopt;
  }
  if (full_ || known_.contains(path)) return std::nullopt;
  if (known_.size() == most_files) {
    full_ = true;
    diagnostics_.add(messages::too_many_files, word.place);
    return std::nullopt;
  }
  known_.insert(path);
  std::optional<std::string> bytes;
  if (options_.read) bytes = options_.read(path);
  if (!bytes) {
    diagnostics_.add(messages::unreadable, word.place, {shown(word.text)});
    return std::nullopt;
  }
  bytes_ += bytes->size();
  if (bytes_ > most_bytes) {
    full_ = true;
    diagnostics_.add(messages::tree_too_large, word.place);
    return std::nullopt;
  }
  return sources_.add(path, std::move(*bytes));
}

}  // namespace sudsmark::formula
