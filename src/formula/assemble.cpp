#include "formula/assemble.h"

#include <iterator>
#include <utility>

#include "formula/checks.h"
#include "formula/messages.h"
#include "formula/parse.h"
#include "formula/reading.h"
#include "formula/tree.h"
#include "formula/tweak.h"

namespace sudsmark::formula {
namespace {

template <typename Item>
void move_to(std::vector<Item>& from, std::vector<Item>& to) {
  if (to.empty()) {
    to = std::move(from);
  } else {
    to.insert(to.end(), std::make_move_iterator(from.begin()), std::make_move_iterator(from.end()));
  }
}

/// Whether a file is empty, or holds comments alone.
bool holds_nothing(const Document& document) {
  return document.includes.empty() && document.phases.empty() && document.premixes.empty() &&
         document.portions.empty() && document.fragrances.empty() && document.materials.empty() &&
         document.workshops.empty() && document.tasks.empty() && document.labels.empty();
}

class Assembly {
 public:
  Assembly(text::Sources& sources, text::FileIndex file, const AssembleOptions& options,
           text::Diagnostics& diagnostics)
      : sources_(sources),
        named_(file),
        options_(options),
        diagnostics_(diagnostics),
        tree_(sources, file, options, diagnostics) {}

  std::optional<Card> run(text::FileIndex file) {
    const std::size_t before = diagnostics_.count();
    std::optional<Card> card = sheet_of(file, [&](const Document& document) {
      if (!document.whole) return;
      const bool nothing = holds_nothing(document);
      diagnostics_.add(nothing ? messages::nothing_written : messages::library_named,
                       Span{file, 0, 0});
    });
    if (!card) return std::nullopt;
    if (options_.batch && diagnostics_.count() == before) scale(*options_.batch, *card);
    check_all(*card, diagnostics_);
    if (options_.base != nullptr && options_.base->card) {
      check_all(*options_.base->card, options_.base->problems);
    }
    if (diagnostics_.count() != before) {
      card->whole = false;
      if (!options_.partial) return std::nullopt;
    }
    return card;
  }

 private:
  static void check_all(Card& card, text::Diagnostics& diagnostics) {
    check_names(card, diagnostics);
    check_units(card, diagnostics);
    check_portions(card, diagnostics);
    check_line_count(card, diagnostics);
  }

  /// The card of a file that is no library; `on_library` says so where it is one.
  template <typename OnLibrary>
  std::optional<Card> sheet_of(text::FileIndex file, const OnLibrary& on_library) {
    tree_.enter(file);
    Document document = parse(sources_, file, diagnostics_);
    if (document.tweak && options_.revise && file == named_) options_.revise(*document.tweak);
    std::optional<Card> card;
    if (document.tweak) {
      card = base_of(file, *document.tweak);
      if (options_.base != nullptr && file == named_) options_.base->card = card;
    } else if (document.formula_name) {
      card.emplace();
      card->name = *document.formula_name;
      card->place = document.formula_place;
      card->statements = std::move(document.statements);
    } else {
      on_library(document);
    }
    // Read in any case: what is wrong there is wrong whether or not there is something to put it
    // in.
    Card nowhere;
    Card& to = card ? *card : nowhere;
    const std::optional<Label> base_label = std::exchange(to.label, std::nullopt);
    include_all(document, to);
    add_sections(document, to);
    if (!to.label) to.label = base_label;
    if (card) {
      card->file = file;
      if (document.tweak) apply(*document.tweak, options_.same_name, *card, diagnostics_);
    }
    tree_.leave();
    return card;
  }

  /// As a tweak that does nothing but scale the batch.
  void scale(double batch, Card& card) {
    const auto& stated = card.statements.batch;
    const Span place = stated ? stated->place : card.place;
    Tweak tweak;
    tweak.name = card.name;
    tweak.place = card.place;
    tweak.edits.emplace_back(ScaleEdit{{batch, place}, place});
    const bool tweaked = card.tweaked;
    apply(tweak, options_.same_name, card, diagnostics_);
    card.tweaked = tweaked;
  }

  std::optional<Card> base_of(text::FileIndex file, const Tweak& tweak) {
    const auto base = tree_.open(file, tweak.of);
    if (!base) return std::nullopt;
    return sheet_of(*base, [&](const Document& document) {
      if (document.whole) {
        diagnostics_.add(messages::base_is_library, tweak.of.place, {shown(tweak.of.text)});
      }
    });
  }

  void include_all(const Document& document, Card& to) {
    for (const Include& include : document.includes) {
      const auto file = tree_.open(document.file, include.path);
      if (!file) continue;
      tree_.enter(*file);
      Document library = parse(sources_, *file, diagnostics_);
      if (library.formula_name || library.tweak) {
        const Span place = library.tweak ? library.tweak->place : library.formula_place;
        diagnostics_.add(
            messages::includes_formula, {include.path.place, place},
            {shown(include.path.text), std::string(library.tweak ? "tweak" : "formula")});
      } else {
        include_all(library, to);
        add_sections(library, to);
      }
      tree_.leave();
    }
  }

  void add_sections(Document& from, Card& to) {
    move_to(from.phases, to.phases);
    move_to(from.premixes, to.premixes);
    move_to(from.portions, to.portions);
    move_to(from.fragrances, to.fragrances);
    move_to(from.materials, to.materials);
    move_to(from.workshops, to.workshops);
    move_to(from.tasks, to.tasks);
    for (Label& label : from.labels) {
      if (to.label) {
        diagnostics_.add(messages::label_twice, {label.place, to.label->place});
      } else {
        to.label = std::move(label);
      }
    }
  }

  text::Sources& sources_;
  text::FileIndex named_;
  const AssembleOptions& options_;
  text::Diagnostics& diagnostics_;
  Tree tree_;
};

}  // namespace

std::optional<Card> assemble(text::Sources& sources, text::FileIndex file,
                             const AssembleOptions& options, text::Diagnostics& diagnostics) {
  return Assembly(sources, file, options, diagnostics).run(file);
}

}  // namespace sudsmark::formula
