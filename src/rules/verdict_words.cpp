#include <sudsmark/results.h>

namespace sudsmark {

std::string_view kind_word(Kind kind) {
  switch (kind) {
    case Kind::pass:
      return "pass";
    case Kind::fail:
      return "fail";
    case Kind::review:
      return "review";
    case Kind::open:
      return "open";
    case Kind::not_applicable:
      break;
  }
  return "notApplicable";
}

std::string_view level_word(Level level) {
  switch (level) {
    case Level::none:
      return "none";
    case Level::note:
      return "note";
    case Level::warning:
      return "warning";
    case Level::error:
      break;
  }
  return "error";
}

}  // namespace sudsmark
