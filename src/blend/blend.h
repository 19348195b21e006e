// The blend: a card and the catalogue together, that is, what is really in the product.
//
// `mix` looks every name up, turns every way of giving an amount into masses, opens premixes,
// splits portions, and hands out compositions: the whole product, each portion, each premix, what
// each task handles. It also carries what the maker said about the product (kind, markets, bath,
// workshop) with its place, so that the rooms after it never go back to the card.
#pragma once

#include <array>
#include <chrono>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "blend/composition.h"
#include "catalogue/catalogue.h"
#include "formula/card.h"
#include "text/diagnostic.h"

namespace sudsmark::blend {

/// A stated figure and where it stands; the place of a default is the `product` line.
struct Stated {
  Range value;
  Span place;
  bool assumed = false;  ///< from the kind of product, not from the formula
};

struct StatedWord {
  std::string text;  ///< folded
  Span place;
};

/// What a certificate and a supplier say of a scent.
struct Scent {
  MaterialId material = 0;
  bool has_certificate = false;
  std::optional<Range> limit;           ///< fraction of the finished product, by its certificate
  std::vector<std::string> categories;  ///< of the certificate; empty if it names none
  bool undeclared_none = false;         ///< the supplier says that nothing else of note is in it
  std::optional<Range> flash_point;     ///< C
  Span place;
};

/// A composition with a name and the place of its section.
struct Part {
  std::string name;
  Composition composition;
  Span place;
  Range share = 1.0;  ///< of the batch, for portions
  std::string unit;   ///< a premix's own unit ("bag"), where it has one
  /// A portion whose pieces are sold by themselves.
  std::optional<Span> sold_apart = std::nullopt;
  /// As it is formed, with what dries off afterwards; none where nothing does.
  std::optional<Composition> dough = std::nullopt;

  /// What is in the bowl and in the press: the dough, or all of it where nothing dries off.
  [[nodiscard]] const Composition& as_formed() const { return dough ? *dough : composition; }
};

/// The kind of section that something is weighed for.
enum class SectionKind : std::uint8_t { phase, premix, portion };

/// Something that is weighed: a line of a phase, portion or premix at the size that is made.
struct Weighing {
  std::string name;  ///< material or premix as written
  std::optional<MaterialId> material;
  Range mass;             ///< g; unknown where no batch is stated
  std::string container;  ///< section it is weighed for: "phase dry", "premix dry bag"
  bool in_premix = false;
  Span place;
  SectionKind section = SectionKind::phase;
  std::size_t section_index = 0;      ///< of Blend::phases, premixes or portions
  std::optional<std::size_t> premix;  ///< of Blend::premixes, where the line is a premix
};

struct Scale {
  double step = 0;             ///< g
  std::optional<double> most;  ///< g
  Span place;
};

struct Workshop {
  std::string name;
  std::optional<Stated> room;         ///< l
  std::optional<Stated> air_changes;  ///< per h
  std::optional<Stated> humidity;     ///< fraction
  std::optional<Stated> temperature;  ///< C
  std::vector<Scale> scales;
  std::optional<Stated> air_speed;  ///< m/s, at the bowl
  /// What is one of a few words, by the words of its statement ("mask"), in the language's order.
  std::vector<std::pair<std::string_view, StatedWord>> choices;
  Span place;
  /// Null where it is not stated.
  [[nodiscard]] const StatedWord* choice(std::string_view statement) const;
};

/// What a sampler on the worker found in the air.
struct Sampled {
  Range dust;            ///< g/l
  std::string fraction;  ///< inhalable, thoracic, respirable
  double over = 0;       ///< h
  Span place;
};

/// How pieces are dried after forming.
struct Drying {
  Range time;                        ///< h
  std::optional<Range> temperature;  ///< C
  Span place;
};

/// A day that the formula states.
struct StatedDay {
  std::chrono::year_month_day day;
  Span place;
};

/// What a certificate of analysis found in a material that nobody put in.
struct Trace {
  MaterialId material = 0;
  std::string name;  ///< as written: "lead"
  Range share;       ///< fraction of the material
  Span place;
};

struct Task {
  Part handled;                 ///< composition of what is handled at one time, masses in g
  bool mass_known = true;       ///< false for a phase of a formula without a batch
  std::optional<Range> takes;   ///< h
  std::optional<Range> times;   ///< a day, as a plain number
  std::optional<Range> in;      ///< l
  std::optional<Range> raises;  ///< fraction of mass that becomes airborne
  std::vector<Sampled> sampled = {};
  Span place;
  std::optional<std::size_t> premix;  ///< of Blend::premixes, where it handles one
};

/// Water of the bath, as far as the formula says.
struct BathWater {
  std::string named;                ///< pure, soft, medium, hard; empty if it goes by figures
  std::optional<Range> alkalinity;  ///< g/l as CaCO3
  std::optional<Range> hardness;    ///< g/l as CaCO3
  std::optional<Range> ph;
  Span place;
};

/// The id of what is nothing by name.
inline constexpr std::uint32_t no_substance = 0xFFFFFFFFU;

/// Expanded content of a material: its declared contents, and last the undeclared rest.
struct ContentView {
  const catalogue::Substance* substance = nullptr;  ///< null: a rest that is nothing by name
  /// Catalogue index, or beyond it a substance of the formula's own, or no_substance.
  std::uint32_t substance_id = no_substance;
  Range share;
  bool active = false;
  catalogue::WaterClass water = catalogue::WaterClass::none;
  catalogue::Roles roles = 0;
};

/// The contents of a material as rules see them, in the order of the catalogue, the rest last.
[[nodiscard]] std::vector<ContentView> views(
    const catalogue::Material& material, const catalogue::Catalogue& catalogue,
    const std::vector<catalogue::Substance>& own_substances);

class Blend {
 public:
  const catalogue::Catalogue* catalogue = nullptr;
  text::FileIndex file = text::no_file;
  std::string name;
  Span place;

  const catalogue::ProductKind* product = nullptr;
  Span product_place;
  std::optional<StatedWord> forming;
  std::vector<StatedWord> markets;  ///< upper case, as the law writes them
  std::vector<StatedWord> users;    ///< ages, and what may be true at any age
  std::vector<StatedWord> claims;   ///< words of the vocabulary; a text in quotes as it stands
  std::optional<Drying> dried;
  std::optional<StatedDay> batch_made;     ///< when this batch goes on the market
  std::optional<StatedDay> on_sale_since;  ///< since when the product is sold at all
  std::optional<Span> looks_like_food;
  std::optional<Stated> batch;             ///< g
  std::optional<Stated> piece;             ///< g
  std::optional<Stated> dose;              ///< g of product in one bath
  std::optional<Stated> bath_volume;       ///< l
  std::optional<Stated> bath_temperature;  ///< C
  std::optional<BathWater> water;
  std::optional<Workshop> workshop;
  std::vector<formula::Keep> keeps;
  std::vector<formula::Allow> allows;
  std::optional<formula::Label> label;

  /// Masses of the whole, the portions and the phases are those of a real making, not of 100 g.
  bool real_masses = false;
  Part whole;
  std::vector<Part> portions;
  std::vector<Part> premixes;
  std::vector<Part> phases;
  std::vector<Task> tasks;
  std::vector<Scent> scents;
  std::vector<Trace> traces;
  std::vector<Weighing> weighings;
  /// What is odd and no error: amounts of nothing.
  std::vector<text::Diagnostic> notes;

  /// Whether it is made for these users (folded), among others.
  [[nodiscard]] bool used_by(std::string_view users) const;
  /// Whether it says for which ages it is made.
  [[nodiscard]] bool states_age() const;
  /// The day that the law of a market counts from: in Canada since when the product is sold at all,
  /// elsewhere when this batch goes on the market. `today` where the formula does not say.
  [[nodiscard]] std::chrono::year_month_day counted_from(
      std::string_view market, const std::chrono::year_month_day& today) const;

  [[nodiscard]] const catalogue::Material& material(MaterialId id) const;
  /// The contents of a material with its undeclared rest, in a stable order.
  [[nodiscard]] const std::vector<ContentView>& contents(MaterialId id) const;
  /// Share of a material that nobody has declared and that may hold any aroma chemical [fraction].
  [[nodiscard]] Range undeclared(MaterialId id) const;
  /// What would have to be known of it, in words: "what 'reed' holds undeclared", "the CAS number
  /// of 'marsh accord' in 'reed'".
  [[nodiscard]] std::string undeclared_words(MaterialId id) const;
  /// Share of a scent that stands under names which no table knows, a maker's own scent or aroma
  /// chemical of such a name included: it may be anything [fraction].
  [[nodiscard]] Range nameless(MaterialId id) const;
  /// The scent statement of a material; null if it has none.
  [[nodiscard]] const Scent* scent(MaterialId id) const;

 private:
  friend class Mixer;
  [[nodiscard]] bool is_nameless(const catalogue::Content& content) const;
  [[nodiscard]] bool is_own_and_nameless(MaterialId id) const;
  std::vector<catalogue::Material> own_materials_;
  std::vector<catalogue::Substance> own_substances_;
  std::vector<std::vector<ContentView>> contents_;  ///< of used materials only
  std::vector<std::uint32_t> content_slot_;         ///< by material id
};

/// How a card is mixed.
struct MixOptions {
  /// What a mass [g] comes to when it is weighed on the scales of the workshop (never none): then
  /// every line that is weighed is mixed as it stands on the display. Absent: as stated.
  std::function<double(double mass, const std::vector<Scale>& scales)> weighed;
};

/// Works out what a card makes. Unknown names, ambiguous names, sums that are not 100 %, volumes
/// without a density and circles of premixes are errors in `diagnostics`; then nothing is returned.
[[nodiscard]] std::optional<Blend> mix(const formula::Card& card,
                                       const catalogue::Catalogue& catalogue,
                                       text::Diagnostics& diagnostics,
                                       const MixOptions& options = {});

}  // namespace sudsmark::blend
