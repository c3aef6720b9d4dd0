#pragma once
// A picture being drawn into: colour with depth, smoothed over several samples where the driver can.

namespace tubewright {

class Target {
public:
    Target() = default;
    Target(const Target&) = delete;
    Target& operator=(const Target&) = delete;
    ~Target();

    /// Ready to be drawn into at this size. `samples` below 2 means unsmoothed.
    void resize(int width, int height, int samples);
    void bind() const;
    /// What was drawn becomes the texture.
    void finish() const;
    unsigned texture() const { return texture_; }
    unsigned finished_frame() const { return plain_; }  ///< framebuffer that holds the texture
    int width() const { return width_; }
    int height() const { return height_; }
    int samples() const { return samples_; }  ///< as granted

private:
    bool smoothed(int samples);
    void free();
    unsigned plain_ = 0, texture_ = 0, plain_depth_ = 0, many_ = 0, many_colour_ = 0, many_depth_ = 0;
    int width_ = 0, height_ = 0, asked_ = 0, samples_ = 0;
};

}  // namespace tubewright
