#include "dump.h"

#include <charconv>
#include <optional>
#include <vector>

#include "formula/statements.h"

namespace sudsmark::formula::test {
namespace {

std::string number(double value) {
  char buffer[64];
  const auto end =
      std::to_chars(std::begin(buffer), std::end(buffer), value, std::chars_format::general, 12)
          .ptr;
  return {buffer, end};
}

std::string range(const Range& value) {
  if (value.exact()) return number(value.low);
  return "[" + number(value.low) + ", " + number(value.high) + "]";
}

std::string word(const Word& value) {
  const std::string quote = value.quoted ? "\"" : "'";
  return quote + value.text + quote;
}

class Dump {
 public:
  Dump(const text::Sources& sources, bool places) : sources_(sources), places_(places) {}

  std::string document(const Document& document) {
    for (const Include& include : document.includes) head(include.place, "include", include.path);
    if (document.formula_name) {
      head(document.formula_place, "formula", *document.formula_name);
      statements(document.statements);
    }
    if (document.tweak) tweak(*document.tweak);
    for (const Phase& phase : document.phases) {
      head(phase.place, "phase", phase.name);
      lines(phase.lines);
    }
    for (const Premix& premix : document.premixes) {
      head(premix.place, "premix", premix.name);
      field("makes", premix.makes.value, "g");
      field("unit", premix.unit);
      lines(premix.lines);
    }
    for (const Portion& portion : document.portions) {
      head(portion.place, "portion", portion.name);
      field("share", portion.share.value, "");
      if (portion.sold_apart) out_ += "  sold apart\n";
      lines(portion.lines);
    }
    for (const Fragrance& fragrance : document.fragrances) {
      head(fragrance.place, "fragrance", fragrance.name);
      statements(fragrance);
    }
    for (const UserMaterial& material : document.materials) {
      head(material.place, "material", material.name);
      field("like", material.like);
      statements(material);
    }
    for (const Workshop& workshop : document.workshops) {
      head(workshop.place, "workshop", workshop.name);
      statements(workshop);
    }
    for (const Task& task : document.tasks) {
      head(task.place, "task", task.name);
      statements(task);
    }
    for (const Label& label : document.labels) {
      write_place(label.place);
      out_ += "label\n";
      statements(label);
    }
    return std::move(out_);
  }

 private:
  void write_place(const Span& place) {
    if (!places_) return;
    const text::Position position = sources_.position(place);
    out_ += std::to_string(position.line) + ":" + std::to_string(position.column) + " ";
  }
  void head(const Span& place, std::string_view what, const Word& name) {
    write_place(place);
    out_ += std::string(what) + " " + word(name) + "\n";
  }
  void field(std::string_view what, const Range& value, std::string_view unit) {
    out_ += "  " + std::string(what) + " " + range(value);
    if (!unit.empty()) out_ += " " + std::string(unit);
    out_ += "\n";
  }
  void field(std::string_view what, const std::optional<Figure>& value, std::string_view unit) {
    if (value) field(what, value->value, unit);
  }
  void field(std::string_view what, const Word& value) {
    out_ += "  " + std::string(what) + " " + word(value) + "\n";
  }
  void field(std::string_view what, const std::optional<Word>& value) {
    if (value) field(what, *value);
  }
  void field(std::string_view what, const std::vector<Word>& values) {
    if (values.empty()) return;
    out_ += "  " + std::string(what);
    for (const Word& value : values) out_ += " " + word(value);
    out_ += "\n";
  }
  static std::string day(const Date& date) {
    return std::to_string(static_cast<int>(date.day.year())) + "-" +
           std::to_string(static_cast<unsigned>(date.day.month())) + "-" +
           std::to_string(static_cast<unsigned>(date.day.day()));
  }
  static std::string amount(const Amount& amount) {
    switch (amount.kind) {
      case AmountKind::mass:
        return "mass " + range(amount.value) + " g";
      case AmountKind::share:
        return "share " + range(amount.value);
      case AmountKind::parts:
        return "parts " + range(amount.value);
      case AmountKind::dose:
        return "dose " + range(amount.value) + " g/g";
      case AmountKind::volume:
        return "volume " + range(amount.value) + " l";
      case AmountKind::fill:
        return "fill";
      case AmountKind::units:
        return "units " + range(amount.value) + " '" + amount.unit + "'";
    }
    return {};
  }
  void lines(const std::vector<Line>& lines) {
    for (const Line& line : lines) {
      out_ += "  ";
      write_place(line.place);
      out_ += amount(line.amount) + " " + word(line.name);
      out_ += line.dries_off ? ", dries off\n" : "\n";
    }
  }

  /// All that the statements of a section fill.
  template <typename Owner>
  void statements(const Owner& owner) {
    each_field<Owner>([&](const auto& row) { said(row.full, row.form, owner.*(row.field)); });
  }
  void said(std::string_view what, const FigureForm& form, const std::optional<Figure>& figure) {
    field(what, figure, form.measure.base);
  }
  void said(std::string_view what, const RateForm& form, const std::optional<Figure>& figure) {
    field(what, figure, form.measure.base);
  }
  template <typename Form>
  void said(std::string_view what, const Form& /*form*/, const std::optional<Word>& value) {
    field(what, value);
  }
  template <typename Form>
  void said(std::string_view what, const Form& /*form*/, const std::vector<Word>& words) {
    field(what, words);
  }
  template <typename Form>
  void said(std::string_view what, const Form& /*form*/, const std::optional<WordList>& list) {
    if (list) field(what, list->words);
  }
  void said(std::string_view what, const DayForm& /*form*/, const std::optional<Date>& date) {
    if (date) out_ += "  " + std::string(what) + " " + day(*date) + "\n";
  }
  void said(std::string_view what, const FlagForm& /*form*/, const std::optional<Span>& place) {
    if (place) out_ += "  " + std::string(what) + "\n";
  }
  void said(std::string_view /*what*/, const HalfOpenForm& /*form*/,
            const std::vector<Constituent>& constituents) {
    for (const Constituent& one : constituents) {
      out_ += "  constituent " + range(one.share) + " " + word(one.name) + "\n";
    }
  }
  void said(std::string_view what, const UndeclaredForm& /*form*/, bool none) {
    if (none) out_ += "  " + std::string(what) + " none\n";
  }
  void said(std::string_view what, const HazardsForm& /*form*/,
            const std::optional<std::vector<Word>>& codes) {
    if (!codes) return;
    if (codes->empty()) out_ += "  " + std::string(what) + " none\n";
    field(what, *codes);
  }
  void said(std::string_view /*what*/, const OwnForm& /*form*/,
            const std::optional<BathUse>& bath) {
    if (!bath) return;
    if (const auto* mass = std::get_if<Figure>(&bath->dose)) {
      field("bath mass", mass->value, "g");
    } else if (const auto* pieces = std::get_if<Range>(&bath->dose)) {
      field("bath pieces", *pieces, "");
    }
    field("bath volume", bath->volume, "l");
    field("bath temperature", bath->temperature, "C");
  }
  void said(std::string_view /*what*/, const OwnForm& /*form*/, const std::optional<Water>& water) {
    if (!water) return;
    field("water", water->named);
    field("water alkalinity", water->alkalinity, "g/l");
    field("water hardness", water->hardness, "g/l");
    field("water ph", water->ph, "");
  }
  void said(std::string_view what, const OwnForm& /*form*/, const std::optional<Drying>& dried) {
    if (!dried) return;
    field(what, dried->time.value, "h");
    field("  at", dried->temperature, "C");
  }
  void said(std::string_view what, const OwnForm& /*form*/, const std::vector<Trace>& traces) {
    for (const Trace& one : traces) {
      field(what, one.name);
      field("  share", one.share, "");
    }
  }
  void said(std::string_view what, const OwnForm& /*form*/, const std::vector<Sampled>& samples) {
    for (const Sampled& one : samples) {
      field(what, one.fraction);
      field("  dust", one.dust, "g/l");
      field("  over", one.over.value, "h");
    }
  }
  void said(std::string_view what, const OwnForm& /*form*/, const std::vector<Keep>& keeps) {
    for (const Keep& keep : keeps) {
      field(what, keep.name);
      field("  within", keep.bounds, "");
    }
  }
  void said(std::string_view what, const OwnForm& /*form*/, const std::vector<Allow>& allows) {
    for (const Allow& allow : allows) {
      field(what, allow.rule);
      field("  because", allow.because);
      if (allow.until) out_ += "    until " + day(*allow.until) + "\n";
    }
  }
  void said(std::string_view what, const OwnForm& /*form*/, const std::vector<Scale>& scales) {
    for (const Scale& scale : scales) {
      field(std::string(what) + " step", scale.step.value, "g");
      field(std::string(what) + " most", scale.most, "g");
    }
  }
  void said(std::string_view what, const OwnForm& /*form*/, const std::optional<Handled>& handled) {
    if (!handled) return;
    out_ += "  " + std::string(what) + " ";
    out_ += handled->phase ? "phase" : amount(*handled->amount);
    out_ += " " + word(handled->name) + "\n";
  }

  void tweak(const Tweak& tweak) {
    head(tweak.place, "tweak", tweak.name);
    field("of", tweak.of);
    for (const Edit& one : tweak.edits) {
      out_ += "  ";
      std::visit([&](const auto& edit) { write_place(edit.place), show(edit); }, one);
      out_ += "\n";
    }
    statements(tweak.statements);
  }
  template <typename Edited>
  void show(const Edited& edit) {
    out_ += std::string(edit_words<Edited>()) + " " + shown(edit);
  }
  static std::string shown(const SetEdit& edit) {
    return word(edit.name) + " " + amount(edit.amount);
  }
  static std::string shown(const SwapEdit& edit) {
    return word(edit.old_name) + " " + word(edit.new_name);
  }
  static std::string shown(const AddEdit& edit) {
    return amount(edit.line.amount) + " " + word(edit.line.name) +
           (edit.line.dries_off ? ", dries off" : "") + (edit.to ? " to " + word(*edit.to) : "");
  }
  static std::string shown(const RemoveEdit& edit) { return word(edit.name); }
  static std::string shown(const ScaleEdit& edit) { return range(edit.batch.value) + " g"; }
  static std::string shown(const FillEdit& edit) { return word(edit.name); }

  const text::Sources& sources_;
  bool places_;
  std::string out_;
};

}  // namespace

std::string dump(const Document& document, const text::Sources& sources, bool places) {
  return Dump(sources, places).document(document);
}

std::string listing(const text::Diagnostics& diagnostics, const text::Sources& sources,
                    text::FileIndex file) {
  std::string out;
  const auto place = [&](const Span& span) {
    const text::Position position = sources.position(span);
    if (span.file != file) out += std::string(sources.path(span)) + ":";
    out += std::to_string(position.line) + ":" + std::to_string(position.column) + ": ";
  };
  for (const text::Diagnostic& diagnostic : diagnostics.in_order()) {
    place(diagnostic.places.front());
    out += "error: " + text::sentence(diagnostic) + "\n";
    for (std::size_t at = 1; at < diagnostic.places.size(); ++at) {
      place(diagnostic.places[at]);
      out += "note: the other place is here\n";
    }
  }
  return out;
}

}  // namespace sudsmark::formula::test
