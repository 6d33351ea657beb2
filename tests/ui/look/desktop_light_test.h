// A desktop portal that knows one setting: whether dark or light is wished.
// Named like its test, where moc looks.
#pragma once

#include <QDBusVariant>
#include <QObject>
#include <QString>
#include <QVariant>

namespace tackbench::ui {

class SettingsPortal : public QObject {
  Q_OBJECT
  Q_CLASSINFO("D-Bus Interface", "org.freedesktop.portal.Settings")

 public:
  explicit SettingsPortal(uint wish) : wish_(wish) {}

 public Q_SLOTS:  // NOLINT(readability-redundant-access-specifiers): what the bus may call
  // A variant inside a variant, as the portal's older call answers.
  // NOLINTNEXTLINE(readability-identifier-naming): its name on the bus
  QDBusVariant Read(const QString& group, const QString& key) {
    const bool known = group == "org.freedesktop.appearance" && key == "color-scheme";
    return QDBusVariant(QVariant::fromValue(QDBusVariant(known ? wish_ : 77U)));
  }

 private:
  uint wish_;
};

}  // namespace tackbench::ui
