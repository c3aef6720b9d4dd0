#pragma once
// Which OpenGL the context speaks, and getting its functions.

namespace tubewright {

/// What stands before a shader: "#version 330 core", "#version 140" or "#version 300 es".
enum class GlFlavour { core_33, desktop_31, es_30 };

/// Finds a function of the current context by name, as the window library or EGL does.
using GlFunction = void (*)();
using GlLookUp = GlFunction (*)(const char* name);

/// Once for each context, with it current. False where its functions can't be found.
bool load_gl(GlFlavour flavour, GlLookUp look_up);

}  // namespace tubewright
