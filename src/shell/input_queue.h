#pragma once
// Touches as they came, played back so that none is lost: at most one change of the finger for each frame.

#include <deque>

namespace tubewright {

/// A finger came down, moved or lifted; pixels.
struct FingerEvent {
    enum class Kind { down, move, up } kind;
    float x, y;
};

struct Finger {
    bool down = false;
    bool there = false;  ///< a lifted finger is nowhere
    float x = 0, y = 0;
};

class InputQueue {
public:
    void push(const FingerEvent& event) { waiting_.push_back(event); }
    bool empty() const { return waiting_.empty() && !lifted_; }

    /// The finger in the next frame. A lifted finger stays one frame where it lifted, then is gone.
    Finger next() {
        if (lifted_) {
            lifted_ = false;
            finger_.there = false;
        }
        while (!waiting_.empty()) {
            const FingerEvent event = waiting_.front();
            waiting_.pop_front();
            if (event.kind == FingerEvent::Kind::move && !finger_.down) continue;  // nothing follows a pointer that does not touch
            finger_.x = event.x;
            finger_.y = event.y;
            if (event.kind == FingerEvent::Kind::move) continue;
            finger_.down = event.kind == FingerEvent::Kind::down;
            finger_.there = true;
            lifted_ = !finger_.down;
            break;
        }
        return finger_;
    }

private:
    std::deque<FingerEvent> waiting_;
    Finger finger_;
    bool lifted_ = false;
};

}  // namespace tubewright
