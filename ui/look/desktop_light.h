// Whether the desktop wishes for day or night, by its portal (freedesktop.org's Settings portal,
// org.freedesktop.appearance, color-scheme: 0 no wish, 1 dark, 2 light): asked at the start,
// followed while the program runs, handed to set_desktop_night(). Without a portal nothing is
// wished.
#pragma once

#include <QObject>

class QDBusMessage;
class QDBusVariant;

namespace tackbench::ui {

class DesktopLight : public QObject {
  Q_OBJECT

 public:
  explicit DesktopLight(QObject* parent = nullptr);

 private Q_SLOTS:
  void setting_changed(const QString& group, const QString& key, const QDBusVariant& value);
  void answered(const QDBusMessage& answer);
};

}  // namespace tackbench::ui
