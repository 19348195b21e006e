#include "formula/tweak.h"

#include <algorithm>
#include <iterator>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "formula/balance.h"
#include "formula/draft.h"
#include "formula/messages.h"
#include "formula/reading.h"
#include "formula/statements.h"
#include "formula/words.h"
#include "text/name.h"

namespace sudsmark::formula {
namespace {

double middle(const Range& range) {
  return range.low + (range.high - range.low) / 2;
}

/// Where a name stands: the lines, and the parts that hold them.
struct Stands {
  std::vector<DraftLine*> lines;
  std::vector<DraftPart*> parts;
};

class Tweaking {
 public:
  Tweaking(const Tweak& tweak, const SameName& same_name, Card& card,
           text::Diagnostics& diagnostics)
      : tweak_(tweak), same_name_(same_name), card_(card), diagnostics_(diagnostics) {
    const auto own = [&](const auto& sections) {
      for (const auto& section : sections) own_names_.insert(text::fold(section.name.text));
    };
    own(card.premixes);
    own(card.fragrances);
    own(card.materials);
  }

  void run() {
    draft_ = draft_of(card_);
    for (const Edit& edit : tweak_.edits) {
      if (const auto* scale = std::get_if<ScaleEdit>(&edit)) scale_batch(*scale);
    }
    // Kept apart: each recipe as it was after scaling and before all other edits.
    Balance phases(parts_of(PartKind::phase), batch_mass(), card_.premixes);
    std::vector<Balance> premixes;
    const std::vector<DraftPart*> premix_parts = parts_of(PartKind::premix);
    for (std::size_t at = 0; at < premix_parts.size(); ++at) {
      premixes.emplace_back(std::vector{premix_parts[at]}, middle(card_.premixes[at].makes.value),
                            card_.premixes);
    }
    const std::size_t errors = diagnostics_.count();
    phases_balance_ = &phases;
    for (const Edit& edit : tweak_.edits) {
      std::visit([&](const auto& one) { change(one); }, edit);
    }
    if (diagnostics_.count() == errors) {
      balance(phases);
      for (std::size_t at = 0; at < premix_parts.size(); ++at) {
        if (disturbed_.contains(premix_parts[at])) {
          premixes[at].scale_rest(last_disturbance_, diagnostics_);
        }
      }
    }
    write_back(std::move(draft_), card_);
  }

 private:
  // Finding

  [[nodiscard]] std::string key(const std::string& name) const {
    std::string folded = text::fold(name);
    if (!same_name_ || own_names_.contains(folded)) return folded;
    return same_name_(name);
  }

  [[nodiscard]] std::vector<DraftPart*> parts_of(PartKind kind) {
    std::vector<DraftPart*> parts;
    for (DraftPart& part : draft_) {
      if (part.kind == kind) parts.push_back(&part);
    }
    return parts;
  }

  [[nodiscard]] Stands find(const std::string& wanted, bool in_phases) {
    Stands stands;
    for (DraftPart& part : draft_) {
      if ((part.kind == PartKind::phase) != in_phases) continue;
      for (DraftLine& line : part.lines) {
        if (key(line.line.name.text) != wanted) continue;
        stands.lines.push_back(&line);
        if (stands.parts.empty() || stands.parts.back() != &part) stands.parts.push_back(&part);
      }
    }
    return stands;
  }

  /// Where the name of an edit stands; an error if nowhere.
  [[nodiscard]] Stands find(const Word& name) {
    const std::string wanted = key(name.text);
    Stands stands = find(wanted, true);
    if (stands.lines.empty()) stands = find(wanted, false);
    if (stands.lines.empty()) {
      std::vector<std::string> known;
      for (const DraftPart& part : draft_) {
        for (const DraftLine& line : part.lines) known.push_back(line.line.name.text);
      }
      diagnostics_.add(messages::no_such_line, name.place,
                       {shown(name.text), nearest_hint(name.text, known)});
    }
    return stands;
  }

  [[nodiscard]] std::optional<double> batch_mass() const {
    if (!card_.statements.batch) return std::nullopt;
    return middle(card_.statements.batch->value);
  }

  void disturb(const std::vector<DraftPart*>& parts, Span place) {
    for (DraftPart* part : parts) {
      disturbed_.insert(part);
      phases_disturbed_ = phases_disturbed_ || part->kind == PartKind::phase;
    }
    last_disturbance_ = place;
  }

  // Edits

  void scale_batch(const ScaleEdit& edit) {
    std::optional<double> now = batch_mass();
    if (!now) {
      double sum = 0;
      bool known = true;
      bool any = false;
      for (const DraftPart* part : parts_of(PartKind::phase)) {
        for (const DraftLine& line : part->lines) {
          const AmountKind kind = line.line.amount.kind;
          known = known && kind != AmountKind::volume && kind != AmountKind::units;
          if (kind != AmountKind::mass) continue;
          sum += middle(line.line.amount.value);
          any = true;
        }
      }
      // a recipe in shares or parts has no mass to scale: it is only told what it will weigh
      if (!known || (any && !(sum > 0))) {
        diagnostics_.add(messages::batch_to_scale, edit.place);
        return;
      }
      if (any) now = sum;
    }
    const double factor = now ? middle(edit.batch.value) / *now : 1.0;
    for (DraftPart& part : draft_) {
      if (part.kind == PartKind::premix) continue;
      for (DraftLine& line : part.lines) {
        Amount& amount = line.line.amount;
        const bool grows = amount.kind == AmountKind::mass || amount.kind == AmountKind::units ||
                           amount.kind == AmountKind::volume;
        if (grows)
          amount.value = tidy(Range{amount.value.low * factor, amount.value.high * factor});
      }
    }
    card_.statements.batch = edit.batch;
  }

  void change(const ScaleEdit& /*done*/) {}
  void change(const FillEdit& edit) { fill_ = &edit; }

  void change(const SetEdit& edit) {
    Stands stands = find(edit.name);
    if (stands.lines.empty()) return;
    if (stands.parts.size() > 1 && stands.parts.front()->kind != PartKind::phase) {
      diagnostics_.add(messages::set_in_several, edit.place,
                       {shown(edit.name.text), shown(stands.parts[0]->name.text),
                        shown(stands.parts[1]->name.text)});
      return;
    }
    std::vector<double> fractions{1.0};
    if (stands.lines.size() > 1) {
      fractions = phases_balance_->proportions(stands.lines);
      const bool divides =
          edit.amount.kind != AmountKind::dose && edit.amount.kind != AmountKind::fill;
      if (fractions.empty() || !divides) {
        diagnostics_.add(messages::set_of_unlike, edit.place, {shown(edit.name.text)});
        return;
      }
    }
    for (std::size_t at = 0; at < stands.lines.size(); ++at) {
      DraftLine& line = *stands.lines[at];
      line.line.amount = edit.amount;
      if (fractions[at] != 1.0) {
        line.line.amount.value = tidy(
            Range{edit.amount.value.low * fractions[at], edit.amount.value.high * fractions[at]});
      }
      line.line.place = edit.place;
      line.touched = true;
    }
    disturb(stands.parts, edit.place);
  }

  void change(const SwapEdit& edit) {
    for (DraftLine* line : find(edit.old_name).lines) {
      Amount& amount = line->line.amount;
      if (amount.kind == AmountKind::units) {
        if (const Premix* premix = premix_called(line->line.name.text)) {
          amount.kind = AmountKind::mass;
          amount.value = amount.value * premix->makes.value;
          amount.unit.clear();
          amount.unit_place = {};
        }
      }
      line->line.name = edit.new_name;
      line->line.dries_off.reset();  // that was said of what it was
      line->line.place = edit.place;
      line->touched = true;
    }
  }

  [[nodiscard]] const Premix* premix_called(const std::string& name) const {
    for (const Premix& premix : card_.premixes) {
      if (text::fold(premix.name.text) == text::fold(name)) return &premix;
    }
    return nullptr;
  }

  void change(const AddEdit& edit) {
    DraftPart* to = nullptr;
    for (DraftPart& part : draft_) {
      const bool wanted = edit.to ? text::fold(part.name.text) == text::fold(edit.to->text)
                                  : part.kind == PartKind::phase;
      if (wanted && (to == nullptr || !edit.to)) to = &part;  // the first so called, or the last
    }
    if (to == nullptr) {
      if (!edit.to) {
        diagnostics_.add(messages::no_phase, edit.place);
        return;
      }
      std::vector<std::string> known;
      for (const DraftPart& part : draft_) known.push_back(part.name.text);
      diagnostics_.add(messages::no_such_part, edit.to->place,
                       {shown(edit.to->text), nearest_hint(edit.to->text, known)});
      return;
    }
    to->lines.push_back({edit.line, true});
    disturb({to}, edit.place);
  }

  void change(const RemoveEdit& edit) {
    const Stands stands = find(edit.name);
    const std::string wanted = key(edit.name.text);
    for (DraftPart* part : stands.parts) {
      std::erase_if(part->lines,
                    [&](const DraftLine& line) { return key(line.line.name.text) == wanted; });
    }
    if (!stands.parts.empty()) disturb(stands.parts, edit.place);
  }

  void balance(const Balance& phases) {
    if (fill_ != nullptr) {
      Stands stands = find(fill_->name);
      if (stands.lines.empty()) return;
      if (stands.parts.front()->kind != PartKind::phase) {
        diagnostics_.add(messages::fill_not_in_phase, fill_->name.place, {shown(fill_->name.text)});
        return;
      }
      phases.fill(stands.lines, fill_->name, fill_->place, diagnostics_);
    } else if (phases_disturbed_) {
      phases.scale_rest(last_disturbance_, diagnostics_);
    }
  }

  const Tweak& tweak_;
  const SameName& same_name_;
  Card& card_;
  text::Diagnostics& diagnostics_;
  std::set<std::string> own_names_;
  Draft draft_;
  const Balance* phases_balance_ = nullptr;
  const FillEdit* fill_ = nullptr;
  std::set<const DraftPart*> disturbed_;
  bool phases_disturbed_ = false;
  Span last_disturbance_;
};

template <typename Value>
void replace(std::optional<Value>& base, const std::optional<Value>& with) {
  if (with) base = with;
}

template <typename Item, typename Name>
void replace_or_add(std::vector<Item>& items, const std::vector<Item>& with, const Name& name) {
  for (const Item& item : with) {
    std::erase_if(items, [&](const Item& old) {
      return text::fold(name(old).text) == text::fold(name(item).text);
    });
  }
  items.insert(items.end(), with.begin(), with.end());
}

void replace(std::vector<Keep>& base, const std::vector<Keep>& with) {
  replace_or_add(base, with, [](const Keep& keep) { return keep.name; });
}

void replace(std::vector<Allow>& base, const std::vector<Allow>& with) {
  replace_or_add(base, with, [](const Allow& allow) { return allow.rule; });
}

void replace_statements(Statements& base, const Statements& with) {
  each_field<Statements>([&](const auto& row) { replace(base.*(row.field), with.*(row.field)); });
}

}  // namespace

void apply(const Tweak& tweak, const SameName& same_name, Card& card,
           text::Diagnostics& diagnostics) {
  Tweaking(tweak, same_name, card, diagnostics).run();
  replace_statements(card.statements, tweak.statements);
  card.name = tweak.name;
  card.place = tweak.place;
  card.tweaked = true;
}

}  // namespace sudsmark::formula
