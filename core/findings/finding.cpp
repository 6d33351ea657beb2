#include "core/findings/finding.h"

#include <cmath>

namespace tackbench {

const char* verdict_word(Verdict verdict) {
  switch (verdict) {
    case Verdict::within:
      return "within";
    case Verdict::close:
      return "close";
    case Verdict::past:
      return "past";
    case Verdict::not_judged:
      return "not judged";
  }
  return "not judged";
}

Verdict judge(double value, const Limit& limit) {
  if (!std::isfinite(value) || (!limit.least && !limit.most)) return Verdict::not_judged;
  if ((limit.least && value < *limit.least) || (limit.most && value > *limit.most))
    return Verdict::past;
  if ((limit.least_inner && value < *limit.least_inner) ||
      (limit.most_inner && value > *limit.most_inner))
    return Verdict::close;
  return Verdict::within;
}

}  // namespace tackbench
