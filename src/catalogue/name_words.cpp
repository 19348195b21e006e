#include "catalogue/name_words.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

#include "text/digits.h"
#include "text/name.h"

namespace sudsmark::catalogue {
namespace {

using Pair = std::pair<std::string_view, std::string_view>;

/// Words that say how a thing was grown, sold or refined, and not what it is; German and French
/// too.
constexpr std::array<std::string_view, 66> neutral{
    "large",        "mini",        "small",
    "clear",        "gmo",         "organic",
    "pure",         "raw",         "refined",
    "unrefined",    "virgin",      "natural",
    "premium",      "quality",     "grade",
    "cosmetic",     "usp",         "bp",
    "nf",           "fcc",         "ep",
    "pharma",       "certified",   "cosmos",
    "ecocert",      "rspo",        "bulk",
    "fine",         "extra",       "coarse",
    "superfine",    "ultrafine",   "sifted",
    "melted",       "softened",    "unbleached",
    "bleached",     "filtered",    "deodorized",
    "no",           "of",          "and",
    "the",          "fdc",         "ultra",
    "genuine",      "wildcrafted", "sustainable",
    "bio",          "kba",         "rein",
    "naturrein",    "fein",        "raffiniert",
    "unraffiniert", "nativ",       "desodoriert",
    "pflanzlich",   "alimentaire", "raffine",
    "desodorise",   "vegetale",    "vegetal",
    "de",           "du",          "lebensmittelqualitat"};

/// The same in two or three words. "free" and "non" alone mean much, so they go only here.
constexpr std::array<std::string_view, 18> neutral_phrases{"gluten free",
                                                           "lead free",
                                                           "cold pressed",
                                                           "expeller pressed",
                                                           "food grade",
                                                           "cosmetic grade",
                                                           "pharmaceutical grade",
                                                           "soap grade",
                                                           "non gmo",
                                                           "gmo free",
                                                           "palm free",
                                                           "fair trade",
                                                           "triple pressed",
                                                           "cruelty free",
                                                           "food safe",
                                                           "bath safe",
                                                           "skin safe",
                                                           "ph eur"};

/// Where it was grown: no name of a plant, unless it stands in the name of a material.
constexpr std::array<std::string_view, 30> origins{
    "african", "american",   "australian",    "brazilian", "bulgarian", "canadian",
    "ceylon",  "chinese",    "egyptian",      "english",   "european",  "french",
    "ghana",   "ghanaian",   "greek",         "haitian",   "hungarian", "indian",
    "italian", "madagascar", "mediterranean", "moroccan",  "sicilian",  "somalian",
    "spanish", "turkish",    "tasmanian",     "uk",        "us",        "canada"};

/// British or short spellings, and German and French words of forms, beside the American or long
/// one.
constexpr std::array<Pair, 56> spellings{{
    {"colour", "color"},
    {"coloured", "colored"},
    {"colouring", "coloring"},
    {"flavour", "flavor"},
    {"grey", "gray"},
    {"fibre", "fiber"},
    {"odour", "odor"},
    {"aluminium", "aluminum"},
    {"glycerine", "glycerin"},
    {"glycerol", "glycerin"},
    {"yoghurt", "yogurt"},
    {"liquorice", "licorice"},
    {"soya", "soy"},
    {"centre", "center"},
    {"bicarb", "bicarbonate"},
    {"deodorised", "deodorized"},
    {"deionised", "deionized"},
    {"demineralised", "demineralized"},
    {"hydrolysed", "hydrolyzed"},
    {"micronised", "micronized"},
    {"pearlised", "pearlized"},
    {"fertiliser", "fertilizer"},
    {"skimmed", "skim"},
    {"powdered", "powder"},
    {"pwd", "powder"},
    {"pwdr", "powder"},
    {"granulated", "granule"},
    {"granular", "granule"},
    {"liq", "liquid"},
    {"eo", "essential oil"},
    {"fo", "fragrance oil"},
    {"lye", "sodium hydroxide"},
    {"amonia", "ammonia"},
    {"tumeric", "turmeric"},
    {"shae", "shea"},
    {"cocoabutter", "cocoa butter"},
    {"coloidal", "colloidal"},
    {"percent", "%"},
    {"pct", "%"},
    {"dehydrated", "dried"},
    {"karité", "karite"},
    {"oatmilk", "oat milk"},
    {"pulver", "powder"},
    {"poudre", "powder"},
    {"flocken", "flake"},
    {"paillettes", "flake"},
    {"kristalle", "crystal"},
    {"cristaux", "crystal"},
    {"granulat", "granule"},
    {"pastillen", "pastille"},
    {"wasserfrei", "anhydrous"},
    {"anhydre", "anhydrous"},
    {"monohydrat", "monohydrate"},
    {"flussig", "liquid"},
    {"liquide", "liquid"},
    {"kosmetikqualitat", "cosmetic"},
}};

/// Letters with marks, and how they are written without.
constexpr std::array<Pair, 27> letters{{
    {"é", "e"},  {"è", "e"}, {"ê", "e"}, {"ë", "e"}, {"à", "a"},     {"â", "a"},    {"ä", "a"},
    {"ï", "i"},  {"î", "i"}, {"ô", "o"}, {"ö", "o"}, {"û", "u"},     {"ü", "u"},    {"ù", "u"},
    {"ç", "c"},  {"ñ", "n"}, {"É", "e"}, {"’", ""},  {"α", "alpha"}, {"β", "beta"}, {"ß", "ss"},
    {"œ", "oe"}, {"Ä", "a"}, {"Ö", "o"}, {"Ü", "u"}, {"È", "e"},     {"À", "a"},
}};

constexpr unsigned bits(std::initializer_list<Form> forms) {
  unsigned out = 0;
  for (const Form form : forms) out |= 1U << static_cast<unsigned>(form);
  return out;
}
constexpr unsigned of_powder = bits({Form::fine_powder, Form::granules});
constexpr unsigned of_pieces = bits({Form::granules, Form::fine_powder, Form::solid, Form::butter});

constexpr std::array<std::pair<std::string_view, unsigned>, 20> forms{{
    {"powder", of_powder},
    {"dust", of_powder},
    {"granule", of_pieces},
    {"grain", of_pieces},
    {"crystal", of_pieces},
    {"pellet", of_pieces},
    {"pastille", of_pieces},
    {"prill", of_pieces},
    {"bead", of_pieces},
    {"flake", of_pieces},
    {"chip", of_pieces},
    {"chunk", of_pieces},
    {"wafer", of_pieces},
    {"button", of_pieces},
    {"block", of_pieces},
    {"solid", of_pieces},
    {"liquid", bits({Form::liquid})},
    {"fluid", bits({Form::liquid})},
    {"solution", bits({Form::liquid})},
    {"paste", bits({Form::paste})},
}};

/// Words that make another thing of what stands before them, beside figures and forms.
constexpr std::array<std::string_view, 30> telling{
    "anhydrous",    "hydrate",      "monohydrate", "dihydrate",   "tetrahydrate", "pentahydrate",
    "hexahydrate",  "heptahydrate", "octahydrate", "decahydrate", "synthetic",    "substitute",
    "fractionated", "hydrogenated", "acetate",     "lake",        "dye",          "needle",
    "noodle",       "alcohol",      "fcf",         "distilled",   "blend",        "replacement",
    "alternative",  "type",         "infused",     "dry",         "dried",        "scent"};

bool digit(char c) {
  return c >= '0' && c <= '9';
}
bool letter(char c) {
  return c >= 'a' && c <= 'z';
}

template <std::size_t size>
bool among(const std::array<std::string_view, size>& list, std::string_view word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

void replace_all(std::string& text, std::string_view from, std::string_view to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at)) {
    text.replace(at, from.size(), to);
    at += to.size();
  }
}

/// Folded, with blanks for signs, and a blank between a letter and a figure.
std::string spaced(std::string_view name) {
  std::string text = text::fold(name);
  const bool ascii = std::none_of(text.begin(), text.end(), [](char c) { return (c & 0x80) != 0; });
  if (!ascii) {
    for (const auto& [from, to] : letters) replace_all(text, from, to);
  }
  for (const std::string_view colours : {"fd&c", "d&c"}) replace_all(text, colours, "");
  std::string out;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const char c = text[at];
    if (c == '\'') continue;
    const bool point =
        c == '.' && at > 0 && at + 1 < text.size() && digit(text[at - 1]) && digit(text[at + 1]);
    const bool keeps = letter(c) || digit(c) || c == '%' || point || (c & 0x80) != 0;
    if (!keeps) {
      out += ' ';
      continue;
    }
    const bool seam =
        !out.empty() && ((letter(out.back()) && digit(c)) || (digit(out.back()) && letter(c)));
    if (seam) out += ' ';
    out += c;
  }
  replace_all(out, " %", "%");
  return out;
}

std::string singular(std::string word) {
  const auto ends = [&](std::string_view end) { return word.ends_with(end); };
  if (word.size() > 4 && ends("ies")) return word.substr(0, word.size() - 3) + "y";
  const bool keeps = word.size() < 4 || ends("ss") || ends("us") || ends("is");
  if (!keeps && ends("s")) word.pop_back();
  return word;
}

void append_words(std::string_view text, std::vector<std::string>& out) {
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    if (end > 0) out.emplace_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
}

std::string one_spelling(std::string word) {
  for (const auto& [from, to] : spellings) {
    if (word == from) return std::string(to);
  }
  replace_all(word, "sulph", "sulf");
  return singular(std::move(word));
}

std::string without_phrases(std::string text) {
  text = " " + text + " ";
  for (const std::string_view phrase : neutral_phrases) {
    if (text.find(phrase) == std::string::npos) continue;
    replace_all(text, " " + std::string(phrase) + " ", " ");
  }
  return text;
}

std::string joined(const std::vector<std::string>& words, std::string_view between) {
  std::string out;
  for (const std::string& word : words) {
    if (!out.empty()) out += between;
    out += word.ends_with('%') ? word.substr(0, word.size() - 1) : word;
  }
  return out;
}

}  // namespace

std::vector<std::string> name_words(std::string_view name) {
  std::vector<std::string> raw;
  append_words(spaced(name), raw);
  std::string spelled;
  for (std::string& word : raw) spelled += one_spelling(std::move(word)) + " ";
  replace_all(spelled, " %", "%");
  std::vector<std::string> words;
  append_words(without_phrases(std::move(spelled)), words);
  std::vector<std::string> kept = words;
  // "30-100 mesh" is how fine it is
  if (const auto mesh = std::find(kept.begin(), kept.end(), "mesh"); mesh != kept.end()) {
    auto from = mesh;
    while (from != kept.begin() && digit(std::prev(from)->front())) --from;
    kept.erase(from, mesh + 1);
  }
  std::erase_if(kept, [](const std::string& word) {
    return among(neutral, word) || word == "100%" || word == "%";
  });
  return kept.empty() ? words : kept;
}

std::string any_order(const std::vector<std::string>& words) {
  std::vector<std::string> sorted = words;
  std::sort(sorted.begin(), sorted.end());
  return joined(sorted, " ");
}

std::string run_together(const std::vector<std::string>& words) {
  return joined(words, "");
}

std::optional<double> strength(std::string_view word) {
  constexpr double least_bare = 20;  // below, a bare figure counts or numbers something
  constexpr double most = 100;
  const bool bare = !word.ends_with('%');
  if (word.empty()) return std::nullopt;
  const auto value = text::read_digits(word.substr(0, word.size() - (bare ? 0 : 1)));
  if (!value || *value > most || (bare && *value < least_bare)) return std::nullopt;
  return *value / 100;
}

bool names_origin(std::string_view word) {
  return among(origins, word);
}

unsigned forms_of_word(std::string_view word) {
  for (const auto& [form, of] : forms) {
    if (form == word) return of;
  }
  return 0;
}

bool tells_nothing(std::string_view bracketed) {
  const std::vector<std::string> words = name_words(bracketed);
  return std::none_of(words.begin(), words.end(), [](const std::string& word) {
    return among(telling, word) || forms_of_word(word) != 0 ||
           std::any_of(word.begin(), word.end(), digit);
  });
}

}  // namespace sudsmark::catalogue
