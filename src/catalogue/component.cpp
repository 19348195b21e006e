#include "catalogue/component.h"

#include <algorithm>
#include <array>

#include "text/name.h"

namespace sudsmark::catalogue {
namespace {

constexpr std::array<std::string_view, component_count> words{
    "sodium",    "potassium", "calcium",   "magnesium", "ammonium",  "chloride", "sulfate",
    "carbonate", "citrate",   "tartrate",  "malate",    "lactate",   "adipate",  "ascorbate",
    "succinate", "fumarate",  "phosphate", "borate",    "fatty acid"};
static_assert(!words.back().empty(), "every component has a word");

}  // namespace

std::optional<Component> find_component(std::string_view word) {
  const auto* found = std::find(words.begin(), words.end(), text::fold(word));
  if (found == words.end()) return std::nullopt;
  return static_cast<Component>(found - words.begin());
}

std::span<const std::string_view> component_words() {
  return words;
}

}  // namespace sudsmark::catalogue
