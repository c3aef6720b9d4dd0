#include "shell/picture_colours.h"

#include "ui/picture.h"

namespace tubewright {
namespace {

Colour as_colour(Rgb rgb) {
    return {static_cast<float>(rgb.r) / 255, static_cast<float>(rgb.g) / 255, static_cast<float>(rgb.b) / 255};
}

/// Surfaces are lit, so a colour that is right for flat ink comes out too deep on them.
Colour lit(Rgb rgb, double lighter) { return as_colour(mixed(rgb, Rgb{255, 255, 255}, lighter)); }

}  // namespace

PictureColours picture_colours(const Palette& p) {
    const bool dark = contrast(p.paper, Rgb{255, 255, 255}) > contrast(p.paper, Rgb{0, 0, 0});
    const double lighter = dark ? 0.0 : 0.35;
    PictureColours colours;
    colours.background = as_colour(p.well);
    colours.bench_top = lit(p.well, dark ? 0.06 : 0.2);
    colours.grid = as_colour(mixed(p.well, p.edge, 0.28));
    colours.outline = as_colour(dark ? p.tray : p.ink);
    colours.tube = lit(p.steel, dark ? 0.7 : 0.1);
    colours.tube_done = lit(p.go, lighter * 0.7);
    colours.tube_now = dark ? as_colour(mixed(p.now, p.now_pale, 0.4)) : lit(p.now, 0.5);
    colours.after_pull = as_colour(p.now);
    colours.wrong_way = lit(p.stop, lighter * 0.4);
    colours.form = lit(p.steel_deep, dark ? 0.35 : 0);
    colours.hook = lit(p.steel_deep, dark ? 0.5 : 0.25);
    colours.lever = lit(p.steel_deep, dark ? 0.55 : 0.42);
    colours.grip = as_colour(dark ? p.tray : p.bar);
    colours.post = lit(p.steel_deep, dark ? 0.15 : 0);
    colours.ink_mark = as_colour(p.now);
    colours.reference_mark = as_colour(p.ink);
    colours.index_line = as_colour(dark ? p.tray : p.ink);
    colours.stands = as_colour(swatch_colour(p, Swatch::stands));
    colours.swings = as_colour(swatch_colour(p, Swatch::swings));
    colours.on_bench = as_colour(swatch_colour(p, Swatch::on_bench));
    colours.picked = as_colour(swatch_colour(p, Swatch::picked));
    colours.gauge = as_colour(p.now);
    colours.shadow = dark ? 0.45f : 0.30f;
    return colours;
}

}  // namespace tubewright
