#pragma once
// An OpenGL context with no window and no screen, for tests and for pictures in documents.

#include <memory>
#include <string>

#include "base/result.h"
#include "gl/flavour.h"

namespace tubewright {

/// Why there is none here, in one sentence.
struct NoOffscreen {
    std::string sentence;
};

/// Current, with its functions loaded, until it is dropped.
class Offscreen {
public:
    static Result<Offscreen, NoOffscreen> made(GlFlavour flavour = GlFlavour::core_33);
    Offscreen(Offscreen&& other) noexcept;
    Offscreen& operator=(Offscreen&& other) noexcept;
    ~Offscreen();
    GlFlavour flavour() const { return flavour_; }

private:
    Offscreen(void* display, void* context, GlFlavour flavour) : display_(display), context_(context), flavour_(flavour) {}
    void* display_ = nullptr;
    void* context_ = nullptr;
    GlFlavour flavour_;
};

}  // namespace tubewright
