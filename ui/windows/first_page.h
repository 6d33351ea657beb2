// The first page: the cautions in full, and a way in. Then a tour of six steps on the sample.
#pragma once

#include <QDialog>
#include <QFrame>
#include <QString>
#include <functional>
#include <vector>

class QLabel;
class QPushButton;

namespace tackbench::ui {

class FirstPage : public QDialog {
  Q_OBJECT

 public:
  enum class Way { close, tour, new_project, open_file };
  explicit FirstPage(QWidget* parent = nullptr);
  Way way() const { return way_; }

 private:
  Way way_ = Way::close;
};

// One step of the tour: what to look at, what to do.
struct TourStep {
  QWidget* about = nullptr;
  QString words;
};

// A card beside what it is about; the window stays usable under it.
class Tour : public QFrame {
  Q_OBJECT

 public:
  Tour(std::vector<TourStep> steps, QWidget* window);
  int step() const { return step_; }
  QString words() const;

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  void show_step(int step);

  std::vector<TourStep> steps_;
  int step_ = 0;
  QLabel* count_;
  QLabel* words_;
  QPushButton* back_;
  QPushButton* next_;
};

}  // namespace tackbench::ui
