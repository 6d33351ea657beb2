// One line of text bound to a member, or to one coordinate of it. What is typed is taken on Return,
// on leaving the field and when the session asks for it; Escape gives it up, and so does another
// document. While it has the keyboard it shows every digit.
#pragma once

#include <QLineEdit>
#include <string>

#include "ui/fields/field_tree.h"
#include "ui/look/type.h"
#include "ui/session/session.h"

namespace tackbench::ui {

class EntryLine : public QLineEdit {
  Q_OBJECT

 public:
  // `coordinate`: 0 to 2 of a point or direction; -1 for the whole member.
  EntryLine(Session& session, FieldEntry entry, int coordinate, QWidget* parent = nullptr);

  // Shows the member again; what is being typed stays.
  void refresh();
  // Takes what was typed. False when it was refused: the member keeps its value. Does nothing while
  // a change is being told.
  bool commit();
  // Puts back what was being typed into a line that was made anew.
  void type_again(const QString& typed, int cursor);
  // Shows the member; what was being typed is gone.
  void give_up();
  // What stands there for a member that is not given.
  static QString empty_words() { return tr("not given"); }
  const FieldEntry& entry() const { return entry_; }
  // One figure of a direction, whose length does not matter.
  bool is_direction() const { return direction_; }

 Q_SIGNALS:
  void entered();                    // it got the keyboard
  void refused(const QString& why);  // whole sentence
  void taken();                      // nothing is wrong any more

 protected:
  bool event(QEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  // This line's own member text: a coordinate's number for a point or direction.
  std::string own_text() const;
  Problems set(const std::string& text);
  void show_member(bool exact);
  void choose_type();

  Session& session_;
  FieldEntry entry_;  // of kind number for a coordinate
  bool direction_ = false;
  int coordinate_ = -1;
  TypeSize type_ = TypeSize::normal;
  QString refused_;  // why, the last time
};

}  // namespace tackbench::ui
