#include "text/yaml_events.h"

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/mark.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <array>
#include <sstream>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "text/shortened.h"
#include "text/utf8.h"
#include "text/yaml_bytes.h"
#include "text/yaml_messages.h"
#include "text/yaml_scalar.h"

namespace sudsmark::text {
namespace {

namespace messages = yaml_messages;
constexpr std::size_t npos = std::string_view::npos;

/// Thrown through the parser once something is reported after which it makes no sense to go on.
struct Refused {};

bool space_or_break(char c) {
  return c == ' ' || c == '\n' || c == '\r';
}

/// Goes over the bytes from an offset on that stand outside quotes and comments, until `stop` says
/// so. The answer is where that was or where a quote begins that is never closed; else npos.
template <class Stop>
std::size_t scan(std::string_view text, std::size_t from, Stop stop) {
  bool at_start = true;  // whether a text could begin here
  for (std::size_t at = from; at < text.size();) {
    const char c = text[at];
    if (at_start && (c == '"' || c == '\'')) {
      const auto past = past_closing_quote(text, at);
      if (!past) return at;
      at = *past;
      at_start = false;
    } else if (at_start && c == '#') {
      at = std::min(text.find('\n', at), text.size());
    } else {
      if (stop(c)) return at;
      at_start = space_or_break(c) || c == '[' || c == '{' || c == ',' || (c == ':' && at > from);
      ++at;
    }
  }
  return npos;
}

/// The first quote from an offset on that begins a text and is never closed; npos if there is none.
std::size_t find_open_quote(std::string_view text, std::size_t from) {
  return scan(text, from, [](char) { return false; });
}

/// Whether as many brackets close as open after the one at this offset.
bool bracket_closed(std::string_view text, std::size_t at) {
  std::size_t depth = 0;
  const std::size_t end = scan(text, at, [&](char c) {
    if (c == '[' || c == '{') ++depth;
    return (c == ']' || c == '}') && --depth == 0;
  });
  return end != npos && text[end] != '"' && text[end] != '\'';
}

/// A list or a map that is still being read.
struct Frame {
  Node node;
  std::unordered_map<std::string, Span> keys;
  std::string key;  ///< of the value that comes next
  Span key_span;
  bool has_key = false;
  bool dropped = false;  ///< the value that comes next belongs to a duplicate key
};

/// Builds the tree. A mark of the library is the offset of a byte, counted after a byte order mark.
class TreeBuilder final : public YAML::EventHandler {
 public:
  TreeBuilder(std::string_view file_text, std::size_t shift, FileIndex file,
              Diagnostics& diagnostics)
      : file_text_(file_text),
        shift_(shift),
        file_(file),
        diagnostics_(diagnostics),
        last_end_(shift) {}

  Node take_root() { return std::move(root_); }
  [[nodiscard]] std::size_t last_end() const { return last_end_; }
  /// The innermost list or map in brackets that is open; null if there is none.
  [[nodiscard]] const Node* open_bracket() const {
    for (auto frame = frames_.rbegin(); frame != frames_.rend(); ++frame) {
      const char c = char_at(frame->node.span.begin);
      if (c == (frame->node.kind == Node::Kind::list ? '[' : '{')) return &frame->node;
    }
    return nullptr;
  }
  [[nodiscard]] std::size_t offset(const YAML::Mark& mark) const {
    const std::size_t at = mark.is_null() ? last_end_ : static_cast<std::size_t>(mark.pos) + shift_;
    return std::min(at, file_text_.size());
  }
  [[nodiscard]] Span span(std::size_t begin, std::size_t end) const {
    return {file_, static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
  }

  void OnDocumentStart(const YAML::Mark& mark) override {
    if (!std::exchange(begun_, true)) return;
    const std::size_t at = offset(mark);
    const std::string_view between = file_text_.substr(last_end_, at - last_end_);
    const bool marked = file_text_.substr(at).starts_with("---") || between.find("\n---") != npos ||
                        between.find("\n...") != npos;
    refuse(marked ? messages::second_document : messages::misplaced, at);
  }
  void OnDocumentEnd() override {}

  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
    const std::size_t at = offset(mark);
    refuse_properties(at, {}, anchor);
    // The library reads these words as null; here they are words like others. Where nothing is
    // written at all, the mark is that of what follows, be it the key `null`.
    for (const std::string_view word : {"~", "null", "Null", "NULL"}) {
      if (!file_text_.substr(at).starts_with(word)) continue;
      const char next = char_at(past_blanks(at + word.size()));
      const bool whole =
          wants_key() ? next == ':' : std::string_view("\r\n,]}#").find(next) != npos;
      if (!whole) continue;
      add_scalar(at, std::string(word));
      return;
    }
    if (wants_key()) refuse(messages::key_missing, at);
    Node node;
    std::size_t end = wants_value() ? frames_.back().key_span.end : at;
    while (!wants_value() && end > last_end_ && space_or_break(file_text_[end - 1])) --end;
    node.span = span(end > 0 ? end - 1 : 0, end);
    if (wants_value()) node.span = frames_.back().key_span;
    add(std::move(node));
  }

  void OnAlias(const YAML::Mark& mark, YAML::anchor_t /*anchor*/) override {
    refuse(messages::alias, offset(mark));
  }

  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                const std::string& value) override {
    refuse_properties(offset(mark), tag, anchor);
    add_scalar(offset(mark), value);
  }

  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value /*style*/) override {
    open(Node::Kind::list, offset(mark), tag, anchor);
  }
  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value /*style*/) override {
    open(Node::Kind::map, offset(mark), tag, anchor);
  }
  void OnSequenceEnd() override { close(); }
  void OnMapEnd() override { close(); }

  [[noreturn]] void refuse(const Message& message, Span place,
                           std::vector<Argument> arguments = {}) {
    diagnostics_.add(message, place, std::move(arguments));
    throw Refused{};
  }
  [[noreturn]] void refuse(const Message& message, std::size_t at,
                           std::vector<Argument> arguments = {}) {
    refuse(message, span(at, std::min(at + 1, file_text_.size())), std::move(arguments));
  }
  /// Refuses the bracket at this offset if it is one and nothing closes it.
  void refuse_open_bracket(std::size_t at) {
    const char c = char_at(at);
    if ((c == '[' || c == '{') && !bracket_closed(file_text_, at)) {
      refuse(messages::bracket_open, at, {std::string(1, c)});
    }
  }

 private:
  [[nodiscard]] char char_at(std::size_t at) const {
    return at < file_text_.size() ? file_text_[at] : '\n';
  }
  [[nodiscard]] std::size_t past_blanks(std::size_t at) const {
    while (char_at(at) == ' ') ++at;
    return at;
  }
  [[nodiscard]] bool wants_key() const {
    return !frames_.empty() && frames_.back().node.kind == Node::Kind::map &&
           !frames_.back().has_key;
  }
  [[nodiscard]] bool wants_value() const { return !frames_.empty() && frames_.back().has_key; }

  void refuse_properties(std::size_t at, const std::string& tag, YAML::anchor_t anchor) {
    if (char_at(at) == '!' || (!tag.empty() && tag != "?" && tag != "!")) refuse(messages::tag, at);
    if (char_at(at) == '&' || anchor != YAML::NullAnchor) refuse(messages::anchor, at);
    if (++count_ > most_yaml_nodes) {
      refuse(messages::too_many, at, {std::to_string(most_yaml_nodes)});
    }
  }

  void add_scalar(std::size_t at, std::string value) {
    Node node;
    node.kind = Node::Kind::scalar;
    node.style = style_at(file_text_, at);
    node.text = std::move(value);
    std::size_t end = 0;
    if (char_at(at) == '"' || char_at(at) == '\'') {
      const auto past = past_closing_quote(file_text_, at);
      if (!past) refuse(messages::quote_open, at);
      end = *past;
      const std::size_t control = find_control(node.text);
      if (control != npos) {
        refuse(messages::control_character, span(at, end), {code_point_name(node.text, control)});
      }
    } else {
      end = std::max(stretch_of(file_text_, at, node.style, node.text, node.text.size()).end, at);
      if (node.style == Node::Style::plain) refuse_swallowed_entry(at, end);
    }
    node.span = span(at, end);
    last_end_ = end;
    if (wants_key()) {
      set_key(std::move(node));
    } else {
      add(std::move(node));
    }
  }

  /// A list entry that is indented too far goes on with the text above it, by the rules of YAML.
  void refuse_swallowed_entry(std::size_t begin, std::size_t end) {
    const std::string_view text = file_text_.substr(0, end);
    for (std::size_t at = text.find('\n', begin); at != npos; at = text.find('\n', at)) {
      while (at < end && space_or_break(text[at])) ++at;
      if (char_at(at) == '-' && char_at(at + 1) == ' ') refuse(messages::dash_unexpected, at);
    }
  }

  void set_key(Node key) {
    Frame& frame = frames_.back();
    if (char_at(past_blanks(key.span.end)) != ':') {
      refuse(messages::colon_missing, key.span, {shortened(key.text)});
    }
    frame.has_key = true;
    frame.key_span = key.span;
    const auto [known, added] = frame.keys.emplace(key.text, key.span);
    frame.dropped = !added;
    if (!added) {
      diagnostics_.add(messages::duplicate_key, {key.span, known->second}, {shortened(key.text)});
    }
    frame.key = std::move(key.text);
  }

  void open(Node::Kind kind, std::size_t at, const std::string& tag, YAML::anchor_t anchor) {
    refuse_properties(at, tag, anchor);
    if (wants_key()) {
      refuse_open_bracket(at);
      refuse(messages::key_not_text, at, {kind == Node::Kind::list ? "a list" : "a map"});
    }
    if (frames_.size() >= most_yaml_depth) {
      refuse(messages::too_deep, at, {static_cast<double>(most_yaml_depth)});
    }
    Frame frame;
    frame.node.kind = kind;
    frame.node.span = span(at, at + 1);
    frames_.push_back(std::move(frame));
    last_end_ = at;
  }

  void close() {
    Node node = std::move(frames_.back().node);
    frames_.pop_back();
    if (!node.items.empty()) {
      node.span.end = std::max(node.span.end, node.items.back().span.end);
    }
    add(std::move(node));
  }

  void add(Node node) {
    if (frames_.empty()) {
      root_ = std::move(node);
      return;
    }
    Frame& frame = frames_.back();
    if (frame.has_key) {
      node.key = std::move(frame.key);
      node.key_span = frame.key_span;
      frame.has_key = false;
      if (std::exchange(frame.dropped, false)) return;
    }
    frame.node.items.push_back(std::move(node));
  }

  std::string_view file_text_;
  std::size_t shift_;  ///< bytes of the byte order mark
  FileIndex file_;
  Diagnostics& diagnostics_;
  std::size_t last_end_;  ///< up to where the file has been understood
  std::size_t count_ = 0;
  bool begun_ = false;
  std::vector<Frame> frames_;
  Node root_;
};

/// What the library's words mean in ours, where the place is what it says.
const Message* translated(std::string_view words) {
  static constexpr std::array<std::pair<std::string_view, const Message*>, 19> known{{
      {"end of map not found", &messages::misplaced},
      {"end of sequence not found", &messages::misplaced},
      {"illegal map key", &messages::misplaced},
      {"illegal map value", &messages::second_colon},
      {"illegal block entry", &messages::dash_unexpected},
      {"unexpected character in block scalar", &messages::bad_block},
      {"cannot set zero indentation for a block scalar", &messages::bad_block},
      {"bad character found while scanning hex number", &messages::bad_escape},
      {"invalid unicode: ", &messages::bad_escape},
      {"unknown escape character: ", &messages::bad_escape},
      {"alias not found after *", &messages::alias},
      {"the referenced anchor is not defined", &messages::alias},
      {"illegal character found while scanning alias", &messages::alias},
      {"anchor not found after &", &messages::anchor},
      {"illegal character found while scanning anchor", &messages::anchor},
      {"cannot assign multiple anchors to the same node", &messages::anchor},
      {"illegal character found while scanning tag handle", &messages::tag},
      {"tag handle with no suffix", &messages::tag},
      {"cannot assign multiple tags to the same node", &messages::tag},
  }};
  for (const auto& [theirs, ours] : known) {
    if (words.starts_with(theirs)) return ours;
  }
  return nullptr;
}

/// Reports an error of the library at the place where a person would look for it.
void report(const YAML::Exception& error, std::string_view text, TreeBuilder& tree) {
  const std::string_view words = error.msg;
  std::size_t at = tree.offset(error.mark);
  if (words == YAML::ErrorMsg::EOF_IN_SCALAR || words == YAML::ErrorMsg::DOC_IN_SCALAR) {
    const std::size_t quote = find_open_quote(text, tree.last_end());
    if (quote != npos) tree.refuse(messages::quote_open, quote);
  }
  if (words == YAML::ErrorMsg::END_OF_MAP_FLOW || words == YAML::ErrorMsg::END_OF_SEQ_FLOW) {
    const Node* bracket = tree.open_bracket();
    if (bracket != nullptr) tree.refuse_open_bracket(bracket->span.begin);
    const bool map = words == YAML::ErrorMsg::END_OF_MAP_FLOW;
    tree.refuse(messages::separator_missing, at, {map ? "}" : "]"});
  }
  const std::string character(at < text.size() ? text.substr(at, 1) : std::string_view{});
  if (words == YAML::ErrorMsg::FLOW_END) {
    tree.refuse(messages::bracket_unexpected, at, {character});
  }
  if (words == YAML::ErrorMsg::UNKNOWN_TOKEN && !character.empty() && character[0] > ' ') {
    tree.refuse(messages::cannot_begin, at, {character});
  }
  const Message* message = translated(words);
  if (message == nullptr) tree.refuse(messages::unreadable, at);
  // Of these the library tells where it noticed, which is behind the sign itself.
  const char sign = message == &messages::bad_escape ? '\\'
                    : message == &messages::alias    ? '*'
                    : message == &messages::anchor   ? '&'
                    : message == &messages::tag      ? '!'
                                                     : '\0';
  if (sign != '\0') {
    const std::size_t before = text.rfind(sign, at);
    if (before != npos && before >= tree.last_end()) at = before;
  }
  tree.refuse(*message, at);
}

}  // namespace

std::optional<Node> parse_yaml(std::string_view file_text, FileIndex file,
                               Diagnostics& diagnostics) {
  const std::size_t shift = starts_with_mark(file_text) ? mark_size : 0;
  TreeBuilder tree(file_text, shift, file, diagnostics);
  try {
    try {
      std::istringstream stream{std::string(file_text.substr(shift))};
      YAML::Parser parser(stream);
      // A second call only answers whether something follows: it ends at that document's start.
      if (parser.HandleNextDocument(tree)) parser.HandleNextDocument(tree);
    } catch (const YAML::Exception& error) {
      report(error, file_text, tree);
    }
  } catch (const Refused&) {
    return std::nullopt;
  } catch (const std::exception&) {
    diagnostics.add(messages::unreadable, tree.span(tree.last_end(), tree.last_end()));
    return std::nullopt;
  }
  return tree.take_root();
}

}  // namespace sudsmark::text
