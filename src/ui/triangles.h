#pragma once
// Triangles that stay until they are drawn anew, so that what has not changed is painted from them again.

#include <imgui.h>

#include <array>
#include <memory>

namespace tubewright {

/// Of one part of the screen.
class Triangles {
public:
    /// Forgets what was drawn and begins anew. After ImGui::NewFrame().
    void start();
    void finish();
    ImDrawList& list() const { return *list_; }

private:
    std::unique_ptr<ImDrawList> list_;
};

/// A screen put together of its parts, the lowest first. Copies nothing.
template <std::size_t most>
class Painting {
public:
    Painting() = default;
    Painting(const Painting&) = delete;  // what data() gives points into this
    Painting& operator=(const Painting&) = delete;

    void start() { data_.Clear(); }
    void add(const Triangles& part) {
        ImDrawList& list = part.list();
        lists_[static_cast<std::size_t>(data_.CmdListsCount++)] = &list;
        data_.TotalVtxCount += list.VtxBuffer.Size;
        data_.TotalIdxCount += list.IdxBuffer.Size;
    }
    void finish() {
        if (data_.Valid || data_.CmdListsCount == 0) return;
        const ImGuiIO& io = ImGui::GetIO();
        data_.CmdLists = lists_.data();
        data_.DisplaySize = io.DisplaySize;
        data_.FramebufferScale = io.DisplayFramebufferScale;
        data_.Valid = true;
    }
    /// For a backend to paint.
    ImDrawData* data() { return &data_; }

private:
    std::array<ImDrawList*, most> lists_{};
    ImDrawData data_;
};

}  // namespace tubewright
