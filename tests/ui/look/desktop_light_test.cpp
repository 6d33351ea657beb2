// Day or night as the desktop wishes, by a portal of the test's own on a bus of its own. What the
// numbers mean: freedesktop.org, XDG Desktop Portal, org.freedesktop.portal.Settings ("1: Prefer
// dark appearance, 2: Prefer light appearance, 0: No preference").
#include "ui/look/desktop_light.h"

#include <gtest/gtest.h>

#include <QDBusConnection>
#include <QDBusMessage>
#include <QDBusVariant>
#include <QProcess>
#include <QTest>
#include <QThread>
#include <atomic>

#include "tests/ui/look/desktop_light_test.h"
#include "ui/look/palette.h"

namespace tackbench::ui {
namespace {

constexpr const char* kPath = "/org/freedesktop/portal/desktop";
constexpr const char* kInterface = "org.freedesktop.portal.Settings";

class DesktopLightTest : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    static QProcess daemon;
    daemon.start("dbus-daemon", {"--session", "--nofork", "--print-address"});
    ASSERT_TRUE(daemon.waitForReadyRead(5000)) << "no dbus-daemon";
    bus_ = QString::fromLatin1(daemon.readLine()).trimmed();
    qputenv("DBUS_SESSION_BUS_ADDRESS", bus_.toLatin1());
  }
  void SetUp() override {
    set_desktop_night(std::nullopt);
    use_theme(Theme::as_desktop);
  }
  void TearDown() override {
    QDBusConnection::disconnectFromBus("portal");
    use_theme(Theme::day);
  }

  // Answers at once from a thread of its own, or not before this one lets it.
  void open_portal(uint wish, bool at_once) {
    portal_ = std::make_unique<SettingsPortal>(wish);
    if (at_once) {
      thread_.start();
      portal_->moveToThread(&thread_);
    }
    QDBusConnection bus = QDBusConnection::connectToBus(bus_, "portal");
    ASSERT_TRUE(bus.registerObject(kPath, portal_.get(), QDBusConnection::ExportAllSlots));
    ASSERT_TRUE(bus.registerService("org.freedesktop.portal.Desktop"));
  }
  static void wish(uint number, const char* key = "color-scheme") {
    QDBusMessage signal = QDBusMessage::createSignal(kPath, kInterface, "SettingChanged");
    signal.setArguments(
        {"org.freedesktop.appearance", key, QVariant::fromValue(QDBusVariant(number))});
    ASSERT_TRUE(QDBusConnection("portal").send(signal));
  }
  static bool becomes(bool night) {
    return QTest::qWaitFor([night] { return is_night() == night; }, 5000);
  }

  ~DesktopLightTest() override {
    thread_.quit();
    thread_.wait();
  }

  inline static QString bus_;
  QThread thread_;
  std::unique_ptr<SettingsPortal> portal_;
};

TEST_F(DesktopLightTest, TheFirstWindowOpensByNightWhereNightIsWished) {
  open_portal(1, true);
  const DesktopLight light;
  EXPECT_TRUE(is_night());
}

TEST_F(DesktopLightTest, ItFollowsWhileTheProgramRuns) {
  open_portal(2, true);
  const DesktopLight light;
  EXPECT_FALSE(is_night());
  wish(1);
  EXPECT_TRUE(becomes(true));
  wish(2);
  EXPECT_TRUE(becomes(false));
  wish(1);
  EXPECT_TRUE(becomes(true));
  wish(2, "contrast");
  QTest::qWait(100);
  EXPECT_TRUE(is_night());
  wish(0);
  EXPECT_TRUE(becomes(false));
}

TEST_F(DesktopLightTest, AChoiceOfOnesOwnStays) {
  open_portal(1, true);
  use_theme(Theme::day);
  const DesktopLight light;
  EXPECT_FALSE(is_night());
  use_theme(Theme::as_desktop);
  EXPECT_TRUE(is_night());
}

TEST_F(DesktopLightTest, APortalThatIsSlowToWakeIsHeardLater) {
  open_portal(1, false);
  const DesktopLight light;
  EXPECT_FALSE(is_night());
  EXPECT_TRUE(becomes(true));
}

TEST_F(DesktopLightTest, WithoutAPortalNothingIsWished) {
  const DesktopLight light;
  QTest::qWait(50);
  EXPECT_FALSE(is_night());
}

}  // namespace
}  // namespace tackbench::ui
