#include "ui/palette.h"

#include <array>
#include <cmath>

namespace tubewright {
namespace {

struct Role {
    const char* name;
    Rgb Palette::*colour;
};

constexpr std::array role_table{
    Role{"paper", &Palette::paper},
    Role{"tray", &Palette::tray},
    Role{"panel", &Palette::panel},
    Role{"well", &Palette::well},
    Role{"bar", &Palette::bar},
    Role{"bar_ink", &Palette::bar_ink},
    Role{"bar_edge", &Palette::bar_edge},
    Role{"ink", &Palette::ink},
    Role{"ink_soft", &Palette::ink_soft},
    Role{"edge", &Palette::edge},
    Role{"now", &Palette::now},
    Role{"now_pale", &Palette::now_pale},
    Role{"on_now", &Palette::on_now},
    Role{"go", &Palette::go},
    Role{"go_pale", &Palette::go_pale},
    Role{"on_go", &Palette::on_go},
    Role{"caution", &Palette::caution},
    Role{"caution_pale", &Palette::caution_pale},
    Role{"on_caution", &Palette::on_caution},
    Role{"stop", &Palette::stop},
    Role{"stop_pale", &Palette::stop_pale},
    Role{"on_stop", &Palette::on_stop},
    Role{"steel_bright", &Palette::steel_bright},
    Role{"steel", &Palette::steel},
    Role{"steel_deep", &Palette::steel_deep},
};

Rgb from_number(std::uint32_t number) {
    return {static_cast<std::uint8_t>(number >> 16 & 0xff), static_cast<std::uint8_t>(number >> 8 & 0xff),
            static_cast<std::uint8_t>(number & 0xff)};
}

double linear(std::uint8_t part) {
    const double share = part / 255.0;
    return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

double luminance(Rgb colour) {
    return 0.2126 * linear(colour.r) + 0.7152 * linear(colour.g) + 0.0722 * linear(colour.b);
}

}  // namespace

Result<Palette, RoleMissing> palette_from(const std::map<std::string, std::uint32_t>& roles) {
    Palette palette;
    for (const Role& role : role_table) {
        const auto found = roles.find(role.name);
        if (found == roles.end()) return RoleMissing{role.name};
        palette.*role.colour = from_number(found->second);
    }
    return palette;
}

std::vector<std::string> palette_roles() {
    std::vector<std::string> names;
    for (const Role& role : role_table) names.emplace_back(role.name);
    return names;
}

double contrast(Rgb a, Rgb b) {
    const double one = luminance(a) + 0.05, other = luminance(b) + 0.05;
    return one > other ? one / other : other / one;
}

std::vector<ColourPair> shape_pairs(const Palette& p) {
    return {
        {"button border on paper", p.edge, p.paper, shape_contrast},
        {"button border on tray", p.edge, p.tray, shape_contrast},
        {"button border on panel", p.edge, p.panel, shape_contrast},
        {"chip border on bar", p.bar_edge, p.bar, shape_contrast},
        {"main button on tray", p.now, p.tray, shape_contrast},
        {"current plate on paper", p.now, p.paper, shape_contrast},
        {"current band on steel", p.now, p.steel, shape_contrast},
        {"chosen border on now_pale", p.now, p.now_pale, shape_contrast},
        {"check mark on go_pale", p.go, p.go_pale, shape_contrast},
        {"check mark on paper", p.go, p.paper, shape_contrast},
        {"done band on steel", p.go, p.steel, shape_contrast},
        {"caution sign on its plate", p.caution, p.caution_pale, shape_contrast},
        {"caution sign on panel", p.caution, p.panel, shape_contrast},
        {"stop sign on its plate", p.stop, p.stop_pale, shape_contrast},
        {"stop sign on panel", p.stop, p.panel, shape_contrast},
        {"warning border on tray", p.stop, p.tray, shape_contrast},
        {"warning border on paper", p.stop, p.paper, shape_contrast},
        {"tube outline on paper", p.ink, p.paper, shape_contrast},
        {"hand on the clock's face", p.go, p.panel, shape_contrast},
        {"wrong hand on the clock's face", p.stop, p.panel, shape_contrast},
    };
}

}  // namespace tubewright
