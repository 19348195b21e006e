// The messages of a room, as its messages.h lists them: each wants a case that shows it.
#pragma once

#include <doctest/doctest.h>

#include <regex>
#include <set>
#include <string>

#include "case_files.h"
#include "text/diagnostic.h"

namespace sudsmark::testing {

/// The ids of all messages of a room's `messages.h`.
inline std::set<std::string> message_ids(const std::string& header) {
  const std::string text = file_contents(source_dir() / header);
  const std::regex message(R"re(Message\s+\w+\{\s*"([a-z0-9-]+)")re");
  std::set<std::string> ids;
  for (std::sregex_iterator found(text.begin(), text.end(), message), none; found != none;
       ++found) {
    CHECK_MESSAGE(ids.insert((*found)[1]).second, "two messages are called ", (*found)[1].str());
  }
  return ids;
}

/// Adds the ids of what was said.
inline void add_ids(const text::Diagnostics& diagnostics, std::set<std::string>& ids) {
  for (const text::Diagnostic& one : diagnostics.in_order())
    ids.insert(std::string(one.message->id));
}

/// Checks that each message of a room was shown.
inline void check_all_shown(const std::string& header, const std::set<std::string>& shown) {
  const std::set<std::string> ids = message_ids(header);
  CHECK(ids.size() > 10);
  for (const std::string& id : ids) {
    CHECK_MESSAGE(shown.contains(id), header, ": no case shows '", id, "'");
  }
}

}  // namespace sudsmark::testing
