#pragma once
// One side of the tube, from the bend in hand outwards, as it lies in the bender with the lever at 0.

#include <Eigen/Core>
#include <cstdint>
#include <unordered_map>
#include <vector>

#include "bench/layout.h"
#include "bench/order.h"
#include "bench/solid.h"
#include "tube/centreline.h"

namespace tubewright {

/// A straight or an arc. Lengths in mm, the angle in radians, places in the bender's frame.
struct Element {
    Frame start;       ///< along points outwards; aside, of an arc, to its centre
    double length = 0;
    double angle = 0;  ///< 0 for a straight
    double from = 0, to = 0;  ///< how far along the straight tube from the bend's start, both ends
    bool in_hand = false;     ///< the straight that begins at the bend's start
    Eigen::Vector3d centre = Eigen::Vector3d::Zero();  ///< of a ball around its centre line
    double reach = 0;
};

/// A capsule that stands for a piece of an element, and where it lies along the tube as in Element.
struct TubePiece {
    Capsule capsule;
    double from, to;
};

/// The element in capsules: an arc as chords, thickened by what the arc leaves them; a straight in pieces
/// that are the shorter the nearer they are to the bender, as near places move slower past it.
std::vector<TubePiece> pieces(const Element& element, double tube_radius, double form_radius);

/// The straight without its first part; unchanged where it begins further out.
Element beyond(const Element& element, double length);

/// One bit for each way along which the tube can come or go.
struct WaysFound {
    std::uint8_t known = 0, free = 0;
};

/// Sets of made bends that grow outwards, one node for each; a set shares all but its last straight with
/// the set that lacks its outermost bend.
struct SideNode {
    int parent = -1;
    Element run, arc;  ///< from where the parent's tail begins to the outermost made bend, and that bend; the root has none
    Element tail;      ///< from there straight to the tube's end
    signed char path_free = -1, tail_free = -1;  ///< -1: not looked at yet
    WaysFound ways[2][2];  ///< laid in, taken out; without the tail, with it
};

class TubeSide {
public:
    /// The hook side or the lever side of this bend. `layout` has to outlive it.
    TubeSide(const Layout& layout, std::size_t bend, End hook, bool hook_side);

    /// Which of these made bends lie on this side.
    std::uint64_t mine(std::uint64_t made) const { return made & mask_; }
    int node(std::uint64_t made);
    SideNode& at(int node) { return nodes_[static_cast<std::size_t>(node)]; }

    /// Everything from the bend in hand out to the tube's end.
    std::vector<Element> whole(int node) const;

private:
    Element straight(const Frame& start, double from, double to) const;
    double outwards(std::size_t bend, bool far_side) const;  ///< to a bend's near or far tangent point

    const Layout* layout_;
    std::size_t bend_;
    bool towards_b_;
    double start_;  ///< the bend's start, from the tube's end A
    double whole_;  ///< from there to the tube's end
    std::uint64_t mask_ = 0;
    std::unordered_map<std::uint64_t, int> known_;
    std::vector<SideNode> nodes_;
};

}  // namespace tubewright
