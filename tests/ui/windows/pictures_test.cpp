// The whole window of every sample, by day and by night, in the sizes and scalings that it is made
// for, in millimetres and fractions of an inch: no text is cut off and nothing lies on anything
// else. TACKBENCH_PICTURES=<folder> keeps the pictures for looking at.
#include <QDir>
#include <QSettings>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTranslator>
#include <algorithm>
#include <array>

#include "tests/ui/panels/panel_support.h"
#include "ui/look/palette.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/shaft_strip.h"
#include "ui/sheet/sheet_card.h"
#include "ui/windows/bench_window.h"
#include "ui/windows/side_column.h"

namespace tackbench::ui {
namespace {

struct Size {
  const char* name = nullptr;
  QSize size;  // in the window's own pixels: the screen's divided by the scaling
};

const std::array kSizes = {
    Size{"1280x720", {1280, 720}},       Size{"1280x720-at-125", {1024, 576}},
    Size{"1280x720-at-150", {853, 480}}, Size{"960x540", {960, 540}},
    Size{"1440x900", {1440, 900}},       Size{"2560x1440-at-200", {1280, 720}},
    Size{"2560x1440", {2560, 1440}},
};

// Shown children of one parent, none inside a scrolled page, that share pixels.
void expect_nothing_overlaps(const QWidget& parent) {
  std::vector<const QWidget*> children;
  for (const QObject* child : parent.children()) {
    const auto* widget = qobject_cast<const QWidget*>(child);
    if (widget != nullptr && widget->isVisibleTo(&parent) && !widget->isWindow())
      children.push_back(widget);
  }
  for (std::size_t i = 0; i < children.size(); ++i)
    for (std::size_t j = i + 1; j < children.size(); ++j) {
      const QRect shared = children[i]->geometry() & children[j]->geometry();
      EXPECT_TRUE(shared.isEmpty())
          << parent.metaObject()->className() << ": " << children[i]->metaObject()->className()
          << " and " << children[j]->metaObject()->className() << " share " << shared.width() << 'x'
          << shared.height();
    }
}

class WindowPictures : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    QStandardPaths::setTestModeEnabled(true);
    QSettings().clear();
  }
  void TearDown() override { use_theme(Theme::day); }

  void look_at(BenchWindow& window, const QString& name) {
    window.session().wait_until_fresh();
    settle();
    SCOPED_TRACE(name.toStdString());
    expect_nothing_clipped(window);
    expect_nothing_overlaps(window);
    expect_nothing_overlaps(window.shaft());
    for (QWidget* child : window.findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly))
      EXPECT_TRUE(!child->isVisible() || window.rect().contains(child->geometry()))
          << child->metaObject()->className();
    keep_picture(window, name);
  }
};

class SampleWindowPictures : public WindowPictures,
                             public testing::WithParamInterface<const char*> {};

TEST_P(SampleWindowPictures, NothingIsCutOffOrCovered) {
  if (const QString folder = qEnvironmentVariable("TACKBENCH_PICTURES"); !folder.isEmpty())
    QDir().mkpath(folder);
  const QTemporaryDir recovery;
  for (const Theme theme : {Theme::day, Theme::night}) {
    use_theme(theme);
    BenchWindow window(recovery.path().toStdString());
    window.setAttribute(Qt::WA_DeleteOnClose, false);
    window.open_sample(GetParam());
    window.show();
    for (const Size& size : kSizes) {
      window.resize(size.size);
      EXPECT_EQ(window.size(), size.size) << size.name << " is too small for the window";
      for (const ShownUnit unit : {ShownUnit::millimetre, ShownUnit::inch_fraction}) {
        window.set_shown_unit(unit);
        const QString name = QString("%1-%2-%3-%4")
                                 .arg(GetParam(), size.name, theme == Theme::day ? "day" : "night",
                                      unit == ShownUnit::millimetre ? "mm" : "inch");
        look_at(window, name);
      }
    }
    // Every page of the side column, at the smallest size that is no scaling.
    window.resize(1280, 720);
    for (const SidePage page :
         {SidePage::station, SidePage::graphs, SidePage::cut_list, SidePage::findings}) {
      window.side().show_page(page);
      look_at(window, QString("%1-page-%2-%3")
                          .arg(GetParam())
                          .arg(static_cast<int>(page))
                          .arg(theme == Theme::day ? "day" : "night"));
    }
  }
}

// Another language: every text three tenths longer, as German is.
class LongWords : public QTranslator {
 public:
  QString translate(const char*, const char* source, const char*, int) const override {
    const QString words = QString::fromUtf8(source);
    return words.size() < 3 ? words : words + QString(words.size() * 3 / 10, QLatin1Char('e'));
  }
  bool isEmpty() const override { return false; }
};

TEST_F(WindowPictures, LongerWordsHaveRoomToo) {
  LongWords longer;
  QCoreApplication::installTranslator(&longer);
  const QTemporaryDir recovery;
  {
    BenchWindow window(recovery.path().toStdString());
    window.setAttribute(Qt::WA_DeleteOnClose, false);
    window.open_sample("tender-as-first-tacked");
    window.show();
    for (const QSize& size :
         {QSize(853, 480), QSize(960, 540), QSize(1280, 720), QSize(1440, 900)}) {
      window.resize(size);
      look_at(window, QString("long-words-%1").arg(size.width()));
      if (window.side().isHidden()) window.action("fold side")->trigger();
      for (const SidePage page :
           {SidePage::station, SidePage::graphs, SidePage::cut_list, SidePage::findings}) {
        window.side().show_page(page);
        look_at(window,
                QString("long-words-%1-page-%2").arg(size.width()).arg(static_cast<int>(page)));
      }
    }
  }
  QCoreApplication::removeTranslator(&longer);
}

// Share of 2x2 blocks of pixels that are not of one colour.
double detail(const QImage& picture) {
  int uneven = 0;
  int blocks = 0;
  for (int y = 0; y + 1 < picture.height(); y += 2)
    for (int x = 0; x + 1 < picture.width(); x += 2) {
      ++blocks;
      const QRgb first = picture.pixel(x, y);
      uneven += picture.pixel(x + 1, y) != first || picture.pixel(x, y + 1) != first ||
                        picture.pixel(x + 1, y + 1) != first
                    ? 1
                    : 0;
    }
  return static_cast<double>(uneven) / std::max(blocks, 1);
}

// Run again with QT_SCALE_FACTOR: what is painted is painted in the screen's own pixels. At two to
// one, a picture of lesser pixels blown up would have blocks of one colour only.
TEST_F(WindowPictures, ArePaintedInTheScreensOwnPixels) {
  const QTemporaryDir recovery;
  BenchWindow window(recovery.path().toStdString());
  window.setAttribute(Qt::WA_DeleteOnClose, false);
  window.open_sample("tender-as-first-tacked");
  window.show();
  const double scaling = window.devicePixelRatioF();
  EXPECT_EQ(scaling, qEnvironmentVariable("QT_SCALE_FACTOR", "1").toDouble());
  const QSize screen = scaling > 1.5 ? QSize(2560, 1440) : QSize(1280, 720);
  window.resize(screen / scaling);
  look_at(window, QString("scaled-%1").arg(scaling));
  std::vector<QWidget*> painted{&window.sheet(), &window.shaft(), &window.side()};
  for (QWidget* widget : painted) {
    const QImage picture = widget->grab().toImage();
    EXPECT_NEAR(picture.width(), widget->width() * scaling, 1.0);
    EXPECT_GT(detail(picture), 0.01) << widget->metaObject()->className();
  }
}

INSTANTIATE_TEST_SUITE_P(Samples, SampleWindowPictures,
                         testing::Values("tender-as-first-tacked", "tender-sorted", "timber-wagon",
                                         "bare-start"));

}  // namespace
}  // namespace tackbench::ui
