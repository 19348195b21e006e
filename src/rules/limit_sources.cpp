#include "rules/limit_sources.h"

namespace sudsmark::rules {

const catalogue::Citations* sources_of_field(Field field, const catalogue::Material& material) {
  const auto of = [](const auto& figure) -> const catalogue::Citations* {
    return figure && !figure->sources.empty() ? &figure->sources : nullptr;
  };
  switch (field) {
    case Field::material_melting:
      return of(material.melting);
    case Field::material_hlb:
      return of(material.hlb);
    case Field::material_required_hlb:
      return of(material.required_hlb);
    case Field::material_density:
      return of(material.density);
    case Field::material_deliquescence:
      return of(material.deliquescence);
    case Field::material_usual_least:
    case Field::material_usual_most:
      return of(material.usual);
    case Field::material_supplier_limit:
      return of(material.supplier_limit);
    case Field::material_pure_colour:
      return of(material.pure_colour);
    case Field::material_stable_ph_least:
    case Field::material_stable_ph_most:
      return of(material.stable_ph);
    case Field::material_lowest_explosible:
      return of(material.dust);
    default:
      return nullptr;
  }
}

}  // namespace sudsmark::rules
