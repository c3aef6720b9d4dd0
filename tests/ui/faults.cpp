#include <cmath>
#include <set>
#include <sstream>

#include "ui/headless.h"

namespace tubewright {
namespace {

using Faults = std::vector<std::string>;

// Minimal sizes in mm. A third of a pixel is given away to rounding.
constexpr double button_least = 20, main_high = 30, main_wide = 60, warn_least = 25, warn_clear = 25, gap_least = 3;

std::string mm(const Ui& ui, float px) {
    std::ostringstream out;
    out.precision(3);
    out << px / ui.px_per_mm() << " mm";
    return out.str();
}

bool less(const Ui& ui, float px, double least_mm) { return px < least_mm * ui.px_per_mm() - 0.34; }

void look_at_size(const Ui& ui, const Touchable& thing, Faults& faults) {
    const bool main = thing.weight == Weight::main, warn = thing.weight == Weight::warn;
    const double wide = main ? main_wide : warn ? warn_least : button_least, high = main ? main_high : warn ? warn_least : button_least;
    const Box box = thing.box();
    if (less(ui, box.width(), wide)) faults.push_back(thing.id + " is only " + mm(ui, box.width()) + " wide");
    if (less(ui, box.height(), high)) faults.push_back(thing.id + " is only " + mm(ui, box.height()) + " high");
    const Box screen = ui.whole_screen();
    if (box.min.x < 0 || box.min.y < 0 || box.max.x > screen.max.x + 0.1f || box.max.y > screen.max.y + 0.1f)
        faults.push_back(thing.id + " is not wholly on the screen");
    if (!thing.label_fits) faults.push_back(thing.id + ": its label doesn't fit");
    if (!thing.enabled && thing.why_not.empty()) faults.push_back(thing.id + " can't be used and doesn't say why");
}

float distance(const Box& a, const Box& b) {
    const float x = std::max({0.0f, a.min.x - b.max.x, b.min.x - a.max.x}), y = std::max({0.0f, a.min.y - b.max.y, b.min.y - a.max.y});
    return std::hypot(x, y);
}

void look_at_neighbours(const Ui& ui, const Touchable& a, const Touchable& b, Faults& faults) {
    const std::string both = a.id + " and " + b.id;
    if (a.id == b.id) faults.push_back("the id " + a.id + " is there twice");
    const float apart = distance(a.box(), b.box());
    if (overlap(a.box(), b.box())) faults.push_back(both + " lie over each other");
    else if (less(ui, apart, gap_least)) faults.push_back(both + " are only " + mm(ui, apart) + " apart");
    const bool opposite = (a.weight == Weight::warn && b.weight == Weight::main) || (a.weight == Weight::main && b.weight == Weight::warn);
    if (opposite && less(ui, apart, warn_clear)) faults.push_back(both + ", a warning and a main button, are only " + mm(ui, apart) + " apart");
}

void look_at_text(const Ui& ui, const TextDrawn& line, Faults& faults) {
    const std::string text = "\"" + line.text + "\"";
    if (!line.whole) faults.push_back(text + " is cut off, or smaller than it may be");
    if (!line.known) faults.push_back(text + " has a character without a picture");
    const Box screen = ui.whole_screen();
    if (line.box.min.x < -0.5f || line.box.min.y < -0.5f || line.box.max.x > screen.max.x + 0.5f || line.box.max.y > screen.max.y + 0.5f)
        faults.push_back(text + " is not wholly on the screen");
    const double has = contrast(line.ink, line.ground);
    if (has < line.least_contrast) faults.push_back(text + " has a contrast of only " + std::to_string(has));
    if (line.cap_mm < 3.26 - 0.01) faults.push_back(text + " is less than 16 minutes of arc high");
}

void look_at_clashes(const Ui& ui, Faults& faults) {
    const auto& texts = ui.texts();
    for (std::size_t i = 0; i < texts.size(); ++i) {
        for (std::size_t j = i + 1; j < texts.size(); ++j)
            if (overlap(texts[i].box, texts[j].box)) faults.push_back("\"" + texts[i].text + "\" and \"" + texts[j].text + "\" lie over each other");
        for (const Touchable& thing : ui.touchables()) {
            if (thing.id == texts[i].owner) {
                const Box b = thing.box(), t = texts[i].box;
                if (t.min.x < b.min.x || t.max.x > b.max.x || t.min.y < b.min.y || t.max.y > b.max.y) faults.push_back("\"" + texts[i].text + "\" sticks out of " + thing.id);
            } else if (overlap(texts[i].box, thing.box())) {
                faults.push_back("\"" + texts[i].text + "\" lies over " + thing.id);
            }
        }
    }
}

}  // namespace

std::vector<std::string> faults_of(const Ui& ui) {
    Faults faults;
    const auto& things = ui.touchables();
    for (std::size_t i = 0; i < things.size(); ++i) {
        look_at_size(ui, things[i], faults);
        for (std::size_t j = i + 1; j < things.size(); ++j) look_at_neighbours(ui, things[i], things[j], faults);
    }
    for (const TextDrawn& line : ui.texts()) look_at_text(ui, line, faults);
    look_at_clashes(ui, faults);
    return faults;
}

}  // namespace tubewright
