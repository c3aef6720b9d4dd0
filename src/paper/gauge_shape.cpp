#include "paper/gauge_shape.h"

#include <algorithm>
#include <cmath>

namespace tubewright {

std::vector<Spot> path_from_start(const FlatBend& bend, Length inward) {
    // About the arc's middle at (0, -radius): a place at the angle phi lies at
    //   x = r sin(phi), y = r cos(phi) - radius, with r = radius - inward.
    const double r = (bend.radius - inward).mm;
    const auto at = [&](double phi) { return Spot{r * std::sin(phi), r * std::cos(phi) - bend.radius.mm}; };
    std::vector<Spot> path;
    const int chords = std::max(1, static_cast<int>(std::ceil(bend.angle.deg / 0.5)));
    for (int i = 0; i <= chords; ++i) path.push_back(at(bend.angle.rad() * i / chords));
    const Spot end = path.back();
    path.push_back({end.x_mm + bend.leg.mm * std::cos(bend.angle.rad()), end.y_mm - bend.leg.mm * std::sin(bend.angle.rad())});
    return path;
}

std::vector<Spot> path_of(const FlatBend& bend, Length inward) {
    std::vector<Spot> path = path_from_start(bend, inward);
    path.insert(path.begin(), {-bend.leg.mm, -inward.mm});
    return path;
}

std::vector<Spot> card_of(const FlatBend& bend, Length inward) {
    constexpr Angle flat{60};
    constexpr double card_width_mm = 25;
    std::vector<Spot> path = path_of(bend, inward);
    if (bend.angle >= flat) return path;
    const Spot first = path.front(), last = path.back();
    path.push_back({last.x_mm - card_width_mm * std::sin(bend.angle.rad()), last.y_mm - card_width_mm * std::cos(bend.angle.rad())});
    path.push_back({first.x_mm, first.y_mm - card_width_mm});
    return path;
}

Length legs_for(Length radius, Angle angle, Length od, Length wanted) {
    if (angle.deg <= 180) return wanted;
    // The legs' centre lines meet radius * |tan(angle / 2)| past the bend.
    const Length meet{radius.mm * std::abs(std::tan(angle.rad() / 2))};
    return std::max(Length{}, std::min(wanted, 0.7 * meet - od));
}

bool is_inside(const std::vector<Spot>& path, Spot spot) {
    // Crossings of a ray to the right, even or odd.
    bool inside = false;
    for (std::size_t i = 0, j = path.size() - 1; i < path.size(); j = i++) {
        const Spot& a = path[i];
        const Spot& b = path[j];
        if ((a.y_mm > spot.y_mm) != (b.y_mm > spot.y_mm) && spot.x_mm < (b.x_mm - a.x_mm) * (spot.y_mm - a.y_mm) / (b.y_mm - a.y_mm) + a.x_mm) inside = !inside;
    }
    return inside;
}

Bounds bounds_of(const std::vector<Spot>& path) {
    Bounds bounds{path.front(), path.front()};
    for (const Spot& spot : path) {
        bounds.least = {std::min(bounds.least.x_mm, spot.x_mm), std::min(bounds.least.y_mm, spot.y_mm)};
        bounds.most = {std::max(bounds.most.x_mm, spot.x_mm), std::max(bounds.most.y_mm, spot.y_mm)};
    }
    return bounds;
}

}  // namespace tubewright
