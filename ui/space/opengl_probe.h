// Whether Qt 3D can draw here. It ends the program where it cannot, so this is asked before any of
// its objects exists.
#pragma once

#include <QString>

namespace tackbench::ui {

// Before QApplication is made: names the renderer for Qt 3D unless the environment does.
void choose_renderer();

// Empty when OpenGL 3.2 with shaders is there; otherwise why not, in the words of the language in
// use. Probed once.
QString why_no_opengl();

// OpenGL is there, but drawn by the processor, without a graphics card.
bool opengl_by_processor();

}  // namespace tackbench::ui
