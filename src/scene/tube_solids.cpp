#include "scene/tube_solids.h"

#include <algorithm>

#include "scene/solids.h"

namespace tubewright {
namespace {

using Eigen::Vector3d;

double bore_of(const Tube& size) { return std::max(0.0, size.od.mm / 2 - size.wall.mm); }

Ink ink_of(const LoadedTube& tube, std::size_t i) {
    if (i == tube.now) return Ink::tube_now;
    return tube.stretches[i].formed ? Ink::tube_done : Ink::tube;
}

void add_stations(std::vector<Station>& stations, const Stretch& stretch, double radius) {
    for (const Frame& frame : frames_of(stretch))
        if (stations.empty() || (stations.back().frame.at - frame.at).norm() > radius * 1e-3) stations.push_back({frame, radius});
}

}  // namespace

Mesh tube_solid(const std::vector<Stretch>& stretches, const Tube& size, Ink ink) {
    std::vector<Station> stations;
    for (const Stretch& stretch : stretches) add_stations(stations, stretch, size.od.mm / 2);
    return swept(stations, ink, {bore_of(size), bore_of(size)});
}

std::vector<Mesh> tube_solids(const LoadedTube& tube, const Tube& size) {
    std::vector<Mesh> meshes;
    std::vector<Station> stations;
    bool open_start = true;
    const auto finish = [&](Ink ink, bool open_end) {
        if (stations.size() >= 2) meshes.push_back(swept(stations, ink, {open_start ? bore_of(size) : 0, open_end ? bore_of(size) : 0}));
        stations.clear();
        open_start = false;
    };
    for (std::size_t i = 0; i < tube.stretches.size(); ++i) {
        if (tube.stretches[i].gap) {
            // Two dots: it goes on.
            for (const double share : {0.34, 0.66}) {
                const Frame at = frame_in(tube.stretches[i].stretch, share * tube.stretches[i].stretch.length);
                const Vector3d half = 0.02 * size.od.mm * at.along;
                meshes.push_back(rod({at.at - half, at.at + half}, 0.15 * size.od.mm, Ink::tube));
            }
            continue;
        }
        add_stations(stations, tube.stretches[i].stretch, size.od.mm / 2);
        const bool last = i + 1 == tube.stretches.size();
        if (last || tube.stretches[i + 1].gap || ink_of(tube, i + 1) != ink_of(tube, i)) finish(ink_of(tube, i), last);
    }
    return meshes;
}

std::vector<Mesh> index_line(const LoadedTube& tube, Length od) {
    std::vector<Mesh> meshes;
    std::vector<Station> stations;
    for (std::size_t i = 0; i < tube.stretches.size(); ++i) {
        if (!tube.stretches[i].gap)
            for (Frame frame : frames_of(tube.stretches[i].stretch)) {
                frame.at += 0.47 * od.mm * frame.aside;
                if (stations.empty() || (stations.back().frame.at - frame.at).norm() > od.mm * 1e-3) stations.push_back({frame, 0.085 * od.mm});
            }
        if (!tube.stretches[i].gap && i + 1 < tube.stretches.size()) continue;
        if (stations.size() >= 2) meshes.push_back(swept(stations, Ink::index_line));
        stations.clear();
    }
    return meshes;
}

Mesh ink_ring(const Frame& at, Length od) {
    const double inner = 0.45 * od.mm, outer = 0.68 * od.mm, half = 0.2 * od.mm;
    const Frame axis{at.at, at.along, at.aside};
    return turned(axis, {{0, -half}, {inner, -half}, {outer, -half}, {outer, half}, {inner, half}, {0, half}}, Ink::ink_mark);
}

std::vector<Vector3d> path_of(const Stretch& stretch) {
    std::vector<Vector3d> path;
    for (const Frame& frame : frames_of(stretch)) path.push_back(frame.at);
    return path;
}

std::vector<Vector3d> path_outward(const LoadedTube& tube, const std::vector<std::size_t>& stretches, End towards) {
    std::vector<Vector3d> path;
    for (const std::size_t i : stretches) {
        std::vector<Vector3d> part = path_of(tube.stretches[i].stretch);
        if (towards == End::A) std::reverse(part.begin(), part.end());
        path.insert(path.end(), part.begin(), part.end());
    }
    return path;
}

std::vector<DrawnBend> drawn_bends(const LoadedTube& tube) {
    std::vector<DrawnBend> bends;
    for (const DrawnStretch& drawn : tube.stretches)
        if (drawn.bend && !drawn.gap) bends.push_back({*drawn.bend, path_of(drawn.stretch)});
    return bends;
}

}  // namespace tubewright
