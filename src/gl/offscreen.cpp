#include "gl/offscreen.h"

#include <EGL/egl.h>
#include <EGL/eglext.h>

#include <utility>
#include <vector>

namespace tubewright {
namespace {

#ifndef EGL_PLATFORM_SURFACELESS_MESA
constexpr EGLenum EGL_PLATFORM_SURFACELESS_MESA = 0x31DD;  // EGL_MESA_platform_surfaceless
#endif

GlFunction look_up(const char* name) { return reinterpret_cast<GlFunction>(eglGetProcAddress(name)); }

EGLDisplay surfaceless_display() {
    const auto get = reinterpret_cast<PFNEGLGETPLATFORMDISPLAYEXTPROC>(eglGetProcAddress("eglGetPlatformDisplayEXT"));
    return get ? get(EGL_PLATFORM_SURFACELESS_MESA, nullptr, nullptr) : EGL_NO_DISPLAY;
}

std::vector<EGLint> version_wanted(GlFlavour flavour) {
    switch (flavour) {
        case GlFlavour::core_33:
            return {EGL_CONTEXT_MAJOR_VERSION, 3, EGL_CONTEXT_MINOR_VERSION, 3, EGL_CONTEXT_OPENGL_PROFILE_MASK, EGL_CONTEXT_OPENGL_CORE_PROFILE_BIT, EGL_NONE};
        case GlFlavour::desktop_31: return {EGL_CONTEXT_MAJOR_VERSION, 3, EGL_CONTEXT_MINOR_VERSION, 1, EGL_NONE};
        case GlFlavour::es_30: return {EGL_CONTEXT_MAJOR_VERSION, 3, EGL_CONTEXT_MINOR_VERSION, 0, EGL_NONE};
    }
    return {EGL_NONE};
}

}  // namespace

Result<Offscreen, NoOffscreen> Offscreen::made(GlFlavour flavour) {
    const EGLDisplay display = surfaceless_display();
    if (display == EGL_NO_DISPLAY || !eglInitialize(display, nullptr, nullptr)) return NoOffscreen{"EGL offers no display without a screen here."};
    const bool es = flavour == GlFlavour::es_30;
    const EGLint wanted[] = {EGL_SURFACE_TYPE, EGL_PBUFFER_BIT, EGL_RENDERABLE_TYPE, es ? EGL_OPENGL_ES3_BIT : EGL_OPENGL_BIT, EGL_NONE};
    EGLConfig config{};
    EGLint found = 0;
    eglBindAPI(es ? EGL_OPENGL_ES_API : EGL_OPENGL_API);
    if (!eglChooseConfig(display, wanted, &config, 1, &found) || found < 1) return NoOffscreen{"EGL has no fitting configuration without a screen."};
    const EGLContext context = eglCreateContext(display, config, EGL_NO_CONTEXT, version_wanted(flavour).data());
    if (context == EGL_NO_CONTEXT) return NoOffscreen{"EGL makes no OpenGL context of the wanted version."};
    if (!eglMakeCurrent(display, EGL_NO_SURFACE, EGL_NO_SURFACE, context) || !load_gl(flavour, look_up)) {
        eglDestroyContext(display, context);
        return NoOffscreen{"The OpenGL context without a screen can't be used."};
    }
    return Offscreen(display, context, flavour);
}

Offscreen::Offscreen(Offscreen&& other) noexcept
    : display_(std::exchange(other.display_, nullptr)), context_(std::exchange(other.context_, nullptr)), flavour_(other.flavour_) {}

Offscreen& Offscreen::operator=(Offscreen&& other) noexcept {
    std::swap(display_, other.display_);
    std::swap(context_, other.context_);
    std::swap(flavour_, other.flavour_);
    return *this;
}

Offscreen::~Offscreen() {
    if (!context_) return;
    eglMakeCurrent(display_, EGL_NO_SURFACE, EGL_NO_SURFACE, EGL_NO_CONTEXT);
    eglDestroyContext(display_, context_);
    eglTerminate(display_);
}

}  // namespace tubewright
