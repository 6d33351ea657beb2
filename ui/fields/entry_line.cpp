#include "ui/fields/entry_line.h"

#include <QFocusEvent>
#include <QKeyEvent>
#include <QPainter>
#include <array>
#include <sstream>
#include <utility>

#include "core/project/field_path.h"
#include "ui/fields/checked_edit.h"
#include "ui/fields/entry_text.h"
#include "ui/look/palette.h"
#include "ui/look/type.h"

namespace tackbench::ui {

namespace {

constexpr const char* kNone = "none";

// "[1, 2, 3]" to its three texts; three of "none" for what is not given.
std::array<std::string, 3> coordinates(std::string text) {
  std::array<std::string, 3> parts{kNone, kNone, kNone};
  if (text == kNone) return parts;
  std::erase_if(text, [](char c) { return c == '[' || c == ']' || c == ' '; });
  std::istringstream stream(text);
  for (std::string& part : parts) std::getline(stream, part, ',');
  return parts;
}

}  // namespace

EntryLine::EntryLine(Session& session, FieldEntry entry, int coordinate, QWidget* parent)
    : QLineEdit(parent),
      session_(session),
      entry_(std::move(entry)),
      direction_(entry_.kind == EntryKind::direction),
      coordinate_(coordinate) {
  if (entry_.kind == EntryKind::point) {
    constexpr std::array<const char*, 3> kKeys{".x", ".y", ".z"};
    entry_.path += kKeys.at(static_cast<std::size_t>(coordinate));
  }
  if (coordinate >= 0) entry_.kind = EntryKind::number;
  if (direction_) {
    entry_.unit = Unit::number;
    entry_.least = -1e9;
    entry_.most = 1e9;
  }
  if (entry_.kind != EntryKind::text) {
    setFont(figure_font(TypeSize::normal));
    setAlignment(Qt::AlignRight);
    choose_type();
  }
  show_member(false);
  connect(&session_, &Session::entries_wanted, this, [this](QStringList* refused) {
    if (!commit()) refused->append(tr("%1: %2").arg(accessibleName(), refused_));
  });
  connect(&session_, &Session::project_changed, this, [this](const Change& change) {
    if (change.kind == ChangeKind::opened && isModified()) give_up();
  });
}

// Fractions of an inch need twice the width of millimetres; three of them stand in a row.
void EntryLine::choose_type() {
  const bool fractions = session_.shown_unit() == ShownUnit::inch_fraction;
  const TypeSize size = coordinate_ >= 0 && fractions ? TypeSize::small : TypeSize::normal;
  if (type_ == size) return;
  type_ = size;
  // The style sheet's size would go over a font.
  setStyleSheet(
      QStringLiteral("font-size: %1pt; padding: 2px 2px;").arg(figure_font(size).pointSizeF()));
}

void EntryLine::refresh() {
  choose_type();
  if (!isModified()) show_member(hasFocus());
}

std::string EntryLine::own_text() const {
  const Result<std::string> text = field_text(session_.project(), entry_.path);
  if (!text) return kNone;
  return direction_ ? coordinates(*text).at(static_cast<std::size_t>(coordinate_)) : *text;
}

void EntryLine::show_member(bool exact) {
  const std::string text = own_text();
  const ShownUnit lengths = unit_for(entry_, session_.shown_unit());
  const QString shown =
      exact ? exact_entry(entry_, text, lengths) : shown_entry(entry_, text, lengths);
  // The line's own undo ends where the project's begins.
  if (shown != QLineEdit::text() || isUndoAvailable()) {
    setText(shown);
    if (entry_.kind == EntryKind::text && !exact) setCursorPosition(0);
  }
  setModified(false);
}

Problems EntryLine::set(const std::string& text) {
  if (!direction_) return set_member(session_, entry_.path, text);
  const Result<std::string> whole = field_text(session_.project(), entry_.path);
  if (!whole) return whole.problems();
  std::array<std::string, 3> parts = coordinates(*whole);
  parts.at(static_cast<std::size_t>(coordinate_)) = text;
  // Clearing one coordinate clears the direction; giving the first one makes the others zero.
  if (text == kNone) return set_member(session_, entry_.path, kNone);
  for (std::string& part : parts)
    if (part == kNone) part = "0";
  return set_member(session_, entry_.path,
                    "[" + parts[0] + ", " + parts[1] + ", " + parts[2] + "]");
}

bool EntryLine::commit() {
  // The change that is being told may be another document, or take this very line away.
  if (!isModified() || session_.telling_change()) return true;
  const ShownUnit lengths = unit_for(entry_, session_.shown_unit());
  const std::string now = own_text();
  const QString typed = text();
  Problems problems;
  // Typing what stands there already changes nothing, rounded or not.
  if (typed != shown_entry(entry_, now, lengths) && typed != exact_entry(entry_, now, lengths)) {
    const Result<std::string> wanted = member_text(entry_, typed, lengths);
    if (wanted) {
      setModified(false);
      problems = set(*wanted);
    } else {
      problems = wanted.problems();
    }
  }
  if (problems.empty()) {
    show_member(hasFocus());
    Q_EMIT taken();
    return true;
  }
  setModified(true);
  refused_ = fault_words(problems);
  Q_EMIT refused(refused_);
  return false;
}

void EntryLine::type_again(const QString& typed, int cursor) {
  setText(typed);
  setCursorPosition(cursor);
  setModified(true);
}

void EntryLine::give_up() {
  show_member(hasFocus());
  Q_EMIT taken();
}

// With nothing typed, undo and redo are the project's.
bool EntryLine::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride && !isModified()) {
    const auto* key = static_cast<QKeyEvent*>(event);
    if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
      event->ignore();
      return true;
    }
  }
  return QLineEdit::event(event);
}

void EntryLine::focusInEvent(QFocusEvent* event) {
  QLineEdit::focusInEvent(event);
  if (!isModified()) {
    show_member(true);
    if (event->reason() != Qt::MouseFocusReason) selectAll();
  }
  Q_EMIT entered();
}

void EntryLine::focusOutEvent(QFocusEvent* event) {
  QLineEdit::focusOutEvent(event);
  if (event->reason() == Qt::PopupFocusReason) return;
  commit();
  // A refused text gives way to the value that was kept; the words beneath stay.
  show_member(false);
}

void EntryLine::paintEvent(QPaintEvent* event) {
  QLineEdit::paintEvent(event);
  if (!entry_.optional || !text().isEmpty() || hasFocus()) return;
  // The style would fade these words below what reads well.
  QPainter painter(this);
  painter.setPen(ui::palette().soft);
  painter.drawText(rect().adjusted(6, 0, -6, 0), alignment() | Qt::AlignVCenter, empty_words());
}

void EntryLine::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
      commit();
      selectAll();
      event->accept();
      return;
    case Qt::Key_Escape:
      if (isModified()) {
        give_up();
        selectAll();
        event->accept();
        return;
      }
      break;
    default:
      break;
  }
  QLineEdit::keyPressEvent(event);
}

}  // namespace tackbench::ui
