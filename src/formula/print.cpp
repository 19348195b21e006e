#include "formula/print.h"

#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "formula/print_figure.h"

namespace sudsmark::formula {
namespace {

std::string quoted(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  return out + '"';
}

std::string printed(const Word& word) {
  return word.quoted ? quoted(word.text) : word.text;
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
  void statement(std::string_view what, const std::optional<Word>& word) {
    if (word) statement(what, printed(*word));
  }
  void statement(std::string_view what, const std::optional<Figure>& figure,
                 const Measure& measure) {
    if (figure) statement(what, printed_figure(figure->value, measure));
  }
  void statement(std::string_view what, const std::vector<Word>& words) {
    std::string list;
    for (const Word& word : words) list += (list.empty() ? "" : ", ") + printed(word);
    if (!list.empty()) statement(what, list);
  }
  void lines(const std::vector<Line>& lines) {
    for (const Line& line : lines) statement(printed_amount(line.amount), printed(line.name));
  }

  void statements(const Statements& said) {
    statement("product", said.product);
    statement("forming", said.forming);
    statement("market", said.markets);
    statement("batch", said.batch, measure::mass);
    statement("piece", said.piece, measure::mass);
    if (said.bath) bath(*said.bath);
    if (said.water) water(*said.water);
    statement("users", said.users);
    if (said.first_sold) statement("first sold", printed(*said.first_sold));
    if (said.looks_like_food) statement("looks like food");
    statement("made in", said.made_in);
    for (const Keep& keep : said.keeps) {
      const std::string bounds =
          keep.bounds ? " " + printed_figure(keep.bounds->value, measure::share) : "";
      statement("keep", printed(keep.name) + bounds);
    }
    for (const Allow& allow : said.allows) {
      const std::string until = allow.until ? " until " + printed(*allow.until) : "";
      statement("allow", printed(allow.rule) + " because " + printed(allow.because) + until);
    }
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
    heading("portion",
            printed(portion.name) + ", " + printed_figure(portion.share.value, measure::share));
    lines(portion.lines);
  }
  void section(const Fragrance& fragrance) {
    heading("fragrance", printed(fragrance.name));
    statement("limit", fragrance.limit, measure::share);
    statement("category", fragrance.category);
    for (const Constituent& one : fragrance.constituents) {
      statement(printed_figure(one.share, measure::share), printed(one.name));
    }
    if (fragrance.undeclared_none) statement("undeclared none");
    statement("flash point", fragrance.flash_point, measure::temperature);
  }
  void section(const UserMaterial& material) {
    heading("material",
            printed(material.name) + (material.like ? " like " + printed(*material.like) : ""));
    statement("active", material.active, measure::share);
    statement("water", material.water, measure::share);
    statement("density", material.density, measure::density);
    statement("inci", material.inci);
    statement("cas", material.cas);
    statement("supplier limit", material.supplier_limit, measure::share);
    statement("role", material.roles);
    statement("form", material.form);
    if (material.states_hazards && material.hazards.empty()) statement("hazards none");
    statement("hazards", material.hazards);
  }
  void section(const Workshop& workshop) {
    heading("workshop", printed(workshop.name));
    statement("room", workshop.room, measure::room);
    if (workshop.air_changes) {
      statement("air changes",
                printed_figure(workshop.air_changes->value, measure::count) + " per hour");
    }
    statement("humidity", workshop.humidity, measure::humidity);
    statement("temperature", workshop.temperature, measure::temperature);
    for (const Scale& scale : workshop.scales) {
      const std::string most =
          scale.most ? " to " + printed_figure(scale.most->value, measure::mass) : "";
      statement("scale", printed_figure(scale.step.value, measure::mass) + most);
    }
    statement("mask", workshop.mask);
    statement("extraction", workshop.extraction);
  }
  void section(const Task& task) {
    heading("task", printed(task.name));
    if (task.handles) {
      const std::string what =
          task.handles->phase ? "phase" : printed_amount(*task.handles->amount);
      statement("handles", what + " " + printed(task.handles->name));
    }
    statement("takes", task.takes, measure::time);
    if (task.times) {
      statement("times", printed_figure(task.times->value, measure::count) + " per day");
    }
    statement("in", task.in, measure::room);
    statement("raises", task.raises, measure::dustiness);
  }
  void section(const Label& label) {
    heading("label", {});
    statement("ingredients", label.ingredients);
    statement("warning", label.warnings);
  }
  template <typename Sections>
  void sections(const Sections& all) {
    for (const auto& one : all) section(one);
  }

 private:
  void bath(const BathUse& bath) {
    std::string what;
    if (const auto* mass = std::get_if<Figure>(&bath.dose)) {
      what += " " + printed_figure(mass->value, measure::mass);
    } else if (const auto* pieces = std::get_if<Range>(&bath.dose)) {
      what += " " + printed_figure(*pieces, measure::count) + " piece";
    }
    if (bath.volume) what += " in " + printed_figure(bath.volume->value, measure::volume);
    if (bath.temperature) {
      what += " at " + printed_figure(bath.temperature->value, measure::temperature);
    }
    statement("bath" + what);
  }
  void water(const Water& water) {
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
    statement("water", list);
  }

  void show(const SetEdit& edit) {
    statement("set", printed(edit.name) + " to " + printed_amount(edit.amount));
  }
  void show(const SwapEdit& edit) {
    statement("swap", printed(edit.old_name) + " for " + printed(edit.new_name));
  }
  void show(const AddEdit& edit) {
    statement("add", printed_amount(edit.line.amount) + " " + printed(edit.line.name) +
                         (edit.to ? " to " + printed(*edit.to) : ""));
  }
  void show(const RemoveEdit& edit) { statement("remove", printed(edit.name)); }
  void show(const ScaleEdit& edit) {
    statement("scale batch to", printed_figure(edit.batch.value, measure::mass));
  }
  void show(const FillEdit& edit) { statement("fill with", printed(edit.name)); }

  std::string out_;
};

template <typename Tree>
void print_sections(const Tree& tree, Printer& printer) {
  printer.sections(tree.phases);
  printer.sections(tree.premixes);
  printer.sections(tree.portions);
  printer.sections(tree.fragrances);
  printer.sections(tree.materials);
  printer.sections(tree.workshops);
  printer.sections(tree.tasks);
}

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
  print_sections(document, printer);
  printer.sections(document.labels);
  return printer.take();
}

std::string print(const Card& card) {
  Printer printer;
  printer.heading("formula", printed(card.name));
  printer.statements(card.statements);
  print_sections(card, printer);
  if (card.label) printer.section(*card.label);
  return printer.take();
}

}  // namespace sudsmark::formula
