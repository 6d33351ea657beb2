// where FILE WIDTH HEIGHT POINT WHEEL-STEPS
// Where a point lies in the side view of the program's window of that size, after so many steps of
// the mouse's wheel over it: x and y in the window's pixels, pixels per millimetre; then the place
// of the button that undoes: x, y, width, height. For tests that drive the real program by the real
// pointer. where --picture X Y WIDTH HEIGHT A checksum of what that part of the screen shows.
#include <QApplication>
#include <QCryptographicHash>
#include <QPushButton>
#include <QScreen>
#include <QTemporaryDir>
#include <QTest>
#include <QWheelEvent>
#include <cstdio>

#include "ui/look/palette.h"
#include "ui/sheet/sheet_card.h"
#include "ui/space/opengl_probe.h"
#include "ui/windows/bench_window.h"

using namespace tackbench::ui;
using tackbench::SheetView;

int main(int argc, char** argv) {
  choose_renderer();
  const QApplication application(argc, argv);
  QApplication::setApplicationName("tackbench");
  QApplication::setOrganizationName("tackbench");
  QApplication::setStyle("Fusion");
  const QStringList words = QApplication::arguments();
  if (words.size() != 6) return 2;
  if (words[1] == "--picture") {
    const QImage seen =
        QGuiApplication::primaryScreen()
            ->grabWindow(0, words[2].toInt(), words[3].toInt(), words[4].toInt(), words[5].toInt())
            .toImage()
            .convertToFormat(QImage::Format_RGB32);
    const auto bytes = QByteArray::fromRawData(reinterpret_cast<const char*>(seen.constBits()),
                                               static_cast<int>(seen.sizeInBytes()));
    std::puts(QCryptographicHash::hash(bytes, QCryptographicHash::Sha256).toHex().constData());
    return 0;
  }
  use_theme(Theme::as_desktop);
  const QTemporaryDir recovery;
  BenchWindow window(recovery.path().toStdString());
  window.setAttribute(Qt::WA_DeleteOnClose, false);
  if (!window.open_file(words[1])) return 3;
  window.show();
  window.resize(words[2].toInt(), words[3].toInt());
  if (!QTest::qWaitForWindowExposed(&window)) return 4;
  window.session().wait_until_fresh();
  QTest::qWait(300);
  SheetCard& sheet = window.sheet();
  const std::string path = words[4].toStdString();
  const auto place = [&] { return sheet.grip_place(path, SheetView::side).value_or(QPointF()); };
  const QPoint at = place().toPoint();
  for (int i = 0; i < words[5].toInt(); ++i) {
    QWheelEvent wheel(QPointF(at), QPointF(sheet.mapToGlobal(at)), {}, QPoint(0, 120), Qt::NoButton,
                      {}, Qt::NoScrollPhase, false);
    QApplication::sendEvent(&sheet, &wheel);
  }
  QTest::qWait(50);
  const QPoint before = sheet.mapTo(&window, at);
  const QPoint point = sheet.mapTo(&window, place().toPoint());
  QRect undo;
  for (const QPushButton* button : window.findChildren<QPushButton*>())
    if (button->accessibleName() == "Undo") undo = button->geometry();
  std::printf("%d %d %d %d %g %d %d %d %d\n", before.x(), before.y(), point.x(), point.y(),
              sheet.transform().scale(), undo.x(), undo.y(), undo.width(), undo.height());
}
