#include "ui/panels/margin_bar.h"

#include <QPainter>
#include <algorithm>

#include "ui/look/palette.h"

namespace tackbench::ui {

MarginBar::MarginBar(QWidget* parent) : QWidget(parent) {
  setFixedHeight(14);
  setMinimumWidth(60);
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

void MarginBar::show_margin(std::optional<double> share, Verdict verdict, bool stale) {
  share_ = share;
  verdict_ = verdict;
  stale_ = stale;
  QString words;
  if (share) {
    const int percent = qRound(100.0 * std::abs(*share));
    words = *share < 0.0 ? tr("short by %1 % of the limit").arg(percent)
                         : tr("%1 % of the limit to spare").arg(percent);
  }
  setAccessibleName(words.isEmpty() ? tr("no margin") : words);
  setToolTip(words);
  update();
}

void MarginBar::paintEvent(QPaintEvent*) {
  if (!share_) return;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const double middle = width() / 2.0;
  const double y = height() / 2.0;
  const double reach = middle - 2.0;
  const auto stroke = [&](const QColor& colour, double from, double to) {
    QPen pen(colour, 4.0);
    pen.setCapStyle(Qt::RoundCap);
    if (stale_) pen.setDashPattern({0.5, 1.5});
    painter.setPen(pen);
    painter.drawLine(QPointF(from, y), QPointF(to, y));
  };
  painter.setPen(QPen(ui::palette().hair, 3.0, Qt::SolidLine, Qt::RoundCap));
  painter.drawLine(QPointF(middle - reach, y), QPointF(middle + reach, y));
  // A margin too small to see still shows on which side it lies.
  constexpr double kLeast = 0.04;
  const double share = *share_ < 0.0 ? std::min(*share_, -kLeast) : std::max(*share_, kLeast);
  stroke(stale_ ? ui::palette().soft : ui::palette().verdict(verdict_), middle,
         middle + share * reach);
  painter.setPen(QPen(ui::palette().ink, 1.6));
  painter.drawLine(QPointF(middle, 1), QPointF(middle, height() - 1));
}

}  // namespace tackbench::ui
