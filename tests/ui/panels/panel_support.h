// What the tests of the panels share: samples, a look at clipped text and at names of controls.
#pragma once

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QTest>
#include <QWidget>

#include "core/project-file/project_file.h"
#include "ui/look/short_label.h"
#include "ui/session/session.h"

namespace tackbench::ui {

inline Project sample(const std::string& name) {
  const Result<Project> read = read_project(std::string(TACKBENCH_SOURCE_FOLDER) +
                                            "/sample-projects/" + name + '/' + name + ".tack");
  return read ? *read : Project{};
}

inline std::string text_of(const Session& session) {
  return project_text(session.project());
}

// Lets layouts settle.
inline void settle() {
  for (int i = 0; i < 4; ++i) QCoreApplication::processEvents();
}

// A picture for people, when a folder is named.
inline void keep_picture(QWidget& widget, const QString& name) {
  const QString folder = qEnvironmentVariable("TACKBENCH_PICTURES");
  if (!folder.isEmpty()) widget.grab().save(folder + QLatin1Char('/') + name + ".png");
}

inline void expect_names(const QWidget& widget) {
  for (const QWidget* each : widget.findChildren<QWidget*>()) {
    if (each->focusPolicy() == Qt::NoFocus || each->objectName().startsWith("qt_")) continue;
    if (qobject_cast<const QLabel*>(each) != nullptr) continue;
    EXPECT_FALSE(each->accessibleName().isEmpty())
        << each->metaObject()->className() << ' ' << each->objectName().toStdString();
  }
}

// No text that is shown is wider or higher than its place.
inline void expect_nothing_clipped(const QWidget& widget) {
  for (const QLabel* label : widget.findChildren<QLabel*>()) {
    if (!label->isVisibleTo(&widget) || label->text().isEmpty()) continue;
    if (qobject_cast<const ShortLabel*>(label) != nullptr) continue;  // shortens itself
    const std::string words = label->text().left(60).toStdString();
    if (label->wordWrap()) {
      EXPECT_GE(label->height(), label->heightForWidth(label->width())) << words;
      EXPECT_GE(label->width(), label->minimumSizeHint().width()) << words;
    } else {
      EXPECT_GE(label->width(), label->sizeHint().width()) << words;
    }
  }
  for (const QAbstractButton* button : widget.findChildren<QAbstractButton*>()) {
    if (!button->isVisibleTo(&widget) || button->text().isEmpty()) continue;
    EXPECT_GE(button->width(), button->minimumSizeHint().width()) << button->text().toStdString();
    EXPECT_GE(button->height(), button->minimumSizeHint().height()) << button->text().toStdString();
  }
  for (const QLineEdit* line : widget.findChildren<QLineEdit*>()) {
    if (!line->isVisibleTo(&widget) || line->alignment().testFlag(Qt::AlignLeft)) continue;
    // Figures are read whole; a long name scrolls within its field.
    const int room = line->width() - 2 * 5;
    EXPECT_GE(room, line->fontMetrics().horizontalAdvance(line->text()))
        << line->objectName().toStdString() << ' ' << line->text().toStdString();
  }
  for (const QWidget* child : widget.findChildren<QWidget*>()) {
    if (!child->isVisibleTo(&widget) || child->isWindow()) continue;
    const QWidget* parent = child->parentWidget();
    if (parent == nullptr || parent->objectName().startsWith("qt_")) continue;
    EXPECT_LE(child->geometry().right(), parent->width())
        << child->metaObject()->className() << ' ' << child->objectName().toStdString();
  }
}

}  // namespace tackbench::ui
