#include "label/check.h"

#include <algorithm>
#include <initializer_list>
#include <utility>

#include "label/printed.h"
#include "label/rows.h"
#include "text/name.h"
#include "wording/words.h"

namespace sudsmark::label {
using namespace wording;

namespace {

/// Whether an item stands for a name.
bool means(const PrintedItem& item, const std::string& folded) {
  return std::find(item.meanings.begin(), item.meanings.end(), folded) != item.meanings.end();
}

/// Whether `a` before `b` breaks the order for sure.
bool breaks_order(const LabelIngredient& a, const LabelIngredient& b) {
  const bool colour_first = a.group == LabelGroup::colour;
  const bool colour_last = b.group == LabelGroup::colour;
  if (colour_first || colour_last) return colour_first && !colour_last;
  constexpr double nearly = 1e-9;
  if (b.group != LabelGroup::by_weight || !a.share.high || !b.share.low) return false;
  return *b.share.low >= 1.0 - nearly && *a.share.high < *b.share.low * (1.0 - nearly);
}

class LabelChecking {
 public:
  LabelChecking(const blend::Blend& blend, std::chrono::year_month_day on)
      : blend_(blend), on_(on), stated_(*blend.label) {
    if (stated_.ingredients) items_ = printed_items(stated_.ingredients->text);
    for (const formula::Word& warning : stated_.warnings) {
      warnings_ += ' ' + plain_words(warning.text) + ' ';
    }
  }

  [[nodiscard]] std::vector<LabelFault> run(const std::vector<std::string>& markets) {
    if (markets.empty()) {
      add("label-market-unknown", {}, stated_.place,
          "the label cannot be checked: the formula names no market", Kind::open, Level::note);
      return std::move(faults_);
    }
    for (const std::string& market : markets) {
      const LabelAsk ask{market, on_, blend_.counted_from(market, on_)};
      labels_.push_back(label_for(blend_, ask));
      add_voluntary(ask);
    }
    if (stated_.ingredients) {
      check_names();
      for (const MarketLabel& label : labels_) check_order(label);
    } else {
      add("label-ingredient-missing", {}, stated_.place,
          "the label section states no ingredient list, so none was checked", Kind::open,
          Level::note);
    }
    for (const MarketLabel& label : labels_) check_words(label);
    write_shared();
    return std::move(faults_);
  }

 private:
  /// What is said of one name, and for which markets.
  struct Shared {
    std::string_view id;
    std::string subject;
    std::string words;
    text::Span place;
    std::vector<std::string> markets;
    bool certain = true;
  };

  void add(std::string_view id, std::string subject, text::Span place, std::string message,
           Kind kind = Kind::fail, Level level = Level::warning) {
    faults_.push_back({id, kind, level, std::move(message), std::move(subject), place, {}});
  }

  void share(std::string_view id, const std::string& subject, text::Span place, std::string words,
             const std::string& market, bool certain = true) {
    for (Shared& one : shared_) {
      if (one.id == id && one.subject == subject && one.words == words) {
        one.markets.push_back(market);
        return;
      }
    }
    shared_.push_back({id, subject, std::move(words), place, {market}, certain});
  }

  void write_shared() {
    for (Shared& one : shared_) {
      const std::string words = one.words + " (" + joined(one.markets) + ")";
      if (one.certain) {
        add(one.id, one.subject, one.place, words);
      } else {
        add(one.id, one.subject, one.place, "it depends on the true figures: " + words,
            Kind::review);
      }
    }
  }

  /// Names that may be declared though they are below their figure.
  void add_voluntary(const LabelAsk& ask) {
    constexpr std::string_view table = "declarable-allergens";
    for (const catalogue::Row* row : rows_for(blend_, table, ask)) {
      voluntary_.push_back(text::fold(word_of(blend_, table, *row, "label")));
    }
  }

  [[nodiscard]] text::Span place_of(const PrintedItem& item) const {
    text::Span place = stated_.ingredients->place;
    // quotes around it and no escapes in it: then the item's own bytes are known
    if (place.end - place.begin == stated_.ingredients->text.size() + 2) {
      place.begin += static_cast<std::uint32_t>(item.offset + 1);
      place.end = place.begin + static_cast<std::uint32_t>(item.text.size());
    }
    return place;
  }

  [[nodiscard]] bool printed(const std::string& name) const {
    const std::string folded = text::fold(name);
    return std::any_of(items_.begin(), items_.end(),
                       [&](const PrintedItem& item) { return means(item, folded); });
  }

  [[nodiscard]] bool known(const PrintedItem& item) const {
    const bool voluntary = std::any_of(voluntary_.begin(), voluntary_.end(),
                                       [&](const std::string& name) { return means(item, name); });
    return voluntary || std::any_of(labels_.begin(), labels_.end(), [&](const MarketLabel& label) {
             return std::any_of(
                 label.ingredients.begin(), label.ingredients.end(),
                 [&](const LabelIngredient& one) { return means(item, text::fold(one.name)); });
           });
  }

  void check_names() {
    std::vector<std::string> absent;
    for (const MarketLabel& label : labels_) {
      for (const LabelIngredient& one : label.ingredients) {
        const bool noted = std::find(absent.begin(), absent.end(), one.name) != absent.end();
        if (!noted && !printed(one.name)) absent.push_back(one.name);
      }
    }
    for (const PrintedItem& item : items_) {
      if (known(item)) continue;
      const std::vector<std::string> near = text::nearest(item.text, absent, 1);
      if (near.empty()) {
        add("label-ingredient-extra", item.text, place_of(item),
            "it stands in the list, and is not in the formula under that name");
        continue;
      }
      add("label-ingredient-misspelt", item.text, place_of(item),
          "'" + near.front() + "' is meant");
      const text::Span place = faults_.back().place;
      const bool plain = near.front().find_first_of("\"\\") == std::string::npos;
      if (plain && place.end - place.begin == item.text.size()) {
        faults_.back().spelling = near.front();
      }
      absent.erase(std::find(absent.begin(), absent.end(), near.front()));
    }
    for (const MarketLabel& label : labels_) {
      for (const LabelIngredient& one : label.ingredients) {
        if (std::find(absent.begin(), absent.end(), one.name) == absent.end()) continue;
        share("label-ingredient-missing", one.name, stated_.ingredients->place,
              "it is not in the list, and there is " + wording::printed(one.share) + " of it",
              label.market, one.certain);
      }
    }
  }

  void check_order(const MarketLabel& label) {
    struct Standing {
      const PrintedItem* item;
      const LabelIngredient* ingredient;
    };
    std::vector<Standing> row;
    for (const PrintedItem& item : items_) {
      for (const LabelIngredient& one : label.ingredients) {
        if (means(item, text::fold(one.name))) {
          row.push_back({&item, &one});
          break;
        }
      }
    }
    // whatever is in the way of most others is what was misplaced
    while (true) {
      std::vector<std::size_t> conflicts(row.size(), 0);
      for (std::size_t a = 0; a < row.size(); ++a) {
        for (std::size_t b = a + 1; b < row.size(); ++b) {
          if (!breaks_order(*row[a].ingredient, *row[b].ingredient)) continue;
          ++conflicts[a];
          ++conflicts[b];
        }
      }
      const auto worst = std::max_element(conflicts.begin(), conflicts.end());
      if (worst == conflicts.end() || *worst == 0) return;
      const Standing& one = row[static_cast<std::size_t>(worst - conflicts.begin())];
      share("label-ingredient-misplaced", one.ingredient->name, place_of(*one.item),
            one.ingredient->group == LabelGroup::colour
                ? std::string("this colour stands before other ingredients, and colours come last")
                : "it stands out of the order by weight: there is " +
                      wording::printed(one.ingredient->share) + " of it",
            label.market);
      row.erase(row.begin() + (worst - conflicts.begin()));
    }
  }

  /// Exact words stand as they are; of others every longer word has to be somewhere.
  [[nodiscard]] bool warned(const LabelWords& words) const {
    const std::string wanted = plain_words(words.words);
    if (words.exact) return warnings_.find(' ' + wanted + ' ') != std::string::npos;
    constexpr std::size_t counts_from = 4;
    for (std::size_t at = 0; at < wanted.size();) {
      const std::size_t end = std::min(wanted.find(' ', at), wanted.size());
      const std::string word = wanted.substr(at, end - at);
      if (word.size() >= counts_from && warnings_.find(word) == std::string::npos) return false;
      at = end + 1;
    }
    return true;
  }

  [[nodiscard]] bool warned_of_any(std::initializer_list<std::string_view> phrases) const {
    return std::any_of(phrases.begin(), phrases.end(), [&](std::string_view phrase) {
      return warnings_.find(phrase) != std::string::npos;
    });
  }

  void check_words(const MarketLabel& label) {
    const bool adults = warned_of_any({" for adult use only ", " for adults only ", " adults only ",
                                       " exclusively by adults ", " by adults only "});
    for (const LabelWords& words : label.words) {
      const bool of_foam = words.name.compare(0, 20, "foaming bath product") == 0;
      if (!words.certain || (adults && of_foam)) continue;
      const bool to_print = !words.words.empty() && words.words.front() != '(';
      if (to_print && !warned(words)) {
        share("label-caution-missing", {}, stated_.place,
              std::string("the label does not bear the words that ") + words.entry +
                  " asks for: \"" + words.words + "\"",
              label.market);
      }
      // directions are the maker's own words, and known by how they begin
      if (of_foam && !to_print && !warned_of_any({" directions", " how to use"})) {
        add("label-caution-missing", {}, stated_.place,
            "not known: whether the label has directions for safe use, which " + words.entry +
                " asks for beside the caution: write them into the warning too, beginning with "
                "\"Directions:\" (" +
                label.market + ")",
            Kind::open, Level::note);
      }
    }
  }

  const blend::Blend& blend_;
  std::chrono::year_month_day on_;
  const formula::Label& stated_;
  std::vector<PrintedItem> items_;
  std::string warnings_;
  std::vector<MarketLabel> labels_;
  std::vector<std::string> voluntary_;
  std::vector<Shared> shared_;
  std::vector<LabelFault> faults_;
};

}  // namespace

std::vector<LabelFault> label_faults(const blend::Blend& blend,
                                     const std::vector<std::string>& markets,
                                     std::chrono::year_month_day on) {
  if (!blend.label) return {};
  return LabelChecking(blend, on).run(markets);
}

}  // namespace sudsmark::label
