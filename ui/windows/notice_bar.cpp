#include "ui/windows/notice_bar.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

#include "ui/look/style.h"

namespace tackbench::ui {

NoticeBar::NoticeBar(QWidget* parent)
    : QFrame(parent), words_(new QLabel(this)), answers_(new QHBoxLayout) {
  set_look(*this, "card");
  setAccessibleName(tr("Notice"));
  words_->setWordWrap(true);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(12, 6, 8, 6);
  row->addWidget(words_, 1);
  row->addLayout(answers_);
  hide();
}

void NoticeBar::say(const QString& words, std::vector<NoticeAnswer> answers) {
  words_->setText(words);
  setAccessibleDescription(words);
  while (QLayoutItem* item = answers_->takeAt(0)) {
    item->widget()->deleteLater();
    delete item;
  }
  answers.push_back({tr("Close"), [] {}});
  for (NoticeAnswer& answer : answers) {
    auto* button = new QPushButton(answer.words, this);
    connect(button, &QPushButton::clicked, this, [this, then = std::move(answer.then)] {
      close_notice();
      then();
    });
    answers_->addWidget(button);
  }
  show();
}

QString NoticeBar::words() const {
  return isHidden() ? QString() : words_->text();
}

void NoticeBar::close_notice() {
  hide();
}

}  // namespace tackbench::ui
