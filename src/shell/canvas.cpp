#include "shell/canvas.h"

#include <imgui.h>
#include <backends/imgui_impl_opengl3.h>

#include <cfloat>
#include <cmath>
#include <fstream>
#include <optional>
#include <sstream>
#include <tuple>

#include "gl/picture_maker.h"
#include "scene/card_scene.h"
#include "shell/picture_colours.h"
#include "shell/theme_file.h"
#include "shell/touch_map.h"
#include "shell/wanted_picture.h"
#include "ui/screen.h"

namespace tubewright {
namespace {

const char* first_line(GlFlavour flavour) {
    switch (flavour) {
        case GlFlavour::core_33: return "#version 330 core";
        case GlFlavour::desktop_31: return "#version 140";
        case GlFlavour::es_30: return "#version 300 es";
    }
    return "#version 330 core";
}

Result<ShaderTexts, Refusal> read_shaders(const std::filesystem::path& folder) {
    ShaderTexts texts;
    for (const std::string& name : shader_files()) {
        std::ifstream in(folder / name);
        if (!in) return Refusal{name, "", "can't be read", "the program's shaders in " + folder.string()};
        std::stringstream text;
        text << in.rdbuf();
        texts[name] = text.str();
    }
    return texts;
}

/// Straights and bends take turns, beginning with a straight.
std::optional<std::size_t> lit_stretch(const PictureView& view) {
    if (!view.lit) return std::nullopt;
    return 2 * view.lit->index + (view.lit->what == LitPart::What::bend ? 1 : 0);
}

/// What the picture is of.
const Sheet* sheet_for(const PictureView& view, const State& state) {
    if (view.entered) return entry_in_sight(state);
    return state.line && *state.line < state.sheets.size() ? &state.sheets[*state.line] : nullptr;
}

/// Everything that a drawn picture depends on. Sheets are compared by what is drawn of them.
struct Drawn {
    PictureView::Kind kind;
    std::size_t step;
    std::optional<std::pair<Angle, Angle>> again;
    std::optional<std::size_t> lit;
    std::optional<Span> taped;
    std::optional<CardPicture> card;
    std::optional<Orbit> orbit;
    std::optional<LaidOverPicture> laid_over;
    std::optional<Part> made;
    Line line;
    SetUp set_up;
    std::vector<std::size_t> marks;
    int width, height;
    Theme theme;
    bool operator==(const Drawn&) const = default;
};

Drawn drawn(const PictureView& view, const Sheet& sheet, const Box& box, Theme theme) {
    Drawn now{view.kind, view.step, view.again, lit_stretch(view), view.taped, view.card, view.orbit, view.laid_over, view.made, sheet.line, sheet.set_up, {}, static_cast<int>(std::lround(box.width())), static_cast<int>(std::lround(box.height())), theme};
    for (const Step& step : sheet.steps) now.marks.push_back(step.align_to);
    return now;
}

}  // namespace

struct Canvas::Parts {
    Desk& desk;
    Places places;
    Themes themes;
    PictureMaker pictures;
    ImGuiContext* context;
    std::unique_ptr<Ui> ui;
    std::optional<TouchMapFile> touch_map;
    std::optional<Drawn> picture;
    PictureHandle handle;
    double fonts_for = 0;   // what a millimetre of the layout took when the fonts were made
    std::string key;
    double key_since = 0, seconds = 0;
    bool again = true;      // something was found out in this frame that the next has to show

    double px_per_mm() const {
        const State& state = desk.state();
        return state.settings.px_per_mm > 0 ? state.settings.px_per_mm : state.screen_px_per_mm;
    }
    const Palette& palette(Theme theme) const { return theme == Theme::dark ? themes.dark : themes.light; }
    void make_fonts(ImVec2 display);
    void draw_picture(const ScreenView& view);
    void use_scale(const CanvasSize& size);
    void keep_touch_map(const ScreenView& view);
};

void Canvas::Parts::make_fonts(ImVec2 display) {
    const double layout = px_per_mm() * grow_for(display, px_per_mm());
    if (ui && std::abs(layout - fonts_for) < 1e-6) return;
    ImGuiIO& io = ImGui::GetIO();
    ImGui_ImplOpenGL3_DestroyFontsTexture();
    io.Fonts->Clear();
    auto fonts = load_fonts(*io.Fonts, (places.assets / "fonts").string(), layout);
    if (!fonts.ok()) throw std::runtime_error("the font " + fonts.trouble().path + " can't be read");
    ImGui_ImplOpenGL3_CreateFontsTexture();
    io.Fonts->ClearTexData();  // the graphics driver has its own copy now
    io.Fonts->ClearInputData();
    fonts_for = layout;
    if (ui) ui->use(fonts.value());
    else ui = std::make_unique<Ui>(fonts.value(), themes.light, px_per_mm());
}

void Canvas::Parts::use_scale(const CanvasSize& size) {
    if (std::abs(desk.state().screen_px_per_mm - size.screen_px_per_mm) > 1e-9) desk.act(ScreenIs{size.screen_px_per_mm});
    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = {static_cast<float>(size.width), static_cast<float>(size.height)};
    make_fonts(io.DisplaySize);
    ui->use_scale(px_per_mm());
}

/// The place for the picture is known once its screen has been drawn; then it is drawn for the next frame.
void Canvas::Parts::draw_picture(const ScreenView& view) {
    const PictureView* wanted = picture_in(view);
    const auto box = ui->picture_rect();
    const State& state = desk.state();
    const Sheet* of = wanted && box ? sheet_for(*wanted, state) : nullptr;
    if (!of) return;
    const Sheet& sheet = *of;
    const bool finished = wanted->kind == PictureView::Kind::finished;
    if (!wanted->card && (!sheet.layout || (!finished && wanted->step >= sheet.steps.size()))) return;
    Drawn now = drawn(*wanted, sheet, *box, view.theme);
    if (picture == now || now.width < 8 || now.height < 8) return;
    std::optional<Pulled> second;
    if (wanted->again) second = Pulled{wanted->again->first, wanted->again->second};
    const auto& card = wanted->card;
    const auto& over = wanted->laid_over;
    Scene scene = over ? laid_over_scene(sheet.line.tube, over->wanted, over->made) : wanted->made ? made_scene(sheet.line.tube, *wanted->made, now.lit, now.taped) : finished ? part_scene(sheet, now.lit, now.taped) : card ? card_scene(card->bender, card->set_up, {card->lever, card->picked, card->gauges}) : bench_scene(sheet, wanted->step, kind_of(wanted->kind), second);
    if (now.orbit) scene.outlook = moved(scene.outlook, now.orbit->over, now.orbit->round);
    const Camera camera = camera_for(scene, static_cast<double>(now.width) / now.height);
    pictures.draw(scene, camera, picture_colours(palette(view.theme)), now.width, now.height);
    handle.texture = reinterpret_cast<ImTextureID>(static_cast<std::intptr_t>(pictures.texture()));
    handle.anchors.clear();
    for (const auto& [anchor, share] : anchors_in(scene, camera))
        handle.anchors[anchor] = {static_cast<float>(share.x), static_cast<float>(share.y)};
    picture = std::move(now);
    again = true;
}

/// Only once the screen takes touches again: who reads the map may touch at once.
void Canvas::Parts::keep_touch_map(const ScreenView& view) {
    if (view.key != key) {
        key = view.key;
        key_since = seconds;
    }
    if (!touch_map) return;
    if (seconds - key_since < 0.32) again = true;
    else touch_map->show(ui->touchables(), px_per_mm(), key);
}

Canvas::Canvas(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}

Canvas::~Canvas() {
    ImGui::SetCurrentContext(parts_->context);
    ImGui_ImplOpenGL3_Shutdown();
    ImGui::DestroyContext(parts_->context);
}

Result<std::unique_ptr<Canvas>, Refusal> Canvas::made(Desk& desk, const Places& places, GlFlavour flavour) {
    auto themes = read_themes(places.assets / "theme.json");
    if (!themes.ok()) return Refusal{"theme.json", "", themes.trouble().sentence, "the program's own theme file"};
    auto texts = read_shaders(places.shaders);
    if (!texts.ok()) return texts.trouble();
    auto pictures = PictureMaker::made(flavour, texts.value());
    if (!pictures.ok()) return Refusal{"shaders", "", pictures.trouble().sentence, "shaders that this computer's graphics take"};
    ImGuiContext* context = ImGui::CreateContext();
    ImGui::SetCurrentContext(context);
    ImGui::GetIO().IniFilename = nullptr;
    ImGui_ImplOpenGL3_Init(first_line(flavour));
    // Now, with a font of its own: at the first frame it would make its font texture anew, without our fonts' pixels.
    ImGui_ImplOpenGL3_CreateDeviceObjects();
    auto parts = std::unique_ptr<Parts>(new Parts{desk, places, std::move(themes).value(), std::move(pictures).value(), context, nullptr, std::nullopt, std::nullopt, {}});
    return std::unique_ptr<Canvas>(new Canvas(std::move(parts)));
}

void Canvas::write_touch_map(const std::filesystem::path& path) { parts_->touch_map.emplace(path); }
void Canvas::press_key(KeyPress key) {
    if (parts_->ui) parts_->ui->press_key(key);
}
const Ui& Canvas::ui() const { return *parts_->ui; }
bool Canvas::wants_frames() const { return parts_->again || parts_->ui->wants_frames(); }

void Canvas::frame(const CanvasSize& size, double seconds, const Finger& finger) {
    Parts& p = *parts_;
    ImGui::SetCurrentContext(p.context);
    p.again = false;
    p.use_scale(size);
    ImGuiIO& io = ImGui::GetIO();
    io.DeltaTime = static_cast<float>(std::max(1e-4, seconds - p.seconds));
    p.seconds = seconds;
    io.MousePos = finger.there ? ImVec2{finger.x, finger.y} : ImVec2{-FLT_MAX, -FLT_MAX};
    io.MouseDown[0] = finger.down;
    ImGui_ImplOpenGL3_NewFrame();
    ImGui::NewFrame();
    const ScreenView view = p.desk.view();
    p.ui->use(p.palette(view.theme));
    p.ui->begin_frame(seconds, view.key);
    std::vector<Action> actions;
    draw_screen(*p.ui, view, picture_in(view) ? p.handle : PictureHandle{}, actions);
    p.ui->end_frame();
    ImGui::Render();
    ImGui_ImplOpenGL3_RenderDrawData(p.ui->draw_data());
    p.draw_picture(view);  // after the frame that still shows the old one
    p.keep_touch_map(view);
    for (const Action& action : actions) p.desk.act(action);
    if (!actions.empty()) p.again = true;
}

}  // namespace tubewright
