#include "ui/windows/side_column.h"

#include <QHBoxLayout>
#include <QStackedWidget>
#include <QToolButton>
#include <QVBoxLayout>

#include "ui/graphs/graphs_panel.h"
#include "ui/look/style.h"
#include "ui/panels/cut_list_panel.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/station_sheet.h"

namespace tackbench::ui {

namespace {
constexpr int kWidth = 320;
}

SideColumn::SideColumn(Session& session, QWidget* parent)
    : QWidget(parent),
      findings_(new FindingsPanel(session)),
      station_(new StationSheet(session)),
      graphs_(new GraphsPanel(session)),
      cut_list_(new CutListPanel(session)),
      pages_(new QStackedWidget(this)) {
  setFixedWidth(kWidth);
  setAccessibleName(tr("Side column"));
  for (QWidget* page : {static_cast<QWidget*>(findings_), static_cast<QWidget*>(station_),
                        static_cast<QWidget*>(graphs_), static_cast<QWidget*>(cut_list_)})
    pages_->addWidget(page);

  auto* row = new QHBoxLayout;
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(2);
  const auto add = [&](const QString& words, SidePage page) {
    auto* button = new QToolButton(this);
    button->setText(words);
    set_look(*button, "page");
    button->setCheckable(true);
    button->setAutoExclusive(true);
    button->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(button, &QToolButton::clicked, this, [this, page] { show_page(page); });
    choices_.push_back(button);
    row->addWidget(button);
  };
  add(tr("Findings"), SidePage::findings);
  add(tr("Station"), SidePage::station);
  add(tr("Graphs"), SidePage::graphs);
  add(tr("Cut list"), SidePage::cut_list);

  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(6);
  column->addLayout(row);
  column->addWidget(pages_, 1);
  show_page(SidePage::findings);
}

void SideColumn::show_page(SidePage page) {
  pages_->setCurrentIndex(static_cast<int>(page));
  choices_[static_cast<std::size_t>(page)]->setChecked(true);
  Q_EMIT page_changed();
}

SidePage SideColumn::page() const {
  return static_cast<SidePage>(pages_->currentIndex());
}

void SideColumn::show_station(Station station) {
  show_record(station_name(station));
}

void SideColumn::show_record(const std::string& root) {
  station_->show_record(root);
  show_page(SidePage::station);
}

void SideColumn::begin(const std::string& path) {
  show_page(SidePage::station);
  station_->begin(path);
}

}  // namespace tackbench::ui
