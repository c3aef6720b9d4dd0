#include "worked/virtual_bench.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

namespace bench_world {
namespace {

using Eigen::Vector3d;
using nlohmann::json;

constexpr double degree = std::numbers::pi / 180;

/// The tube: sections by their distance from the cut end A. Between two neighbouring sections it is either
/// straight or one finished arc.
class Tube {
public:
    explicit Tube(double length_mm) : length_(length_mm) {
        put(0);
        put(length_mm);
    }

    double length() const { return length_; }

    /// Whether the tube is straight all the way from one section to the other.
    bool straight_between(double s, double t) const {
        const double from = std::min(s, t), to = std::max(s, t);
        return from >= -0.11 && to <= length_ + 0.11 && !overlaps(from + 0.11, to - 0.11);  // 0.1 mm: a scribed line
    }

    Pose pose(double s) const {
        // The nearest section on the same straight: a bend's section nearest below or above.
        double from = 0;
        for (const auto& [start, arc] : arcs_)
            if (arc.end <= s + 1e-9) from = std::max(from, arc.end);
        const Pose& base = sections_.at(from);
        return {base.at + (s - from) * base.along, base.along, base.ink};
    }

    void put(double s) { sections_[s] = sections_.empty() ? Pose{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}} : pose(s); }

    template <class Motion>
    void move(double from, double to, const Motion& motion) {
        for (auto& [s, section] : sections_)
            if (s >= from && s <= to) section = motion(section);
    }

    struct Arc {
        double end, angle_deg;
    };
    void bent(double start, double end, double angle_deg) { arcs_[start] = {end, angle_deg}; }
    bool overlaps(double start, double end) const {
        for (const auto& [other, arc] : arcs_)
            if (start < arc.end - 1e-9 && end > other + 1e-9) return true;
        return false;
    }
    const std::map<double, Arc>& arcs() const { return arcs_; }

private:
    double length_;
    std::map<double, Pose> sections_;
    std::map<double, Arc> arcs_;
};

/// A rigid motion of sections.
struct Rigid {
    Eigen::Matrix3d turn;
    Vector3d shift;
    Pose operator()(const Pose& pose) const { return {turn * pose.at + shift, turn * pose.along, turn * pose.ink}; }
};

/// The motion that brings `pose` to `at` with these directions.
Rigid bring(const Pose& pose, const Vector3d& at, const Vector3d& along, const Vector3d& ink) {
    Eigen::Matrix3d from, to;
    from << pose.along, pose.ink, pose.along.cross(pose.ink);
    to << along, ink, along.cross(ink);
    const Eigen::Matrix3d turn = to * from.transpose();
    return {turn, at - turn * pose.at};
}

/// Roll of a direction across the axis, from w, right-handed about a; the frame is a = x, w = y, n = z.
double roll_deg(const Vector3d& direction) { return std::atan2(direction.z(), direction.y()) / degree; }

double apart_deg(double a, double b) { return std::abs(std::remainder(a - b, 360.0)); }

struct Bender {
    double radius, stretch;
    std::map<std::string, double> marks;
};

Bender bender_of(const json& sheet, double unit) {
    Bender bender{sheet["bender"]["radius"].get<double>() * unit, sheet["bender"]["stretch"].get<double>(), {}};
    for (const json& mark : sheet["bender"]["marks"]) bender.marks[mark["name"]] = mark["offset"].get<double>() * unit;
    return bender;
}

/// The made neighbour's leg, as the operator sees it once the tube is turned.
std::string neighbour_trouble(const Tube& tube, const json& neighbour, std::map<int, double>& bend_at, double here) {
    if (neighbour.is_null()) return "";
    const int number = neighbour["bend"];
    if (!bend_at.contains(number)) return "neighbour is not made yet";
    const double start = bend_at[number], end = tube.arcs().at(start).end;
    const bool on_a_side = start < here;
    // The leg that leads away beyond it, walking from here.
    const Pose beyond = tube.pose(on_a_side ? start - 1e-3 : end);
    const Vector3d away = on_a_side ? Vector3d(-beyond.along) : beyond.along;
    if (std::hypot(away.y(), away.z()) < std::sin(1.9 * degree)) return "the leg runs along the bender's axis: it has no side";
    if (apart_deg(roll_deg(away), neighbour["leg_deg"].get<double>()) > 1e-5) return "index line and neighbour disagree";
    return "";
}

}  // namespace

namespace {

Finished troubled(const std::string& trouble) {
    Finished finished;
    finished.trouble = trouble;
    return finished;
}

}  // namespace

Finished make(const json& sheet, const Metal& metal) {
    const double unit = sheet["units"] == "in" ? 25.4 : 1.0;
    const Bender bender = bender_of(sheet, unit);
    const double wasted_a = sheet["waste"]["A"].get<double>() * unit, wasted_b = sheet["waste"]["B"].get<double>() * unit;
    Tube tube(sheet["cut_length"].get<double>() * unit);
    std::map<int, double> bend_at;
    Finished finished;
    for (const json& step : sheet["steps"]) {
        const bool hook_is_a = step["hook_end"] == "A";
        const double read = step["mark"]["distance"].get<double>() * unit;
        const double ink = step["mark"]["from"] == "A" ? read : tube.length() - read;
        const double offset = bender.marks.at(step["mark"]["align_to"]);
        // The ink mark lies on the reference mark: the section at the tangent point is `offset` back towards the hook.
        const double start = hook_is_a ? ink - offset : ink + offset;
        const double angle = (step["angle"]["set"].get<double>() - metal.zero_deg) / (1 + metal.growth);
        const double radius = bender.radius * (1 + metal.growth);
        const double taken = radius * angle * degree * (1 - bender.stretch);
        const double from = hook_is_a ? start : start - taken, to = hook_is_a ? start + taken : start;
        if (from < 0 || to > tube.length() || tube.overlaps(from, to)) return troubled("no straight tube under the form");
        finished.unseen_ink = finished.unseen_ink || !tube.straight_between(start, ink);
        tube.put(from);
        tube.put(to);
        // Load: a runs from the hook side to the lever side; the index line is rolled right-handed about a, from w.
        const double roll = step["rotation"]["index_line_deg"].get<double>() * degree;
        const Vector3d a{1, 0, 0}, along = hook_is_a ? a : Vector3d(-a), inked{0, std::cos(roll), std::sin(roll)};
        tube.move(0, tube.length(), bring(tube.pose(start), {0, 0, 0}, along, inked));
        if (std::string trouble = neighbour_trouble(tube, step["rotation"]["neighbour"], bend_at, start); !trouble.empty())
            return troubled(trouble);
        // Pull and let go: what lies past the arc comes to its end, then turns about the form's centre, from a towards w.
        const Eigen::Matrix3d turn = Eigen::AngleAxisd(angle * degree, Vector3d::UnitZ()).toRotationMatrix();
        const Vector3d centre{0, radius, 0}, back{-taken, 0, 0};
        const Rigid swept{turn, turn * (back - centre) + centre};
        if (hook_is_a) tube.move(to, tube.length(), swept);
        else tube.move(0, from, swept);
        tube.bent(from, to, angle);
        bend_at[step["bend"].get<int>()] = from;
    }
    double from = wasted_a;
    for (const auto& [start, arc] : tube.arcs()) {
        finished.straights.push_back({tube.pose(from), tube.pose(start)});
        finished.angles_deg.push_back(arc.angle_deg);
        from = arc.end;
    }
    finished.straights.push_back({tube.pose(from), tube.pose(tube.length() - wasted_b)});
    return finished;
}

}  // namespace bench_world
