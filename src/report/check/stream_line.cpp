// A line of a stream, read strictly.
#include <stdexcept>
#include <string>
#include <utility>

#include <sudsmark/stream.h>
#include <nlohmann/json.hpp>

namespace sudsmark {
namespace {

using nlohmann::json;

constexpr std::size_t most_depth = 64;

/// Stops where brackets stand too deep: the reader of JSON keeps all that is open.
json read(std::string_view line) {
  const auto shallow = [](int depth, json::parse_event_t, json&) {
    if (static_cast<std::size_t>(depth) <= most_depth) return true;
    throw std::length_error("");
  };
  try {
    return json::parse(line, shallow, false);
  } catch (const std::length_error&) {
    return json(json::value_t::discarded);
  }
}

/// The member, if it is a text.
const std::string* text_of(const json& object, const char* key) {
  const auto found = object.find(key);
  return found == object.end() ? nullptr : found->get_ptr<const std::string*>();
}

}  // namespace

Result<FormulaText> read_stream_line(std::string_view line) {
  const auto wrong = [](std::string file, std::string words) {
    return Result<FormulaText>{{}, {{std::move(file), 0, 0, std::move(words), {}}}};
  };
  const json object = read(line);
  if (object.is_discarded()) return wrong({}, "this line is no JSON");
  if (!object.is_object()) return wrong({}, R"(this line is no object {"file": "…", "text": "…"})");
  const std::string* const file = text_of(object, "file");
  if (file == nullptr) return wrong({}, R"(this line has no "file" that is a text)");
  const std::string* const text = text_of(object, "text");
  if (text == nullptr) return wrong(*file, R"(this line has no "text" that is a text)");
  return {FormulaText{*file, *text}, {}};
}

}  // namespace sudsmark
