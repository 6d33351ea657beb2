#include "ui/motion/pose_words.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/basics/units.h"
#include "core/basics/wording.h"

namespace tackbench::ui {

namespace {

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(Motion)
};

QString text_of(const std::string& text) {
  return QString::fromStdString(text);
}

}  // namespace

QString hand_wheel_words(double angle) {
  const double turns = std::abs(turns_from_radians(angle));
  if (turns < 0.005) return Texts::tr("straight");
  const QString number = text_of(shown_bare(std::abs(angle), Unit::turn));
  if (turns <= 1.0)
    return (angle > 0.0 ? Texts::tr("%1 turn left") : Texts::tr("%1 turn right")).arg(number);
  return (angle > 0.0 ? Texts::tr("%1 turns left") : Texts::tr("%1 turns right")).arg(number);
}

QStringList control_words(const Mechanism& mechanism, const Controls& controls, ShownUnit unit) {
  QStringList words{Texts::tr("Hand wheel %1").arg(hand_wheel_words(controls.hand_wheel))};
  if (controls.bump_left != 0.0 || controls.bump_right != 0.0)
    words << Texts::tr("Bump left %1, right %2")
                 .arg(text_of(shown_length(controls.bump_left, unit)),
                      text_of(shown_length(controls.bump_right, unit)));
  const std::size_t count =
      std::min(mechanism.pedals.size(), static_cast<std::size_t>(kMostPedals));
  for (std::size_t i = 0; i < count; ++i)
    if (controls.pedals[i] != 0.0)
      words << text_of(capitalised(mechanism.pedals[i].pedal.name)) + ' ' +
                   Texts::tr("%1 %").arg(std::lround(controls.pedals[i] * 100.0));
  return words;
}

}  // namespace tackbench::ui
