// One spelling for all names of one material, as tweaks find their lines by it.
#pragma once

#include "catalogue/catalogue.h"
#include "formula/assemble.h"
#include "text/name.h"

namespace sudsmark::blend {

/// The catalogue must outlive the answer.
[[nodiscard]] inline formula::SameName same_name(const catalogue::Catalogue& catalogue) {
  return [&catalogue](std::string_view name) {
    const catalogue::Meaning& meaning = catalogue.find_material(name);
    return meaning.one() ? text::fold(catalogue.materials[meaning.materials.front()].name)
                         : text::fold(name);
  };
}

}  // namespace sudsmark::blend
