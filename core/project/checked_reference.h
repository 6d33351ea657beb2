// What became of a file that the project refers to, as plain values: who looks at files fills them
// in, who tells people about them need not know files.
#pragma once

#include <string>

namespace tackbench {

enum class ReferenceState {
  present,  // there, and its content has the noted checksum
  missing,  // not there or not readable
  changed,  // there with other content
};

struct CheckedReference {
  std::string place;  // member path of the reference: "shapes.shapes[2].mesh"
  std::string path;   // as the project gives it
  ReferenceState state = ReferenceState::missing;
};

}  // namespace tackbench
