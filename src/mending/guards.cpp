#include "mending/guards.h"

#include <algorithm>
#include <initializer_list>
#include <string_view>

#include "catalogue/role.h"

namespace sudsmark::mending {
namespace {

using catalogue::Role;

bool has_any(const Dial& dial, std::initializer_list<Role> roles) {
  return std::any_of(roles.begin(), roles.end(), [&](Role role) { return has_role(dial, role); });
}

bool has_trait(const catalogue::ProductKind& kind, std::string_view trait) {
  return std::find(kind.traits.begin(), kind.traits.end(), trait) != kind.traits.end();
}

bool is_powder(const Dial& dial) {
  return dial.material != nullptr && (dial.material->form == catalogue::Form::fine_powder ||
                                      dial.material->form == catalogue::Form::granules);
}

/// Water of crystals is let go in warmth and wets what stands beside it.
bool holds_crystal_water(const Dial& dial) {
  const auto& contents = dial.material->contents;
  return std::any_of(contents.begin(), contents.end(), [](const catalogue::Content& content) {
    return content.water == catalogue::WaterClass::crystal;
  });
}

/// The roles that make a kind of product what it is.
std::vector<Role> making(const catalogue::ProductKind& kind) {
  std::vector<Role> out;
  const bool bath = has_trait(kind, "bath-diluted");
  const bool foams = has_trait(kind, "foaming");
  if (has_trait(kind, "effervescent")) out.insert(out.end(), {Role::acid, Role::bicarbonate});
  if (foams) out.push_back(Role::surfactant);
  if (foams && bath) out.push_back(Role::bicarbonate);
  if (has_trait(kind, "oily")) out.push_back(Role::oil);
  if (has_trait(kind, "loose")) out.push_back(Role::salt);
  if (has_trait(kind, "for-hair") && !foams) out.push_back(Role::conditioner);
  return out;
}

bool is_reserved(const Dial& dial) {
  return has_any(
      dial, {Role::scent, Role::preservative, Role::antioxidant, Role::colour, Role::surfactant});
}

/// Any small amount of these is as good as a larger one, only fainter.
bool fades(const Dial& dial) {
  return has_any(dial, {Role::scent, Role::colour, Role::botanical});
}

double greatest_with(const Dials& dials, Role role) {
  double most = 0;
  for (const Dial& dial : dials.all()) {
    if (has_role(dial, role)) most = std::max(most, dial.share);
  }
  return most;
}

bool is_essential(const Dial& dial, const Dials& dials, const catalogue::ProductKind& kind) {
  constexpr double a_third = 1.0 / 3;  // of the greatest of its kind: less is an addition to it
  for (const Role role : making(kind)) {
    if (has_role(dial, role) && dial.share >= a_third * greatest_with(dials, role)) return true;
  }
  return false;
}

bool alone(const Dials& dials, const Dial& dial, Role role) {
  if (!has_role(dial, role)) return false;
  return std::none_of(dials.all().begin(), dials.all().end(), [&](const Dial& other) {
    return &other != &dial && other.key != dial.key && has_role(other, role);
  });
}

}  // namespace

bool has_role(const Dial& dial, Role role) {
  return dial.material != nullptr && (dial.material->roles & catalogue::bit(role)) != 0;
}

Fill fill_of(const Dial& dial, const catalogue::ProductKind& kind) {
  if (dial.material == nullptr) return Fill::last;
  const bool washes = has_role(dial, Role::surfactant) && is_powder(dial);
  if (washes && has_trait(kind, "for-hair")) return Fill::last;
  if (is_reserved(dial)) return Fill::never;
  const bool bath = has_trait(kind, "bath-diluted");
  const bool fizzes = has_trait(kind, "effervescent");
  const bool foams = has_trait(kind, "foaming");
  if (has_role(dial, Role::bicarbonate) && (fizzes || (foams && bath))) return Fill::body;
  if (has_role(dial, Role::salt) && has_trait(kind, "loose") && !holds_crystal_water(dial)) {
    return Fill::body;
  }
  if (has_role(dial, Role::oil) && has_trait(kind, "oily")) return Fill::body;
  if (has_role(dial, Role::fatty_alcohol) && has_trait(kind, "for-hair") && !foams) {
    return Fill::body;
  }
  // a scrub bar is of salt or sugar, and no bath dissolves it
  const bool scrubs = !bath && !foams && !fizzes && !has_trait(kind, "for-hair");
  const bool scours = has_any(dial, {Role::salt, Role::sugar});
  if (scours && scrubs && is_powder(dial) && !holds_crystal_water(dial)) return Fill::body;
  const bool inert = has_any(dial, {Role::filler, Role::starch, Role::clay});
  return inert && is_powder(dial) ? Fill::powder : Fill::never;
}

std::vector<Guard> guards_of(const Dials& dials, const blend::Blend& blend) {
  constexpr double a_third = 1.0 / 3;
  constexpr double slack = 1e-9;
  std::vector<Guard> out;
  const auto& fillers = dials.fillers();
  for (std::size_t at = 0; at < dials.all().size(); ++at) {
    const Dial& dial = dials.all()[at];
    Guard& guard = out.emplace_back();
    guard.reserved = is_reserved(dial);
    guard.makes_room = fill_of(dial, *blend.product) >= Fill::powder;
    guard.gives_way = dial.material != nullptr && fill_of(dial, *blend.product) == Fill::last;
    guard.essential = is_essential(dial, dials, *blend.product);
    guard.sole_keeper =
        alone(dials, dial, Role::preservative) || alone(dials, dial, Role::emulsifier);
    const bool usual = dial.material != nullptr && dial.material->usual.has_value();
    const double low = usual ? dial.material->usual->value.low : 0;
    const double high = usual ? dial.material->usual->value.high : 1;
    if (usual) {
      guard.most = std::max(dial.share, high);
    } else if (guard.reserved) {
      guard.most = 2 * dial.share;
    }
    // who writes q.s., or takes more of the fill than is usual, leaves open how much it is
    const double more_of_it = fill_of(dial, *blend.product) == Fill::body ? 0.25 : 0.1;
    const bool fills = std::find(fillers.begin(), fillers.end(), at) != fillers.end();
    const bool much = fills && guard.makes_room && usual && dial.share > high;
    if (dial.fills || much) guard.most = std::max(guard.most, dial.share + more_of_it);
    if (!fades(dial)) guard.least = std::min(dial.share, low);
    if (guard.essential && guard.least == 0) guard.least = dial.share * a_third;
    const bool poor = dial.material != nullptr && fill_of(dial, *blend.product) <= Fill::last;
    if (fills && !dial.fills && poor) {
      // there is nothing better: it makes up for what goes, by no more than a tenth of itself
      guard.most = dial.share * (1 + gives_most) + slack;
      guard.least = dial.share * (1 - gives_most) - slack;
    }
  }
  return out;
}

}  // namespace sudsmark::mending
