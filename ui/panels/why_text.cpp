#include "ui/panels/why_text.h"

#include <QCoreApplication>

#include "core/basics/wording.h"
#include "core/findings/finding_words.h"
#include "core/findings/limits.h"
#include "ui/look/palette.h"

namespace tackbench::ui {

namespace {

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(WhyText)
};

QString escaped(const std::string& text) {
  return QString::fromStdString(text).toHtmlEscaped();
}

QString paragraph(const QString& heading, const QString& text) {
  if (text.isEmpty()) return {};
  return QStringLiteral("<p style='margin:3px 0'><span style='color:%1'>%2</span><br>%3</p>")
      .arg(palette().soft.name(), heading, text);
}

QString quantities(const std::vector<Quantity>& all) {
  QStringList lines;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const std::string& words = all[i].words.empty() ? all[i].name : all[i].words;
    const auto value = [&](std::size_t k) {
      return escaped(shown_exactly(all[k].value, all[k].unit));
    };
    // Three coordinates in a row stand in one line.
    if (words.ends_with(", x") && i + 2 < all.size() && all[i + 2].words.ends_with(", z")) {
      lines += escaped(words.substr(0, words.size() - 3)) +
               QStringLiteral(" = (%1; %2; %3)").arg(value(i), value(i + 1), value(i + 2));
      i += 2;
    } else {
      lines += escaped(words) + QStringLiteral(" = ") + value(i);
    }
  }
  return lines.join(QStringLiteral("<br>"));
}

QString steps(const std::vector<TraceStep>& all) {
  QStringList lines;
  int number = 0;
  for (const TraceStep& step : all) {
    lines += QStringLiteral("%1. %2").arg(++number).arg(escaped(step.words));
    if (!step.formula.empty()) lines += QStringLiteral("&nbsp;&nbsp;") + escaped(step.formula);
    const QString results = quantities(step.results);
    if (!results.isEmpty()) lines += QStringLiteral("&nbsp;&nbsp;") + results;
  }
  return lines.join(QStringLiteral("<br>"));
}

QString worst_at(const Finding& finding, ShownUnit lengths) {
  if (!finding.worst_at) return {};
  const Controls& at = *finding.worst_at;
  return Texts::tr("hand wheel %1, bump left %2, bump right %3")
      .arg(escaped(shown(at.hand_wheel, Unit::degree)),
           escaped(shown(at.bump_left, Unit::millimetre, lengths)),
           escaped(shown(at.bump_right, Unit::millimetre, lengths)));
}

}  // namespace

QString why_text(const Project& project, const Finding& finding, ShownUnit lengths) {
  const auto plain = [&](const std::string& words) {
    return escaped(in_plain_words(project, words));
  };
  const FindingWords kind = finding_words(finding.name);
  QString text;
  text += paragraph(escaped(capitalised(kind.title)), escaped(kind.meaning));
  text += paragraph(Texts::tr("Not judged"), plain(finding.why_not_judged));
  text += paragraph(Texts::tr("Caution"), finding.caution ? plain(*finding.caution) : QString());
  text += paragraph(Texts::tr("Result"), quantities(finding.numbers));
  if (finding.limit) {
    text += paragraph(Texts::tr("Limit"), escaped(limit_words(*finding.limit, lengths)) +
                                              QStringLiteral("<br>") +
                                              plain(source_words(*finding.limit)));
  }
  text += paragraph(Texts::tr("Worst at"), worst_at(finding, lengths));
  text += paragraph(Texts::tr("Formula"), escaped(finding.trace.formula));
  text += paragraph(Texts::tr("Source of the formula"), escaped(finding.trace.source));
  text += paragraph(Texts::tr("From"), quantities(finding.trace.inputs));
  text += paragraph(Texts::tr("Steps"), steps(finding.trace.steps));
  return text;
}

}  // namespace tackbench::ui
