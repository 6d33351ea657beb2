// What the program remembers between runs; nothing of it is part of a project.
#pragma once

#include <QRectF>
#include <QString>
#include <QStringList>
#include <optional>

#include "ui/look/palette.h"

namespace tackbench::ui {

class Preferences {
 public:
  static Theme theme();
  static void set_theme(Theme theme);
  // Nothing is played then.
  static bool less_motion();
  static void set_less_motion(bool less);
  // None: never folded nor unfolded by hand.
  static std::optional<bool> desk_folded(bool where_there_is_room);
  static void set_desk_folded(bool where_there_is_room, bool folded);
  static bool first_page_seen();
  static void set_first_page_seen(bool seen);
  // Newest first, at most ten, only files that are there.
  static QStringList recent_files();
  static void add_recent_file(const QString& file);
  // Of the card with the view in space, shares of the sheet; none: never placed by hand.
  static std::optional<QRectF> space_place();
  static void set_space_place(const QRectF& shares);
  // Put away; none: never put away nor taken out by hand.
  static std::optional<bool> space_folded(bool where_there_is_room);
  static void set_space_folded(bool where_there_is_room, bool folded);
  static QByteArray window_place();
  static void set_window_place(const QByteArray& place);
};

}  // namespace tackbench::ui
