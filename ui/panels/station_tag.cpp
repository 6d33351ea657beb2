#include "ui/panels/station_tag.h"

#include <QPainter>

#include "ui/look/palette.h"
#include "ui/look/station_title.h"
#include "ui/look/style.h"
#include "ui/look/type.h"
#include "ui/look/verdict_mark.h"

namespace tackbench::ui {

namespace {

constexpr int kMark = 14;
constexpr int kEdge = 8;
constexpr int kWholeHeight = 62;
constexpr int kFoldedHeight = 40;
constexpr int kFoldedEdge = 5;

}  // namespace

StationTag::StationTag(Session& session, Station station, QWidget* parent)
    : QAbstractButton(parent), session_(session), station_(station) {
  setCheckable(true);
  setFocusPolicy(Qt::StrongFocus);
  setAttribute(Qt::WA_Hover);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setText(station_title(station));
  setObjectName(QString::fromLatin1(station_name(station)));
  refresh();
}

void StationTag::refresh() {
  numbers_ = station_numbers(session_, station_);
  state_ = station_state(session_, station_);
  QStringList spoken{text()};
  if (state_.guesses == 0) {
    if (!numbers_.first.isEmpty()) spoken += numbers_.first;
    if (!numbers_.second.isEmpty()) spoken += numbers_.second;
  }
  spoken += state_.words;
  setAccessibleName(spoken.join(QStringLiteral(", ")));
  setToolTip(spoken.join(QLatin1Char('\n')));
  update();
}

void StationTag::fold(bool folded) {
  folded_ = folded;
  updateGeometry();
  update();
}

QSize StationTag::sizeHint() const {
  return {140, folded_ ? kFoldedHeight : kWholeHeight};
}

QSize StationTag::minimumSizeHint() const {
  return {76, folded_ ? kFoldedHeight : kWholeHeight};
}

QString StationTag::first_words() const {
  if (state_.presence != StationPresence::present) return state_.words;
  // Figures that come of guesses are no headline.
  if (state_.guesses > 0)
    return state_.guesses == 1 ? tr("1 guess") : tr("%1 guesses").arg(state_.guesses);
  return numbers_.first.isEmpty() ? state_.words : numbers_.first;
}

int StationTag::folded_room() const {
  return width() - 2 * kFoldedEdge - kMark - 3;
}

// As much of the first number's words as there is room for.
QString StationTag::folded_words() const {
  if (state_.presence == StationPresence::not_measured) return tr("not yet");
  if (state_.guesses > 0) return tr("guess");
  if (state_.presence == StationPresence::left_out || numbers_.first.isEmpty()) return state_.words;
  const QFontMetrics text(figure_font(TypeSize::small, true));
  return text.horizontalAdvance(numbers_.first) <= folded_room() ? numbers_.first : numbers_.figure;
}

void StationTag::paint_line(QPainter& painter, const QRect& place, const QString& words,
                            const QFont& font, const QColor& colour) {
  painter.setFont(font);
  painter.setPen(colour);
  painter.drawText(place, Qt::AlignLeft | Qt::AlignVCenter,
                   QFontMetrics(font).elidedText(words, Qt::ElideRight, place.width()));
}

void StationTag::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const Palette& colours = ui::palette();
  const bool present = state_.presence == StationPresence::present;
  const QColor ground = underMouse() ? colours.paper : colours.card;
  const double width_of_frame = isChecked() ? 2.0 : 1.0;
  QPen frame(isChecked() ? colours.ink : colours.hair, width_of_frame);
  if (!present) frame.setStyle(Qt::DashLine);
  painter.setPen(frame);
  painter.setBrush(ground);
  const double inset = 0.5 * width_of_frame;
  painter.drawRoundedRect(QRectF(rect()).adjusted(inset, inset, -inset, -inset), 4, 4);
  if (hasFocus()) {
    painter.setPen(QPen(colours.moves, 1.5));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(QRectF(rect()).adjusted(3, 3, -3, -3), 3, 3);
  }
  if (present) {
    paint_verdict_mark(painter,
                       QRectF(width() - kMark - (folded_ ? kFoldedEdge : kEdge),
                              folded_ ? height() - kMark - 5 : kEdge, kMark, kMark),
                       state_.worst, state_.stale);
  }
  if (folded_) {
    paint_folded(painter);
  } else {
    paint_whole(painter);
  }
}

void StationTag::paint_whole(QPainter& painter) {
  const Palette& colours = ui::palette();
  const QColor faded = tint(colours.soft, colours.card, 0.75);
  const int room = width() - 2 * kEdge;
  paint_line(painter, QRect(kEdge, 6, room - kMark - 4, 16), text(), type_font(TypeSize::small),
             colours.soft);
  const bool present = state_.presence == StationPresence::present;
  const bool guessed = state_.guesses > 0;
  const bool figures = present && !guessed && !numbers_.first.isEmpty();
  paint_line(painter, QRect(kEdge, 22, room, 18), first_words(),
             figures ? figure_font(TypeSize::normal, true) : type_font(TypeSize::normal),
             !present               ? colours.soft
             : numbers_.first_stale ? faded
                                    : colours.ink);
  if (present)
    paint_line(painter, QRect(kEdge, 40, room, 16),
               guessed ? tr("not measured yet") : numbers_.second,
               guessed ? type_font(TypeSize::small) : figure_font(TypeSize::small),
               numbers_.second_stale ? faded : colours.soft);
}

void StationTag::paint_folded(QPainter& painter) {
  const Palette& colours = ui::palette();
  const bool stale = numbers_.first_stale;
  const bool present = state_.presence == StationPresence::present;
  const int room = width() - 2 * kFoldedEdge;
  const int figures = folded_room();
  paint_line(painter, QRect(kFoldedEdge, 4, room, 15), text(), type_font(TypeSize::small),
             colours.soft);
  paint_line(painter, QRect(kFoldedEdge, 20, present ? figures : room, 16), folded_words(),
             figure_font(TypeSize::small, present), stale || !present ? colours.soft : colours.ink);
}

}  // namespace tackbench::ui
