#include "ui/space/loose_card.h"

#include <QAbstractButton>
#include <QApplication>
#include <QEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/look/palette.h"
#include "ui/look/style.h"

namespace tackbench::ui {

namespace {

constexpr int kBorder = 5;   // pixels that take the card's edge
constexpr int kAround = 14;  // of the sheet left free about a spread card

}  // namespace

LooseCard::LooseCard(Session& session, ShownMotion& motion, QWidget* sheet, SpaceDrawing drawing)
    : QWidget(sheet), session_(session), view_(new SpaceView(session, motion, this, drawing)) {
  setMouseTracking(true);
  setAccessibleName(tr("Card with the view in space"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(kBorder, kBorder, kBorder, kBorder);
  column->addWidget(view_);
  spread_button_ = view_->add_head_button(tr("larger"), tr("Spread this card over the sheet"),
                                          [this] { set_spread(!spread_); });
  view_->add_head_button(tr("hide"), tr("Put the view in space away; the menu Show has it"),
                         [this] { Q_EMIT put_away(); });
  sheet->installEventFilter(this);
  // The card's edge says that the keys are with it.
  connect(qApp, &QApplication::focusChanged, this, [this](const QWidget* from, const QWidget* to) {
    if (from == view_ || to == view_) update();
  });
  for (auto* beside : sheet->findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly))
    if (beside != this) stay_beneath(*beside);
  connect(&session_, &Session::project_changed, this, &LooseCard::follow_project);
  follow_project();
}

// The plan lies beneath the side view in first angle, above it in third; the front view beside it
// on the other side (ISO 128).
void LooseCard::follow_project() {
  if (place_given_) return;
  const auto& sheet = session_.project().sheet;
  const QRectF free = sheet && sheet->projection == Projection::third_angle
                          ? QRectF(0.055, 0.075, 0.395, 0.385)
                          : QRectF(0.585, 0.5, 0.395, 0.385);
  if (free == place_) return;
  place_ = free;
  lay_out();
}

// Words that have become longer, another font: the card is never too narrow for its head.
bool LooseCard::event(QEvent* event) {
  const bool done = QWidget::event(event);
  if (event->type() == QEvent::LayoutRequest) lay_out();
  return done;
}

QRect LooseCard::room() const {
  return parentWidget()->rect().adjusted(kAround, kAround, -kAround, -kAround);
}

void LooseCard::set_spread(bool on) {
  if (on == spread_) return;
  spread_ = on;
  spread_button_->setText(on ? tr("smaller") : tr("larger"));
  lay_out();
  Q_EMIT spread_changed(on);
}

void LooseCard::set_place(const QRectF& shares) {
  place_given_ = true;
  place_ = shares;
  lay_out();
}

void LooseCard::stay_beneath(QWidget& over) {
  over_.emplace_back(&over);
  over.installEventFilter(this);
  connect(&over, &QObject::destroyed, this, &LooseCard::give_way, Qt::QueuedConnection);
  give_way();
}

void LooseCard::give_way() {
  QWidget& picture = view_->picture();
  const QRect here(picture.mapToGlobal(QPoint(0, 0)), picture.size());
  std::erase_if(over_, [](const QPointer<QWidget>& over) { return over.isNull(); });
  view_->lie_beneath(std::any_of(over_.begin(), over_.end(), [&](const QPointer<QWidget>& over) {
    return over->isVisible() &&
           here.intersects(QRect(over->mapToGlobal(QPoint(0, 0)), over->size()));
  }));
}

void LooseCard::lay_out() {
  const QRect all = room();
  QTimer::singleShot(0, this, &LooseCard::give_way);
  if (spread_) {
    setGeometry(all);
    return;
  }
  const QSize sheet = parentWidget()->size();
  const QSize least = minimumSizeHint().boundedTo(all.size());
  const QSize size =
      QSize(qRound(place_.width() * sheet.width()), qRound(place_.height() * sheet.height()))
          .expandedTo(least)
          .boundedTo(all.size());
  const int x = std::clamp(qRound(place_.x() * sheet.width()), all.left(),
                           std::max(all.left(), all.right() + 1 - size.width()));
  const int y = std::clamp(qRound(place_.y() * sheet.height()), all.top(),
                           std::max(all.top(), all.bottom() + 1 - size.height()));
  setGeometry({QPoint(x, y), size});
}

bool LooseCard::eventFilter(QObject* watched, QEvent* event) {
  if (watched == parentWidget()) {
    if (event->type() == QEvent::Resize) lay_out();
    return QWidget::eventFilter(watched, event);
  }
  switch (event->type()) {
    case QEvent::Show:
    case QEvent::Hide:
    case QEvent::Move:
    case QEvent::Resize:
      // When the widget has done it.
      QTimer::singleShot(0, this, &LooseCard::give_way);
      break;
    default:
      break;
  }
  return QWidget::eventFilter(watched, event);
}

void LooseCard::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const Palette& colours = ui::palette();
  painter.fillRect(rect(), colours.card);
  painter.setPen(QPen(colours.hair, 1.0));
  painter.drawRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5));
  if (view_->hasFocus()) {
    painter.setPen(QPen(colours.moves, 2.0));
    painter.drawRect(QRectF(rect()).adjusted(1.0, 1.0, -1.0, -1.0));
    painter.setPen(QPen(colours.hair, 1.0));
  }
  painter.setRenderHint(QPainter::Antialiasing);
  const QPointF corner = rect().bottomRight();
  for (const double away : {6.0, 10.0, 14.0})
    painter.drawLine(corner + QPointF(-away, -3.0), corner + QPointF(-3.0, -away));
}

Qt::Edges LooseCard::edges_at(const QPoint& at) const {
  Qt::Edges edges;
  if (spread_) return edges;
  if (at.x() < kBorder) edges |= Qt::LeftEdge;
  if (at.x() >= width() - kBorder) edges |= Qt::RightEdge;
  if (at.y() < kBorder) edges |= Qt::TopEdge;
  if (at.y() >= height() - kBorder) edges |= Qt::BottomEdge;
  constexpr int kCorner = 16;
  if (at.x() >= width() - kCorner && at.y() >= height() - kCorner)
    edges = Qt::RightEdge | Qt::BottomEdge;
  return edges;
}

void LooseCard::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton || spread_) return;
  in_hand_ = true;
  edges_ = edges_at(event->position().toPoint());
  pressed_ = event->globalPosition().toPoint();
  before_ = geometry();
}

void LooseCard::mouseMoveEvent(QMouseEvent* event) {
  if (!in_hand_) {
    const Qt::Edges edges = edges_at(event->position().toPoint());
    const bool across = edges.testAnyFlags(Qt::LeftEdge | Qt::RightEdge);
    const bool along = edges.testAnyFlags(Qt::TopEdge | Qt::BottomEdge);
    const bool falling =
        edges == (Qt::LeftEdge | Qt::TopEdge) || edges == (Qt::RightEdge | Qt::BottomEdge);
    setCursor(across && along ? (falling ? Qt::SizeFDiagCursor : Qt::SizeBDiagCursor)
              : across        ? Qt::SizeHorCursor
              : along         ? Qt::SizeVerCursor
                              : Qt::ArrowCursor);
    return;
  }
  const QPoint step = event->globalPosition().toPoint() - pressed_;
  const QRect all = room();
  const QSize least = minimumSizeHint();
  QRect wanted = before_;
  if (edges_ == Qt::Edges()) {
    wanted.translate(step);
  } else {
    if (edges_.testFlag(Qt::LeftEdge))
      wanted.setLeft(std::clamp(before_.left() + step.x(), all.left(),
                                std::max(all.left(), before_.right() + 1 - least.width())));
    if (edges_.testFlag(Qt::RightEdge))
      wanted.setRight(std::clamp(before_.right() + step.x(), before_.left() + least.width() - 1,
                                 std::max(all.right(), before_.left() + least.width() - 1)));
    if (edges_.testFlag(Qt::TopEdge))
      wanted.setTop(std::clamp(before_.top() + step.y(), all.top(),
                               std::max(all.top(), before_.bottom() + 1 - least.height())));
    if (edges_.testFlag(Qt::BottomEdge))
      wanted.setBottom(std::clamp(before_.bottom() + step.y(), before_.top() + least.height() - 1,
                                  std::max(all.bottom(), before_.top() + least.height() - 1)));
  }
  const QSizeF sheet = parentWidget()->size();
  place_given_ = true;
  place_ = {wanted.x() / sheet.width(), wanted.y() / sheet.height(), wanted.width() / sheet.width(),
            wanted.height() / sheet.height()};
  lay_out();
}

void LooseCard::mouseReleaseEvent(QMouseEvent*) {
  if (std::exchange(in_hand_, false) && geometry() != before_) Q_EMIT placed_by_hand(place_);
}

void LooseCard::mouseDoubleClickEvent(QMouseEvent*) {
  set_spread(!spread_);
}

void LooseCard::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange) update();
  QWidget::changeEvent(event);
}

}  // namespace tackbench::ui
