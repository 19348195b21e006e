// Fragrances and materials: what suppliers declare.
#include <array>
#include <limits>

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

/// `below` and `above`: one share, and the range that it leaves open.
bool read_half_open(bool below, Rest rest, Reading& reading, Fragrance& fragrance) {
  Figure bound;
  Word word;
  const bool read =
      run(reading, rest,
          need(share)[into(bound)] >> need(name("the name of a constituent"))[into(word)]);
  if (!read) return false;
  if (!bound.value.exact()) {
    return reading.refuse(messages::one_bound, bound.place,
                          {std::string(below ? "below" : "above")});
  }
  const Range value = below ? Range(0.0, bound.value.high) : Range(bound.value.low, 1.0);
  fragrance.constituents.push_back({std::move(word), value, bound.place});
  return true;
}

bool read_undeclared(Rest rest, Reading& reading, Fragrance& fragrance) {
  const auto none = [&](const auto&) { fragrance.undeclared_none = true; };
  const auto anything = keyword("may", "") >> keyword("contain", "") >> keyword("anything", "");
  return run(reading, rest,
             need("'none' or 'may contain anything'", keyword("none", "")[none] | anything));
}

bool read_hazards(Rest rest, Reading& reading, UserMaterial& material) {
  const auto separator = term<x3::unused_type>(
      "a comma", [](Iterator& first, Iterator last, Reading&, x3::unused_type&) {
        if (first == last || (*first != ',' && *first != '+')) return false;
        ++first;
        return true;
      });
  const auto codes =
      hazard[onto(material.hazards)] >> *(separator >> need(hazard)[onto(material.hazards)]);
  material.states_hazards =
      run(reading, rest,
          need("a hazard code, such as H318 or EUH066, or 'none'", keyword("none", "") | codes));
  if (!material.states_hazards) material.hazards.clear();
  return material.states_hazards;
}

}  // namespace

bool read_statement(Statement statement, Rest rest, Reading& reading, Fragrance& to) {
  switch (statement) {
    case Statement::limit:
      return run_into(to.limit, reading, rest, need(share)[into(to.limit)]);
    case Statement::category:
      return run_into(to.category, reading, rest, need(name("a category"))[into(to.category)]);
    case Statement::below:
      return read_half_open(true, rest, reading, to);
    case Statement::above:
      return read_half_open(false, rest, reading, to);
    case Statement::undeclared:
      return read_undeclared(rest, reading, to);
    case Statement::flash_point:
      return run_into(to.flash_point, reading, rest,
                      need(keyword("point", "'point'")) >>
                          need(figure(measure::temperature))[into(to.flash_point)]);
    default:
      return reading.expected("a statement of a fragrance", rest.first, rest.last);
  }
}

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

bool read_statement(Statement statement, Rest rest, Reading& reading, UserMaterial& to) {
  switch (statement) {
    case Statement::active:
      return run_into(to.active, reading, rest, need(share)[into(to.active)]);
    case Statement::water_content:
      return run_into(to.water, reading, rest, need(share)[into(to.water)]);
    case Statement::density:
      return run_into(to.density, reading, rest, need(figure(measure::density))[into(to.density)]);
    case Statement::inci:
      return run_into(to.inci, reading, rest, need(name("an INCI name"))[into(to.inci)]);
    case Statement::cas:
      return run_into(to.cas, reading, rest, need(cas_number)[into(to.cas)]);
    case Statement::supplier_limit:
      return run_into(to.supplier_limit, reading, rest,
                      need(keyword("limit", "'limit'")) >> need(share)[into(to.supplier_limit)]);
    case Statement::role: {
      constexpr auto role = name("a role", {.keyword = {}, .comma = true});
      if (run(reading, rest,
              need(role)[onto(to.roles)] >> *(comma >> need(role)[onto(to.roles)]))) {
        return true;
      }
      to.roles.clear();
      return false;
    }
    case Statement::form:
      return run_into(to.form, reading, rest, need(name("a form"))[into(to.form)]);
    case Statement::hazards:
      return read_hazards(rest, reading, to);
    default:
      return reading.expected("a statement of a material", rest.first, rest.last);
  }
}

}  // namespace sudsmark::formula
