// One member of the project with its words, its editor and its unit; beneath it, why an entry was
// refused.
#pragma once

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QWidget>
#include <vector>

#include "ui/fields/calm_combo.h"
#include "ui/fields/entry_line.h"

namespace tackbench::ui {

class EntryField : public QWidget {
  Q_OBJECT

 public:
  EntryField(Session& session, FieldEntry entry, QWidget* parent = nullptr);

  const FieldEntry& entry() const { return entry_; }
  // Shows the project's value, in the unit that it wants now.
  void refresh();
  // Marks it as the member that is selected.
  void show_chosen(bool chosen);
  // A fault of the project at this member; empty for none. A refused entry's words go before it.
  void show_fault(const QString& words);
  // Says that the value is one that the program put in, not a measurement.
  void show_guess(bool guess);
  bool shows_guess() const { return guess_ != nullptr && !guess_->isHidden(); }
  QString wrong_words() const { return wrong_->isHidden() ? QString() : wrong_->text(); }
  // The editors: one line, three of a point, a choice, a flag.
  const std::vector<EntryLine*>& lines() const { return lines_; }
  CalmCombo* choice() const { return choice_; }
  QCheckBox* flag() const { return flag_; }
  void take_keyboard();
  // Something small at the end of its words; of a point only.
  void add_corner(QWidget& corner);

 Q_SIGNALS:
  void entered();  // one of its editors got the keyboard

 protected:
  void paintEvent(QPaintEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void make_line(QWidget* into);
  void make_three(QWidget* into);
  void make_choice(QWidget* into);
  void make_flag(QWidget* into);
  EntryLine* add_line(int coordinate);
  void name_editor(QWidget& editor, const QString& more = {});
  void refuse(const QString& why);
  void show_wrong();
  void set_choice(int index);

  Session& session_;
  FieldEntry entry_;
  std::vector<EntryLine*> lines_;
  CalmCombo* choice_ = nullptr;
  QCheckBox* flag_ = nullptr;
  QLabel* words_ = nullptr;
  QLabel* unit_ = nullptr;
  QLabel* guess_ = nullptr;
  QLabel* wrong_ = nullptr;
  QHBoxLayout* corner_ = nullptr;
  QString refused_;
  QString fault_;
  bool chosen_ = false;
};

}  // namespace tackbench::ui
