#include "shell/input_queue.h"

#include <catch2/catch.hpp>

using namespace tubewright;
using Kind = FingerEvent::Kind;

TEST_CASE("two quick taps between two frames are two taps") {
    InputQueue queue;
    for (const float x : {10.0f, 50.0f}) {
        queue.push({Kind::down, x, 5});
        queue.push({Kind::up, x, 5});
    }
    int downs = 0;
    bool was_down = false;
    float last_x = 0;
    for (int frame = 0; frame < 10; ++frame) {
        const Finger finger = queue.next();
        if (finger.down && !was_down) {
            ++downs;
            last_x = finger.x;
        }
        was_down = finger.down;
    }
    CHECK(downs == 2);
    CHECK(last_x == 50);
    CHECK(queue.empty());
}

TEST_CASE("a lifted finger is where it lifted for one frame, then nowhere") {
    InputQueue queue;
    queue.push({Kind::down, 10, 5});
    queue.push({Kind::up, 12, 5});
    CHECK(queue.next().down);
    const Finger lifted = queue.next();
    CHECK_FALSE(lifted.down);
    CHECK(lifted.there);
    CHECK(lifted.x == 12);
    CHECK_FALSE(queue.empty());  // one more frame is wanted
    CHECK_FALSE(queue.next().there);
}

TEST_CASE("a pointer that moves without touching is nowhere") {
    InputQueue queue;
    queue.push({Kind::move, 10, 5});
    CHECK_FALSE(queue.next().there);
}

TEST_CASE("a finger that slides is followed") {
    InputQueue queue;
    queue.push({Kind::down, 10, 5});
    queue.next();
    queue.push({Kind::move, 11, 6});
    queue.push({Kind::move, 40, 7});
    const Finger finger = queue.next();
    CHECK(finger.down);
    CHECK(finger.x == 40);
}
