#include "gl/picture_maker.h"

#include <glad/gl.h>

#include <cmath>
#include <utility>

#include "gl/surface_buffers.h"
#include "gl/target.h"

namespace tubewright {
namespace {

constexpr int shadow_size = 512;

Eigen::Vector3f rgb(const Colour& colour) { return {colour.r, colour.g, colour.b}; }

const Colour& colour_of(const PictureColours& colours, Ink ink) {
    switch (ink) {
        case Ink::tube: return colours.tube;
        case Ink::tube_done: return colours.tube_done;
        case Ink::tube_now: return colours.tube_now;
        case Ink::after_pull: return colours.after_pull;
        case Ink::wrong_way: return colours.wrong_way;
        case Ink::form: return colours.form;
        case Ink::hook: return colours.hook;
        case Ink::lever: return colours.lever;
        case Ink::grip: return colours.grip;
        case Ink::post: return colours.post;
        case Ink::bench_top: return colours.bench_top;
        case Ink::ink_mark: return colours.ink_mark;
        case Ink::reference_mark: return colours.reference_mark;
        case Ink::index_line: return colours.index_line;
        case Ink::stands: return colours.stands;
        case Ink::swings: return colours.swings;
        case Ink::on_bench: return colours.on_bench;
        case Ink::picked: return colours.picked;
        case Ink::gauge: return colours.gauge;
    }
    return colours.tube;
}

/// How much of the surroundings a surface mirrors.
float shine_of(Ink ink) {
    switch (ink) {
        case Ink::tube: return 1.0f;
        case Ink::tube_done:
        case Ink::tube_now: return 0.55f;
        case Ink::form:
        case Ink::hook:
        case Ink::lever: return 0.45f;
        case Ink::after_pull:
        case Ink::wrong_way:
        case Ink::ink_mark:
        case Ink::reference_mark:
        case Ink::index_line:
        case Ink::gauge: return 0.0f;
        default: return 0.12f;
    }
}

/// Signs and things that are not there yet are no bodies: they throw no shadow.
bool throws_shadow(Ink ink) {
    return ink != Ink::after_pull && ink != Ink::wrong_way && ink != Ink::index_line && ink != Ink::ink_mark && ink != Ink::reference_mark && ink != Ink::gauge &&
           ink != Ink::bench_top && ink != Ink::picked;
}

}  // namespace

struct PictureMaker::Parts {
    ShaderProgram solid, outline, bench_top, shadow;
    SurfaceBuffers surfaces;
    Target picture, shadows;
    unsigned empty_array = 0;

    ~Parts() {
        if (empty_array) glDeleteVertexArrays(1, &empty_array);
    }

    void draw_shadows(const Scene& scene);
    void draw_bench_top(const Scene& scene, const Camera& camera, const PictureColours& colours);
    void draw_top_on_solid(const Scene& scene, const Camera& camera, const PictureColours& colours);
    void draw_solids(const Camera& camera, const PictureColours& colours, bool gauges);
    void draw_outlines(const Camera& camera, const PictureColours& colours, bool gauges);
};

namespace {

/// Light falls steeply from behind the operator's left shoulder, so that shadows lie beside what throws them.
const Eigen::Vector3f light_way = Eigen::Vector3f(-0.28f, -0.32f, 1.0f).normalized();

/// The square of bench top that shadows are kept for.
struct Patch {
    Eigen::Vector2f middle;
    float half;
};

Patch patch_of(const Scene& scene) {
    if (scene.bench_top) return {scene.bench_top->middle.cast<float>(), static_cast<float>(scene.bench_top->half)};
    const Eigen::Vector3d middle = (scene.bounds.low + scene.bounds.high) / 2;
    const Eigen::Vector3f drift = light_way / light_way.z() * static_cast<float>(middle.z() - scene.bench_top_z);
    return {Eigen::Vector2f(static_cast<float>(middle.x()) - drift.x(), static_cast<float>(middle.y()) - drift.y()), static_cast<float>(scene.bounds.size() * 0.75)};
}

}  // namespace

void PictureMaker::Parts::draw_shadows(const Scene& scene) {
    shadows.resize(shadow_size, shadow_size, 0);
    shadows.bind();
    glDisable(GL_DEPTH_TEST);
    glDisable(GL_CULL_FACE);
    glClearColor(0, 0, 0, 1);
    glClear(GL_COLOR_BUFFER_BIT);
    const Patch patch = patch_of(scene);
    shadow.use();
    shadow.set("light_way", light_way);
    shadow.set("bench_top_z", static_cast<float>(scene.bench_top_z));
    shadow.set("patch_middle", patch.middle);
    shadow.set("patch_half", patch.half);
    for (std::size_t i = 0; i < surfaces.count(); ++i)
        if (throws_shadow(surfaces.ink(i))) surfaces.draw(i);
}

void PictureMaker::Parts::draw_bench_top(const Scene& scene, const Camera& camera, const PictureColours& colours) {
    const Patch patch = patch_of(scene);
    bench_top.use();
    bench_top.set("clip_from_operator", Eigen::Matrix4f((camera.projection() * camera.view()).cast<float>()));
    bench_top.set("bench_top_z", static_cast<float>(scene.bench_top_z));
    bench_top.set("patch_middle", patch.middle);
    bench_top.set("patch_half", patch.half);
    bench_top.set("line_apart", scene.bench_top ? patch.half / 12 : static_cast<float>(scene.bounds.size()) / 8);
    const Eigen::Vector2f everywhere = Eigen::Vector2f::Constant(1e9f);
    bench_top.set("top_low", scene.bench_top ? Eigen::Vector2f(scene.bench_top->low.cast<float>()) : Eigen::Vector2f(-everywhere));
    bench_top.set("top_high", scene.bench_top ? Eigen::Vector2f(scene.bench_top->high.cast<float>()) : everywhere);
    bench_top.set("background", rgb(colours.background));
    bench_top.set("top", rgb(colours.bench_top));
    bench_top.set("line", rgb(colours.grid));
    bench_top.set("shadow_depth", colours.shadow);
    bench_top.set("shadows", 0);
    glActiveTexture(GL_TEXTURE0);
    glBindTexture(GL_TEXTURE_2D, shadows.texture());
    if (!empty_array) glGenVertexArrays(1, &empty_array);
    glBindVertexArray(empty_array);
    glDrawArrays(GL_TRIANGLE_STRIP, 0, 4);
    glBindTexture(GL_TEXTURE_2D, 0);
}

/// On the face of a solid of the same height, nearer by a hair.
void PictureMaker::Parts::draw_top_on_solid(const Scene& scene, const Camera& camera, const PictureColours& colours) {
    glDisable(GL_CULL_FACE);
    glEnable(GL_POLYGON_OFFSET_FILL);
    glPolygonOffset(-2, -2);
    draw_bench_top(scene, camera, colours);
    glDisable(GL_POLYGON_OFFSET_FILL);
    glEnable(GL_CULL_FACE);
}

void PictureMaker::Parts::draw_solids(const Camera& camera, const PictureColours& colours, bool gauges) {
    solid.use();
    solid.set("clip_from_operator", Eigen::Matrix4f((camera.projection() * camera.view()).cast<float>()));
    solid.set("eye", Eigen::Vector3f(camera.eye.cast<float>()));
    solid.set("light_way", light_way);
    glCullFace(GL_BACK);
    for (std::size_t i = 0; i < surfaces.count(); ++i) {
        if ((surfaces.ink(i) == Ink::gauge) != gauges) continue;
        solid.set("ink", rgb(colour_of(colours, surfaces.ink(i))));
        solid.set("shine", shine_of(surfaces.ink(i)));
        surfaces.draw(i);
    }
}

void PictureMaker::Parts::draw_outlines(const Camera& camera, const PictureColours& colours, bool gauges) {
    outline.use();
    outline.set("clip_from_operator", Eigen::Matrix4f((camera.projection() * camera.view()).cast<float>()));
    outline.set("picture_size", Eigen::Vector2f(static_cast<float>(picture.width()), static_cast<float>(picture.height())));
    // In step with the picture, so that a picture twice as fine has lines of the same look.
    const float pixels = std::max(1.0f, static_cast<float>(picture.height()) / 300.0f);
    glCullFace(GL_FRONT);
    for (std::size_t i = 0; i < surfaces.count(); ++i) {
        const Ink ink = surfaces.ink(i);
        if (ink == Ink::index_line || (ink == Ink::gauge) != gauges) continue;
        const bool sign = shine_of(ink) == 0.0f;
        outline.set("ink", sign ? Eigen::Vector3f(0.45f * rgb(colours.outline) + 0.55f * rgb(colour_of(colours, ink))) : rgb(colours.outline));
        outline.set("line_pixels", pixels);
        surfaces.draw(i);
    }
}

std::vector<std::string> shader_files() {
    return {"solid.vert", "solid.frag", "outline.vert", "outline.frag", "bench_top.vert", "bench_top.frag", "shadow.vert", "shadow.frag"};
}

Result<PictureMaker, ShaderRefused> PictureMaker::made(GlFlavour flavour, const ShaderTexts& texts) {
    const auto program = [&](const std::string& look) -> Result<ShaderProgram, ShaderRefused> {
        const auto vertex = texts.find(look + ".vert"), fragment = texts.find(look + ".frag");
        if (vertex == texts.end() || fragment == texts.end()) return ShaderRefused{"The shader \"" + look + "\" is missing; it has two files in the shaders folder."};
        return ShaderProgram::made(flavour, look, vertex->second, fragment->second);
    };
    auto solid = program("solid"), outline = program("outline"), bench_top = program("bench_top"), shadow = program("shadow");
    for (const auto* each : {&solid, &outline, &bench_top, &shadow})
        if (!each->ok()) return each->trouble();
    return PictureMaker(std::unique_ptr<Parts>(new Parts{std::move(solid).value(), std::move(outline).value(), std::move(bench_top).value(), std::move(shadow).value(), {}, {}, {}}));
}

PictureMaker::PictureMaker(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
PictureMaker::PictureMaker(PictureMaker&&) noexcept = default;
PictureMaker& PictureMaker::operator=(PictureMaker&&) noexcept = default;
PictureMaker::~PictureMaker() = default;

void PictureMaker::draw(const Scene& scene, const Camera& camera, const PictureColours& colours, int width, int height, int samples) {
    int frame_before = 0, viewport_before[4] = {};
    glGetIntegerv(GL_FRAMEBUFFER_BINDING, &frame_before);
    glGetIntegerv(GL_VIEWPORT, viewport_before);
    glDisable(GL_BLEND);
    glDisable(GL_SCISSOR_TEST);
    parts_->surfaces.fill(scene.meshes);
    parts_->draw_shadows(scene);
    parts_->picture.resize(width, height, samples);
    parts_->picture.bind();
    glClearColor(colours.background.r, colours.background.g, colours.background.b, 1);
    glClear(GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT);
    glDepthFunc(GL_LESS);
    if (!scene.bench_top) parts_->draw_bench_top(scene, camera, colours);
    glEnable(GL_DEPTH_TEST);
    glEnable(GL_CULL_FACE);
    parts_->draw_solids(camera, colours, false);
    if (scene.bench_top) parts_->draw_top_on_solid(scene, camera, colours);
    parts_->draw_outlines(camera, colours, false);
    glClear(GL_DEPTH_BUFFER_BIT);  // gauges are seen through everything
    parts_->draw_solids(camera, colours, true);
    parts_->draw_outlines(camera, colours, true);
    parts_->picture.finish();
    glCullFace(GL_BACK);
    glDisable(GL_CULL_FACE);
    glDisable(GL_DEPTH_TEST);
    glBindVertexArray(0);
    glUseProgram(0);
    glBindFramebuffer(GL_FRAMEBUFFER, static_cast<unsigned>(frame_before));
    glViewport(viewport_before[0], viewport_before[1], viewport_before[2], viewport_before[3]);
}

unsigned PictureMaker::texture() const { return parts_->picture.texture(); }
int PictureMaker::width() const { return parts_->picture.width(); }
int PictureMaker::height() const { return parts_->picture.height(); }

std::vector<unsigned char> PictureMaker::pixels() const {
    const auto row = static_cast<std::size_t>(width()) * 4;
    std::vector<unsigned char> bottom_up(row * static_cast<std::size_t>(height())), top_down;
    int frame_before = 0;
    glGetIntegerv(GL_FRAMEBUFFER_BINDING, &frame_before);
    glBindFramebuffer(GL_FRAMEBUFFER, parts_->picture.finished_frame());
    glPixelStorei(GL_PACK_ALIGNMENT, 1);
    glReadPixels(0, 0, width(), height(), GL_RGBA, GL_UNSIGNED_BYTE, bottom_up.data());
    glBindFramebuffer(GL_FRAMEBUFFER, static_cast<unsigned>(frame_before));
    for (auto at = bottom_up.end(); at != bottom_up.begin(); at -= static_cast<std::ptrdiff_t>(row)) top_down.insert(top_down.end(), at - static_cast<std::ptrdiff_t>(row), at);
    return top_down;
}

}  // namespace tubewright
