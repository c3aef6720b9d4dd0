#include "tube/clearance.h"

#include <Eigen/Core>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "base/tolerance.h"
#include "tube/centreline.h"

namespace tubewright {
namespace {

using Eigen::Vector3d;

/// A piece of the centre line taken for straight; `from` and `to` are measured along the tube, in mm.
struct Chord {
    double from, to;
    Vector3d a, b;
};

/// One stretch in chords, and a ball around them.
struct Bundle {
    std::vector<Chord> chords;
    Vector3d centre;
    double reach;
};

// sagitta = R (1 - cos(a/2))  =>  a = 2 acos(1 - sagitta/R)
std::size_t chords_for(const Stretch& stretch) {
    if (stretch.bend < 0 || stretch.angle.deg <= 0) return 1;
    const double share = std::clamp(1 - tolerance::chord_sagitta / stretch.radius, 0.0, 1.0);
    const double each = 2 * std::acos(share);
    return static_cast<std::size_t>(std::ceil(stretch.angle.rad() / std::max(each, 1e-3)));
}

Bundle bundle(const Stretch& stretch, double from) {
    Bundle made;
    const std::size_t count = chords_for(stretch);
    Vector3d last = stretch.start.at;
    for (std::size_t i = 1; i <= count; ++i) {
        const double along = stretch.length.mm * static_cast<double>(i) / static_cast<double>(count);
        const double before = stretch.length.mm * static_cast<double>(i - 1) / static_cast<double>(count);
        const Vector3d next = frame_in(stretch, {along}).at;
        made.chords.push_back({from + before, from + along, last, next});
        last = next;
    }
    made.centre = made.chords[made.chords.size() / 2].a;
    if (count == 1) made.centre = (made.chords[0].a + made.chords[0].b) / 2;
    made.reach = 0;
    for (const Chord& chord : made.chords)
        made.reach = std::max({made.reach, (chord.a - made.centre).norm(), (chord.b - made.centre).norm()});
    return made;
}

/// The part of the chord between these places along the tube, which overlap it.
Chord cut(const Chord& chord, double from, double to) {
    const double length = chord.to - chord.from;
    const auto at = [&](double s) -> Vector3d {
        const double share = length > 0 ? std::clamp((s - chord.from) / length, 0.0, 1.0) : 0.0;
        return chord.a + share * (chord.b - chord.a);
    };
    const double start = std::max(from, chord.from), end = std::min(to, chord.to);
    return {start, end, at(start), at(end)};
}

double distance(const Chord& p, const Chord& q) { return segment_distance(p.a, p.b, q.a, q.b); }

/// Distance of the places on both that lie further apart along the tube than `apart`; infinite where none do.
// The places that count make two rectangles: all of the first with the far part of the second, and the
// near part of the first with all of the second. What they leave out lies within 2 * apart along the
// tube, too near to have turned back.
double distance_beyond(const Chord& first, const Chord& second, double apart) {
    double least = INFINITY;
    if (second.from - first.to >= apart) return distance(first, second);
    if (second.to > first.to + apart) least = distance(first, cut(second, first.to + apart, second.to));
    if (first.from < second.from - apart) least = std::min(least, distance(cut(first, first.from, second.from - apart), second));
    return least;
}

/// Surely no nearer than `least`. Looked at before each of the bundle's chords is.
bool is_clear(const Chord& chord, const Bundle& bundle, double least) {
    const double reach = (chord.b - chord.a).norm() / 2 + bundle.reach + least;
    return ((chord.a + chord.b) / 2 - bundle.centre).squaredNorm() > reach * reach * (1 + tolerance::arithmetic);
}

}  // namespace

// Closest points of two segments: Ericson, Real-Time Collision Detection, 2005, section 5.1.9.
double segment_distance(const Vector3d& from, const Vector3d& to, const Vector3d& other_from, const Vector3d& other_to) {
    const Vector3d d1 = to - from, d2 = other_to - other_from, r = from - other_from;
    const double a = d1.squaredNorm(), e = d2.squaredNorm(), f = d2.dot(r);
    const double point = 1e-18;
    double s = 0, t = 0;
    if (a > point && e > point) {
        const double c = d1.dot(r), b = d1.dot(d2), denominator = a * e - b * b;
        if (denominator > 0) s = std::clamp((b * f - c * e) / denominator, 0.0, 1.0);
        t = (b * s + f) / e;
        if (t < 0) { t = 0; s = std::clamp(-c / a, 0.0, 1.0); }
        else if (t > 1) { t = 1; s = std::clamp((b - c) / a, 0.0, 1.0); }
    } else if (a > point) {
        s = std::clamp(-d1.dot(r) / a, 0.0, 1.0);
    } else if (e > point) {
        t = std::clamp(f / e, 0.0, 1.0);
    }
    return (r + s * d1 - t * d2).norm();
}

std::optional<Approach> closest_approach(const Part& part, Length od, Length within) {
    // Half a turn on the tightest radius that holds (1.5 OD inside a turn of pi OD) keeps places this
    // near along the tube at least 1.6 OD apart from surface to surface.
    const double apart = std::numbers::pi * od.mm;
    std::vector<Bundle> bundles;
    double from = 0;
    for (const Stretch& stretch : centreline(part)) {
        bundles.push_back(bundle(stretch, from));
        from += stretch.length.mm;
    }
    double least = od.mm + within.mm;
    std::optional<Approach> closest;
    for (std::size_t i = 0; i < bundles.size(); ++i)
        for (std::size_t j = i; j < bundles.size(); ++j) {
            if ((bundles[i].centre - bundles[j].centre).norm() > bundles[i].reach + bundles[j].reach + least) continue;
            for (const Chord& p : bundles[i].chords) {
                if (bundles[j].chords.back().to - p.from <= apart || is_clear(p, bundles[j], least)) continue;
                for (const Chord& q : bundles[j].chords) {
                    if (q.to - p.from <= apart) continue;
                    const double found = distance_beyond(p, q, apart);
                    if (found >= least) continue;
                    least = found;
                    closest = Approach{i, j, Length{found} - od};
                }
            }
        }
    return closest;
}

}  // namespace tubewright
