#include "rules/picking.h"

#include <algorithm>

namespace sudsmark::rules {
namespace {

using catalogue::Material;
using measures::Candidate;

template <typename List, typename Item>
bool in(const List& list, const Item& item) {
  return std::find(list.begin(), list.end(), item) != list.end();
}

/// A material of the catalogue, or one of the formula's own that is made like it: a certificate for
/// bergamot oil leaves it bergamot oil.
bool is_of(const std::vector<catalogue::MaterialIndex>& materials, const Candidate& candidate,
           const catalogue::Catalogue& catalogue) {
  if (in(materials, candidate.material_id)) return true;
  const bool own = candidate.material_id >= catalogue.materials.size();
  if (!own || candidate.material->id.empty()) return false;
  return std::any_of(materials.begin(), materials.end(), [&](catalogue::MaterialIndex at) {
    return catalogue.materials[at].id == candidate.material->id;
  });
}

bool is_named(const Named& named, const Candidate& candidate,
              const catalogue::Catalogue& catalogue) {
  const Material& material = *candidate.material;
  if (candidate.content == nullptr) {
    // as supplied: the material of that name, or one that is bought for the substance
    return is_of(named.materials, candidate, catalogue) ||
           (!named.substances.empty() &&
            std::any_of(material.contents.begin(), material.contents.end(),
                        [&](const catalogue::Content& content) {
                          return content.active && in(named.substances, content.substance);
                        }));
  }
  if (!named.substances.empty()) return in(named.substances, candidate.content->substance_id);
  // a name that is no substance of its own: what the material is bought for, or all of it
  if (!is_of(named.materials, candidate, catalogue)) return false;
  return candidate.content->active ||
         std::none_of(material.contents.begin(), material.contents.end(),
                      [](const catalogue::Content& content) { return content.active; });
}

bool is_subject(const Subject& subject, const Candidate& candidate) {
  if (subject.ingredient != nullptr) return candidate.material_id == subject.ingredient->material;
  if (subject.row == nullptr) return false;
  // an extract counts as a whole, whatever it is made of
  if (!candidate.material->id.empty() && in(subject.row->materials, candidate.material->id)) {
    return true;
  }
  if (candidate.content != nullptr) {
    return in(subject.row->substances, candidate.content->substance_id);
  }
  const std::vector<catalogue::Content>& contents = candidate.material->contents;
  return std::any_of(contents.begin(), contents.end(), [&](const catalogue::Content& content) {
    return content.active && in(subject.row->substances, content.substance);
  });
}

}  // namespace

Picking::Picking(const Pool& pool, const catalogue::Catalogue& catalogue,
                 const Selection& selection, const Subject& subject)
    : pool_(pool),
      catalogue_(catalogue),
      begin_(pool.picks.data() + selection.begin),
      end_(pool.picks.data() + selection.end),
      subject_(subject) {}

bool Picking::picked(const Pick& pick, const Candidate& candidate) const {
  switch (pick.code) {
    case PickCode::role: {
      const catalogue::Roles roles =
          candidate.content != nullptr ? candidate.content->roles : candidate.material->roles;
      return (roles & pick.bits) != 0;
    }
    case PickCode::form:
      return ((pick.bits >> static_cast<unsigned>(candidate.material->form)) & 1U) != 0;
    case PickCode::named:
      return is_named(pool_.named[pick.bits], candidate, catalogue_);
    case PickCode::subject:
      return is_subject(subject_, candidate);
    case PickCode::beside:
      return candidate.content != nullptr && subject_.row != nullptr &&
             in(subject_.row->beside, candidate.content->substance_id);
    case PickCode::deny:
    case PickCode::both:
    case PickCode::either:
      break;
  }
  return false;
}

bool Picking::operator()(const Candidate& candidate) const {
  // truths of a postfix program, the last one in the lowest bit
  std::uint64_t truths = 0;
  for (const Pick* pick = begin_; pick != end_; ++pick) {
    switch (pick->code) {
      case PickCode::deny:
        truths ^= 1U;
        break;
      case PickCode::both:
        truths = (truths >> 1U) & (truths | ~std::uint64_t{1});
        break;
      case PickCode::either:
        truths = (truths >> 1U) | (truths & 1U);
        break;
      default:
        truths = (truths << 1U) | (picked(*pick, candidate) ? 1U : 0U);
    }
  }
  return (truths & 1U) != 0;
}

}  // namespace sudsmark::rules
