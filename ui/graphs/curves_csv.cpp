#include "ui/graphs/curves_csv.h"

namespace tackbench::ui {

namespace {

QString cell(QString text) {
  if (!text.contains(',') && !text.contains('"') && !text.contains('\n')) return text;
  return '"' + text.replace("\"", "\"\"") + '"';
}

QString number(double inside, Unit unit, ShownUnit lengths) {
  return QString::number(axis_number(inside, unit, lengths), 'g', 9);
}

}  // namespace

QString curves_csv(const GraphAxis& across, const std::vector<Curve>& curves, ShownUnit lengths) {
  if (curves.empty()) return {};
  QString table = cell(axis_title(across, lengths));
  for (const Curve& curve : curves)
    table += ',' + cell(axis_title({QString::fromStdString(curve.words), curve.unit}, lengths));
  table += "\r\n";
  const std::vector<double>& x = curves.front().x;
  for (std::size_t i = 0; i < x.size(); ++i) {
    table += number(x[i], across.unit, lengths);
    for (const Curve& curve : curves) {
      table += ',';
      if (curve.y[i]) table += number(*curve.y[i], curve.unit, lengths);
    }
    table += "\r\n";
  }
  return table;
}

}  // namespace tackbench::ui
