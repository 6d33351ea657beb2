#include "ui/look/style.h"

#include <QEvent>
#include <QStyle>
#include <QVariant>

#include "ui/look/type.h"

namespace tackbench::ui {

namespace {

// Watches one dressed widget for a change of palette.
class Dresser : public QObject {
 public:
  explicit Dresser(QWidget& widget) : QObject(&widget), widget_(widget) {
    put_on();
    widget.installEventFilter(this);
  }

  bool eventFilter(QObject*, QEvent* event) override {
    if (event->type() == QEvent::PaletteChange) put_on();
    return false;
  }

 private:
  void put_on() {
    // Setting a sheet changes the palette in turn: only a new one is set.
    const QString sheet = style_sheet(palette());
    if (widget_.styleSheet() != sheet) widget_.setStyleSheet(sheet);
  }

  QWidget& widget_;
};

QString points(TypeSize size) {
  return QString::number(type_font(size).pointSizeF(), 'f', 3) + QStringLiteral("pt");
}

}  // namespace

QColor tint(const QColor& over, const QColor& ground, double share) {
  const auto mixed = [&](int a, int b) { return qRound(a * share + b * (1.0 - share)); };
  return {mixed(over.red(), ground.red()), mixed(over.green(), ground.green()),
          mixed(over.blue(), ground.blue())};
}

QString style_sheet(const Palette& from) {
  QString sheet = QStringLiteral(R"(
QWidget { font-size: @normal; }
QLabel { background: transparent; color: @ink; }
QWidget[look="card"] { background: @card; border: 1px solid @hair; border-radius: 4px; }
QWidget[look="plain"] { background: transparent; }
QLabel:disabled { color: @soft; }
QLabel[look="soft"] { color: @soft; font-size: @small; }
QLabel[look="faded"] { color: @soft; }
QLabel[look="wrong"] { color: @past; font-size: @small; }
QLabel[look="heading"] { font-size: @heading; font-weight: 600; }
QLabel[look="title"] { font-size: @title; font-weight: 600; }
QLineEdit { background: @card; color: @ink; border: 1px solid @hair; border-radius: 3px;
  padding: 2px 4px; selection-background-color: @moves; selection-color: @card; }
QLineEdit:hover { border-color: @soft; }
QLineEdit:focus { border: 2px solid @moves; padding: 1px 3px; }
QLineEdit[wrong="true"] { border-color: @past; }
QComboBox { background: @card; color: @ink; border: 1px solid @hair; border-radius: 3px;
  padding: 2px 4px; min-height: 16px; }
QComboBox:hover { border-color: @soft; }
QComboBox:focus { border: 2px solid @moves; padding: 1px 3px; }
QComboBox::drop-down { border: none; width: 16px; }
QComboBox QAbstractItemView { background: @card; color: @ink; border: 1px solid @hair;
  selection-background-color: @moves; selection-color: @card; }
QPushButton { background: @card; color: @ink; border: 1px solid @hair; border-radius: 4px;
  padding: 3px 10px; }
QPushButton:hover { background: @paper; border-color: @soft; }
QPushButton:pressed { background: @desk; }
QPushButton:focus { border: 2px solid @moves; padding: 2px 9px; }
QPushButton:disabled { color: @soft; background: @paper; }
QPushButton[look="link"] { background: transparent; border: 1px solid transparent; color: @moves;
  padding: 1px 3px; text-align: left; font-size: @small; }
QPushButton[look="link"]:hover { border-color: @hair; }
QPushButton[look="link"]:focus { border: 1px solid @moves; }
QPushButton[look="fold"] { background: transparent; border: 1px solid transparent; color: @ink;
  padding: 3px 2px; text-align: left; font-weight: 600; }
QPushButton[look="fold"]:hover { background: @paper; }
QPushButton[look="fold"]:focus { border: 1px solid @moves; }
QToolButton { background: @card; color: @ink; border: 1px solid @hair; border-radius: 4px;
  padding: 3px 8px; }
QToolButton:hover { background: @paper; border-color: @soft; }
QToolButton:checked { background: @desk; border: 1px solid @ink; font-weight: 600; }
QToolButton:focus { border: 2px solid @moves; padding: 2px 7px; }
QToolButton[look="page"] { padding: 3px 3px; font-size: 12px; }
QToolButton[look="page"]:checked { font-weight: 400; }
QToolButton[look="page"]:focus { padding: 2px 2px; }
QToolButton[autoRaise="true"] { background: transparent; border: 1px solid transparent;
  padding: 2px; }
QToolButton[autoRaise="true"]:focus { border: 1px solid @moves; padding: 2px; }
QCheckBox { background: transparent; color: @ink; padding: 2px; border: 1px solid transparent; }
QCheckBox:focus { border: 1px solid @moves; border-radius: 3px; }
QCheckBox[look="link"] { color: @moves; font-size: @small; padding: 0; }
QCheckBox::indicator { width: 12px; height: 12px; border: 1px solid @soft; border-radius: 2px;
  background: @card; }
QCheckBox::indicator:checked { background: @moves; border-color: @moves; }
QCheckBox::indicator:disabled { border-color: @hair; }
QScrollArea, QTextBrowser { background: transparent; border: none; }
QTextBrowser { border: 1px solid transparent; }
QTextBrowser:focus { border: 1px solid @moves; }
QScrollArea > QWidget > QWidget { background: transparent; }
QScrollBar:vertical { background: transparent; width: 9px; margin: 0; }
QScrollBar::handle:vertical { background: @hair; border-radius: 3px; min-height: 28px; margin: 1px; }
QScrollBar::handle:vertical:hover { background: @soft; }
QScrollBar:horizontal { background: transparent; height: 9px; margin: 0; }
QScrollBar::handle:horizontal { background: @hair; border-radius: 3px; min-width: 28px; margin: 1px; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
QToolTip { background: @card; color: @ink; border: 1px solid @hair; padding: 3px; }
)");
  const std::pair<const char*, QString> words[] = {{"@paper", from.paper.name()},
                                                   {"@desk", from.desk.name()},
                                                   {"@card", from.card.name()},
                                                   {"@ink", from.ink.name()},
                                                   {"@soft", from.soft.name()},
                                                   {"@hair", from.hair.name()},
                                                   {"@moves", from.moves.name()},
                                                   {"@past", from.past.name()},
                                                   {"@small", points(TypeSize::small)},
                                                   {"@normal", points(TypeSize::normal)},
                                                   {"@heading", points(TypeSize::heading)},
                                                   {"@title", points(TypeSize::title)}};
  for (const auto& [word, value] : words) sheet.replace(QLatin1String(word), value);
  return sheet;
}

void dress(QWidget& widget) {
  new Dresser(widget);  // NOLINT(*-owning-memory): the widget owns it
}

void set_look(QWidget& widget, const char* look) {
  widget.setProperty("look", QString::fromLatin1(look));
}

}  // namespace tackbench::ui
