#include "ui/triangles.h"

namespace tubewright {

void Triangles::start() {
    if (!list_) list_ = std::make_unique<ImDrawList>(ImGui::GetDrawListSharedData());
    list_->_ResetForNewFrame();
    list_->PushTextureID(ImGui::GetIO().Fonts->TexID);
    list_->PushClipRectFullScreen();
    data_.Clear();
}

void Triangles::finish() {
    if (data_.Valid || !list_) return;
    list_->PopClipRect();
    list_->PopTextureID();
    list_->_PopUnusedDrawCmd();
    const ImGuiIO& io = ImGui::GetIO();
    lists_[0] = list_.get();
    data_.CmdLists = lists_;
    data_.CmdListsCount = 1;
    data_.TotalVtxCount = list_->VtxBuffer.Size;
    data_.TotalIdxCount = list_->IdxBuffer.Size;
    data_.DisplaySize = io.DisplaySize;
    data_.FramebufferScale = io.DisplayFramebufferScale;
    data_.Valid = true;
}

}  // namespace tubewright
