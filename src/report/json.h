// A value of JSON: what the JSON reports are made of. Members keep the order in which they came.
#pragma once

#include <concepts>
#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace sudsmark::report {

/// null, true, a number, a string, a list or an object. In braces, a list whose elements are all
/// pairs of a string and something is an object: {{"low", 1}, {"high", 2}}.
class Json {
 public:
  struct Member;

  Json(std::nullptr_t = nullptr);
  Json(bool value);
  template <std::signed_integral Number>
  Json(Number value);
  template <std::unsigned_integral Number>
  Json(Number value);
  Json(double value);
  Json(const char* value);
  Json(std::string value);
  Json(std::string_view value);
  template <class Element>
  Json(const std::vector<Element>& elements);
  Json(std::initializer_list<Json> elements);

  [[nodiscard]] static Json array(std::initializer_list<Json> elements = {});
  /// Of pairs of a key and a value.
  [[nodiscard]] static Json object(std::initializer_list<Json> members = {});

  /// The member of an object, made where it is missing; null becomes an object.
  Json& operator[](std::string_view key);
  /// Adds a member to an object that has none of that key; null becomes an object.
  void add_member(std::string_view key, Json value);
  /// Adds to a list; null becomes one.
  void push_back(Json element);

  /// Of a list or an object.
  [[nodiscard]] std::size_t size() const;
  [[nodiscard]] bool empty() const { return size() == 0; }

  /// As text: on lines indented by so many blanks a level, or all on one line if `indent` is
  /// negative. `ascii` escapes all that is no ASCII; bytes that are no UTF-8 are replaced.
  [[nodiscard]] std::string text(int indent, bool ascii) const;

 private:
  using List = std::vector<Json>;
  using Object = std::vector<Member>;

  [[nodiscard]] bool is_member() const;
  void write(std::string& out, int indent, int depth, bool ascii) const;

  std::variant<std::nullptr_t, bool, std::int64_t, std::uint64_t, double, std::string, List, Object>
      value_;
};

struct Json::Member {
  std::string key;
  Json value;
};

// Here, since what is made may have to be thrown away again, and with it its members.
inline Json::Json(std::nullptr_t) {}
inline Json::Json(bool value) : value_(value) {}
template <std::signed_integral Number>
Json::Json(Number value) : value_(static_cast<std::int64_t>(value)) {}
template <std::unsigned_integral Number>
Json::Json(Number value) : value_(static_cast<std::uint64_t>(value)) {}
inline Json::Json(double value) : value_(value) {}
inline Json::Json(const char* value) : value_(std::string(value)) {}
inline Json::Json(std::string value) : value_(std::move(value)) {}
inline Json::Json(std::string_view value) : value_(std::string(value)) {}
template <class Element>
Json::Json(const std::vector<Element>& elements) : Json(array()) {
  for (const Element& element : elements) push_back(element);
}

}  // namespace sudsmark::report
