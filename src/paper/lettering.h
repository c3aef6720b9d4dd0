#pragma once
// The letters of the program's own fonts: how wide words run, and where they are broken over lines.

#include <memory>
#include <string>
#include <vector>

#include "base/result.h"
#include "paper/page.h"

namespace tubewright {

/// The bytes of the font files. What a letter font lacks is taken from the sign font of the same weight.
struct FontBytes {
    std::string regular, bold, signs, signs_bold;
};

struct FontNotRead {};

class Lettering {
public:
    static Result<Lettering, FontNotRead> of(const FontBytes& bytes);

    double width_mm(const std::string& text, Letters letters) const;
    /// Broken at blanks, though not before a number's fraction or its unit, and within a word that is wider than a line. Line ends count as blanks.
    std::vector<std::string> lines(const std::string& text, double widest_mm, Letters letters) const;
    /// These letters, or smaller ones with which the text is no wider than that; not under `least_pt`.
    Letters fitted(const std::string& text, double widest_mm, Letters letters, double least_pt) const;

    struct Faces;
    const Faces& faces() const { return *faces_; }

private:
    explicit Lettering(std::shared_ptr<const Faces> faces) : faces_(std::move(faces)) {}
    std::shared_ptr<const Faces> faces_;
};

}  // namespace tubewright
