#include "scene/outlook.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

namespace tubewright {
namespace {

using Eigen::Vector3d;

/// Where one looks from, so that form and lever hide neither tube nor mark: steeply down when the form lies on
/// the operator's side, nearly level when it stands above the tube. From the lever's side one sees into the hook.
struct Stand {
    Outlook usual;
    double least_above, most_above;
};
Stand operator_stand(const SetUp& set_up) {
    const double side = set_up.hook == HookHand::left ? 1 : -1;
    switch (set_up.swing) {
        case Swing::away: return {{{34}, {side * 10}}, 24, 50};
        case Swing::toward: return {{{50}, {side * 10}}, 45, 60};
        case Swing::up: return {{{16}, {side * 22}}, 8, 20};
        case Swing::down: return {{{24}, {side * 22}}, 12, 44};
    }
    return {};
}

/// How well an outlook tells it, up to `enough`: no leg seen end on, the twins apart on the picture too.
double told(const Telling& telling, const Vector3d& view) {
    constexpr double enough = 0.55, wide_apart = 0.7;  // rad
    double least = enough;
    for (const Vector3d& leg : {telling.pulled, telling.leg, telling.twin})
        if (!leg.isZero()) least = std::min(least, leg.cross(view).norm());
    if (telling.twin.isZero()) return least;
    const auto angle = [](const Vector3d& a, const Vector3d& b) { return std::atan2(a.cross(b).norm(), a.dot(b)); };
    const Vector3d seen_leg = telling.leg - telling.leg.dot(view) * view, seen_twin = telling.twin - telling.twin.dot(view) * view;
    return std::min(least, enough * angle(seen_leg, seen_twin) / std::min(angle(telling.leg, telling.twin), wide_apart));
}

}  // namespace

Vector3d ahead(const Outlook& outlook) {
    const double above = outlook.above.rad(), aside = outlook.aside.rad();
    return {-std::sin(aside) * std::cos(above), std::cos(aside) * std::cos(above), -std::sin(above)};
}

Outlook moved(const Outlook& outlook, Angle over, Angle round) {
    constexpr double least_above = 2, most_above = 88;
    return {{std::clamp(outlook.above.deg + over.deg, least_above, most_above)}, wrapped(outlook.aside + round)};
}

Outlook outlook_for_part(const std::vector<Vector3d>& legs) {
    constexpr double enough = 0.6, cost_per_degree = 0.002, usual_above = 34;
    Outlook best{{usual_above}, {0}};
    double best_worth = -1;
    for (const double above : {34.0, 26.0, 42.0, 18.0, 50.0, 60.0})
        for (const double aside : {0.0, -12.0, 12.0, -24.0, 24.0, -36.0, 36.0, -48.0, 48.0}) {
            const Outlook outlook{{above}, {aside}};
            double least = enough;
            for (const Vector3d& leg : legs) least = std::min(least, leg.cross(ahead(outlook)).norm());
            const double worth = least - cost_per_degree * (std::abs(above - usual_above) + std::abs(aside));
            if (worth > best_worth) best_worth = worth, best = outlook;
        }
    return best;
}

Outlook outlook_for(const SetUp& set_up, const Telling& telling) {
    constexpr double cost_per_degree = 0.004, furthest_aside = 30;
    const auto [usual, least_above, most_above] = operator_stand(set_up);
    Outlook best = usual;
    double best_worth = -1;
    for (const double above : {0.0, -8.0, 8.0, 18.0})
        for (const double aside : {0.0, -12.0, 12.0, -24.0, 24.0, -36.0, 36.0}) {
            const Outlook outlook{{usual.above.deg + above}, {usual.aside.deg + aside}};
            if (std::abs(outlook.aside.deg) > furthest_aside || outlook.above.deg < least_above || outlook.above.deg > most_above) continue;
            const double worth = told(telling, ahead(outlook)) - cost_per_degree * (std::abs(above) + std::abs(aside));
            if (worth > best_worth) best_worth = worth, best = outlook;
        }
    return best;
}

}  // namespace tubewright
