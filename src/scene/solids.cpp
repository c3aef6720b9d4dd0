#include "scene/solids.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace tubewright {
namespace {

using Eigen::Vector3d;

constexpr int around = 28;  // sides of a round section: looks round at a third of the picture's height

/// A ring of places with normals, anticlockwise about the direction of travel.
struct Ring {
    std::vector<Vector3d> at, normal;
};

std::uint32_t add(Mesh& mesh, const Vector3d& at, const Vector3d& normal) {
    mesh.vertices.push_back({at.cast<float>(), normal.normalized().cast<float>()});
    return static_cast<std::uint32_t>(mesh.vertices.size() - 1);
}

std::uint32_t add(Mesh& mesh, const Ring& ring) {
    const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
    for (std::size_t i = 0; i < ring.at.size(); ++i) add(mesh, ring.at[i], ring.normal[i]);
    return first;
}

/// From ring `a` to ring `b` further along. With radial, anticlockwise and along right-handed,
/// anticlockwise x along = outward.
void add_band(Mesh& mesh, const Ring& a, const Ring& b) {
    const auto sides = static_cast<std::uint32_t>(a.at.size());
    const std::uint32_t first = add(mesh, a), second = add(mesh, b);
    for (std::uint32_t i = 0; i < sides; ++i) {
        const std::uint32_t next = (i + 1) % sides;
        for (const std::uint32_t corner : {first + i, first + next, second + i, first + next, second + next, second + i})
            mesh.triangles.push_back(corner);
    }
}

/// Closes a ring with a flat face. `ahead`: the face looks along the direction of travel.
void add_face(Mesh& mesh, Ring ring, const Vector3d& normal, bool ahead) {
    Vector3d middle = Vector3d::Zero();
    for (const Vector3d& at : ring.at) middle += at;
    middle /= static_cast<double>(ring.at.size());
    std::fill(ring.normal.begin(), ring.normal.end(), normal);
    const auto sides = static_cast<std::uint32_t>(ring.at.size());
    const std::uint32_t hub = add(mesh, middle, normal), first = add(mesh, ring);
    for (std::uint32_t i = 0; i < sides; ++i) {
        const std::uint32_t here = first + i, next = first + (i + 1) % sides;
        for (const std::uint32_t corner : {hub, ahead ? here : next, ahead ? next : here}) mesh.triangles.push_back(corner);
    }
}

/// Round section; normals lean by `slope` (growth of the radius per length) against the travel.
Ring round_ring(const Frame& frame, double radius, double slope) {
    Ring ring;
    const Vector3d beside = frame.along.cross(frame.aside);
    for (int i = 0; i < around; ++i) {
        const double turn = 2 * std::numbers::pi * i / around;
        const Vector3d out = std::cos(turn) * frame.aside + std::sin(turn) * beside;
        ring.at.push_back(frame.at + radius * out);
        ring.normal.push_back(out - slope * frame.along);
    }
    return ring;
}

double slope_at(const std::vector<Station>& stations, std::size_t i) {
    const std::size_t before = i == 0 ? 0 : i - 1, after = std::min(i + 1, stations.size() - 1);
    const double run = (stations[after].frame.at - stations[before].frame.at).norm();
    return run > 0 ? (stations[after].radius - stations[before].radius) / run : 0;
}

void add_end(Mesh& mesh, const Station& station, double bore, bool ahead) {
    const double way = ahead ? 1 : -1;
    const Vector3d out = way * station.frame.along;
    Ring outer = round_ring(station.frame, station.radius, 0);
    if (bore <= 0) return add_face(mesh, outer, out, ahead);
    // A short bore makes it a tube to the eye: the flat lip, the wall inside, the bottom.
    Frame deep = station.frame;
    deep.at -= 3 * bore * out;
    Ring lip = round_ring(station.frame, bore, 0), bottom = round_ring(deep, bore, 0);
    for (Ring* ring : {&lip, &bottom})
        for (Vector3d& normal : ring->normal) normal = -normal;
    const Ring wall_start = lip;
    std::fill(outer.normal.begin(), outer.normal.end(), out);
    std::fill(lip.normal.begin(), lip.normal.end(), out);
    if (ahead) {
        add_band(mesh, outer, lip);
        add_band(mesh, wall_start, bottom);
    } else {
        add_band(mesh, lip, outer);
        add_band(mesh, bottom, wall_start);
    }
    add_face(mesh, bottom, out, ahead);
}

/// Without places that crowd the one before: between those a surface would be thinner than a float can tell.
std::vector<Vector3d> spread(const std::vector<Vector3d>& path, double least) {
    std::vector<Vector3d> kept{path.front()};
    for (const Vector3d& place : path)
        if ((place - kept.back()).norm() >= least) kept.push_back(place);
    if (kept.size() > 1) kept.pop_back();
    kept.push_back(path.back());
    return kept;
}

}  // namespace

Mesh swept(const std::vector<Station>& stations, Ink ink, const Bores& bores) {
    assert(stations.size() >= 2);
    Mesh mesh;
    mesh.ink = ink;
    for (std::size_t i = 0; i + 1 < stations.size(); ++i)
        add_band(mesh, round_ring(stations[i].frame, stations[i].radius, slope_at(stations, i)),
                 round_ring(stations[i + 1].frame, stations[i + 1].radius, slope_at(stations, i + 1)));
    add_end(mesh, stations.front(), bores.start, false);
    add_end(mesh, stations.back(), bores.end, true);
    return mesh;
}

std::vector<Frame> frames_along(const std::vector<Vector3d>& path) {
    std::vector<Frame> frames;
    for (std::size_t i = 0; i < path.size(); ++i) {
        Frame frame;
        frame.at = path[i];
        frame.along = (path[std::min(i + 1, path.size() - 1)] - path[i == 0 ? 0 : i - 1]).normalized();
        const Vector3d before = frames.empty() ? frame.along.unitOrthogonal() : frames.back().aside;
        frame.aside = (before - before.dot(frame.along) * frame.along).normalized();
        frames.push_back(frame);
    }
    return frames;
}

Mesh rod(const std::vector<Vector3d>& path, double radius, Ink ink) {
    const std::vector<Frame> frames = frames_along(spread(path, 0.1 * radius));
    std::vector<Station> stations;
    const auto dome = [&](const Frame& frame, double latitude, double way) {
        Frame there = frame;
        there.at += way * radius * std::sin(latitude) * frame.along;
        stations.push_back({there, radius * std::cos(latitude)});
    };
    constexpr double nearly_pole = 1.45;
    for (int i = 4; i > 0; --i) dome(frames.front(), nearly_pole * i / 4, -1);
    for (const Frame& frame : frames) stations.push_back({frame, radius});
    for (int i = 1; i <= 4; ++i) dome(frames.back(), nearly_pole * i / 4, 1);
    return swept(stations, ink);
}

Mesh turned(const Frame& axis, const std::vector<Eigen::Vector2d>& profile, Ink ink) {
    Mesh mesh;
    mesh.ink = ink;
    const auto ring_at = [&](const Eigen::Vector2d& place, const Vector3d& lean) {
        Frame there = axis;
        there.at += place.y() * axis.along;
        Ring ring = round_ring(there, place.x(), 0);
        for (Vector3d& normal : ring.normal) normal = lean.x() * normal + lean.y() * axis.along;
        return ring;
    };
    for (std::size_t i = 0; i + 1 < profile.size(); ++i) {
        const Eigen::Vector2d step = profile[i + 1] - profile[i];
        const Vector3d lean = Vector3d(step.y(), -step.x(), 0).normalized();  // the profile's right-hand side
        if (profile[i].x() <= 0) add_face(mesh, ring_at(profile[i + 1], lean), -axis.along, false);
        else if (profile[i + 1].x() <= 0) add_face(mesh, ring_at(profile[i], lean), axis.along, true);
        else add_band(mesh, ring_at(profile[i], lean), ring_at(profile[i + 1], lean));
    }
    return mesh;
}

Mesh extruded(std::vector<Vector3d> outline, const Vector3d& by, Ink ink) {
    Vector3d area = Vector3d::Zero();
    for (std::size_t i = 1; i + 1 < outline.size(); ++i) area += (outline[i] - outline[0]).cross(outline[i + 1] - outline[0]);
    if (area.dot(by) < 0) std::reverse(outline.begin(), outline.end());
    Mesh mesh;
    mesh.ink = ink;
    Ring bottom{outline, std::vector<Vector3d>(outline.size(), -by)}, top = bottom;
    for (Vector3d& at : top.at) at += by;
    add_face(mesh, bottom, -by, false);
    add_face(mesh, top, by, true);
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vector3d &here = outline[i], &next = outline[(i + 1) % outline.size()];
        const Vector3d out = (next - here).cross(by);
        const std::uint32_t first = add(mesh, here, out);
        add(mesh, next, out);
        add(mesh, next + by, out);
        add(mesh, here + by, out);
        for (const std::uint32_t corner : {0u, 1u, 2u, 0u, 2u, 3u}) mesh.triangles.push_back(first + corner);
    }
    return mesh;
}

std::vector<Mesh> dashed(const std::vector<Vector3d>& path, double radius, double dash, double gap, Ink ink) {
    std::vector<Mesh> dashes;
    std::vector<Vector3d> current;
    double done = 0;  // since the dash, or the gap, began
    bool drawing = true;
    for (std::size_t i = 0; i + 1 < path.size(); ++i) {
        const double run = (path[i + 1] - path[i]).norm();
        if (run <= 0) continue;
        double at = 0;
        if (drawing && current.empty()) current.push_back(path[i]);
        while (at < run) {
            const double missing = (drawing ? dash : gap) - done;
            const bool whole = missing <= run - at;
            const double step = whole ? missing : run - at;
            at = whole ? at + step : run;
            done += step;
            const Vector3d place = path[i] + at / run * (path[i + 1] - path[i]);
            if (drawing) current.push_back(place);
            if (!whole) break;
            if (drawing) dashes.push_back(rod(current, radius, ink));
            current.clear();
            drawing = !drawing;
            done = 0;
            if (drawing) current.push_back(place);
        }
    }
    if (drawing && done > dash / 3) dashes.push_back(rod(current, radius, ink));
    return dashes;
}

}  // namespace tubewright
