// Worst first: past, close, not judged, within.
#pragma once

#include "core/findings/finding.h"

namespace tackbench {

// 0 for the worst.
inline int verdict_rank(Verdict verdict) {
  switch (verdict) {
    case Verdict::past:
      return 0;
    case Verdict::close:
      return 1;
    case Verdict::not_judged:
      return 2;
    case Verdict::within:
      break;
  }
  return 3;
}

}  // namespace tackbench
