#include "ui/headless.h"

#include <cfloat>
#include <fstream>
#include <map>
#include <memory>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace tubewright {
namespace {

struct Atlas {
    std::unique_ptr<ImFontAtlas> atlas = std::make_unique<ImFontAtlas>();
    Fonts fonts;
};

/// Building an atlas is slow; screens of one density share theirs.
const Atlas& atlas_for(double layout_px_per_mm) {
    static std::map<double, Atlas> built;
    const auto found = built.find(layout_px_per_mm);
    if (found != built.end()) return found->second;
    Atlas atlas;
    auto fonts = load_fonts(*atlas.atlas, TUBEWRIGHT_SOURCE_DIR "/assets/fonts", layout_px_per_mm);
    if (!fonts.ok()) throw std::runtime_error("no font at " + fonts.trouble().path);
    atlas.fonts = fonts.value();
    unsigned char* pixels = nullptr;
    int width = 0, height = 0;
    atlas.atlas->GetTexDataAsAlpha8(&pixels, &width, &height);
    return built.emplace(layout_px_per_mm, std::move(atlas)).first->second;
}

const Atlas& atlas_for(const TryScreen& screen) {
    const ImVec2 size{static_cast<float>(screen.width), static_cast<float>(screen.height)};
    return atlas_for(screen.px_per_mm * grow_for(size, screen.px_per_mm));
}

const ImVec2 nowhere{-FLT_MAX, -FLT_MAX};

}  // namespace

std::string TryScreen::name() const { return std::to_string(width) + "x" + std::to_string(height) + "@" + std::to_string(px_per_mm).substr(0, 4); }

const std::vector<TryScreen>& try_screens() {
    static const std::vector<TryScreen> screens{{1280, 800, 5.87}, {1920, 1200, 8.82}, {1280, 800, 3.78}, {1920, 1200, 3.62}};
    return screens;
}

namespace {

Palette read_palette(Theme theme) {
    std::ifstream in(TUBEWRIGHT_SOURCE_DIR "/assets/theme.json");
    const nlohmann::json file = nlohmann::json::parse(in);
    std::map<std::string, std::uint32_t> roles;
    for (const auto& [role, value] : file.at(theme == Theme::light ? "light" : "dark").items())
        roles[role] = static_cast<std::uint32_t>(std::stoul(value.get<std::string>().substr(1), nullptr, 16));
    auto palette = palette_from(roles);
    if (!palette.ok()) throw std::runtime_error("the theme file has no " + palette.trouble().role);
    return palette.value();
}

}  // namespace

/// Read once: every frame asks for one.
Palette palette_of(Theme theme) {
    static const Palette light = read_palette(Theme::light), dark = read_palette(Theme::dark);
    return theme == Theme::light ? light : dark;
}

HeadlessScreen::HeadlessScreen(const TryScreen& screen, Look look, Take take)
    : context_(ImGui::CreateContext(atlas_for(screen).atlas.get())),
      look_(std::move(look)),
      take_(std::move(take)),
      ui_(atlas_for(screen).fonts, palette_of(Theme::light), screen.px_per_mm) {
    ImGui::SetCurrentContext(context_);
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;  // a test neither reads nor leaves a layout file
    io.DisplaySize = {static_cast<float>(screen.width), static_cast<float>(screen.height)};
    io.DeltaTime = 1.0f / 60.0f;
    io.MousePos = nowhere;
    frame();
}

HeadlessScreen::~HeadlessScreen() { ImGui::DestroyContext(context_); }

void HeadlessScreen::frame() {
    ImGui::SetCurrentContext(context_);
    seconds_ += 1.0 / 60;
    ImGui::NewFrame();
    const ScreenView view = look_();
    ui_.use(palette_of(view.theme));
    ui_.begin_frame(seconds_, view.key);
    std::vector<Action> actions;
    draw_screen(ui_, view, picture_, actions);
    ui_.end_frame();
    ImGui::Render();
    for (const Action& action : actions) take_(action);
}

void HeadlessScreen::wait(double seconds) {
    // A few long frames do: nothing on our screens moves by itself.
    constexpr int frames = 4;
    for (int i = 0; i < frames; ++i) {
        seconds_ += seconds / frames;
        frame();
    }
}

void HeadlessScreen::put_finger(ImVec2 at) {
    ImGui::SetCurrentContext(context_);
    ImGui::GetIO().MousePos = at;
    ImGui::GetIO().MouseDown[0] = true;
    frame();
}

void HeadlessScreen::lift_finger() {
    ImGui::SetCurrentContext(context_);
    ImGui::GetIO().MouseDown[0] = false;
    frame();
    ImGui::GetIO().MousePos = nowhere;  // a lifted finger hovers over nothing
    frame();
}

void HeadlessScreen::tap_at_once(const std::string& id) {
    put_finger(find(id).box().centre());
    frame();
    lift_finger();
}

void HeadlessScreen::tap(const std::string& id) {
    wait(0.35);
    tap_at_once(id);
}

void HeadlessScreen::hold(const std::string& id, double seconds) {
    wait(0.35);
    put_finger(find(id).box().centre());
    wait(seconds);
    lift_finger();
}

void HeadlessScreen::key(KeyPress key) {
    ui_.press_key(key);
    frame();
    frame();
}

const Touchable& HeadlessScreen::find(const std::string& id) const {
    for (const Touchable& thing : ui_.touchables())
        if (thing.id == id) return thing;
    std::string there;
    for (const Touchable& thing : ui_.touchables()) there += " " + thing.id;
    throw std::runtime_error("nothing to touch is called \"" + id + "\"; there are:" + there);
}

bool HeadlessScreen::has(const std::string& id) const {
    for (const Touchable& thing : ui_.touchables())
        if (thing.id == id) return true;
    return false;
}

bool HeadlessScreen::says(const std::string& text) const {
    std::string all;
    for (const TextDrawn& line : ui_.texts()) all += line.text + " ";
    return all.find(text) != std::string::npos;
}

}  // namespace tubewright
