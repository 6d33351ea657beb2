#include "ui/fields/entry_text.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/basics/entered_number.h"
#include "core/findings/finding_words.h"
#include "core/project/field_faults.h"
#include "core/project/number_text.h"

namespace tackbench::ui {

namespace {

constexpr const char* kNone = "none";

struct Texts {
  Q_DECLARE_TR_FUNCTIONS(EntryText)
};

// A number in the file's unit as screens show it, with as few digits as give it back.
QString exact_number(Unit unit, double in_file, ShownUnit lengths) {
  if (unit != Unit::millimetre || lengths == ShownUnit::millimetre)
    return QString::fromStdString(number_text(in_file));
  if (lengths == ShownUnit::inch_fraction) {
    const std::string fraction = shown_bare(in_file, unit, lengths);
    if (!fraction.starts_with('~')) return QString::fromStdString(fraction);
  }
  return QString::fromStdString(number_text(in_file / kMillimetresPerInch));
}

Problem fault(const FieldEntry& entry, const QString& found, const QString& wanted) {
  return {"", entry.path, found.toStdString(), wanted.toStdString()};
}

Result<std::string> number_member(const FieldEntry& entry, const QString& typed,
                                  ShownUnit lengths) {
  const Result<double> inside = entered_number(typed.toStdString(), entry.unit, lengths);
  if (!inside) return inside.problems();
  const double in_file = shown_from_inside(entry.unit, *inside);
  const auto shown = [&](double value) { return exact_number(entry.unit, value, lengths); };
  if (entry.kind == EntryKind::whole && in_file != std::floor(in_file))
    return fault(entry, Texts::tr("%1 is no whole number").arg(shown(in_file)),
                 Texts::tr("give %1").arg(range_words(entry, lengths)));
  // A hair of rounding on the way through the unit is not past the range.
  const double hair = 1e-9 * (1.0 + std::abs(in_file));
  if (in_file < entry.least - hair || in_file > entry.most + hair)
    return fault(entry, Texts::tr("%1 lies outside the range").arg(shown(in_file)),
                 Texts::tr("give %1").arg(range_words(entry, lengths)));
  return number_text(std::clamp(in_file, entry.least, entry.most));
}

}  // namespace

ShownUnit unit_for(const FieldEntry& entry, ShownUnit shown) {
  const bool thread = entry.path.find("thread.") != std::string::npos;
  return thread ? ShownUnit::millimetre : shown;
}

QString unit_sign(Unit unit, ShownUnit lengths) {
  switch (unit) {
    case Unit::degree:
      return QStringLiteral("\u00b0");
    case Unit::count:
      return {};
    default:
      return QString::fromStdString(unit_words(unit, lengths));
  }
}

QString shown_entry(const FieldEntry& entry, const std::string& member_text, ShownUnit lengths) {
  if (entry.kind == EntryKind::text) return QString::fromStdString(member_text);
  if (member_text == kNone) return {};
  const auto in_file = number_from_text(member_text);
  if (!in_file) return QString::fromStdString(member_text);
  // Ratios, thread pitches and the like need their digits; 1.25 is not 1.3.
  const double inside = inside_from_shown(entry.unit, *in_file);
  const bool rounded_away = std::abs(*in_file) < 10.0 && entry.unit != Unit::degree;
  if (rounded_away && (entry.unit != Unit::millimetre || lengths == ShownUnit::millimetre))
    return QString::number(*in_file == 0.0 ? 0.0 : *in_file, 'g', 6);
  return QString::fromStdString(shown_bare(inside, entry.unit, lengths));
}

QString exact_entry(const FieldEntry& entry, const std::string& member_text, ShownUnit lengths) {
  if (entry.kind == EntryKind::text) return QString::fromStdString(member_text);
  if (member_text == kNone) return {};
  const auto in_file = number_from_text(member_text);
  return in_file ? exact_number(entry.unit, *in_file, lengths)
                 : QString::fromStdString(member_text);
}

Result<std::string> member_text(const FieldEntry& entry, const QString& typed, ShownUnit lengths) {
  if (entry.kind == EntryKind::text) {
    TextField field;
    const std::string words = entry.words.toStdString();
    field.words = words;
    field.kind = entry.text_kind;
    // Quotes keep a text as it is, blanks at its ends too.
    const std::string given = typed.toStdString();
    if (const auto wrong = text_fault(field, entry.path, given)) return *wrong;
    return "\"" + given + "\"";
  }
  const QString text = typed.trimmed();
  if (text.isEmpty()) {
    if (entry.optional) return std::string(kNone);
    return fault(entry, Texts::tr("this one has to be given"),
                 Texts::tr("give %1").arg(range_words(entry, lengths)));
  }
  return number_member(entry, text, lengths);
}

QString range_words(const FieldEntry& entry, ShownUnit lengths) {
  const bool numbers = entry.kind == EntryKind::number || entry.kind == EntryKind::whole ||
                       entry.kind == EntryKind::point;
  if (!numbers) return {};
  // Ends of a range in whole fractions of an inch would be too narrow or too wide.
  const ShownUnit decimal = lengths == ShownUnit::inch_fraction ? ShownUnit::inch_decimal : lengths;
  const auto end = [&](double value) {
    return entry.unit == Unit::millimetre && decimal == ShownUnit::inch_decimal
               ? QString::number(value / kMillimetresPerInch, 'g', 5)
               : QString::fromStdString(number_text(value));
  };
  const QString unit = unit_sign(entry.unit, lengths);
  return Texts::tr("%1 to %2").arg(end(entry.least), end(entry.most)) +
         (unit.isEmpty() ? QString() : QStringLiteral(" ") + unit);
}

QString choice_words_shown(const std::string& word) {
  QString words = QString::fromStdString(word);
  words.replace(QLatin1Char('_'), QLatin1Char(' '));
  return words;
}

QString fault_words(const Problems& problems) {
  QStringList lines;
  for (const Problem& problem : problems) {
    std::string line = problem.found;
    if (!problem.wanted.empty()) line += "; " + problem.wanted;
    lines += QString::fromStdString(in_plain_words({}, line));
  }
  return lines.join(QLatin1Char('\n'));
}

}  // namespace tackbench::ui
