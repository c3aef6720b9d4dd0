#include "ui/triangles.h"

namespace tubewright {

void Triangles::start() {
    if (!list_) list_ = std::make_unique<ImDrawList>(ImGui::GetDrawListSharedData());
    list_->_ResetForNewFrame();
    list_->PushTextureID(ImGui::GetIO().Fonts->TexID);
    list_->PushClipRectFullScreen();
}

void Triangles::finish() {
    list_->PopClipRect();
    list_->PopTextureID();
    list_->_PopUnusedDrawCmd();
}

}  // namespace tubewright
