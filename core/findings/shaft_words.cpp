#include "core/findings/shaft_words.h"

#include "core/basics/wording.h"

namespace tackbench {

namespace {

std::size_t index_of(int i) {
  return static_cast<std::size_t>(i);
}

}  // namespace

ShaftWords::ShaftWords(const Mechanism& compiled)
    : mechanism(compiled), station(compiled.shaft_line->station), show(compiled.project) {}

std::string ShaftWords::joint(int index) const {
  return spoken(station.joints[index_of(index)].name, say("word.joint"), index_of(index));
}
std::string ShaftWords::shaft(int index) const {
  return spoken(station.shafts[index_of(index)].name, say("word.shaft"), index_of(index));
}
std::string ShaftWords::support(int index) const {
  return spoken(station.supports[index_of(index)].name, say("word.support"), index_of(index));
}
std::string ShaftWords::joint_part(int index) const {
  return name_part(station.joints[index_of(index)].name, index_of(index));
}
std::string ShaftWords::shaft_part(int index) const {
  return name_part(station.shafts[index_of(index)].name, index_of(index));
}
std::string ShaftWords::support_part(int index) const {
  return name_part(station.supports[index_of(index)].name, index_of(index));
}

Finding ShaftWords::judge(std::string name, std::vector<Quantity> numbers, Limit by) const {
  return judged(std::move(name), Station::shaft_line, std::move(numbers), std::move(by),
                show.lengths());
}

}  // namespace tackbench
