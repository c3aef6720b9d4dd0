#include "gl/target.h"

#include <glad/gl.h>

#include <algorithm>

namespace tubewright {

Target::~Target() { free(); }

void Target::free() {
    for (unsigned* frame : {&plain_, &many_}) {
        if (*frame) glDeleteFramebuffers(1, frame);
        *frame = 0;
    }
    for (unsigned* buffer : {&plain_depth_, &many_colour_, &many_depth_}) {
        if (*buffer) glDeleteRenderbuffers(1, buffer);
        *buffer = 0;
    }
    if (texture_) glDeleteTextures(1, &texture_);
    texture_ = 0;
}

bool Target::smoothed(int samples) {
    int most = 0;
    glGetIntegerv(GL_MAX_SAMPLES, &most);
    samples_ = std::min(samples, most);
    if (samples_ < 2) return false;
    glGenFramebuffers(1, &many_);
    glBindFramebuffer(GL_FRAMEBUFFER, many_);
    glGenRenderbuffers(1, &many_colour_);
    glBindRenderbuffer(GL_RENDERBUFFER, many_colour_);
    glRenderbufferStorageMultisample(GL_RENDERBUFFER, samples_, GL_RGBA8, width_, height_);
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_RENDERBUFFER, many_colour_);
    glGenRenderbuffers(1, &many_depth_);
    glBindRenderbuffer(GL_RENDERBUFFER, many_depth_);
    glRenderbufferStorageMultisample(GL_RENDERBUFFER, samples_, GL_DEPTH_COMPONENT24, width_, height_);
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER, many_depth_);
    return glCheckFramebufferStatus(GL_FRAMEBUFFER) == GL_FRAMEBUFFER_COMPLETE;
}

void Target::resize(int width, int height, int samples) {
    if (width == width_ && height == height_ && samples == asked_ && texture_) return;
    free();
    width_ = width, height_ = height, asked_ = samples;
    glGenTextures(1, &texture_);
    glBindTexture(GL_TEXTURE_2D, texture_);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, width, height, 0, GL_RGBA, GL_UNSIGNED_BYTE, nullptr);
    for (const unsigned filter : {GL_TEXTURE_MIN_FILTER, GL_TEXTURE_MAG_FILTER}) glTexParameteri(GL_TEXTURE_2D, filter, GL_LINEAR);
    for (const unsigned edge : {GL_TEXTURE_WRAP_S, GL_TEXTURE_WRAP_T}) glTexParameteri(GL_TEXTURE_2D, edge, GL_CLAMP_TO_EDGE);
    glGenFramebuffers(1, &plain_);
    glBindFramebuffer(GL_FRAMEBUFFER, plain_);
    glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, texture_, 0);
    if (smoothed(samples)) return;
    samples_ = 0;
    if (many_) glDeleteFramebuffers(1, &many_);
    many_ = 0;
    glGenRenderbuffers(1, &plain_depth_);
    glBindRenderbuffer(GL_RENDERBUFFER, plain_depth_);
    glRenderbufferStorage(GL_RENDERBUFFER, GL_DEPTH_COMPONENT24, width, height);
    glBindFramebuffer(GL_FRAMEBUFFER, plain_);
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER, plain_depth_);
}

void Target::bind() const {
    glBindFramebuffer(GL_FRAMEBUFFER, many_ ? many_ : plain_);
    glViewport(0, 0, width_, height_);
}

void Target::finish() const {
    if (!many_) return;
    glBindFramebuffer(GL_READ_FRAMEBUFFER, many_);
    glBindFramebuffer(GL_DRAW_FRAMEBUFFER, plain_);
    glBlitFramebuffer(0, 0, width_, height_, 0, 0, width_, height_, GL_COLOR_BUFFER_BIT, GL_NEAREST);
}

}  // namespace tubewright
