// Selectors for roles, as the built-in measures use them.
#pragma once

#include "measures/selection.h"

namespace sudsmark::measures {

/// A selector of all that has any of some roles: contents by their own roles, materials by theirs.
class RoleSelector {
 public:
  constexpr explicit RoleSelector(catalogue::Roles any) : any_(any) {}
  // the selector points at this object, which must outlive it
  [[nodiscard]] Selector selector() const { return {&test, this, false}; }

 private:
  static bool test(const void* self, const Candidate& candidate) {
    const catalogue::Roles roles =
        candidate.content != nullptr ? candidate.content->roles : candidate.material->roles;
    return (roles & static_cast<const RoleSelector*>(self)->any_) != 0;
  }
  catalogue::Roles any_;
};

}  // namespace sudsmark::measures
