#include "borders/lines.h"

namespace sudsmark::borders {

using formula::AmountKind;

formula::SetEdit set_to(const formula::Card& card, const mending::Dial& line, double share) {
  formula::SetEdit edit;
  edit.name = line.name;
  edit.amount.kind = line.amount.kind;
  edit.amount.value = share * line.worth;
  const bool of_batch =
      line.amount.kind == AmountKind::mass || line.amount.kind == AmountKind::units;
  if (line.where != formula::PartKind::phase || !of_batch) return edit;
  if (card.statements.batch) {
    edit.amount.kind = AmountKind::share;
    edit.amount.value = share;
  } else if (line.amount.kind == AmountKind::units && line.grams) {
    // bags are counted whole
    edit.amount.kind = AmountKind::mass;
    edit.amount.value = share * *line.grams;
  }
  return edit;
}

}  // namespace sudsmark::borders
