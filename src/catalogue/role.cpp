#include "catalogue/role.h"

#include <algorithm>
#include <array>
#include <string>

#include "text/name.h"

namespace sudsmark::catalogue {
namespace {

constexpr std::array<std::string_view, trait_count> words{"surfactant",
                                                          "anionic",
                                                          "amphoteric",
                                                          "nonionic",
                                                          "cationic",
                                                          "soap",
                                                          "emulsifier",
                                                          "oil",
                                                          "butter",
                                                          "wax",
                                                          "fatty alcohol",
                                                          "fatty acid",
                                                          "scent",
                                                          "fragrance",
                                                          "essential oil",
                                                          "aroma chemical",
                                                          "colour",
                                                          "lake",
                                                          "dye",
                                                          "pigment",
                                                          "mica",
                                                          "glitter",
                                                          "plant colour",
                                                          "base",
                                                          "acid",
                                                          "bicarbonate",
                                                          "carbonate",
                                                          "starch",
                                                          "flour",
                                                          "clay",
                                                          "filler",
                                                          "salt",
                                                          "sugar",
                                                          "humectant",
                                                          "alcohol",
                                                          "water",
                                                          "preservative",
                                                          "antioxidant",
                                                          "chelator",
                                                          "polymer",
                                                          "protein",
                                                          "conditioner",
                                                          "food",
                                                          "botanical",
                                                          "absorbent",
                                                          "limited dust",
                                                          "short lived",
                                                          "milk",
                                                          "cereal",
                                                          "pressed citrus",
                                                          "turning colour",
                                                          "slow acid",
                                                          "fragile ester",
                                                          "alkaline foamer",
                                                          "weak preservative",
                                                          "glucoside",
                                                          "ethoxylate",
                                                          "isethionate",
                                                          "harsh sulfate",
                                                          "controlled"};

constexpr std::array<std::string_view, 6> forms{"fine powder", "granules", "liquid",
                                                "paste",       "butter",   "solid"};

template <std::size_t size>
std::optional<std::size_t> position(const std::array<std::string_view, size>& list,
                                    std::string_view word) {
  const auto found = std::find(list.begin(), list.end(), word);
  if (found == list.end()) return std::nullopt;
  return static_cast<std::size_t>(found - list.begin());
}

}  // namespace

Roles with_implied(Role role) {
  switch (role) {
    case Role::anionic:
    case Role::amphoteric:
    case Role::nonionic:
    case Role::cationic:
      return bit(role) | bit(Role::surfactant);
    case Role::soap:
      return bit(role) | bit(Role::anionic) | bit(Role::surfactant);
    case Role::butter:
      return bit(role) | bit(Role::oil);
    case Role::fragrance:
    case Role::essential_oil:
    case Role::aroma_chemical:
      return bit(role) | bit(Role::scent);
    case Role::lake:
    case Role::dye:
    case Role::pigment:
    case Role::glitter:
    case Role::plant_colour:
      return bit(role) | bit(Role::colour);
    case Role::mica:
      return bit(role) | bit(Role::pigment) | bit(Role::colour);
    case Role::bicarbonate:
    case Role::carbonate:
      return bit(role) | bit(Role::base);
    default:
      return bit(role);
  }
}

std::optional<Role> find_role(std::string_view word) {
  std::string folded = text::fold(word);
  auto at = position(words, folded);
  if (!at && folded.ends_with('s')) {
    folded.pop_back();
    at = position(words, folded);
  }
  if (!at) return std::nullopt;
  return static_cast<Role>(*at);
}

std::string_view role_word(Role role) {
  return words[static_cast<std::size_t>(role)];
}
std::span<const std::string_view> role_words() {
  return words;
}

std::optional<Form> find_form(std::string_view word) {
  const auto at = position(forms, text::fold(word));
  if (!at) return std::nullopt;
  return static_cast<Form>(*at);
}

std::string_view form_word(Form form) {
  return forms[static_cast<std::size_t>(form)];
}
std::span<const std::string_view> form_words() {
  return forms;
}

}  // namespace sudsmark::catalogue
