#include "proof/example.h"

#include <algorithm>
#include <array>
#include <utility>

#include "blend/same_name.h"
#include "formula/assemble.h"
#include "rules/check.h"
#include "text/diagnostic.h"
#include "text/source.h"
#include "text/yaml_fields.h"

namespace sudsmark::proof {
namespace {

constexpr std::string_view tweak_head = "tweak \"example\" of \"base\"\n";

std::vector<std::string_view> lines_of(std::string_view text) {
  std::vector<std::string_view> out;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    out.push_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return out;
}

/// Without blanks around it, and one between words.
std::string one_blank(std::string_view line) {
  std::string out;
  for (const char c : text::trimmed(line)) {
    if (c != ' ' || out.back() != ' ') out += c;
  }
  return out;
}

/// A tweak in a pair may be a formula in full, and not edits alone.
bool is_whole(std::string_view text) {
  const auto lines = lines_of(text);
  return std::any_of(lines.begin(), lines.end(), [](std::string_view line) {
    return text::trimmed(line).starts_with("formula ");
  });
}

/// Takes the lines that a text has and puts others there; answers which of them it has.
std::vector<bool> change_text(std::string& text, const std::vector<std::string>& take,
                              const std::vector<std::string>& put) {
  std::vector<bool> taken(take.size(), false);
  std::string out;
  const auto write = [&](std::string_view like, std::string_view line) {
    out += like.substr(0, std::min(like.find_first_not_of(' '), like.size()));
    out += line;
    out += '\n';
  };
  for (const std::string_view line : lines_of(text)) {
    const std::string plain = one_blank(line);
    std::size_t at = 0;
    while (at < take.size() && (taken[at] || one_blank(take[at]) != plain)) ++at;
    if (at == take.size()) {
      out += line;
      out += '\n';
      continue;
    }
    taken[at] = true;
    if (at < put.size()) write(line, put[at]);
    if (at + 1 < take.size()) continue;
    for (std::size_t more = take.size(); more < put.size(); ++more) write(line, put[more]);
  }
  text = std::move(out);
  return taken;
}

/// A text as what it makes. `above` lines of it are ours.
std::optional<blend::Blend> mixed(const std::string& text, const std::string& base,
                                  const catalogue::Catalogue& catalogue, std::uint32_t above,
                                  std::string& wrong) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  const text::FileIndex file = sources.add("example", text);
  formula::AssembleOptions how;
  how.same_name = blend::same_name(catalogue);
  how.read = [&](const std::string& path) {
    return path == "base" && !base.empty() ? std::optional(base) : std::nullopt;
  };
  std::optional<blend::Blend> blend;
  const auto sheet = formula::assemble(sources, file, how, diagnostics);
  if (sheet) blend = blend::mix(*sheet, catalogue, diagnostics);
  if (blend && diagnostics.empty()) return blend;
  wrong = "it holds no formula";
  if (!diagnostics.empty()) {
    const text::Diagnostic first = diagnostics.in_order().front();
    const text::Position at =
        sources.position(first.places.empty() ? text::Span{} : first.places.front());
    wrong = "line " + std::to_string(std::max(at.line, above + 1) - above) + ": " +
            text::sentence(first);
  }
  return std::nullopt;
}

}  // namespace

std::string Example::name() const {
  if (edge) return "edge " + std::to_string(number);
  return "example " + std::to_string(number) + " that should " +
         (gives == Kind::pass ? "pass" : "fail");
}

std::vector<Example> examples_of(const rules::Rule& rule, const std::vector<Edge>& edges) {
  std::vector<Example> out;
  const auto add = [&](Kind gives, std::size_t count) {
    for (std::size_t number = 1; number <= count; ++number) {
      out.push_back({words_of(rule, gives == Kind::pass, number), gives, false, number, {}});
    }
  };
  add(Kind::pass, rule.pair ? rule.words->pair_passes.size() : rule.words->passes.size());
  add(Kind::fail, rule.pair ? rule.words->pair_fails.size() : rule.words->fails.size());
  std::size_t number = 0;
  for (const Edge& edge : edges) {
    Words words = words_of(rule, edge.of_pass, edge.number);
    const auto missing = change_lines(words, edge.take, edge.put);
    out.push_back({std::move(words), edge.gives, true, ++number, missing.value_or("")});
  }
  return out;
}

Words words_of(const rules::Rule& rule, bool that_passes, std::size_t number) {
  if (!rule.pair)
    return {(that_passes ? rule.words->passes : rule.words->fails)[number - 1], {}, false};
  const rules::PairExample& pair =
      (that_passes ? rule.words->pair_passes : rule.words->pair_fails)[number - 1];
  return {pair.tweak, pair.base, true};
}

std::optional<std::string> change_lines(Words& words, const std::vector<std::string>& take,
                                        const std::vector<std::string>& put) {
  // what the tweak has is not looked for in its base
  const auto has = [](const std::string& text, const std::string& line) {
    const auto lines = lines_of(text);
    return std::any_of(lines.begin(), lines.end(),
                       [&](std::string_view one) { return one_blank(one) == one_blank(line); });
  };
  if (!words.pair) {
    const auto taken = change_text(words.formula, take, put);
    const auto missing = std::find(taken.begin(), taken.end(), false);
    if (missing == taken.end()) return std::nullopt;
    return take[static_cast<std::size_t>(missing - taken.begin())];
  }
  for (std::size_t at = 0; at < take.size(); ++at) {
    std::vector<std::string> there;
    if (at < put.size()) there.push_back(put[at]);
    const bool last = at + 1 == take.size();
    if (last && put.size() > take.size()) {
      there.assign(put.begin() + static_cast<std::ptrdiff_t>(at), put.end());
    }
    std::string& text = has(words.formula, take[at]) ? words.formula : words.base;
    if (!has(text, take[at])) return take[at];
    change_text(text, {take[at]}, there);
  }
  return std::nullopt;
}

std::unique_ptr<Made> make(const Words& words, const catalogue::Catalogue& catalogue) {
  auto made = std::make_unique<Made>();
  if (!words.pair) {
    made->blend = mixed(words.formula, {}, catalogue, 0, made->wrong);
    return made;
  }
  made->base = mixed(words.base, {}, catalogue, 0, made->wrong);
  made->wrong_in_base = !made->base;
  if (!made->base) return made;
  const bool whole = is_whole(words.formula);
  const std::string text = (whole ? std::string() : std::string(tweak_head)) + words.formula;
  made->blend = mixed(text, words.base, catalogue, whole ? 0U : 1U, made->wrong);
  return made;
}

Kind outcome(const rules::Ruleset& ruleset, std::uint32_t rule, const Made& made,
             const rules::Day& on, std::string* message) {
  rules::EvaluateOptions options;
  options.on = on;
  options.chosen.assign(ruleset.rules.size(), false);
  options.chosen[rule] = true;
  options.passes_in_full = false;
  options.base = made.base ? &*made.base : nullptr;
  blend::MissingTable missing;
  constexpr std::array by_gravity{Kind::not_applicable, Kind::pass, Kind::review, Kind::open,
                                  Kind::fail};
  std::size_t gravest = 0;
  for (const rules::Verdict& verdict : rules::evaluate(ruleset, *made.blend, missing, options)) {
    Kind kind = verdict.kind;
    if (verdict.met_from_memory) kind = Kind::pass;
    if (verdict.paper) kind = Kind::fail;
    const auto at = static_cast<std::size_t>(std::find(by_gravity.begin(), by_gravity.end(), kind) -
                                             by_gravity.begin());
    if (at <= gravest) continue;
    gravest = at;
    if (message != nullptr) *message = kind == Kind::pass ? std::string() : verdict.message;
  }
  return by_gravity[gravest];
}

}  // namespace sudsmark::proof
