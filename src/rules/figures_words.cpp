// Words of a formula and of the subject: what is stated, and texts that messages print.
#include <algorithm>
#include <bit>
#include <variant>

#include "formula/vocabulary.h"
#include "rules/bringers.h"
#include "rules/figures.h"
#include "rules/words.h"
#include "text/name.h"

namespace sudsmark::rules {

void Figures::read_words(const std::vector<std::string>& markets) {
  const auto take = [this](StatedWords which, std::string_view word, Span place) {
    Words& words = words_[static_cast<std::size_t>(which)];
    words.stated = true;
    if (!words.place.somewhere()) words.place = place;
    const auto at = find_word(info(which), word);
    if (!at) return;
    words.bits |= 1U << *at;
    std::string& text = said_[static_cast<std::size_t>(which)];
    if (!text.empty()) text += " and ";
    text += info(which).known[*at];
    if (which == StatedWords::market) sold_.push_back(info(which).known[*at]);
  };
  const blend::Blend& said = blend_;
  if (said.forming) take(StatedWords::forming, said.forming->text, said.forming->place);
  for (const blend::StatedWord& users : said.users) {
    take(StatedWords::users, users.text, users.place);
  }
  for (const blend::StatedWord& claim : said.claims) {
    take(StatedWords::claims, claim.text, claim.place);
  }
  for (const blend::StatedWord& market : said.markets) {
    if (markets.empty()) take(StatedWords::market, market.text, market.place);
  }
  for (const std::string& market : markets) {
    take(StatedWords::market, market,
         said.markets.empty() ? said.place : said.markets.front().place);
  }
  if (said.water) {
    std::string_view named = said.water->named;
    if (named.empty()) named = "figures";
    take(StatedWords::bath_water, named, said.water->place);
  }
  for (const StatedInfo& row : stated_words()) {
    if (row.workshop.empty()) continue;
    const blend::StatedWord* word = said.workshop ? said.workshop->choice(row.workshop) : nullptr;
    if (word != nullptr) {
      take(row.id, word->text, word->place);
    } else if (!row.unsaid.empty()) {
      take(row.id, row.unsaid, said.place);
    }
  }
}

Words Figures::words(StatedWords which, const Subject& subject) const {
  if (which != StatedWords::dustiness) return words_[static_cast<std::size_t>(which)];
  Words words;
  const std::optional<catalogue::Dust>& dust = material(subject).dust;
  words.stated = dust && dust->dustiness != catalogue::Dustiness::unknown;
  if (words.stated) words.bits = 1U << (static_cast<unsigned>(dust->dustiness) - 1U);
  words.place = subject.place;
  return words;
}

std::optional<bool> Figures::says(StatedWords which, std::uint32_t bits,
                                  const Subject& subject) const {
  const Words said = words(which, subject);
  // who says only that skin is sensitive has not said how old it is
  constexpr std::uint32_t ages = (1U << formula::vocabulary::ages) - 1;
  const bool age_open =
      which == StatedWords::users && (bits & ages) != 0 && (said.bits & (ages | bits)) == 0;
  if (which != StatedWords::claims && (!said.stated || age_open)) return std::nullopt;
  return (said.bits & bits) != 0;
}

Value Figures::is_word(StatedWords which, std::uint32_t bits, const Subject& subject) {
  if (const auto said = says(which, bits, subject)) return truth(*said);
  return truth(Certainty::depends, info(which).each == Each::material
                                       ? lacks_of(info(which).missing, subject)
                                       : lacks(info(which).missing, blend_.place));
}

Certainty Figures::sold_in(const std::vector<std::string>& markets, MissingSet& missing) {
  if (markets.empty()) return Certainty::yes;
  const Words& said = words_[static_cast<std::size_t>(StatedWords::market)];
  const StatedInfo& market = info(StatedWords::market);
  if (!said.stated) {
    missing |= lacks(market.missing, blend_.place);
    return Certainty::depends;
  }
  const bool sold = std::any_of(sold_.begin(), sold_.end(), [&](std::string_view one) {
    return std::find(markets.begin(), markets.end(), one) != markets.end();
  });
  return sold ? Certainty::yes : Certainty::no;
}

Value Figures::stated_text(StatedWords which, const Subject& subject) {
  const StatedInfo& words_of = info(which);
  const std::uint32_t bits = words(which, subject).bits;
  if (bits != 0) {
    const bool of_formula = words_of.each == Each::product;
    return text_value(of_formula
                          ? std::string_view(said_[static_cast<std::size_t>(which)])
                          : words_of.known[static_cast<std::size_t>(std::countr_zero(bits))]);
  }
  Value value;
  value.known = false;
  value.missing = words_of.each == Each::product ? lacks(words_of.missing, blend_.place)
                                                 : lacks_of(words_of.missing, subject);
  return value;
}

Value Figures::subject_text(SubjectText which, std::uint32_t column, const Subject& subject) {
  const auto said = [&](std::string_view text, std::string_view missing) {
    if (!text.empty()) return text_value(text);
    Value value;
    value.known = false;
    if (!missing.empty()) value.missing = lacks(missing, blend_.place);
    return value;
  };
  const catalogue::ProductKind& product = *blend_.product;
  switch (which) {
    case SubjectText::name:
      return said(subject.name, {});
    case SubjectText::product:
      return said(product.name, {});
    case SubjectText::fragrance_category:
      return said(product.fragrance_category, "the fragrance category of this kind of product");
    case SubjectText::neighbour_category:
      return said(product.neighbour_category, "a neighbouring fragrance category");
    case SubjectText::certificate_category: {
      const blend::Scent* scent = blend_.scent(subject.ingredient->material);
      if (scent != nullptr && scent->categories.size() > 1) {
        sentences_.push_back(text::series(scent->categories, "and"));
        Value several = text_value(sentences_.back());
        several.several = true;
        return several;
      }
      if (scent != nullptr && !scent->categories.empty()) {
        return text_value(scent->categories.front());
      }
      Value value;
      value.known = false;
      value.missing = lacks_of("the category that the certificate names", subject);
      return value;
    }
    case SubjectText::brought_by:
      sentences_.push_back(rules::brought_by(view(subject), subject));
      return said(sentences_.back(), {});
    case SubjectText::unnamed:
      sentences_.push_back(blend_.undeclared_words(subject.ingredient->material));
      return said(sentences_.back(), {});
    case SubjectText::cell:
      break;
  }
  const std::string* word = std::get_if<std::string>(&subject.row->cells[column]);
  if (word != nullptr) return said(*word, {});
  Value value;
  value.known = false;
  value.missing = lacks_cell(column, subject);
  return value;
}

}  // namespace sudsmark::rules
