// A strip above the sheet that says something and offers one or two answers; it waits, it never
// blocks.
#pragma once

#include <QFrame>
#include <QString>
#include <functional>
#include <vector>

class QHBoxLayout;
class QLabel;

namespace tackbench::ui {

struct NoticeAnswer {
  QString words;
  std::function<void()> then;
};

class NoticeBar : public QFrame {
  Q_OBJECT

 public:
  explicit NoticeBar(QWidget* parent = nullptr);
  // Takes the place of what it said before. Each answer closes it; there is always a "close".
  void say(const QString& words, std::vector<NoticeAnswer> answers = {});
  QString words() const;
  void close_notice();

 private:
  QLabel* words_;
  QHBoxLayout* answers_;
};

}  // namespace tackbench::ui
