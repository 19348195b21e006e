#include "measures/dust_limits.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "measures/air_units.h"
#include "measures/dust_bounds.h"
#include "measures/handled_powder.h"
#include "science/time_weighted.h"

namespace sudsmark::measures {
namespace {

using science::DustFraction;

constexpr double mg_per_g = 1000;

/// Dust of one substance that all tasks of a shift give off, at both ends of what is stated [mg].
struct Released {
  SubstanceLimits limits;
  Range inhalable = 0.0;  ///< by the class of its material
  Range respirable = 0.0;
  Range of_whole = 0.0;  ///< of a dust whose kind nobody knows: by composition, to all of it
};

/// Share of a material that is the dust of one of its substances: its moisture goes with what the
/// material is bought for, since that is how the dust of a starch is weighed.
Range dust_share(const std::vector<blend::ContentView>& contents,
                 const blend::ContentView& content) {
  Range share = content.share;
  if (!content.active) return share;
  for (const blend::ContentView& other : contents) {
    if (other.water == catalogue::WaterClass::bound) share += other.share;
  }
  return quantity::clamp(share, 0.0, 1.0);
}

/// Mass of a substance in what a task handles [g].
struct Part {
  std::uint32_t substance = 0;
  Range mass;
  const catalogue::Material* material = nullptr;
};

class Gathering {
 public:
  explicit Gathering(const View& view) : view_(view) {}

  void add(const blend::Task& task) {
    if (const MissingSet missing = missing_amount(view_, task); !missing.empty()) {
      missing_ |= missing;
      whole_ = false;
      return;
    }
    if (!task.times) {
      missing_ |= view_.missing->add("how often task '" + task.handled.name + "' is done (`times`)",
                                     task.place);
      whole_ = false;
      return;
    }
    const Range times = *task.times;
    const std::vector<HandledPowder> powders = powders_of(view_, task);
    std::vector<Part> parts;
    for (const HandledPowder& powder : powders) add_parts(powder, parts);
    if (task.raises) {
      add_as_one(*task.raises * powder_mass(powders) * times, powder_mass(powders), times, parts);
      return;
    }
    for (const Part& part : parts) {
      const Range kilograms = part.mass * times / kilogram;
      Released& released = released_[part.substance];
      released.inhalable += dust(part, kilograms, DustFraction::inhalable, task);
      released.respirable += dust(part, kilograms, DustFraction::respirable, task);
    }
  }

  [[nodiscard]] OfLimits over(const RoomEnds& room) const {
    OfLimits out;
    out.missing = missing_;
    out.without_limit = without_limit_;
    // the bound goes with the mass that is released
    const double least = science::mean_bound_any_pattern(room.airy, 1.0, science::shift_hours);
    const double most = science::mean_bound_any_pattern(room.close, 1.0, science::shift_hours);
    const auto bound = [&](const Range& milligrams) {
      return Range(milligrams.low * least * mg_per_m3, std::isfinite(milligrams.high)
                                                           ? milligrams.high * most * mg_per_m3
                                                           : Range::unknown().high);
    };
    Range sum = 0.0;
    for (const auto& [substance, released] : released_) {
      const Range whole = released.of_whole;
      out.substances.push_back(worse(released.limits, bound(released.inhalable + whole),
                                     bound(released.respirable + Range(0.0, whole.high))));
      sum.low += out.substances.back().of_limit.low;
      // the dust of unknown kind is counted once, for all substances together
      sum.high += worse(released.limits, bound(released.inhalable), bound(released.respirable))
                      .of_limit.high;
    }
    if (out.substances.empty()) return out;
    sum.high += strictest_ * most;
    out.sum = whole_ ? sum : Range::at_least(sum.low);
    return out;
  }

 private:
  void add_parts(const HandledPowder& powder, std::vector<Part>& parts) {
    const auto& contents = view_.blend->contents(powder.id);
    for (const blend::ContentView& content : contents) {
      if (content.water != catalogue::WaterClass::none || !(content.share.high > 0)) continue;
      const bool water = (content.roles & bit(catalogue::Role::water)) != 0;
      if (water || content.substance == nullptr) continue;
      const Range mass = powder.mass * dust_share(contents, content);
      const auto known = released_.find(content.substance_id);
      if (known == released_.end()) {
        SubstanceLimits limits = workplace_limits(*view_.blend, content.substance_id);
        if (!limits.any()) {
          const std::string& name = content.substance->name;
          if (std::find(without_limit_.begin(), without_limit_.end(), name) ==
              without_limit_.end()) {
            without_limit_.push_back(name);
          }
          continue;
        }
        limits.name = content.substance->name;
        released_[content.substance_id].limits = std::move(limits);
      }
      parts.push_back({content.substance_id, mass, powder.material});
    }
  }

  Range dust(const Part& part, const Range& kilograms, DustFraction fraction,
             const blend::Task& task) {
    const Range raised = dustiness_of(*part.material, fraction);
    if (!raised.known()) {
      missing_ |= view_.missing->add("how dusty the powders of task '" + task.handled.name +
                                         "' are (`raises`): the dustiest class has no upper end",
                                     task.place);
    }
    return {kilograms.low * raised.low,
            std::isfinite(raised.high) ? kilograms.high * raised.high : Range::unknown().high};
  }

  /// A stated dustiness of the whole: by composition at the least; at the most the strictest
  /// substances first, each as far as there is any of it.
  void add_as_one(const Range& grams, const Range& mass, const Range& times,
                  const std::vector<Part>& parts) {
    for (const Part& part : parts) {
      Released& released = released_[part.substance];
      const double share = mass.high > 0 ? part.mass.low / mass.high : 0.0;
      const double least = grams.low * share;
      const double all = std::min(grams.high, part.mass.high * times.high);
      released.of_whole += Range(least, std::max(least, all)) * mg_per_g;
    }
    std::vector<std::pair<double, double>> strictest;  // limit [g/l], g of the day
    for (const Part& part : parts) {
      const SubstanceLimits& limits = released_.at(part.substance).limits;
      const double inhalable = limits.inhalable ? limits.inhalable->value : HUGE_VAL;
      const double respirable = limits.respirable ? limits.respirable->value : HUGE_VAL;
      strictest.emplace_back(std::min(inhalable, respirable), part.mass.high * times.high);
    }
    std::sort(strictest.begin(), strictest.end());
    double left = grams.high;
    for (const auto& [limit, most] : strictest) {
      const double taken = std::min(left, most);
      strictest_ += taken * mg_per_g / (limit / mg_per_m3);
      left -= taken;
    }
  }

  static OfLimit worse(const SubstanceLimits& limits, const Range& inhalable,
                       const Range& respirable) {
    std::optional<OfLimit> out;
    const auto consider = [&](const std::optional<AirLimit>& limit, const Range& bound, bool fine) {
      if (!limit) return;
      OfLimit one{limits.name, bound, *limit, fine, bound / limit->value};
      const bool more =
          !out || one.of_limit.high > out->of_limit.high ||
          (one.of_limit.high == out->of_limit.high && one.of_limit.low > out->of_limit.low);
      if (out) one.of_limit = quantity::max(one.of_limit, out->of_limit);
      if (more) {
        out = std::move(one);
      } else {
        out->of_limit = one.of_limit;
      }
    };
    consider(limits.inhalable, inhalable, false);
    consider(limits.respirable, respirable, true);
    return *out;
  }

  const View& view_;
  std::map<std::uint32_t, Released> released_;
  std::vector<std::string> without_limit_;
  /// Dust whose kind nobody knows over the strictest limits that it can have [mg over mg/m3].
  double strictest_ = 0.0;
  bool whole_ = true;  ///< every task is counted
  MissingSet missing_;
};

}  // namespace

OfLimits of_limits(const View& view) {
  OfLimits out;
  out.missing = missing_task(view);
  if (!out.missing.empty()) return out;
  const StatedRoom room = stated_room(view);
  Gathering gathering(view);
  each_task(view, [&](const blend::Task& task) { gathering.add(task); });
  if (!room.ends) {
    out.missing = room.missing;
    return out;
  }
  out = gathering.over(*room.ends);
  if (out.substances.empty()) {
    out.missing |= view.missing->add("a workplace limit of any of the powders", view.blend->place);
  }
  return out;
}

}  // namespace sudsmark::measures
