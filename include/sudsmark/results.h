// Results: what a check says, as plain values.
//
// A program that embeds the checker reads these and needs nothing else; the reports of sudsmark are
// written from them too. Places are lines and columns from 1, columns in code points; 0 where there
// is no place. Figures are in the unit beside them; an end that nobody knows is absent.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sudsmark {

/// Something that could not be read or used: an error of the input or of a ruleset.
struct Problem {
  std::string file;
  std::uint32_t line = 0;
  std::uint32_t column = 0;
  std::string message;
  /// Other places that the message is about, e.g. where a name was first given.
  struct Place {
    std::string file;
    std::uint32_t line = 0;
    std::uint32_t column = 0;
  };
  std::vector<Place> also;
  std::string id{};  ///< of what is wrong: "decimal-comma"
  /// What may stand from the place to this end instead, where only the spelling is wrong; empty:
  /// that is not for spelling to say.
  std::string spelling{};
  std::uint32_t end_line = 0;
  std::uint32_t end_column = 0;
};

/// What a call made; without a value the problems say why it made nothing. The one shape of an
/// error of all calls that can fail.
template <class Value>
struct Result {
  std::optional<Value> value;
  std::vector<Problem> problems;

  [[nodiscard]] explicit operator bool() const { return value.has_value(); }
  [[nodiscard]] Value& operator*() { return *value; }
  [[nodiscard]] const Value& operator*() const { return *value; }
  [[nodiscard]] Value* operator->() { return &*value; }
  [[nodiscard]] const Value* operator->() const { return &*value; }
};

enum class Kind : std::uint8_t { pass, fail, review, open, not_applicable };
enum class Level : std::uint8_t { none, note, warning, error };
[[nodiscard]] std::string_view kind_word(Kind kind);  ///< "notApplicable" as SARIF spells it
[[nodiscard]] std::string_view level_word(Level level);

/// A figure that lies between two ends.
struct Figure {
  std::optional<double> low;
  std::optional<double> high;
  std::string unit;
};

/// Where a rule or figure comes from.
struct SourceNote {
  std::string kind;  ///< "published", "common practice", "from memory"
  std::string title;
  std::string where;
  bool quoted = false;
  bool computed = false;
};

/// How a finding stands to a baseline (see <sudsmark/baseline.h>).
enum class Standing : std::uint8_t {
  not_compared,
  fresh,      ///< not in it, or worse than there
  unchanged,  ///< as it was there
  better      ///< lighter than there, or nearer to its limit
};

/// One rule's verdict on one formula, or on one part of it.
struct Finding {
  std::string rule;
  Kind kind = Kind::not_applicable;
  Level level = Level::none;
  std::string message;
  std::uint32_t line = 0;
  std::uint32_t column = 0;
  std::uint32_t end_line = 0;  ///< just past the last code point of the place
  std::uint32_t end_column = 0;
  std::string file;          ///< of the place: an included file can be another than the formula's
  std::string subject_kind;  ///< "portion", "material", …; empty for the product
  std::string subject;
  std::optional<Figure> measured;
  bool bound = false;  ///< `measured` is no more than an upper bound of what it is about
  std::optional<Figure> limit;
  std::vector<std::string> missing;  ///< what would decide it
  bool paper = false;                ///< what is missing is a paper of a supplier, to be kept
  std::vector<SourceNote> sources;
  std::optional<std::string> allowed;  ///< why an `allow` of the formula covers it
  bool met_from_memory = false;        ///< met, but the limit itself is from memory
  std::string remedy;
  std::string entry;        ///< of the table's row: "Annex III 67"; filled with `lines`
  std::string line_text;    ///< the line of the place as written; filled with `lines`
  std::string fingerprint;  ///< the same wherever the line moves to; filled with `lines`
  Standing standing = Standing::not_compared;
  /// What may stand at the place instead, where only the spelling is wrong; empty: nothing.
  std::string spelling;
  /// With CheckOptions::only_to_read: other rows of a table on which the same rule is open for the
  /// same reasons, left out since this one says it all.
  std::size_t alike_left_out = 0;
};

/// A measure's figure and how it came about.
struct MeasureResult {
  std::string name;
  Figure figure;
  std::string from;
  std::vector<std::string> missing;
};

/// A substance of the finished product.
struct CompositionRow {
  std::string substance;
  std::string cas;
  std::string inci;
  Figure share;
  std::vector<std::string> roles;
  std::vector<SourceNote> sources;  ///< of its shares in what brings it
};

/// What the formula says of itself: {"forming", "pressed"}. Assumed: it says nothing, and the kind
/// of product does.
struct Particular {
  std::string name;
  std::string words;
  bool assumed = false;
};

/// A material as it is weighed out.
struct IngredientRow {
  std::string name;
  std::string inci;
  std::string cas;
  std::vector<std::string> roles;
  std::string form;
  Figure share;
  std::optional<Figure> active;  ///< its active matter in the product; absent: it has none by name
  std::vector<SourceNote> sources;
};

/// A portion of the mixed batch, or all of the product.
struct PortionResult {
  std::string name;
  Figure share;  ///< of the batch
  std::vector<IngredientRow> ingredients;
  std::vector<MeasureResult> measures;  ///< those that differ from portion to portion
};

/// Something that is weighed, on the scale at hand that suits it best.
struct WeighingResult {
  std::string name;
  std::string container;        ///< what it is weighed for: "phase dry"
  Figure mass;                  ///< g
  std::optional<double> step;   ///< g of that scale; absent: no scale is stated or none takes it
  std::optional<Figure> error;  ///< %, the step as a share of the mass
};

/// An upper bound of airborne dust of a substance beside its workplace limit.
struct AirResult {
  std::string substance;
  Figure bound;       ///< mg/m3, of the 8 hour mean
  Figure limit;       ///< mg/m3
  std::string basis;  ///< whose limit and of which dust: "GB WEL, inhalable"
};

/// A picture as data: a figure that lies between two ends, against another.
struct CurvePoint {
  double x = 0;
  std::optional<double> low;
  std::optional<double> high;
};
struct Curve {
  std::string name;     ///< "bath.ph by dose"
  std::string measure;  ///< what is drawn upwards: "bath.ph"
  std::string unit;     ///< of it
  std::string against;  ///< what is drawn to the right: "product in one bath"
  std::string against_unit;
  std::string subject;  ///< the task, for dust
  std::vector<CurvePoint> points;
  std::optional<Figure> today;    ///< where the formula stands on the axis to the right
  std::optional<double> neutral;  ///< of a pH: where acid and base weigh the same
};

/// Where an ingredient stands in a list: by weight; among those of so little that any order will
/// do; a declared allergen among these; with the colours at the end.
enum class LabelGroup : std::uint8_t { by_weight, any_order, allergen, colour };

struct LabelIngredient {
  std::string name;  ///< as it is printed
  LabelGroup group = LabelGroup::by_weight;
  Figure share;                   ///< % of the product
  std::vector<std::string> from;  ///< the materials that bring it
  bool certain = true;            ///< it is named whatever the ranges come to
};

/// Words that a label bears, or has to if its condition holds.
struct LabelWords {
  std::string name;
  std::string words;
  bool exact = false;    ///< to be printed as they stand; else their sense
  bool certain = false;  ///< asked for by all that is known; else somebody judges the condition
  bool of_foam = false;  ///< asked for because it foams in the bath, unless it is for adults alone
  std::string entry;
  std::string condition;
  std::vector<SourceNote> sources;
};

/// What else has to stand on a pack.
struct LabelPoint {
  std::string name;
  std::string what;
  std::string
      small;  ///< what small goods may do instead: "leaflet", "notice", "tag"; empty: nothing
  std::string condition;
  std::string entry;
  std::vector<SourceNote> sources;
};

/// A paper that somebody will ask for.
struct LabelPaper {
  std::string paper;
  std::string why;
  std::vector<std::string> about;  ///< materials; empty: the product
  std::string entry;               ///< where a law says so
};

/// A formula's label for one market.
struct MarketLabel {
  std::string market;
  std::vector<LabelIngredient> ingredients;  ///< in the order in which they are printed
  std::size_t allergens_known = 0;           ///< names that this market's list has on the day
  std::vector<std::string> undecided;        ///< of them, those that papers would decide
  std::vector<std::string> doubts;  ///< sentences: what a range leaves open, and how it was taken
  std::vector<LabelWords> words;
  std::vector<LabelPoint> points;
  std::vector<LabelPaper> duties;
};

/// A piece of the bench sheet, for reports that set it otherwise than as lines of text.
struct SheetItem {
  enum class Kind : std::uint8_t { heading, paragraph, entry, weighing, total, gap };
  Kind kind = Kind::gap;
  std::string label;  ///< of an entry; what is weighed; "page": a heading that begins a page
  std::string words;  ///< of a weighing its mass
  std::string note;   ///< of a weighing: on which scale
};

/// What was asked for and so filled of a FormulaResult: what is empty there is none then, and is
/// not known where it was not asked for.
struct Filled {
  bool verdicts = false;
  bool passes = false;    ///< and what does not apply; else these are counted and left out
  bool measures = false;  ///< measures and composition
  bool curves = false;
  bool particulars = false;  ///< particulars, ingredients, portions, weighings, air
  bool lines = false;        ///< what a finding has of its line, and its fingerprint
  bool sheet = false;
  bool labels = false;  ///< labels and papers
};

struct FormulaResult {
  std::string file;
  std::string name;
  Filled filled;
  std::string on;                           ///< the day whose law was asked, as 2026-11-01
  std::vector<Finding> findings;            ///< in the order of rules, then of subjects
  std::size_t passes_left_out = 0;          ///< with CheckOptions::only_to_read
  std::size_t not_applicable_left_out = 0;  ///< with CheckOptions::only_to_read
  std::vector<Problem> notes;               ///< odd, and no error
  std::vector<MeasureResult> measures;      ///< filled where asked for
  std::vector<CompositionRow> composition;  ///< filled where asked for
  std::vector<Curve> curves;                ///< filled where asked for, as are all below
  std::vector<Particular> particulars;
  std::vector<IngredientRow> ingredients;  ///< as supplied, the greatest share first
  std::vector<PortionResult> portions;
  std::vector<WeighingResult> weighings;
  std::vector<AirResult> air;
  /// Why it must not be made as it is, where the sheet or the label is asked for; empty: nothing
  /// forbids it.
  std::vector<std::string> against_making;
  std::string sheet;  ///< the bench sheet as text, where asked for; without the reminder
  std::vector<SheetItem> sheet_items;  ///< the same, piece by piece
  std::string batch_made;              ///< days that the formula states; filled with `labels`
  std::string on_sale_since;
  std::vector<MarketLabel> labels;  ///< one a market, where asked for
  std::vector<LabelPaper> papers;   ///< what an assessment asks for and the formula leaves open
};

/// A finding of a baseline that a run no longer has.
struct AbsentFinding {
  std::string file;
  std::string rule;
  std::string subject;
  Kind kind = Kind::fail;
  Level level = Level::none;
  std::string message;
  std::uint32_t line = 0;
  std::string fingerprint;
};

/// What one run came to, in the order of the files given.
struct RunResult {
  std::vector<FormulaResult> formulas;
  std::vector<Problem> problems;
  bool compared = false;              ///< with a baseline
  std::vector<AbsentFinding> absent;  ///< what the baseline has and this run has not
  std::size_t libraries = 0;  ///< files of folders that hold no formula and were passed over

  /// Takes in what another run came to.
  void add(RunResult&& other);
};

/// Screening, never an assessment: the words that every report carries.
inline constexpr const char* reminder =
    "These are screening checks, not a safety assessment. Local regulation and a qualified safety "
    "assessor decide; the fragrance certificates and safety data sheets of your own suppliers come "
    "first.";

}  // namespace sudsmark
