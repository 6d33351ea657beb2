#include "ui/windows/help_dialog.h"

#include <QDialogButtonBox>
#include <QPushButton>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "core/findings/cautions.h"
#include "ui/look/style.h"

namespace tackbench::ui {

namespace {

QString tr(const char* text) {
  return QObject::tr(text);
}

QString row(const QString& left, const QString& right) {
  return "<tr><td style='padding:3px 18px 3px 0'><b>" + left.toHtmlEscaped() +
         "</b></td><td style='padding:3px 0'>" + right.toHtmlEscaped() + "</td></tr>";
}

QString keys_page() {
  QString rows;
  const auto add = [&](const QString& keys, const char* words) { rows += row(keys, tr(words)); };
  add("F6", "round the window: shaft, sheet, view in space, side column, motion desk");
  add("N, P", "next and previous point, in the order in which motion flows");
  add(tr("arrows"),
      "move the selected point by 1 mm or 1/16 in; with Shift ten, with Ctrl a tenth");
  add(tr("Return or a figure"), "exact place of the selected point");
  add(tr("Shift while dragging"), "keep the point's own line");
  add(tr("Ctrl while dragging"), "no snapping");
  add("Esc", "give up the drag, the entry or the measuring");
  add("+, -, 0", "closer, further, all of it");
  add("M", "measure between points");
  add("Ctrl+Z, Ctrl+Shift+Z", "undo, redo");
  add("Ctrl+1, Ctrl+2, Ctrl+3, Ctrl+4", "findings, station, graphs, cut list");
  add("Ctrl+5, Ctrl+Shift+5", "the view in space; over the whole sheet");
  add(tr("1, 2, 3, 4 in space"), "from the left, the front, above, a corner");
  add(tr("arrows in space"),
      "go round the truck, with Shift shift it; with X, Y or Z held move the selected point");
  add("Ctrl+Left, Ctrl+Right, Ctrl+Up, Ctrl+Down", "full left, full right, full bump, full droop");
  add("Ctrl+Home", "straight, at ride height, pedals at rest");
  add("F4", "play the chosen motion, or stop it");
  add(tr("Left and Right on the hand wheel"),
      "turn it by 5 degrees, with Shift by 45; Page up and Page down go to the locks");
  add(tr("arrows on a lever"), "move it; with Shift both road wheels together, Home to nought");
  add(tr("Left and Right on a graph"), "move the cursor, and with it the truck");
  add("F7, F8, F9", "fold the motion desk, the shaft, the side column");
  add("F11", "the whole screen");
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

QString cautions_page() {
  QString page;
  for (const std::string& sentence : caution_sentences())
    page += "<p>" + QString::fromStdString(sentence).toHtmlEscaped() + "</p>";
  page += "<p><b>" + tr("Not checked").toHtmlEscaped() + "</b></p><ul>";
  for (const std::string& phrase : not_checked())
    page += "<li>" + QString::fromStdString(phrase).toHtmlEscaped() + "</li>";
  return page + "</ul>";
}

}  // namespace

std::vector<GlossaryWord> glossary() {
  return {
      {tr("Ackermann"),
       {},
       tr("How much more the inner wheel steers than the outer, against the "
          "share at which both roll about one centre.")},
      {tr("box"), tr("steering box, steering gear"),
       tr("Turns the shaft's many turns into the arm's small angle. Its own centre is where it has "
          "as much travel left as right.")},
      {tr("bump and droop"), tr("jounce and rebound"),
       tr("A wheel going up from ride height, and down.")},
      {tr("bump steer"), {}, tr("Steering that nobody asked for, when the axle rises or falls.")},
      {tr("clocking"), tr("phasing"),
       tr("How the yokes at a shaft's two ends stand to each other about the shaft; set wrong, the "
          "box's input speeds up and slows down twice a turn.")},
      {tr("drag link"), tr("pull-and-push rod"),
       tr("From the arm of the box, or the last relay, to one knuckle.")},
      {tr("effective angle"), tr("transmission angle"),
       tr("Between a link and the lever that it pushes; 90 degrees is best, 0 is toggle.")},
      {tr("firewall"), tr("bulkhead"), tr("The wall between cab and engine.")},
      {tr("kingpin"), tr("swivel pin"), tr("What a front wheel's knuckle turns about.")},
      {tr("lock"), {}, tr("The end of the steering to one side, whatever ends it.")},
      {tr("lock stop"),
       {},
       tr("A bolt on the knuckle that meets a pad on the axle and ends the "
          "lock before anything dearer does.")},
      {tr("pitman arm"), tr("drop arm"), tr("The lever on the box's output.")},
      {tr("relay"), tr("idler, bell-crank"), tr("A lever between the arm and the drag link.")},
      {tr("rod end"),
       {},
       tr("A ball in an eye with a shank; it locates a point and lets it tilt.")},
      {tr("slip"), tr("sliding shaft"),
       tr("Two halves of a shaft that slide in each other so that "
          "cab and box may move.")},
      {tr("tie rod"), tr("track rod"), tr("From one knuckle to the other.")},
      {tr("toggle"),
       {},
       tr("Lever and link in one line: the link can no longer say which way the "
          "lever goes.")},
      {tr("universal joint"), tr("cardan joint"),
       tr("A cross between two yokes; it bends a shaft and makes its speed ripple.")},
      {tr("wander"), {}, tr("A shaft whose joints can move sideways because nothing holds them.")},
      {tr("wind-up"), {}, tr("The axle's pitch when the brakes twist its springs.")},
  };
}

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
