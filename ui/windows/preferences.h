// What the program remembers between runs; nothing of it is part of a project.
#pragma once

#include <QString>
#include <QStringList>

#include "ui/look/palette.h"

namespace tackbench::ui {

class Preferences {
 public:
  static Theme theme();
  static void set_theme(Theme theme);
  static bool first_page_seen();
  static void set_first_page_seen(bool seen);
  // Newest first, at most ten, only files that are there.
  static QStringList recent_files();
  static void add_recent_file(const QString& file);
  static QByteArray window_place();
  static void set_window_place(const QByteArray& place);
};

}  // namespace tackbench::ui
