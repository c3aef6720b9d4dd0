#pragma once
// The triangles of one frame. They stay until another frame is drawn, so that a screen on which nothing
// has changed is painted from them again.

#include <imgui.h>

#include <memory>

namespace tubewright {

class Triangles {
public:
    Triangles() = default;
    Triangles(const Triangles&) = delete;  // what data() gives points into this
    Triangles& operator=(const Triangles&) = delete;

    /// Forgets what was drawn and begins anew. After ImGui::NewFrame().
    void start();
    void finish();
    ImDrawList& list() const { return *list_; }
    /// For a backend to paint.
    ImDrawData* data() { return &data_; }

private:
    std::unique_ptr<ImDrawList> list_;
    ImDrawList* lists_[1] = {nullptr};
    ImDrawData data_;
};

}  // namespace tubewright
