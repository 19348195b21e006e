// The border to the browser: a question as JSON in, an answer as JSON out, one after the other.
#include <string>

#include "page/answers.h"
#include "page/asked.h"

extern "C" {

/// The answer stays until the next question. Both are UTF-8 and end in a zero byte.
const char* sudsmark_answer(const char* question) {
  using namespace sudsmark;
  static page::Session session;
  static std::string out;
  auto asked = page::read_asked(question);
  if (!asked) {
    out = page::refusal(asked.problems);
    return out.c_str();
  }
  asked->options.read = [&](const std::string& path) -> std::optional<std::string> {
    const auto found = asked->files.find(path);
    if (found == asked->files.end()) return std::nullopt;
    return found->second;
  };
  out = page::answer(*asked, session);
  return out.c_str();
}
}
