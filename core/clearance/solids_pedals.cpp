// Pedal arms and pads.
#include <algorithm>

#include "core/clearance/solids_maker.h"

namespace tackbench {

void add_pedal_solids(SolidsMaker& maker) {
  if (!maker.project.pedals) return;
  const auto& pedals = maker.project.pedals->pedals;
  const std::size_t count = std::min(pedals.size(), maker.mechanism.pedals.size());
  for (std::size_t i = 0; i < count; ++i) {
    const Pedal& pedal = pedals[i];
    const std::string path = item_path("pedals.pedals", i);
    const SolidBody body = rides(Body::pedal, static_cast<int>(i));
    const Vec3 axis = maker.in_chassis(pedal.axis);
    std::vector<Vec3> way;
    for (const Point<Cab>& point : pedal.arm_path) way.push_back(maker.in_chassis(point));
    const bool drawn = way.size() >= 2;
    const Vec3 pad = maker.in_chassis(pedal.pad_centre);
    if (!drawn) way = {maker.in_chassis(pedal.pivot), pad};
    SolidPart arm{pedal.name + " pedal arm", path, {}, {path + " pivot"}};
    for (std::size_t k = 0; k + 1 < way.size(); ++k)
      arm.pieces.push_back(
          {flat_bar(way[k], way[k + 1], axis, pedal.arm_thickness, pedal.arm_width, 0.0), body,
           !drawn});
    maker.add(std::move(arm));

    // The face's normal points at the foot, rearward; its height leans by the pad's angle.
    const Mat3& cab = maker.mechanism.chassis_from_cab.turn;
    Mat3 axes;
    axes.col(1) = cab * Vec3::UnitY();
    axes.col(2) = cab * (pitch_turn(pedal.pad_angle) * Vec3::UnitZ());
    axes.col(0) = axes.col(1).cross(axes.col(2));
    SolidPart face{pedal.name + " pedal pad", path + ".pad_centre_mm", {}, {}};
    face.pieces.push_back(
        {rounded_box(pad + 0.5 * pedal.pad_thickness * axes.col(0), axes,
                     Vec3(pedal.pad_thickness, pedal.pad_width, pedal.pad_height)),
         body, false});
    maker.add(std::move(face));
  }
}

}  // namespace tackbench
