#include "ui/windows/help_dialog.h"

#include <QDialogButtonBox>
#include <QPushButton>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "core/findings/cautions.h"
#include "ui/look/style.h"
#include "ui/windows/glossary.h"
#include "ui/windows/help_numbers.h"

namespace tackbench::ui {

namespace {

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(Help)
};

QString row(const QString& left, const QString& right) {
  return "<tr><td style='padding:3px 18px 3px 0'><b>" + left.toHtmlEscaped() +
         "</b></td><td style='padding:3px 0'>" + right.toHtmlEscaped() + "</td></tr>";
}

QString keys_page() {
  QString rows;
  const auto add = [&](const QString& keys, const QString& words) { rows += row(keys, words); };
  add("F6", Texts::tr("round the window: shaft, sheet, view in space, side column, motion desk"));
  add("N, P", Texts::tr("next and previous point, in the order in which motion flows"));
  add(Texts::tr("arrows"),
      Texts::tr("move the selected point by 1 mm or 1/16 in; with Shift ten, with Ctrl a tenth"));
  add(Texts::tr("Return or a figure"), Texts::tr("exact place of the selected point"));
  add(Texts::tr("Shift while dragging"), Texts::tr("keep the point's own line"));
  add(Texts::tr("Ctrl while dragging"), Texts::tr("no snapping"));
  add("Esc", Texts::tr("give up the drag, the entry or the measuring"));
  add("+, -, F",
      Texts::tr("closer, further, all of it; with a point selected - begins its exact place, and "
                "Ctrl+- goes further"));
  add("M", Texts::tr("measure between points"));
  add("Ctrl+Z, Ctrl+Shift+Z", Texts::tr("undo, redo"));
  add("Ctrl+1, Ctrl+2, Ctrl+3, Ctrl+4", Texts::tr("findings, station, graphs, cut list"));
  add("Ctrl+5, Ctrl+Shift+5", Texts::tr("the view in space; over the whole sheet"));
  add(Texts::tr("1, 2, 3, 4 in space"), Texts::tr("from the left, the front, above, a corner"));
  add(Texts::tr("arrows in space"),
      Texts::tr(
          "go round the truck, with Shift shift it; with X, Y or Z held move the selected point"));
  add("Ctrl+Left, Ctrl+Right, Ctrl+Up, Ctrl+Down",
      Texts::tr(
          "full left, full right, full bump, full droop, while no point is selected on the sheet"));
  add("Ctrl+Home", Texts::tr("straight, at ride height, pedals at rest"));
  add("F4", Texts::tr("play the chosen motion, or stop it"));
  add(Texts::tr("Left and Right on the hand wheel"),
      Texts::tr("turn it by 5 degrees, with Shift by 45; Page up and Page down go to the locks"));
  add(Texts::tr("arrows on a lever"),
      Texts::tr("move it; with Shift both road wheels together, Home to nought"));
  add(Texts::tr("Left and Right on a graph"), Texts::tr("move the cursor, and with it the truck"));
  add("F7, F8, F9", Texts::tr("fold the motion desk, the shaft, the side column"));
  add("F11", Texts::tr("the whole screen"));
  return "<table>" + rows + "</table>";
}

QString words_page() {
  QString page;
  for (const GlossaryWord& each : glossary()) {
    page += "<p><b>" + each.word.toHtmlEscaped() + "</b>";
    if (!each.variants.isEmpty()) page += " (" + each.variants.toHtmlEscaped() + ")";
    page += "<br>" + each.meaning.toHtmlEscaped() + "</p>";
  }
  return page;
}

QString numbers_page() {
  QString page;
  for (const HelpSection& section : help_numbers()) {
    page += "<h3>" + section.heading.toHtmlEscaped() + "</h3>";
    for (const Meaning& each : section.entries)
      page +=
          "<p><b>" + each.word.toHtmlEscaped() + "</b><br>" + each.meaning.toHtmlEscaped() + "</p>";
  }
  return page;
}

QString cautions_page() {
  QString page;
  for (const std::string& sentence : caution_sentences())
    page += "<p>" + QString::fromStdString(sentence).toHtmlEscaped() + "</p>";
  page += "<p><b>" + Texts::tr("Not checked").toHtmlEscaped() + "</b></p><ul>";
  for (const std::string& phrase : not_checked())
    page += "<li>" + QString::fromStdString(phrase).toHtmlEscaped() + "</li>";
  return page + "</ul>";
}

}  // namespace

HelpDialog::HelpDialog(HelpPage page, QWidget* parent) : QDialog(parent) {
  auto* text = new QTextBrowser(this);
  switch (page) {
    case HelpPage::keys:
      setWindowTitle(HelpDialog::tr("Keys"));
      text->setHtml(keys_page());
      break;
    case HelpPage::words:
      setWindowTitle(HelpDialog::tr("Words of the trade"));
      text->setHtml(words_page());
      break;
    case HelpPage::numbers:
      setWindowTitle(HelpDialog::tr("What the numbers mean"));
      text->setHtml(numbers_page());
      break;
    case HelpPage::cautions:
      setWindowTitle(HelpDialog::tr("Cautions, and what is not checked"));
      text->setHtml(cautions_page());
      break;
  }
  text->setAccessibleName(windowTitle());
  auto* buttons = new QDialogButtonBox(this);
  connect(buttons->addButton(HelpDialog::tr("Close"), QDialogButtonBox::RejectRole),
          &QPushButton::clicked, this, &QDialog::reject);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(16, 16, 16, 12);
  column->addWidget(text);
  column->addWidget(buttons);
  resize(620, 520);
  dress(*this);
}

}  // namespace tackbench::ui
