#include <algorithm>
#include <array>

#include "catalogue/entries.h"
#include "catalogue/figure.h"
#include "catalogue/messages.h"
#include "science/elements.h"

namespace sudsmark::catalogue {
namespace {

namespace dimension = quantity::dimension;

std::vector<Synonym> read_synonyms(text::Fields& fields, const Reading& reading) {
  std::vector<Synonym> synonyms;
  for (const text::Node& item : fields.list("synonyms")) {
    Synonym synonym;
    if (item.kind == text::Node::Kind::map) {
      text::Fields parts(item, reading.diagnostics);
      synonym.word = parts.needed_text("word");
      synonym.markets = read_markets(parts, reading);
      parts.refuse_others();
    } else {
      synonym.word = text::text_of(item, reading.diagnostics).value_or(std::string());
    }
    if (!synonym.word.empty()) synonyms.push_back(std::move(synonym));
  }
  return synonyms;
}

/// A plain number under a key; 0 if absent.
double number(text::Fields& fields, std::string_view key, const Reading& reading) {
  const text::Node* node = fields.find(key);
  return node == nullptr ? 0.0 : read_exact(*node, reading.diagnostics).value_or(0.0);
}

void allow_components(text::Fields& fields) {
  for (std::size_t i = 0; i < science::component_count; ++i) {
    fields.allow(science::component_name(static_cast<science::Component>(i)));
  }
}

void read_gives(const text::Node& node, Chemistry& chemistry, const Reading& reading) {
  text::Fields fields(node, reading.diagnostics);
  allow_components(fields);
  for (const text::Node& item : node.items) {
    const auto component = science::find_component(item.key);
    if (!component || !fields.valid()) continue;
    const auto moles = read_exact(item, reading.diagnostics);
    chemistry.gives[science::index_of(*component)] = static_cast<float>(moles.value_or(0.0));
  }
  fields.refuse_others();
}

std::optional<Chemistry> read_chemistry(text::Fields& of, const Citations& inherited,
                                        const Reading& reading) {
  const text::Node* node = of.find("chemistry");
  if (node == nullptr) return std::nullopt;
  text::Fields fields(*node, reading.diagnostics);
  Chemistry chemistry;
  if (const text::Node* node_of_formula = fields.find("formula")) {
    const std::string formula = fields.text("formula");
    if (const auto mass = science::molar_mass(formula)) {
      chemistry.molar_mass = *mass;
    } else {
      reading.diagnostics.add(messages::bad_formula, node_of_formula->span, {formula});
    }
  } else if (const text::Node* mass = fields.needed("molar mass")) {
    const auto range = read_figure(*mass, dimension::number, reading.diagnostics);
    chemistry.molar_mass = range.value_or(quantity::Range::unknown());
    if (chemistry.molar_mass.low == 0) {
      reading.diagnostics.add(messages::zero_molar_mass, mass->span);
    }
  }
  chemistry.acid_protons = number(fields, "acid protons", reading);
  chemistry.base_protons = number(fields, "base protons", reading);
  chemistry.carbon_dioxide = number(fields, "carbon dioxide", reading);
  if (const text::Node* gives = fields.find("gives")) read_gives(*gives, chemistry, reading);
  chemistry.slow = fields.flag("slow");
  chemistry.insoluble = fields.flag("insoluble");
  chemistry.sources = read_sources(fields, &inherited, "chemistry", reading);
  fields.refuse_others();
  return chemistry;
}

std::vector<Holding> read_holdings(const text::Node& node, const Reading& reading) {
  text::Fields fields(node, reading.diagnostics);
  allow_components(fields);
  std::vector<Holding> holds;
  for (const text::Node& item : node.items) {
    const auto component = science::find_component(item.key);
    if (!component || !fields.valid()) continue;
    const auto amount = read_figure(item, dimension::molality, reading.diagnostics);
    if (amount) holds.push_back({*component, *amount});
  }
  fields.refuse_others();
  return holds;
}

std::optional<InWater> read_in_water(text::Fields& of, const Citations& inherited,
                                     const Reading& reading) {
  const text::Node* node = of.find("in water");
  if (node == nullptr) return std::nullopt;
  text::Fields fields(*node, reading.diagnostics);
  InWater in_water;
  if (const text::Node* ph = fields.needed("ph")) {
    in_water.ph = read_figure(*ph, dimension::number, reading.diagnostics)
                      .value_or(quantity::Range::unknown());
    if (in_water.ph.known() && in_water.ph.high > 14) {
      reading.diagnostics.add(messages::beyond_ph, ph->span);
    }
  }
  if (const text::Node* strength = fields.needed("at")) {
    in_water.strength = read_figure(*strength, dimension::share, reading.diagnostics)
                            .value_or(quantity::Range::unknown());
    if (in_water.strength.known() && !(in_water.strength.low > 0 && in_water.strength.high < 1)) {
      reading.diagnostics.add(messages::solution_strength, strength->span);
    }
  }
  if (const text::Node* holds = fields.find("holds")) {
    in_water.holds = read_holdings(*holds, reading);
  }
  in_water.sources = read_sources(fields, &inherited, "in water", reading);
  fields.refuse_others();
  return in_water;
}

std::optional<Dust> read_dust(text::Fields& of, const Citations& inherited,
                              const Reading& reading) {
  constexpr std::array words{std::string_view("unknown"), std::string_view("low"),
                             std::string_view("medium"), std::string_view("high")};
  const text::Node* node = of.find("dust");
  if (node == nullptr) return std::nullopt;
  text::Fields fields(*node, reading.diagnostics);
  Dust dust;
  if (const text::Node* word = fields.find("dustiness")) {
    if (const auto at = read_choice(*word, words, "a class of dustiness", reading)) {
      dust.dustiness = static_cast<Dustiness>(*at);
    }
  }
  dust.combustible = fields.flag("combustible");
  dust.inert = fields.flag("inert");
  if (const text::Node* limit = fields.find("lowest explosible")) {
    dust.lowest_explosible = read_figure(*limit, dimension::concentration, reading.diagnostics);
  }
  if (const text::Node* kst = fields.find("kst")) dust.kst = read_exact(*kst, reading.diagnostics);
  dust.sources = read_sources(fields, &inherited, "dust", reading);
  fields.refuse_others();
  return dust;
}

/// "H319", "H360FD", "EUH208".
bool hazard_code(std::string_view code) {
  if (code.starts_with("EU")) code.remove_prefix(2);
  if (code.size() < 4 || code.size() > 6 || code[0] != 'H') return false;
  return std::all_of(code.begin() + 1, code.begin() + 4,
                     [](char c) { return c >= '0' && c <= '9'; }) &&
         std::all_of(code.begin() + 4, code.end(),
                     [](char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z'); });
}

void read_hazards(text::Fields& of, Material& material, const Reading& reading) {
  const text::Node* node = of.find("hazards");
  if (node == nullptr) return;
  text::Fields fields(*node, reading.diagnostics);
  (void)fields.needed("codes");
  for (const text::Node* code : fields.texts("codes")) {
    std::string word(text::trimmed(code->text));
    if (!hazard_code(word)) {
      reading.diagnostics.add(messages::bad_hazard, code->span, {word});
    } else {
      material.hazards.push_back(std::move(word));
    }
  }
  material.hazard_sources = read_sources(fields, &material.sources, "hazards", reading);
  fields.refuse_others();
}

}  // namespace

Material read_material(const text::Node& node, const Reading& reading) {
  text::Fields fields(node, reading.diagnostics);
  Material material;
  material.id = fields.needed_text("id");
  check_id(fields.find("id"), reading);
  material.name = fields.needed_text("name");
  material.sources = read_sources(fields, nullptr, "a material", reading);
  material.synonyms = read_synonyms(fields, reading);
  material.endings = fields.strings("endings");
  material.inci = fields.text("inci");
  material.cas = read_cas(fields, reading);
  material.colour_index = read_colour_indices(fields, reading);
  if (const text::Node* form = fields.needed("form")) {
    if (const auto at = read_choice(*form, form_words(), "a form", reading)) {
      material.form = static_cast<Form>(*at);
    }
  }
  (void)fields.needed("roles");
  material.roles = read_roles(fields, reading);
  material.chemistry = read_chemistry(fields, material.sources, reading);
  material.in_water = read_in_water(fields, material.sources, reading);
  const auto figure = [&](std::string_view key, const quantity::Dimension& of) {
    return read_sourced(fields, key, of, material.sources, reading);
  };
  const auto share = [&](std::string_view key) {
    return read_sourced_share(fields, key, material.sources, reading);
  };
  material.hlb = figure("hlb", dimension::number);
  material.required_hlb = figure("required hlb", dimension::number);
  material.density = figure("density", dimension::concentration);
  material.melting = figure("melting", dimension::temperature);
  material.deliquescence = share("deliquescence");
  material.stable_ph = figure("stable ph", dimension::number);
  material.usual = share("usual");
  material.pure_colour = share("pure colour");
  material.dust = read_dust(fields, material.sources, reading);
  read_hazards(fields, material, reading);
  material.allergens = fields.strings("allergens");
  material.grade_unclear = fields.flag("grade unclear");
  material.remark = fields.text("remark");
  fields.allow("contains");
  fields.allow("counts as");
  fields.refuse_others();
  return material;
}

}  // namespace sudsmark::catalogue
