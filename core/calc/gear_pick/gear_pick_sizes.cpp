#include "calc/gear_pick/gear_pick_sizes.hpp"

#include <fmt/format.h>

#include <cmath>
#include <numbers>
#include <utility>

#include "fields/field_remarks.hpp"
#include "findings/remark.hpp"
#include "calc/gear_pick/gear_pick_remarks.hpp"

namespace camside::gear_pick {

namespace {

bool positive_measure(SizeMeans means) {
  return means != SizeMeans::Class;
}

bool size_entries_present(const Gear& g, std::size_t i, Findings& out) {
  const std::size_t before = out.size();
  if (!g.size_means) out.push_back(remarks::size_meaning_not_said(item("gears", i, "size_means"), g.name));
  if (!g.fitted) out.push_back(remarks::missing(item("gears", i, "fitted"), "Fitted size"));
  if (g.size_means == SizeMeans::OverPins && !g.pin_diameter)
    out.push_back(remarks::missing(item("gears", i, "pin_diameter"), "Pin diameter"));
  return out.size() == before;
}

void read_size(Engine& e, std::size_t gear, std::size_t k, const SizeReader& reader) {
  GearModel& model = e.gears[gear];
  const Size& size = e.in.gears[gear].sizes[k];
  const std::string field = fmt::format("gears[{}].sizes[{}].value", gear, k);
  const auto s = reader.thickness_mm(*size.value, field, "Size");
  if (!s) return e.findings.push_back(s.error());
  const double thicker_mm = *s - model.fitted_mm;
  if (std::abs(thicker_mm) <= tie_mm) return;  // the fitted size again: the same as leaving it
  if (std::abs(thicker_mm) > 0.05 * model.form->module_mm)
    e.findings.push_back(remarks::size_far_from_fitted(field, size.name, Length::mm(thicker_mm)));
  model.options.push_back({static_cast<int>(k), *size.value, Length::mm(thicker_mm),
                           Length::mm(-to_operating_circle(e, model) * thicker_mm)});
}

void read_sizes_of(Engine& e, std::size_t i) {
  const Gear& gear = e.in.gears[i];
  GearModel& model = e.gears[i];
  model.options.push_back({-1, gear.fitted.value_or(Length{}), Length{}, Length{}});
  if (gear.sizes.empty() || !model.form || !size_entries_present(gear, i, e.findings)) return;
  const SizeReader reader{gear, model};
  const auto fitted = reader.thickness_mm(*gear.fitted, item("gears", i, "fitted"), "Fitted size");
  if (!fitted) return e.findings.push_back(fitted.error());
  model.fitted_mm = *fitted;
  for (std::size_t k = 0; k < gear.sizes.size(); ++k) read_size(e, i, k, reader);
}

}  // namespace

double SizeReader::tip_mm(double thickness_mm) const {
  if (gear_.tip_diameter) return gear_.tip_diameter->in_mm() / 2.0;
  return model_.form->reference_mm +
         model_.form->module_mm * (1.0 + involute::shift_from_thickness(*model_.form, thickness_mm));
}
double SizeReader::root_mm(double thickness_mm) const {
  if (gear_.root_diameter) return gear_.root_diameter->in_mm() / 2.0;
  return model_.form->reference_mm -
         model_.form->module_mm * (1.25 - involute::shift_from_thickness(*model_.form, thickness_mm));
}

tl::expected<double, Finding> SizeReader::over_pins(Length value, const std::string& field) const {
  const Length pin = *gear_.pin_diameter;
  const auto s_mm = gear_pair::thickness_from_pins_mm(*model_.form, value, pin, field);
  if (!s_mm) return s_mm;
  if (auto fault = gear_pair::thickness_fault(*model_.form, *s_mm, field)) return tl::unexpected(std::move(*fault));
  const gear_pair::PinInSpace in_space{*model_.form, *s_mm,
                                       pin,          value,
                                       Length::mm(tip_mm(*s_mm)), Length::mm(root_mm(*s_mm))};
  if (auto fault = gear_pair::pin_fault(in_space, field)) return tl::unexpected(std::move(*fault));
  return s_mm;
}

tl::expected<double, Finding> SizeReader::thickness_mm(Length value, const std::string& field,
                                                       const char* label) const {
  if (positive_measure(*gear_.size_means) && value <= Length{})
    return tl::unexpected(remarks::out_of_range(field, label, remarks::mm_only(value), "above 0 mm", true));
  switch (*gear_.size_means) {
    case SizeMeans::OverPins:
      return over_pins(value, field);
    case SizeMeans::PitchRadius:
      return 2.0 * std::tan(model_.form->angle_t_rad) * value.in_mm();
    case SizeMeans::Thickness:
    case SizeMeans::Class:
      break;
  }
  return value.in_mm();
}

std::optional<Length> SizeReader::value_for(double thicker_mm) const {
  switch (*gear_.size_means) {
    case SizeMeans::OverPins: {
      const auto seat = involute::pin_seat(*model_.form, model_.fitted_mm + thicker_mm, gear_.pin_diameter->in_mm());
      return seat ? std::optional(Length::mm(seat->over_pins_mm)) : std::nullopt;
    }
    case SizeMeans::PitchRadius:
      return *gear_.fitted + Length::mm(thicker_mm / (2.0 * std::tan(model_.form->angle_t_rad)));
    case SizeMeans::Thickness:
    case SizeMeans::Class:
      break;
  }
  return *gear_.fitted + Length::mm(thicker_mm);
}

double SizeReader::thickness_per_value() const {
  switch (*gear_.size_means) {
    case SizeMeans::OverPins:
      return 1.0 / involute::pins_per_thickness(
                       *model_.form, *involute::pin_seat(*model_.form, model_.fitted_mm, gear_.pin_diameter->in_mm()));
    case SizeMeans::PitchRadius:
      return 2.0 * std::tan(model_.form->angle_t_rad);
    case SizeMeans::Thickness:
    case SizeMeans::Class:
      break;
  }
  return 1.0;
}

void read_sizes(Engine& e) {
  for (std::size_t i = 0; i < e.gears.size(); ++i) read_sizes_of(e, i);
}

}  // namespace camside::gear_pick
