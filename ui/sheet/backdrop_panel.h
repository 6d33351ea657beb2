// Small panel on the sheet for the photographs behind the views.
#pragma once

#include <QCheckBox>
#include <QComboBox>
#include <QFrame>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSlider>
#include <QString>
#include <filesystem>
#include <optional>

#include "ui/session/session.h"

namespace tackbench::ui {

// A photograph laid behind the view, not placed yet: 2 m wide about the datum. Faults: it cannot be
// read, or does not lie in or below the project's folder.
Result<Backdrop> new_backdrop(const std::filesystem::path& file,
                              const std::filesystem::path& project_file, SheetView view,
                              QSize pixels);

class BackdropPanel : public QFrame {
  Q_OBJECT

 public:
  explicit BackdropPanel(Session& session, QWidget* parent);

  // View that a new photograph goes behind.
  void set_view(SheetView view) { view_ = view; }
  // Puts it behind the view as one undo step; says why not when it cannot.
  void add(const std::filesystem::path& file);
  std::optional<std::size_t> chosen() const;
  // Writes a photograph back.
  void replace(const QString& step, std::size_t index, const Backdrop& backdrop);

 Q_SIGNALS:
  void points_wanted(std::size_t index);
  void level_wanted(std::size_t index);
  void closed();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void fill();
  void enable(const Backdrop* backdrop);
  void ask_for_file();
  void set_distance();
  void set_fade(int percent);
  Project with_backdrop(std::size_t index, const Backdrop& backdrop) const;
  void remove();
  const Backdrop* backdrop() const;
  void say(const QString& why);

  Session& session_;
  SheetView view_ = SheetView::side;
  QComboBox* which_;
  QPushButton* add_;
  QSlider* fade_;
  QLineEdit* distance_;
  QPushButton* points_;
  QPushButton* level_;
  QPushButton* remove_;
  QCheckBox* lock_;
  QLabel* reason_;
};

}  // namespace tackbench::ui
