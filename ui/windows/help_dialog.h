// Help: keys of the bench, words of the trade, what the numbers mean, what is not checked.
#pragma once

#include <QDialog>

namespace tackbench::ui {

enum class HelpPage { keys, words, numbers, cautions };

class HelpDialog : public QDialog {
  Q_OBJECT

 public:
  explicit HelpDialog(HelpPage page, QWidget* parent = nullptr);
};

}  // namespace tackbench::ui
