#include "label/check.h"

#include <algorithm>
#include <initializer_list>
#include <utility>

#include "label/names.h"
#include "label/printed.h"
#include "label/rows.h"
#include "rules/deciders.h"
#include "text/name.h"
#include "wording/words.h"

namespace sudsmark::label {
using namespace wording;

namespace {

/// Whether an item stands for a name.
bool means(const PrintedItem& item, const std::string& folded) {
  const auto& meanings = item.meanings;
  return std::find(meanings.begin(), meanings.end(), folded) != meanings.end() ||
         std::find(meanings.begin(), meanings.end(), short_colour(folded)) != meanings.end();
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

class LabelCheck {
 public:
  LabelCheck(const blend::Blend& blend, const rules::Ruleset& ruleset,
             std::chrono::year_month_day on)
      : blend_(blend), ruleset_(ruleset), on_(on), stated_(*blend.label) {
    if (stated_.ingredients) items_ = printed_items(stated_.ingredients->text);
    for (const formula::Word& warning : stated_.warnings) {
      warnings_ += ' ' + plain_words(warning.text) + ' ';
    }
  }

  [[nodiscard]] std::vector<LabelFault> run(const std::vector<std::string>& markets) {
    if (markets.empty()) {
      add({"label-market-unknown", "", {}}, {}, stated_.place, Kind::open);
      return std::move(faults_);
    }
    for (const std::string& market : markets) {
      const LabelAsk ask{market, on_, blend_.counted_from(market, on_)};
      labels_.push_back(label_for(blend_, ask));
      forms_.push_back(other_forms(blend_, ask));
      add_voluntary(ask);
      // names beside a scent stand on lists of other markets too
      add_voluntary({"EU", ask.on, ask.counted_from});
    }
    if (stated_.ingredients) {
      check_names();
      for (std::size_t at = 0; at < labels_.size(); ++at) {
        check_form(at);
        check_order(at);
      }
    } else {
      add({"label-ingredient-missing", "no list", {}}, {}, stated_.place, Kind::open);
    }
    for (const MarketLabel& label : labels_) check_words(label);
    write_shared();
    return std::move(faults_);
  }

 private:
  /// A case of a rule, and what fills its message.
  struct Broken {
    std::string_view id;
    std::string_view name;
    std::vector<rules::Filling> fillings;
  };

  /// What is said of one name, and for which markets.
  struct Shared {
    std::uint32_t rule = 0;
    std::string subject;
    std::string words;
    text::Span place;
    std::vector<std::string> markets;
    bool certain = true;
  };

  void add_words(std::uint32_t rule, std::string subject, text::Span place, std::string message,
                 Kind kind) {
    const rules::Rule& of = ruleset_.rules[rule];
    const Level level = kind == Kind::open ? of.undecided : of.otherwise;
    faults_.push_back({rule, kind, level, std::move(message), std::move(subject), place, {}});
  }

  /// Null where the ruleset has no such rule.
  LabelFault* add(const Broken& broken, std::string subject, text::Span place,
                  Kind kind = Kind::fail, std::string_view more = {}) {
    const auto rule = ruleset_.find_rule(broken.id);
    if (!rule) return nullptr;
    std::string words = case_message(ruleset_.rules[*rule], broken.name, broken.fillings);
    words += more;
    add_words(*rule, std::move(subject), place, std::move(words), kind);
    return &faults_.back();
  }

  void share(const Broken& broken, const std::string& subject, text::Span place,
             const std::string& market, bool certain = true) {
    const auto rule = ruleset_.find_rule(broken.id);
    if (!rule) return;
    std::string words = case_message(ruleset_.rules[*rule], broken.name, broken.fillings);
    for (Shared& one : shared_) {
      if (one.rule == *rule && one.subject == subject && one.words == words) {
        one.markets.push_back(market);
        return;
      }
    }
    shared_.push_back({*rule, subject, std::move(words), place, {market}, certain});
  }

  void write_shared() {
    for (Shared& one : shared_) {
      const std::string words = one.words + " (" + joined(one.markets) + ")";
      if (one.certain) {
        add_words(one.rule, one.subject, one.place, words, Kind::fail);
      } else {
        add_words(one.rule, one.subject, one.place, "it depends on the true figures: " + words,
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

  /// Whether an item stands for an ingredient of a label, be it under its name of another market.
  [[nodiscard]] bool stands_for(const PrintedItem& item, std::size_t label,
                                const LabelIngredient& one) const {
    if (means(item, text::fold(one.name))) return true;
    return std::any_of(forms_[label].begin(), forms_[label].end(), [&](const OtherForm& form) {
      return form.name == one.name && means(item, text::fold(form.other));
    });
  }

  [[nodiscard]] bool printed(std::size_t label, const LabelIngredient& one) const {
    return std::any_of(items_.begin(), items_.end(),
                       [&](const PrintedItem& item) { return stands_for(item, label, one); });
  }

  /// What a material brings beside what it is bought for, as a foamer brings salt: it may be named.
  [[nodiscard]] bool accompanies(const PrintedItem& item) const {
    for (const blend::Ingredient& ingredient : blend_.whole.composition.ingredients) {
      for (const blend::ContentView& content : blend_.contents(ingredient.material)) {
        if (content.substance == nullptr || content.water != catalogue::WaterClass::none) continue;
        if (means(item, text::fold(content.substance->inci)) ||
            means(item, text::fold(content.substance->name))) {
          return true;
        }
      }
    }
    return false;
  }

  [[nodiscard]] bool known(const PrintedItem& item) const {
    if (accompanies(item)) return true;
    const auto in_label = [&](std::size_t label) {
      const auto& all = labels_[label].ingredients;
      return std::any_of(all.begin(), all.end(),
                         [&](const LabelIngredient& one) { return stands_for(item, label, one); });
    };
    for (std::size_t label = 0; label < labels_.size(); ++label) {
      if (in_label(label)) return true;
    }
    return std::any_of(voluntary_.begin(), voluntary_.end(),
                       [&](const std::string& name) { return means(item, name); });
  }

  /// One line for all names that are those of another market.
  void check_form(std::size_t label) {
    std::string names;
    for (const LabelIngredient& one : labels_[label].ingredients) {
      const std::string own = text::fold(one.name);
      const bool as_here = std::any_of(items_.begin(), items_.end(),
                                       [&](const PrintedItem& item) { return means(item, own); });
      const auto item = std::find_if(items_.begin(), items_.end(), [&](const PrintedItem& printed) {
        return stands_for(printed, label, one);
      });
      if (as_here || item == items_.end()) continue;
      names += (names.empty() ? "" : ", ") + one.name + " for '" + item->text + "'";
    }
    if (names.empty()) return;
    add({"label-of-another-market", "", {{"market", labels_[label].market}, {"names", names}}}, {},
        stated_.ingredients->place);
  }

  void check_names() {
    std::vector<std::string> absent;
    for (std::size_t at = 0; at < labels_.size(); ++at) {
      for (const LabelIngredient& one : labels_[at].ingredients) {
        const bool noted = std::find(absent.begin(), absent.end(), one.name) != absent.end();
        if (!noted && !printed(at, one)) absent.push_back(one.name);
      }
    }
    for (const PrintedItem& item : items_) {
      if (known(item)) continue;
      const std::vector<std::string> near = text::nearest(item.text, absent, 1);
      if (near.empty()) {
        add({"label-ingredient-extra", "", {}}, item.text, place_of(item));
        continue;
      }
      LabelFault* fault = add({"label-ingredient-misspelt", "", {{"name", near.front()}}},
                              item.text, place_of(item));
      const text::Span place = place_of(item);
      const bool plain = near.front().find_first_of("\"\\") == std::string::npos;
      if (fault != nullptr && plain && place.end - place.begin == item.text.size()) {
        fault->spelling = near.front();
      }
      absent.erase(std::find(absent.begin(), absent.end(), near.front()));
    }
    for (const MarketLabel& label : labels_) {
      for (const LabelIngredient& one : label.ingredients) {
        if (std::find(absent.begin(), absent.end(), one.name) == absent.end()) continue;
        share({"label-ingredient-missing",
               "in the formula",
               {{"share", wording::printed(one.share)}}},
              one.name, stated_.ingredients->place, label.market, one.certain);
      }
    }
  }

  void check_order(std::size_t at) {
    const MarketLabel& label = labels_[at];
    struct Placed {
      const PrintedItem* item;
      const LabelIngredient* ingredient;
    };
    std::vector<Placed> row;
    for (const PrintedItem& item : items_) {
      for (const LabelIngredient& one : label.ingredients) {
        if (stands_for(item, at, one)) {
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
      const Placed& one = row[static_cast<std::size_t>(worst - conflicts.begin())];
      const bool colour = one.ingredient->group == LabelGroup::colour;
      share({"label-ingredient-misplaced",
             colour ? "colour" : "by weight",
             {{"share", wording::printed(one.ingredient->share)}}},
            one.ingredient->name, place_of(*one.item), label.market);
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
      if (!words.certain || (adults && words.of_foam)) continue;
      const bool to_print = !words.words.empty() && words.words.front() != '(';
      if (to_print && !warned(words)) {
        share({"label-caution-missing", "words", {{"entry", words.entry}, {"words", words.words}}},
              {}, stated_.place, label.market);
      }
      // directions are the maker's own words, and known by how they begin
      if (words.of_foam && !to_print && !warned_of_any({" directions", " how to use"})) {
        add({"label-caution-missing", "directions", {{"entry", words.entry}}}, {}, stated_.place,
            Kind::open, " (" + label.market + ")");
      }
    }
  }

  const blend::Blend& blend_;
  const rules::Ruleset& ruleset_;
  std::chrono::year_month_day on_;
  const formula::Label& stated_;
  std::vector<PrintedItem> items_;
  std::string warnings_;
  std::vector<MarketLabel> labels_;
  std::vector<std::vector<OtherForm>> forms_;  ///< beside each label
  std::vector<std::string> voluntary_;
  std::vector<Shared> shared_;
  std::vector<LabelFault> faults_;
};

}  // namespace

std::vector<LabelFault> label_faults(const blend::Blend& blend, const rules::Ruleset& ruleset,
                                     const std::vector<std::string>& markets,
                                     std::chrono::year_month_day on) {
  if (!blend.label) return {};
  return LabelCheck(blend, ruleset, on).run(markets);
}

}  // namespace sudsmark::label
