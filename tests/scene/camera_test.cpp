#include "scene/camera.h"

#include <Eigen/Geometry>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "bench/samples.h"

using namespace tubewright;
using Eigen::Vector3d;

TEST_CASE("from the operator's place right is right, up is up, and away is further up the picture") {
    Bounds bounds;
    bounds.take_in({-10, -10, -10});
    bounds.take_in({10, 10, 10});
    const Camera camera = fitted(bounds.corners(), {{35}, {0}}, 1.3);
    const Share middle = *project(camera, {0, 0, 0});
    CHECK(project(camera, {5, 0, 0})->x > middle.x + 0.05);
    CHECK(project(camera, {0, 0, 5})->y < middle.y - 0.05);
    CHECK(project(camera, {0, 5, 0})->y < middle.y - 0.02);
    CHECK(camera.eye.y() < -10);
    CHECK(camera.eye.z() > 10);
    CHECK_FALSE(project(camera, camera.eye - 5 * camera.ahead));
}

TEST_CASE("fitting shows all corners, and no smaller than it must") {
    std::mt19937 dice(7);
    std::uniform_real_distribution<double> place(-100, 100), above(5, 60), aside(-40, 40), aspect(0.6, 2.2);
    for (int i = 0; i < 300; ++i) {
        Bounds bounds;
        for (int k = 0; k < 3; ++k) bounds.take_in({place(dice), place(dice), place(dice)});
        const Camera camera = fitted(bounds.corners(), {{above(dice)}, {aside(dice)}}, aspect(dice), 0.1);
        double furthest = 0;
        for (const Vector3d& corner : bounds.corners()) {
            const auto share = project(camera, corner);
            REQUIRE(share);
            furthest = std::max({furthest, std::abs(2 * share->x - 1), std::abs(2 * share->y - 1)});
            const double depth = (corner - camera.eye).dot(camera.ahead);
            CHECK(depth > camera.near);
            CHECK(depth < camera.far);
        }
        CHECK(furthest == Approx(0.9).margin(1e-6));
    }
}

TEST_CASE("the matrices for the graphics card agree with project()") {
    const Camera camera = fitted({{-20, -5, 0}, {30, 40, 25}}, {{30}, {15}}, 1.4);
    for (const Vector3d& place : {Vector3d(0, 0, 0), Vector3d(12, 30, 20), Vector3d(-15, 3, 9)}) {
        const Eigen::Vector4d clip = camera.projection() * camera.view() * place.homogeneous();
        const Share share = *project(camera, place);
        CHECK(clip.x() / clip.w() == Approx(2 * share.x - 1));
        CHECK(clip.y() / clip.w() == Approx(1 - 2 * share.y));
        CHECK(std::abs(clip.z() / clip.w()) < 1);
    }
}

TEST_CASE("eyes that the finger moved go further over the part or round it, never under the bench nor straight down") {
    // From the right, what lies away is seen further right, as it is past the middle; from higher up, what is high moves down the picture.
    Bounds bounds;
    bounds.take_in({-10, -10, -10});
    bounds.take_in({10, 10, 10});
    const Outlook usual{{34}, {0}};
    const auto seen = [&](const Outlook& from, const Vector3d& place) { return *project(fitted(bounds.corners(), from, 1.3), place); };
    CHECK(seen(moved(usual, {0}, {40}), {0, 8, 0}).x > seen(usual, {0, 8, 0}).x + 0.05);
    CHECK(seen(moved(usual, {40}, {0}), {0, 0, 8}).y > seen(usual, {0, 0, 8}).y + 0.05);
    CHECK(moved(usual, {500}, {0}).above.deg < 90);
    CHECK(moved(usual, {-500}, {0}).above.deg > 0);
    CHECK(moved({{34}, {170}}, {0}, {30}).aside == Angle{-160});
}
