#include "report/json.h"

#include <algorithm>
#include <utility>

#include <nlohmann/json.hpp>

namespace sudsmark::report {
namespace {

using Scalar = nlohmann::json;

/// Numbers and strings as the JSON library writes them.
void write_scalar(std::string& out, const Scalar& scalar, bool ascii) {
  out += scalar.dump(-1, ' ', ascii, Scalar::error_handler_t::replace);
}

void write_string(std::string& out, const std::string& words, bool ascii) {
  const bool plain = std::all_of(words.begin(), words.end(), [](char c) {
    return c >= ' ' && c != '"' && c != '\\' && static_cast<unsigned char>(c) < 0x7F;
  });
  if (!plain) return write_scalar(out, words, ascii);
  out += '"';
  out += words;
  out += '"';
}

void next_line(std::string& out, int indent, int depth) {
  if (indent < 0) return;
  out += '\n';
  out.append(static_cast<std::size_t>(indent) * static_cast<std::size_t>(depth), ' ');
}

}  // namespace

Json::Json(std::initializer_list<Json> elements) {
  const bool members = std::all_of(elements.begin(), elements.end(),
                                   [](const Json& one) { return one.is_member(); });
  *this = members ? object(elements) : array(elements);
}

Json Json::array(std::initializer_list<Json> elements) {
  Json out;
  out.value_ = List(elements);
  return out;
}

Json Json::object(std::initializer_list<Json> members) {
  Json out;
  Object object;
  for (const Json& member : members) {
    const List& pair = std::get<List>(member.value_);
    object.push_back({std::get<std::string>(pair[0].value_), pair[1]});
  }
  out.value_ = std::move(object);
  return out;
}

bool Json::is_member() const {
  const List* pair = std::get_if<List>(&value_);
  return pair != nullptr && pair->size() == 2 &&
         std::holds_alternative<std::string>(pair->front().value_);
}

Json& Json::operator[](std::string_view key) {
  if (std::holds_alternative<std::nullptr_t>(value_)) value_ = Object();
  Object& object = std::get<Object>(value_);
  for (Member& member : object) {
    if (member.key == key) return member.value;
  }
  return object.emplace_back(Member{std::string(key), {}}).value;
}

void Json::add_member(std::string_view key, Json value) {
  if (std::holds_alternative<std::nullptr_t>(value_)) value_ = Object();
  std::get<Object>(value_).push_back(Member{std::string(key), std::move(value)});
}

void Json::push_back(Json element) {
  if (std::holds_alternative<std::nullptr_t>(value_)) value_ = List();
  std::get<List>(value_).push_back(std::move(element));
}

std::size_t Json::size() const {
  if (const List* list = std::get_if<List>(&value_)) return list->size();
  const Object* object = std::get_if<Object>(&value_);
  return object == nullptr ? 0 : object->size();
}

std::string Json::text(int indent, bool ascii) const {
  std::string out;
  write(out, indent, 0, ascii);
  return out;
}

void Json::write(std::string& out, int indent, int depth, bool ascii) const {
  const bool list = std::holds_alternative<List>(value_);
  if (list || std::holds_alternative<Object>(value_)) {
    out += list ? '[' : '{';
    bool first = true;
    const auto begin = [&] {
      if (!first) out += ',';
      first = false;
      next_line(out, indent, depth + 1);
    };
    if (list) {
      for (const Json& element : std::get<List>(value_)) {
        begin();
        element.write(out, indent, depth + 1, ascii);
      }
    } else {
      for (const Member& member : std::get<Object>(value_)) {
        begin();
        write_string(out, member.key, ascii);
        out += indent < 0 ? ":" : ": ";
        member.value.write(out, indent, depth + 1, ascii);
      }
    }
    if (!first) next_line(out, indent, depth);
    out += list ? ']' : '}';
    return;
  }
  if (const std::string* words = std::get_if<std::string>(&value_)) {
    write_string(out, *words, ascii);
  } else if (const double* real = std::get_if<double>(&value_)) {
    write_scalar(out, *real, ascii);
  } else if (const bool* truth = std::get_if<bool>(&value_)) {
    out += *truth ? "true" : "false";
  } else if (const std::int64_t* whole = std::get_if<std::int64_t>(&value_)) {
    out += std::to_string(*whole);
  } else if (const std::uint64_t* count = std::get_if<std::uint64_t>(&value_)) {
    out += std::to_string(*count);
  } else {
    out += "null";
  }
}

}  // namespace sudsmark::report
