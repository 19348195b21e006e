// Fragrances and materials: what suppliers declare.
#include "formula/codes.h"
#include "formula/grammar.h"
#include "formula/terms.h"

namespace sudsmark::formula {
namespace {

constexpr auto share = figure(measure::share);

constexpr auto hazard =
    term<Word>("a hazard code, such as H318 or EUH066",
               [](Iterator& first, Iterator last, Reading& reading, Word& code) {
                 return scan_hazard(first, last, reading, code);
               });

constexpr auto cas_number =
    term<Word>("a CAS number, such as 61789-40-0",
               [](Iterator& first, Iterator last, Reading& reading, Word& cas) {
                 return scan_cas(first, last, reading, cas);
               });

}  // namespace

bool read_constituent(Rest rest, Reading& reading, Fragrance& fragrance) {
  Figure value;
  Word word;
  const bool read =
      run(reading, rest,
          need(share)[into(value)] >> need(name("the name of a constituent"))[into(word)]);
  if (read) fragrance.constituents.push_back({std::move(word), value.value, value.place});
  return read;
}

bool read_material(Rest rest, Reading& reading, UserMaterial& material) {
  return run(reading, rest,
             need(name("the name of the material", {.keyword = "like"}))[into(material.name)] >>
                 -(keyword("like", "'like'") >>
                   need(name("the name of a known material"))[into(material.like)]));
}

/// `below` and `above`: one share, and the range that it leaves open.
bool read_value(const HalfOpenForm& form, StatementLine line, Reading& reading,
                std::vector<Constituent>& constituents) {
  Figure bound;
  Word word;
  const bool read =
      run(reading, line.rest,
          need(share)[into(bound)] >> need(name("the name of a constituent"))[into(word)]);
  if (!read) return false;
  if (!bound.value.exact()) {
    return reading.refuse(messages::one_bound, bound.place,
                          {std::string(form.below ? "below" : "above")});
  }
  const Range value = form.below ? Range(0.0, bound.value.high) : Range(bound.value.low, 1.0);
  constituents.push_back({std::move(word), value, bound.place});
  return true;
}

bool read_value(const UndeclaredForm& /*form*/, StatementLine line, Reading& reading,
                bool& undeclared_none) {
  const auto none = [&](const auto&) { undeclared_none = true; };
  const auto anything = keyword("may", "") >> keyword("contain", "") >> keyword("anything", "");
  return run(reading, line.rest,
             need("'none' or 'may contain anything'", keyword("none", "")[none] | anything));
}

bool read_value(const CasForm& /*form*/, StatementLine line, Reading& reading,
                std::optional<Word>& cas) {
  return run_into(cas, reading, line.rest, need(cas_number)[into(cas)]);
}

bool read_value(const HazardsForm& /*form*/, StatementLine line, Reading& reading,
                std::optional<std::vector<Word>>& hazards) {
  std::vector<Word>& list = hazards.emplace();
  const auto separator = term<x3::unused_type>(
      "a comma", [](Iterator& first, Iterator last, Reading&, x3::unused_type&) {
        if (first == last || (*first != ',' && *first != '+')) return false;
        ++first;
        return true;
      });
  const auto codes = hazard[onto(list)] >> *(separator >> need(hazard)[onto(list)]);
  return run_into(
      hazards, reading, line.rest,
      need("a hazard code, such as H318 or EUH066, or 'none'", keyword("none", "") | codes));
}

bool read_value(const OwnForm& /*form*/, StatementLine line, Reading& reading,
                std::vector<Trace>& traces) {
  // the name comes first here, as on a certificate
  const auto item = [&](Trace& trace) {
    return need(name("the name of what was found",
                     {.keyword = {}, .comma = true, .bounds = true}))[into(trace.name)] >>
           need(share)[([&trace](const auto& context) {
             trace.share = x3::_attr(context).value;
             trace.place = x3::_attr(context).place;
           })];
  };
  Trace trace;
  if (!run(reading, line.rest, item(trace))) return false;
  traces.push_back(std::move(trace));
  return true;
}

}  // namespace sudsmark::formula
