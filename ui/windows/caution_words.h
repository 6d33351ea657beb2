// The cautions as one paragraph for pages and dialogs.
#pragma once

#include <QString>

#include "core/findings/cautions.h"

namespace tackbench::ui {

inline QString caution_words() {
  QString words;
  for (const std::string& sentence : caution_sentences()) {
    if (!words.isEmpty()) words += ' ';
    words += QString::fromStdString(sentence);
  }
  return words;
}

}  // namespace tackbench::ui
