#include "ui/panels/cut_list_panel.h"

#include <QEvent>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QScrollBar>
#include <QVBoxLayout>

#include "core/fabrication/cut_list_writers.h"
#include "core/fabrication/make_cut_list.h"
#include "ui/fields/entry_text.h"
#include "ui/look/style.h"
#include "ui/look/type.h"
#include "ui/panels/cut_list_text.h"
#include "ui/panels/station_words.h"

namespace tackbench::ui {

CutListPanel::CutListPanel(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
  dress(*this);
  setAttribute(Qt::WA_StyledBackground);
  set_look(*this, "card");
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(10, 8, 4, 6);
  column->setSpacing(6);
  auto* row = new QHBoxLayout;
  auto* title = new QLabel(tr("Cut list"), this);
  set_look(*title, "title");
  row->addWidget(title, 1);
  save_ = new QPushButton(tr("Save cut list..."), this);
  save_->setAccessibleName(tr("Save cut list into a folder"));
  connect(save_, &QPushButton::clicked, this, &CutListPanel::ask_and_save);
  row->addWidget(save_);
  column->addLayout(row);
  state_ = new QLabel(this);
  set_look(*state_, "soft");
  state_->setWordWrap(true);
  column->addWidget(state_);
  text_ = new QTextBrowser(this);
  text_->setAccessibleName(tr("Cut list"));
  text_->setFont(figure_font(TypeSize::small));
  text_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  text_->document()->setDocumentMargin(0);
  column->addWidget(text_, 1);
  calm_ = new CalmRefresh(session_, *this, [this] { refresh(); });
  connect(&session_, &Session::judged_changed, calm_, &CalmRefresh::want);
  refresh();
}

void CutListPanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  refresh();
}

void CutListPanel::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange && text_ != nullptr) refresh();
}

void CutListPanel::refresh() {
  const JudgedTruck& judged = session_.judged();
  const bool stale = !session_.judged_fresh() || calm_->in_drag();
  const bool from_before = judged.revision > 0;
  if (!stale) {
    state_->setText(tr("Lengths in mm, angles in degrees."));
  } else if (!session_.cannot_work_out().empty()) {
    state_->setText(from_before ? cannot_work_out_words(session_) + QLatin1Char('\n') +
                                      tr("This is the cut list from before.")
                                : cannot_work_out_words(session_));
  } else if (session_.checks_stopped()) {
    state_->setText(tr("Stopped. This is the cut list from before the last edit."));
  } else {
    state_->setText(from_before ? tr("From before the last edit: being worked out again.")
                                : tr("Being worked out."));
  }
  if (!isVisible()) return;
  if (stale && !from_before) return text_->clear();
  const int at = text_->verticalScrollBar()->value();
  const CutList list = make_cut_list(*judged.mechanism, judged.results, judged.findings);
  text_->setHtml(cut_list_blocks(list, stale));
  text_->verticalScrollBar()->setValue(at);
}

Result<std::vector<std::filesystem::path>> CutListPanel::save_into(
    const std::filesystem::path& folder) {
  session_.settle_entries();
  if (session_.checks_stopped()) session_.run_checks_again();
  session_.wait_until_fresh();
  const JudgedTruck& judged = session_.judged();
  if (!session_.judged_fresh()) {
    state_->setText(cannot_work_out_words(session_));
    return session_.cannot_work_out();
  }
  auto written =
      write_cut_list(make_cut_list(*judged.mechanism, judged.results, judged.findings), folder);
  if (!written) {
    state_->setText(fault_words(written.problems()));
    return written;
  }
  const QString where = QString::fromStdString(folder.string());
  state_->setText(tr("%1 files saved into %2").arg(written->size()).arg(where));
  Q_EMIT saved(where);
  return written;
}

void CutListPanel::ask_and_save() {
  const QString folder = QFileDialog::getExistingDirectory(
      this, tr("Folder for the cut list"), QString::fromStdString(session_.file().parent_path()));
  // Faults stand in the panel by now.
  if (!folder.isEmpty()) (void)save_into(folder.toStdString());
}

}  // namespace tackbench::ui
