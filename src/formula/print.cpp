#include "formula/print.h"

#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "formula/print_figure.h"
#include "formula/statements.h"

namespace sudsmark::formula {

std::string between_quotes(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  return out + '"';
}

namespace {

std::string printed(const Word& word) {
  return word.quoted ? between_quotes(word.text) : word.text;
}

std::string printed(const Date& date) {
  const auto padded = [](unsigned value, std::size_t width) {
    std::string digits = std::to_string(value);
    return std::string(width - std::min(width, digits.size()), '0') + digits;
  };
  return padded(static_cast<unsigned>(static_cast<int>(date.day.year())), 4) + "-" +
         padded(static_cast<unsigned>(date.day.month()), 2) + "-" +
         padded(static_cast<unsigned>(date.day.day()), 2);
}

class Printer {
 public:
  std::string take() { return std::move(out_); }

  void heading(std::string_view what, const std::string& rest) {
    if (!out_.empty()) out_ += '\n';
    out_ += what;
    if (!rest.empty()) out_ += " " + rest;
    out_ += '\n';
  }
  void statement(std::string_view what, const std::string& rest = {}) {
    out_ += "  ";
    out_ += what;
    if (!rest.empty()) out_ += " " + rest;
    out_ += '\n';
  }
  void lines(const std::vector<Line>& lines) {
    for (const Line& line : lines) statement(printed_amount(line.amount), named(line));
  }

  static std::string named(const Line& line) {
    return printed(line.name) + (line.dries_off ? ", dries off" : "");
  }

  /// All that the statements of a section fill.
  template <typename Owner>
  void statements(const Owner& owner) {
    each_field<Owner>([&](const auto& row) { said(row.full, row.form, owner.*(row.field)); });
  }

  void edits(const std::vector<Edit>& edits) {
    for (const Edit& edit : edits) std::visit([&](const auto& one) { show(one); }, edit);
  }

  void section(const Phase& phase) {
    heading("phase", printed(phase.name));
    lines(phase.lines);
  }
  void section(const Premix& premix) {
    const std::string unit = premix.unit ? " as " + printed_unit(premix.unit->text) : "";
    heading("premix", printed(premix.name) + " makes " +
                          printed_figure(premix.makes.value, measure::mass) + unit);
    lines(premix.lines);
  }
  void section(const Portion& portion) {
    heading("portion", printed(portion.name) + ", " +
                           printed_figure(portion.share.value, measure::share) +
                           (portion.sold_apart ? ", sold apart" : ""));
    lines(portion.lines);
  }
  void section(const Fragrance& fragrance) {
    heading("fragrance", printed(fragrance.name));
    statements(fragrance);
  }
  void section(const UserMaterial& material) {
    heading("material",
            printed(material.name) + (material.like ? " like " + printed(*material.like) : ""));
    statements(material);
  }
  void section(const Workshop& workshop) {
    heading("workshop", printed(workshop.name));
    statements(workshop);
  }
  void section(const Task& task) {
    heading("task", printed(task.name));
    statements(task);
  }
  void section(const Label& label) {
    heading("label", {});
    statements(label);
  }
  template <typename Sections>
  void sections(const Sections& all) {
    for (const auto& one : all) section(one);
  }

 private:
  // What is said with each form; the type of the field chooses where a form serves several.

  template <typename Form, typename Value>
  void said(std::string_view what, const Form& form, const std::optional<Value>& value) {
    if (value) statement(what, written(form, *value));
  }
  void said(std::string_view what, const NamesForm& /*form*/, const std::vector<Word>& words) {
    if (!words.empty()) statement(what, list(words));
  }
  void said(std::string_view what, const TextsForm& /*form*/, const std::vector<Word>& texts) {
    if (!texts.empty()) statement(what, list(texts));
  }
  /// All of them, of whichever form: they stand on lines of their own.
  void said(std::string_view /*what*/, const HalfOpenForm& /*form*/,
            const std::vector<Constituent>& constituents) {
    for (const Constituent& one : constituents) {
      statement(printed_figure(one.share, measure::share), printed(one.name));
    }
  }
  void said(std::string_view what, const UndeclaredForm& /*form*/, bool none) {
    if (none) statement(what, "none");
  }
  template <typename Item>
  void said(std::string_view what, const OwnForm& form, const std::vector<Item>& items) {
    for (const Item& item : items) statement(what, written(form, item));
  }

  static std::string list(const std::vector<Word>& words) {
    std::string out;
    for (const Word& word : words) out += (out.empty() ? "" : ", ") + printed(word);
    return out;
  }

  template <typename Form>
  static std::string written(const Form& /*form*/, const Word& word) {
    return printed(word);
  }
  template <typename Form>
  static std::string written(const Form& /*form*/, const WordList& words) {
    return list(words.words);
  }
  static std::string written(const FigureForm& form, const Figure& figure) {
    return printed_figure(figure.value, form.measure);
  }
  static std::string written(const RateForm& form, const Figure& figure) {
    return printed_figure(figure.value, form.measure) + " per " + std::string(form.per);
  }
  static std::string written(const DayForm& /*form*/, const Date& date) { return printed(date); }
  static std::string written(const FlagForm& /*form*/, const Span& /*place*/) { return {}; }
  static std::string written(const HazardsForm& /*form*/, const std::vector<Word>& codes) {
    return codes.empty() ? "none" : list(codes);
  }
  static std::string written(const OwnForm& /*form*/, const Keep& keep) {
    return printed(keep.name) +
           (keep.bounds ? " " + printed_figure(keep.bounds->value, measure::share) : "");
  }
  static std::string written(const OwnForm& /*form*/, const Allow& allow) {
    return printed(allow.rule) + " because " + printed(allow.because) +
           (allow.until ? " until " + printed(*allow.until) : "");
  }
  static std::string written(const OwnForm& /*form*/, const Scale& scale) {
    return printed_figure(scale.step.value, measure::mass) +
           (scale.most ? " to " + printed_figure(scale.most->value, measure::mass) : "");
  }
  static std::string written(const OwnForm& /*form*/, const Handled& handled) {
    return (handled.phase ? "phase" : printed_amount(*handled.amount)) + " " +
           printed(handled.name);
  }
  static std::string written(const OwnForm& /*form*/, const BathUse& bath) {
    std::string what;
    const auto add = [&](const std::string& words) { what += (what.empty() ? "" : " ") + words; };
    if (const auto* mass = std::get_if<Figure>(&bath.dose)) {
      add(printed_figure(mass->value, measure::mass));
    } else if (const auto* pieces = std::get_if<Range>(&bath.dose)) {
      add(printed_figure(*pieces, measure::count) + " piece");
    }
    if (bath.volume) add("in " + printed_figure(bath.volume->value, measure::volume));
    if (bath.temperature) {
      add("at " + printed_figure(bath.temperature->value, measure::temperature));
    }
    return what;
  }
  static std::string written(const OwnForm& /*form*/, const Drying& dried) {
    return printed_figure(dried.time.value, measure::time) +
           (dried.temperature
                ? " at " + printed_figure(dried.temperature->value, measure::temperature)
                : "");
  }
  static std::string written(const OwnForm& /*form*/, const Trace& trace) {
    return printed(trace.name) + " " + printed_figure(trace.share, measure::share);
  }
  static std::string written(const OwnForm& /*form*/, const Sampled& sampled) {
    return printed_figure(sampled.dust, measure::dust) + " " + printed(sampled.fraction) +
           " over " + printed_figure(sampled.over.value, measure::time);
  }
  static std::string written(const OwnForm& /*form*/, const Water& water) {
    std::string list = water.named ? printed(*water.named) : "";
    const auto add = [&](std::string_view what, const std::optional<Figure>& figure,
                         const Measure& measure) {
      if (!figure) return;
      list += (list.empty() ? "" : ", ") + std::string(what) + " " +
              printed_figure(figure->value, measure);
    };
    add("alkalinity", water.alkalinity, measure::alkalinity);
    add("hardness", water.hardness, measure::hardness);
    add("ph", water.ph, measure::ph);
    return list;
  }

  /// An edit, opened by the words of its row.
  template <typename Edited>
  void show(const Edited& edit) {
    statement(edit_words<Edited>(), written(edit));
  }
  static std::string written(const SetEdit& edit) {
    return printed(edit.name) + " to " + printed_amount(edit.amount);
  }
  static std::string written(const SwapEdit& edit) {
    return printed(edit.old_name) + " for " + printed(edit.new_name);
  }
  static std::string written(const AddEdit& edit) {
    return printed_amount(edit.line.amount) + " " + named(edit.line) +
           (edit.to ? " to " + printed(*edit.to) : "");
  }
  static std::string written(const RemoveEdit& edit) { return printed(edit.name); }
  static std::string written(const ScaleEdit& edit) {
    return "to " + printed_figure(edit.batch.value, measure::mass);
  }
  static std::string written(const FillEdit& edit) { return printed(edit.name); }

  std::string out_;
};

}  // namespace

std::string print(const Document& document) {
  Printer printer;
  for (const Include& include : document.includes) {
    printer.heading("include", printed(include.path));
  }
  if (document.formula_name) {
    printer.heading("formula", printed(*document.formula_name));
    printer.statements(document.statements);
  }
  if (document.tweak) {
    printer.heading("tweak", printed(document.tweak->name) + " of " + printed(document.tweak->of));
    printer.edits(document.tweak->edits);
    printer.statements(document.tweak->statements);
  }
  printer.sections(document.phases);
  printer.sections(document.premixes);
  printer.sections(document.portions);
  printer.sections(document.fragrances);
  printer.sections(document.materials);
  printer.sections(document.workshops);
  printer.sections(document.tasks);
  printer.sections(document.labels);
  return printer.take();
}

}  // namespace sudsmark::formula
