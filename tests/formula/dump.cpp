#include "dump.h"

#include <charconv>
#include <optional>
#include <vector>

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
      lines(portion.lines);
    }
    for (const Fragrance& fragrance : document.fragrances) stock(fragrance);
    for (const UserMaterial& material : document.materials) stock(material);
    for (const Workshop& workshop : document.workshops) place(workshop);
    for (const Task& task : document.tasks) work(task);
    for (const Label& label : document.labels) {
      at(label.place);
      out_ += "label\n";
      field("ingredients", label.ingredients);
      for (const Word& warning : label.warnings) field("warning", warning);
    }
    return std::move(out_);
  }

 private:
  void at(const Span& place) {
    if (!places_) return;
    const text::Position position = sources_.position(place);
    out_ += std::to_string(position.line) + ":" + std::to_string(position.column) + " ";
  }
  void head(const Span& place, std::string_view what, const Word& name) {
    at(place);
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
      at(line.place);
      out_ += amount(line.amount) + " " + word(line.name) + "\n";
    }
  }

  void statements(const Statements& said) {
    field("product", said.product);
    field("forming", said.forming);
    field("market", said.markets);
    field("batch", said.batch, "g");
    field("piece", said.piece, "g");
    if (said.bath) {
      if (const auto* mass = std::get_if<Figure>(&said.bath->dose)) {
        field("bath mass", mass->value, "g");
      } else if (const auto* pieces = std::get_if<Range>(&said.bath->dose)) {
        field("bath pieces", *pieces, "");
      }
      field("bath volume", said.bath->volume, "l");
      field("bath temperature", said.bath->temperature, "C");
    }
    if (said.water) {
      field("water", said.water->named);
      field("water alkalinity", said.water->alkalinity, "g/l");
      field("water hardness", said.water->hardness, "g/l");
      field("water ph", said.water->ph, "");
    }
    field("users", said.users);
    if (said.first_sold) out_ += "  first sold " + day(*said.first_sold) + "\n";
    if (said.looks_like_food) out_ += "  looks like food\n";
    field("made in", said.made_in);
    for (const Keep& keep : said.keeps) {
      field("keep", keep.name);
      field("  within", keep.bounds, "");
    }
    for (const Allow& allow : said.allows) {
      field("allow", allow.rule);
      field("  because", allow.because);
      if (allow.until) out_ += "    until " + day(*allow.until) + "\n";
    }
  }

  void tweak(const Tweak& tweak) {
    head(tweak.place, "tweak", tweak.name);
    field("of", tweak.of);
    for (const Edit& one : tweak.edits) {
      out_ += "  ";
      std::visit([&](const auto& edit) { at(edit.place), show(edit); }, one);
      out_ += "\n";
    }
    statements(tweak.statements);
  }
  void show(const SetEdit& edit) { out_ += "set " + word(edit.name) + " " + amount(edit.amount); }
  void show(const SwapEdit& edit) {
    out_ += "swap " + word(edit.old_name) + " " + word(edit.new_name);
  }
  void show(const AddEdit& edit) {
    out_ += "add " + amount(edit.line.amount) + " " + word(edit.line.name);
    if (edit.to) out_ += " to " + word(*edit.to);
  }
  void show(const RemoveEdit& edit) { out_ += "remove " + word(edit.name); }
  void show(const ScaleEdit& edit) { out_ += "scale batch " + range(edit.batch.value) + " g"; }
  void show(const FillEdit& edit) { out_ += "fill with " + word(edit.name); }

  void stock(const Fragrance& fragrance) {
    head(fragrance.place, "fragrance", fragrance.name);
    field("limit", fragrance.limit, "");
    field("category", fragrance.category);
    for (const Constituent& one : fragrance.constituents) {
      out_ += "  constituent " + range(one.share) + " " + word(one.name) + "\n";
    }
    if (fragrance.undeclared_none) out_ += "  undeclared none\n";
    field("flash point", fragrance.flash_point, "C");
  }

  void stock(const UserMaterial& material) {
    head(material.place, "material", material.name);
    field("like", material.like);
    field("active", material.active, "");
    field("water", material.water, "");
    field("density", material.density, "g/l");
    field("inci", material.inci);
    field("cas", material.cas);
    field("supplier limit", material.supplier_limit, "");
    field("role", material.roles);
    field("form", material.form);
    if (material.states_hazards && material.hazards.empty()) out_ += "  hazards none\n";
    field("hazards", material.hazards);
  }

  void place(const Workshop& workshop) {
    head(workshop.place, "workshop", workshop.name);
    field("room", workshop.room, "l");
    field("air changes", workshop.air_changes, "per h");
    field("humidity", workshop.humidity, "");
    field("temperature", workshop.temperature, "C");
    for (const Scale& scale : workshop.scales) {
      field("scale step", scale.step.value, "g");
      field("scale most", scale.most, "g");
    }
    field("mask", workshop.mask);
    field("extraction", workshop.extraction);
  }

  void work(const Task& task) {
    head(task.place, "task", task.name);
    if (task.handles) {
      out_ += task.handles->phase ? std::string("  handles phase ")
                                  : "  handles " + amount(*task.handles->amount) + " ";
      out_ += word(task.handles->name) + "\n";
    }
    field("takes", task.takes, "h");
    field("times", task.times, "per day");
    field("in", task.in, "l");
    field("raises", task.raises, "");
  }

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
