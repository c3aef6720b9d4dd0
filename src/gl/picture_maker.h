#pragma once
// Draws a scene into a texture. Works in whatever OpenGL context is current, with a window or without.

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "gl/flavour.h"
#include "gl/shader_program.h"
#include "scene/camera.h"
#include "scene/scene.h"

namespace tubewright {

/// 0 to 1, as on the screen.
struct Colour {
    float r = 0, g = 0, b = 0;
};

/// How a picture looks; the theme gives these.
struct PictureColours {
    Colour background;       ///< far away, and where the bench top fades out
    Colour bench_top, grid;  ///< near by, and its lines
    Colour outline;          ///< round every solid
    Colour tube, tube_done, tube_now, after_pull, wrong_way;
    Colour form, hook, lever, grip, post;
    Colour ink_mark, reference_mark, index_line;
    Colour stands, swings, on_bench, picked, gauge;
    float shadow = 0.35f;    ///< how dark shadows are, 0 to 1
};

/// Shader texts by file name, such as "solid.vert".
using ShaderTexts = std::map<std::string, std::string>;

/// The files that a picture maker asks for, as they are called in the shaders folder.
std::vector<std::string> shader_files();

class PictureMaker {
public:
    /// load_gl() has been called for the current context. A text that is missing counts as refused.
    static Result<PictureMaker, ShaderRefused> made(GlFlavour flavour, const ShaderTexts& texts);
    PictureMaker(PictureMaker&&) noexcept;
    PictureMaker& operator=(PictureMaker&&) noexcept;
    ~PictureMaker();  ///< with the same context current

    /// Draws now. Binds the framebuffer and viewport that it found again; of the rest it leaves depth test
    /// and culling off. Draw only when something changed: it is most of a frame without a graphics card.
    void draw(const Scene& scene, const Camera& camera, const PictureColours& colours, int width, int height, int samples = 4);

    unsigned texture() const;  ///< its first row is at the bottom
    int width() const;
    int height() const;
    /// Rows from the top, red, green, blue, alpha: for tests and for pictures on paper.
    std::vector<unsigned char> pixels() const;

private:
    struct Parts;
    explicit PictureMaker(std::unique_ptr<Parts> parts);
    std::unique_ptr<Parts> parts_;
};

}  // namespace tubewright
