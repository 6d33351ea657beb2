// Help: keys of the bench, words of the trade, what is not checked.
#pragma once

#include <QDialog>
#include <QString>
#include <vector>

namespace tackbench::ui {

struct GlossaryWord {
  QString word;
  QString variants;  // other names in the trade
  QString meaning;
};
std::vector<GlossaryWord> glossary();

enum class HelpPage { keys, words, cautions };

class HelpDialog : public QDialog {
  Q_OBJECT

 public:
  explicit HelpDialog(HelpPage page, QWidget* parent = nullptr);
};

}  // namespace tackbench::ui
