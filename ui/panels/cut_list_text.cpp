#include "ui/panels/cut_list_text.h"

#include <QCoreApplication>

#include "ui/look/palette.h"

namespace tackbench::ui {

namespace {

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(CutListText)
};

QString escaped(const std::string& text) {
  return QString::fromStdString(text).toHtmlEscaped();
}

// Writes blocks in the palette's colours.
class BlockWriter {
 public:
  explicit BlockWriter(bool stale)
      : ink_(stale ? palette().soft.name() : palette().ink.name()),
        soft_(palette().soft.name()),
        past_(stale ? palette().soft.name() : palette().past.name()) {}

  void heading(const QString& words) {
    text_ +=
        QStringLiteral("<p style='color:%1; margin:10px 0 2px 0'><b>%2</b></p>").arg(ink_, words);
  }
  void line(const QString& words) {
    text_ += QStringLiteral("<p style='color:%1; margin:1px 0'>%2</p>").arg(ink_, words);
  }
  void lesser(const QString& words) {
    text_ += QStringLiteral("<p style='color:%1; margin:1px 0'>%2</p>").arg(soft_, words);
  }
  void caution(const QString& words) {
    text_ += QStringLiteral("<p style='color:%1; margin:2px 0'>%2</p>").arg(past_, words);
  }
  void item(const CutItem& item) {
    heading(escaped(item.title) + QStringLiteral(", ") + Texts::tr("make %1").arg(item.quantity));
    for (const std::string& words : item.cautions) caution(escaped(words));
    text_ += QStringLiteral("<table width='100%' cellspacing='0' cellpadding='1'>");
    std::string group;
    for (const CutDimension& dimension : item.dimensions) {
      if (dimension.group != group && !dimension.group.empty())
        row(QStringLiteral("<i>%1</i>").arg(escaped(dimension.group)), {});
      group = dimension.group;
      row(escaped(dimension.words), value(dimension));
      if (!dimension.note.empty()) note(escaped(dimension.note));
    }
    text_ += QStringLiteral("</table>");
    for (const std::string& words : item.notes) lesser(escaped(words));
  }
  QString taken() { return std::move(text_); }

 private:
  static QString value(const CutDimension& dimension) {
    if (!dimension.value) return escaped(dimension.text);
    QString words =
        QStringLiteral("<b>%1</b> %2")
            .arg(escaped(value_text(dimension)), QString::fromLatin1(symbol(dimension.unit)));
    if (dimension.tolerance_kind == ToleranceKind::plus_minus)
      words += QStringLiteral(" \u00b1") + escaped(tolerance_text(dimension));
    if (dimension.tolerance_kind == ToleranceKind::blank)
      words +=
          QStringLiteral("<br>") + Texts::tr("tolerance: ") + escaped(tolerance_text(dimension));
    return words;
  }
  void row(const QString& words, const QString& value) {
    text_ += QStringLiteral(
                 "<tr><td style='color:%1'>%2</td>"
                 "<td align='right' style='color:%1; padding-left:6px'>%3</td></tr>")
                 .arg(ink_, words, value);
  }
  void note(const QString& words) {
    text_ += QStringLiteral("<tr><td colspan='2' style='color:%1'>%2</td></tr>").arg(soft_, words);
  }

  QString ink_;
  QString soft_;
  QString past_;
  QString text_;
};

}  // namespace

QString cut_list_blocks(const CutList& list, bool stale) {
  BlockWriter writer(stale);
  for (const std::string& words : list.cautions) writer.caution(escaped(words));
  if (!list.past.empty()) {
    writer.heading(Texts::tr("Past their limits: %1. Settle these before anything is made")
                       .arg(list.past.size()));
    for (const PastFinding& finding : list.past) writer.line(escaped(finding.sentence));
  }
  for (const CutItem& item : list.items) writer.item(item);
  if (list.items.empty()) writer.heading(Texts::tr("Nothing can be made yet."));
  if (!list.waiting.empty()) {
    writer.heading(Texts::tr("Not listed yet"));
    for (const std::string& words : list.waiting) writer.line(escaped(words));
  }
  if (!list.not_checked.empty()) {
    writer.heading(Texts::tr("Not checked"));
    for (const std::string& words : list.not_checked) writer.lesser(escaped(words));
  }
  return writer.taken();
}

}  // namespace tackbench::ui
