// Pedals and driver: what stands in the cab.
#include "core/project/grip_list.h"

namespace tackbench::grip_list {

namespace {

class PedalGrips {
 public:
  PedalGrips(const Project& project, std::size_t index, std::vector<Grip>& list)
      : cab_(drawn_cab(project)),
        pedal_(project.pedals->pedals[index]),
        path_(item("pedals.pedals", index)),
        index_(static_cast<int>(index)),
        list_(list) {}

  void add() {
    add_whole();
    on_pedal(".pad_centre_mm", "pad", pedal_.pad_centre);
    for (std::size_t i = 0; i < pedal_.springs.size(); ++i) {
      const std::string spring = item(".springs", i);
      on_pedal(spring + ".pedal_point_mm", "spring on the pedal", pedal_.springs[i].pedal_point);
      in_cab(spring + ".fixed_point_mm", "fixed spring end", pedal_.springs[i].fixed_point);
    }
    if (pedal_.rod) add_rod(*pedal_.rod);
    if (pedal_.cable) add_cable(*pedal_.cable);
  }

 private:
  void put(const std::string& member, const std::string& words, Body body, const Vec3& at) {
    Grip made =
        grip(path_ + member, words + ", " + pedal_.name + " pedal", Station::pedals, body, at);
    made.body_index = index_;
    list_.push_back(made);
  }
  void on_pedal(const std::string& member, const std::string& words, const Point<Cab>& at) {
    put(member, words, Body::pedal, (cab_ * at).mm);
  }
  void in_cab(const std::string& member, const std::string& words, const Point<Cab>& at) {
    put(member, words, Body::cab, (cab_ * at).mm);
  }
  void in_chassis(const std::string& member, const std::string& words, const Point<Chassis>& at) {
    put(member, words, Body::chassis, at.mm);
  }

  // At its pivot: the pedal as a whole.
  void add_whole() {
    Grip whole =
        grip(path_, pedal_.name + " pedal", Station::pedals, Body::cab, (cab_ * pedal_.pivot).mm);
    whole.body_index = index_;
    whole.moves_several = true;
    list_.push_back(whole);
  }

  void add_rod(const PedalRod& rod) {
    on_pedal(".rod.pedal_pin_mm", "rod pin", rod.pedal_pin);
    for (std::size_t i = 0; i < rod.bell_cranks.size(); ++i) {
      const BellCrank& crank = rod.bell_cranks[i];
      const std::string member = item(".rod.bell_cranks", i);
      in_cab(member + ".pivot_mm", "pivot of the bell-crank", crank.pivot);
      in_cab(member + ".input_pin_mm", "input pin of the bell-crank", crank.input_pin);
      in_cab(member + ".output_pin_mm", "output pin of the bell-crank", crank.output_pin);
    }
    in_cab(".rod.cylinder_pin_mm", "cylinder pin", rod.cylinder_pin);
  }

  void add_cable(const PedalCable& cable) {
    on_pedal(".cable.pedal_pin_mm", "cable pin", cable.pedal_pin);
    in_cab(".cable.cab_exit_mm", "cable's exit from the cab", cable.cab_exit);
    for (std::size_t i = 0; i < cable.route.size(); ++i)
      in_chassis(item(".cable.route_mm", i), "cable route", cable.route[i]);
    in_chassis(".cable.engine_exit_mm", "cable's end at the engine", cable.engine_exit);
    in_chassis(".cable.engine_lever.pivot_mm", "engine lever's pivot", cable.engine_lever.pivot);
    in_chassis(".cable.engine_lever.pin_mm", "engine lever's pin", cable.engine_lever.pin);
  }

  Placement<Chassis, Cab> cab_;
  const Pedal& pedal_;
  std::string path_;
  int index_;
  std::vector<Grip>& list_;
};

}  // namespace

void add_pedal_grips(const Project& project, std::vector<Grip>& list) {
  if (!project.pedals) return;
  for (std::size_t i = 0; i < project.pedals->pedals.size(); ++i)
    PedalGrips(project, i, list).add();
}

void add_driver_grips(const Project& project, std::vector<Grip>& list) {
  if (!project.driver) return;
  const auto cab = drawn_cab(project);
  list.push_back(grip("driver.seat_reference_mm", "seat reference point", Station::driver,
                      Body::cab, (cab * project.driver->seat_reference).mm));
  list.push_back(grip("driver.heel_point_mm", "heel point", Station::driver, Body::cab,
                      (cab * project.driver->heel_point).mm));
}

}  // namespace tackbench::grip_list
