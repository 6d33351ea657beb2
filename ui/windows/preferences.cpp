#include "ui/windows/preferences.h"

#include <QFileInfo>
#include <QSettings>

namespace tackbench::ui {

namespace {

constexpr qsizetype kMostRecent = 10;

QString word_of(Theme theme) {
  switch (theme) {
    case Theme::day:
      return "day";
    case Theme::night:
      return "night";
    case Theme::as_desktop:
      break;
  }
  return "as desktop";
}

QString desk_key(bool where_there_is_room) {
  return where_there_is_room ? "desk folded" : "desk folded in a small window";
}

QString space_key(bool where_there_is_room) {
  return where_there_is_room ? "view in space folded" : "view in space folded in a small window";
}

}  // namespace

Theme Preferences::theme() {
  const QString word = QSettings().value("light").toString();
  if (word == word_of(Theme::day)) return Theme::day;
  if (word == word_of(Theme::night)) return Theme::night;
  return Theme::as_desktop;
}

void Preferences::set_theme(Theme theme) {
  QSettings().setValue("light", word_of(theme));
}

bool Preferences::less_motion() {
  return QSettings().value("less motion", false).toBool();
}

void Preferences::set_less_motion(bool less) {
  QSettings().setValue("less motion", less);
}

std::optional<bool> Preferences::desk_folded(bool where_there_is_room) {
  const QVariant folded = QSettings().value(desk_key(where_there_is_room));
  if (!folded.isValid()) return std::nullopt;
  return folded.toBool();
}

void Preferences::set_desk_folded(bool where_there_is_room, bool folded) {
  QSettings().setValue(desk_key(where_there_is_room), folded);
}

bool Preferences::first_page_seen() {
  return QSettings().value("first page seen", false).toBool();
}

void Preferences::set_first_page_seen(bool seen) {
  QSettings().setValue("first page seen", seen);
}

QStringList Preferences::recent_files() {
  QStringList there;
  for (const QString& file : QSettings().value("recent files").toStringList())
    if (QFileInfo::exists(file)) there << file;
  return there;
}

void Preferences::add_recent_file(const QString& file) {
  QStringList files = recent_files();
  files.removeAll(file);
  files.prepend(file);
  QSettings().setValue("recent files", files.mid(0, kMostRecent));
}

std::optional<QRectF> Preferences::space_place() {
  const QRectF place = QSettings().value("view in space place").toRectF();
  // What somebody has written into the file by hand need not be a place on a sheet.
  if (!place.isValid() || !QRectF(-1.0, -1.0, 3.0, 3.0).contains(place)) return std::nullopt;
  return place;
}

void Preferences::set_space_place(const QRectF& shares) {
  QSettings().setValue("view in space place", shares);
}

std::optional<bool> Preferences::space_folded(bool where_there_is_room) {
  const QVariant folded = QSettings().value(space_key(where_there_is_room));
  if (!folded.isValid()) return std::nullopt;
  return folded.toBool();
}

void Preferences::set_space_folded(bool where_there_is_room, bool folded) {
  QSettings().setValue(space_key(where_there_is_room), folded);
}

QByteArray Preferences::window_place() {
  return QSettings().value("window place").toByteArray();
}

void Preferences::set_window_place(const QByteArray& place) {
  QSettings().setValue("window place", place);
}

}  // namespace tackbench::ui
