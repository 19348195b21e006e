// The card: what the maker wrote, with places, before anybody looked a name up.
//
// Reading a formula file ends here. A card knows the language and nothing of the catalogue: names
// are words with a place, amounts are figures in base units with the way they were given. The blend
// gives the words a meaning.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "quantity/range.h"
#include "text/source.h"

namespace sudsmark::formula {

using quantity::Range;
using text::Span;

/// How deep premixes may hold premixes.
inline constexpr std::size_t deepest_premix = 16;

/// A word or a name as written (quotes and escapes taken off), with its place.
struct Word {
  std::string text;
  Span place;
  /// Written in quotes: then it is a name of the maker's own making, never a unit or a keyword.
  bool quoted = false;
};

/// Words with commas between them, and the place of their statement.
struct WordList {
  std::vector<Word> words;
  Span place;
};

/// A figure with its place, in base units.
struct Figure {
  Range value;
  Span place;
};

/// How an amount was given.
enum class AmountKind : std::uint8_t {
  mass,    ///< value in g
  share,   ///< value as a fraction of 1
  parts,   ///< value in parts
  dose,    ///< value in g per g of what stands before
  volume,  ///< value in l; needs a density
  fill,    ///< q.s.
  units    ///< a number of a premix's own units; `unit` names it
};

struct Amount {
  AmountKind kind = AmountKind::mass;
  Range value;
  std::string unit;  ///< folded, without plural s; only for AmountKind::units
  Span place;
  Span unit_place;  ///< of the unit's word; only for AmountKind::units
};

/// One ingredient line.
struct Line {
  Amount amount;
  Word name;
  Span place;  ///< the whole line without its comment
  /// `dries off`: it is there while it is made, and gone from the product.
  std::optional<Span> dries_off = std::nullopt;
};

struct Phase {
  Word name;
  std::vector<Line> lines;
  Span place;
};

struct Premix {
  Word name;
  Figure makes;              ///< g
  std::optional<Word> unit;  ///< `as bag`, folded, without plural s
  std::vector<Line> lines;
  Span place;
};

struct Portion {
  Word name;
  Figure share;                    ///< fraction of the mixed batch
  std::optional<Span> sold_apart;  ///< pieces of it are sold by themselves
  std::vector<Line> lines;
  Span place;
};

/// What a supplier declares of one constituent; `below` and `above` are ranges from 0 and to 1.
struct Constituent {
  Word name;
  Range share;
  Span place;
};

struct Fragrance {
  Word name;
  std::optional<Figure> limit;         ///< the certificate: fraction of the finished product
  std::optional<WordList> categories;  ///< of the standard, those that the certificate names
  std::vector<Constituent> constituents;
  /// The rest may hold anything (the default), or holds no substance that a rule asks for.
  bool undeclared_none = false;
  std::optional<Figure> flash_point;  ///< C
  Span place;
};

/// What a certificate of analysis found of something that nobody put in.
struct Trace {
  Word name;
  Range share;  ///< fraction of the material
  Span place;
};

struct UserMaterial {
  Word name;
  std::optional<Word> like;
  std::optional<Figure> active;   ///< fraction
  std::optional<Figure> water;    ///< fraction
  std::optional<Figure> density;  ///< g/l
  std::optional<Word> inci;
  std::optional<Word> cas;
  std::optional<Figure> supplier_limit;  ///< fraction of the finished product
  std::vector<Trace> traces;
  std::vector<Word> roles;
  std::optional<Word> form;
  std::optional<std::vector<Word>> hazards;  ///< H codes; stated to be none if empty
  Span place;
};

struct Scale {
  Figure step;                 ///< g
  std::optional<Figure> most;  ///< g
  Span place;
};

struct Workshop {
  Word name;
  std::optional<Figure> room;         ///< l
  std::optional<Figure> air_changes;  ///< per h
  std::optional<Figure> humidity;     ///< fraction
  std::optional<Figure> temperature;  ///< C
  std::vector<Scale> scales;
  std::optional<Word> mask;         ///< none, FFP1, FFP2, FFP3, N95, P100
  std::optional<Word> extraction;   ///< yes or no
  std::optional<Word> goggles;      ///< yes or no: whether they are worn where dust rises
  std::optional<Figure> air_speed;  ///< m/s, at the bowl
  Span place;
};

/// What a task handles: a phase of the formula, or an amount of a material or a premix.
struct Handled {
  bool phase = false;
  std::optional<Amount> amount;  ///< none with a phase: all of it
  Word name;
};

/// What a sampler on the worker found in the air.
struct Sampled {
  Range dust;     ///< mg/m3
  Word fraction;  ///< inhalable, respirable or thoracic
  Figure over;    ///< h
  Span place;
};

struct Task {
  Word name;
  std::optional<Handled> handles;
  std::optional<Figure> takes;   ///< h
  std::optional<Figure> times;   ///< per day
  std::optional<Figure> in;      ///< l
  std::optional<Figure> raises;  ///< fraction: dustiness of mass to airborne mass
  std::vector<Sampled> measured;
  Span place;
};

struct Label {
  std::optional<Word> ingredients;
  std::vector<Word> warnings;
  Span place;
};

/// What one bath gets: a mass, or a number of pieces, in a volume of water.
struct BathUse {
  std::variant<std::monostate, Figure, Range> dose;  ///< Figure: g; Range: pieces
  std::optional<Figure> volume;                      ///< l
  std::optional<Figure> temperature;                 ///< C
  Span place;
};

/// The water of the bath.
struct Water {
  std::optional<Word> named;         ///< pure, soft, medium, hard
  std::optional<Figure> alkalinity;  ///< g/l as CaCO3
  std::optional<Figure> hardness;    ///< g/l as CaCO3
  std::optional<Figure> ph;
  Span place;
};

/// How pieces are dried after forming.
struct Drying {
  Figure time;                        ///< h
  std::optional<Figure> temperature;  ///< C
  Span place;
};

struct Date {
  std::chrono::year_month_day day;
  Span place;
};

/// `keep`: a suggestion may not move this name, or only within bounds.
struct Keep {
  Word name;
  std::optional<Figure> bounds;  ///< fraction
};

struct Allow {
  Word rule;
  Word because;
  std::optional<Date> until;
  Span place;
};

/// The statements of a `formula` section; also what a `tweak` replaces of its base's.
struct Statements {
  std::optional<Word> product;
  std::optional<Word> forming;
  std::optional<WordList> markets;
  std::optional<Figure> batch;  ///< g
  std::optional<Figure> piece;  ///< g
  std::optional<BathUse> bath;
  std::optional<Water> water;
  std::optional<WordList> users;
  std::optional<WordList> claims;  ///< words of the vocabulary, or texts in quotes
  std::optional<Drying> dried;
  std::optional<Date> batch_made;     ///< the day this batch goes on the market
  std::optional<Date> on_sale_since;  ///< since when the product is sold at all
  std::optional<Span> looks_like_food;
  std::optional<Word> made_in;
  std::vector<Keep> keeps;
  std::vector<Allow> allows;
};

struct SetEdit {
  Word name;
  Amount amount;
  Span place;
};
struct SwapEdit {
  Word old_name;
  Word new_name;
  Span place;
};
struct AddEdit {
  Line line;
  std::optional<Word> to;
  Span place;
};
struct RemoveEdit {
  Word name;
  Span place;
};
struct ScaleEdit {
  Figure batch;
  Span place;
};
struct FillEdit {
  Word name;
  Span place;
};
using Edit = std::variant<SetEdit, SwapEdit, AddEdit, RemoveEdit, ScaleEdit, FillEdit>;

struct Tweak {
  Word name;
  Word of;  ///< path of the base, relative to the tweak's file
  std::vector<Edit> edits;
  Statements statements;
  Span place;
};

struct Include {
  Word path;
  Span place;
};

/// One file as parsed.
struct Document {
  text::FileIndex file = text::no_file;
  std::optional<Word> formula_name;  ///< of the `formula` section
  Span formula_place;
  Statements statements;
  std::optional<Tweak> tweak;
  std::vector<Include> includes;
  std::vector<Phase> phases;
  std::vector<Premix> premixes;
  std::vector<Portion> portions;
  std::vector<Fragrance> fragrances;
  std::vector<UserMaterial> materials;
  std::vector<Workshop> workshops;
  std::vector<Task> tasks;
  std::vector<Label> labels;
  bool whole = true;  ///< false if lines with errors were left out
};

/// A formula with all that it includes and, for a tweak, its base with the edits applied.
struct Card {
  text::FileIndex file = text::no_file;  ///< the file that was named
  Word name;
  Span place;  ///< the `formula` or `tweak` line
  Statements statements;
  std::vector<Phase> phases;
  std::vector<Premix> premixes;
  std::vector<Portion> portions;
  std::vector<Fragrance> fragrances;
  std::vector<UserMaterial> materials;
  std::vector<Workshop> workshops;
  std::vector<Task> tasks;
  std::optional<Label> label;
  bool tweaked = false;
  /// False if lines with errors were left out: then names may be looked up, and sums say nothing.
  bool whole = true;
};

}  // namespace sudsmark::formula
