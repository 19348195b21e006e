#include "front/curves.h"

#include <utility>

#include "measures/bath_pictures.h"
#include "measures/dust_pictures.h"
#include "wording/figures.h"

namespace sudsmark::front {
using namespace wording;

namespace {

CurvePoint point(double x, const quantity::Range& y, std::string_view unit) {
  const Figure shown = figure(y, unit);
  return {x, shown.low, shown.high};
}

Curve ph_curve(std::string_view name, std::string_view measure,
               const std::vector<measures::PhPoint>& points, double neutral) {
  Curve out;
  out.name = name;
  out.measure = measure;
  out.unit = "pH";
  out.neutral = neutral;
  for (const measures::PhPoint& at : points) out.points.push_back(point(at.x, at.ph, "pH"));
  return out;
}

}  // namespace

void add_curves(const blend::Blend& blend, std::vector<Curve>& out) {
  blend::MissingTable missing;
  const measures::View view{&blend, &blend.whole, nullptr, &missing, nullptr};
  const measures::BathPictures bath = measures::bath_pictures(view);
  const auto by_dose = [&](std::string_view name, std::string_view measure,
                           const std::vector<measures::PhPoint>& points) {
    Curve curve = ph_curve(name, measure, points, bath.neutral);
    curve.against = "product in one bath";
    curve.against_unit = "g";
    curve.today = figure(bath.dose, "g");
    out.push_back(std::move(curve));
  };
  if (!bath.by_gas_left.empty()) {
    Curve curve = ph_curve("bath.ph by gas left", "bath.ph", bath.by_gas_left, bath.neutral);
    for (CurvePoint& at : curve.points) at.x *= 100;
    curve.against = "carbon dioxide still in the water, of what can leave it";
    curve.against_unit = "%";
    out.push_back(std::move(curve));
    by_dose("bath.ph by dose", "bath.ph", bath.held_by_dose);
    by_dose("bath.ph_aired by dose", "bath.ph_aired", bath.aired_by_dose);
  }
  for (const measures::DustPicture& dust : measures::dust_pictures(view)) {
    Curve curve;
    curve.name = "dust bound by time";
    curve.measure = "upper bound of dust in the room's air";
    curve.unit = "mg/m3";
    curve.against = "time";
    curve.against_unit = "min";
    curve.subject = dust.task;
    constexpr double minutes = 60;
    for (const measures::DustPoint& at : dust.points) {
      curve.points.push_back(point(at.hours * minutes, at.bound, "mg/m3"));
    }
    out.push_back(std::move(curve));
  }
}

}  // namespace sudsmark::front
