#include "ui/look/desktop_light.h"

#include <QDBusConnection>
#include <QDBusMessage>
#include <QDBusVariant>

#include "ui/look/palette.h"

namespace tackbench::ui {

namespace {

constexpr const char* kService = "org.freedesktop.portal.Desktop";
constexpr const char* kPath = "/org/freedesktop/portal/desktop";
constexpr const char* kInterface = "org.freedesktop.portal.Settings";
constexpr const char* kGroup = "org.freedesktop.appearance";
constexpr const char* kKey = "color-scheme";
// As long as the first window may wait, so that it does not open by day and turn to night.
constexpr int kPatienceMs = 150;

// Read() answers with a variant inside a variant.
void take(QVariant value) {
  while (value.canConvert<QDBusVariant>()) value = value.value<QDBusVariant>().variant();
  bool number = false;
  const uint wish = value.toUInt(&number);
  if (number && wish == 1)
    set_desktop_night(true);
  else if (number && wish == 2)
    set_desktop_night(false);
  else
    set_desktop_night(std::nullopt);
}

}  // namespace

DesktopLight::DesktopLight(QObject* parent) : QObject(parent) {
  QDBusConnection bus = QDBusConnection::sessionBus();
  if (!bus.isConnected()) return;
  QDBusMessage ask = QDBusMessage::createMethodCall(kService, kPath, kInterface, "Read");
  ask.setArguments({kGroup, kKey});
  const QDBusMessage answer = bus.call(ask, QDBus::Block, kPatienceMs);
  // After the first answer: Qt 6.4 passes no signal on to whoever asked for it on a bus just
  // opened.
  bus.connect({}, kPath, kInterface, "SettingChanged", this,
              SLOT(setting_changed(QString, QString, QDBusVariant)));
  if (answer.type() == QDBusMessage::ReplyMessage)
    answered(answer);
  else if (answer.errorName() == "org.freedesktop.DBus.Error.NoReply")
    bus.callWithCallback(ask, this, SLOT(answered(QDBusMessage)));  // a portal that is slow to wake
}

void DesktopLight::setting_changed(const QString& group, const QString& key,
                                   const QDBusVariant& value) {
  if (group == kGroup && key == kKey) take(value.variant());
}

void DesktopLight::answered(const QDBusMessage& answer) {
  if (!answer.arguments().isEmpty()) take(answer.arguments().front());
}

}  // namespace tackbench::ui
