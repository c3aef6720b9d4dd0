#include "paper/lettering.h"

#include "paper/faces.h"

namespace tubewright {
namespace {

/// Cairo may keep a font after everybody let go of it, so the bytes and FreeType's own state go with the font.
struct KeptFace {
    std::shared_ptr<FT_LibraryRec_> library;
    std::string bytes;
    FT_Face face = nullptr;
    ~KeptFace() {
        if (face) FT_Done_Face(face);
    }
};

const cairo_user_data_key_t kept_key{};

bool add_face(const std::shared_ptr<FT_LibraryRec_>& library, const std::string& bytes, Lettering::Faces::Face& face) {
    auto kept = std::make_unique<KeptFace>(KeptFace{library, bytes, nullptr});
    if (FT_New_Memory_Face(library.get(), reinterpret_cast<const FT_Byte*>(kept->bytes.data()), static_cast<FT_Long>(kept->bytes.size()), 0, &kept->face) != 0) return false;
    face.free_type = kept->face;
    face.cairo = cairo_ft_font_face_create_for_ft_face(kept->face, FT_LOAD_NO_HINTING);
    const auto let_go = [](void* data) { delete static_cast<KeptFace*>(data); };
    if (cairo_font_face_set_user_data(face.cairo, &kept_key, kept.get(), let_go) != CAIRO_STATUS_SUCCESS) return false;
    kept.release();
    return true;
}

/// The letter that begins at `at`, which is moved behind it; a question mark for what is no UTF-8, a blank for a control.
std::string next_letter(const std::string& text, std::size_t& at, FT_ULong& code) {
    const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u; };
    const unsigned first = byte(at);
    const std::size_t more = first < 0x80 ? 0 : (first & 0xE0) == 0xC0 ? 1 : (first & 0xF0) == 0xE0 ? 2 : (first & 0xF8) == 0xF0 ? 3 : 4;
    code = more == 0 ? first : first & (0x3Fu >> more);
    bool good = more < 4;
    for (std::size_t i = 1; good && i <= more; ++i) {
        good = (byte(at + i) & 0xC0) == 0x80;
        code = (code << 6) | (byte(at + i) & 0x3F);
    }
    constexpr FT_ULong least[] = {0, 0x80, 0x800, 0x10000};
    good = good && code >= least[more] && code <= 0x10FFFF && (code < 0xD800 || code > 0xDFFF);
    const std::size_t start = at;
    at += good ? more + 1 : 1;
    if (!good) code = '?';
    else if (code < 0x20 || code == 0x7F) code = ' ';
    else return text.substr(start, more + 1);
    return std::string(1, static_cast<char>(code));
}

std::vector<std::string> letters_of(const std::string& text) {
    std::vector<std::string> all;
    for (std::size_t at = 0; at < text.size();) {
        FT_ULong code;
        all.push_back(next_letter(text, at, code));
    }
    return all;
}

bool is_digit(const std::string& letter) { return letter.size() == 1 && letter[0] >= '0' && letter[0] <= '9'; }

/// Whether the blank at `i` stands within 43 13/16" or 12.5 mm.
bool belongs_together(const std::vector<std::string>& letters, std::size_t i) {
    if (i == 0 || i + 1 >= letters.size() || !is_digit(letters[i - 1])) return false;
    return is_digit(letters[i + 1]) || (i + 2 < letters.size() && letters[i + 1] == "m" && letters[i + 2] == "m");
}

}  // namespace

Lettering::Faces::~Faces() {
    if (measuring) cairo_destroy(measuring);
    if (nowhere) cairo_surface_destroy(nowhere);
    for (const Face* face : {&regular, &bold, &signs, &signs_bold})
        if (face->cairo) cairo_font_face_destroy(face->cairo);
}

Result<Lettering, FontNotRead> Lettering::of(const FontBytes& bytes) {
    FT_Library opened = nullptr;
    if (FT_Init_FreeType(&opened) != 0) return FontNotRead{};
    const std::shared_ptr<FT_LibraryRec_> library(opened, [](FT_Library it) { FT_Done_FreeType(it); });
    const auto faces = std::make_shared<Faces>();
    if (!add_face(library, bytes.regular, faces->regular) || !add_face(library, bytes.bold, faces->bold) ||
        !add_face(library, bytes.signs, faces->signs) || !add_face(library, bytes.signs_bold, faces->signs_bold))
        return FontNotRead{};
    faces->nowhere = cairo_recording_surface_create(CAIRO_CONTENT_ALPHA, nullptr);
    faces->measuring = cairo_create(faces->nowhere);
    return Lettering(faces);
}

std::vector<FontRun> font_runs(const Lettering::Faces& faces, const std::string& text, bool bold) {
    const Lettering::Faces::Face* const letters = bold ? &faces.bold : &faces.regular;
    const Lettering::Faces::Face* const signs = bold ? &faces.signs_bold : &faces.signs;
    std::vector<FontRun> runs;
    for (std::size_t at = 0; at < text.size();) {
        FT_ULong code;
        const std::string letter = next_letter(text, at, code);
        const auto* const face = FT_Get_Char_Index(letters->free_type, code) != 0 ? letters : signs;
        if (runs.empty() || runs.back().face != face) runs.push_back({face, ""});
        runs.back().text += letter;
    }
    return runs;
}

double set_font(cairo_t* at, const FontRun& run, double size) {
    cairo_set_font_face(at, run.face->cairo);
    cairo_set_font_size(at, size);
    cairo_font_options_t* const options = cairo_font_options_create();
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_set_font_options(at, options);
    cairo_font_options_destroy(options);
    cairo_text_extents_t extents;
    cairo_text_extents(at, run.text.c_str(), &extents);
    return extents.x_advance;
}

double Lettering::width_mm(const std::string& text, Letters letters) const {
    double width = 0;
    for (const FontRun& run : font_runs(*faces_, text, letters.bold)) width += set_font(faces_->measuring, run, mm_of_pt(letters.pt));
    return width;
}

std::vector<std::string> Lettering::lines(const std::string& text, double widest_mm, Letters letters) const {
    std::vector<std::string> all;
    std::string line, word;
    const auto fits = [&](const std::string& what) { return width_mm(what, letters) <= widest_mm; };
    const auto end_word = [&] {
        if (word.empty()) return;
        const std::string longer = line.empty() ? word : line + " " + word;
        if (fits(longer)) line = longer;
        else {
            if (!line.empty()) all.push_back(line);
            line.clear();
            for (const std::string& letter : letters_of(word)) {
                if (!line.empty() && !fits(line + letter)) {
                    all.push_back(line);
                    line.clear();
                }
                line += letter;
            }
        }
        word.clear();
    };
    const std::vector<std::string> letters_in = letters_of(text);
    for (std::size_t i = 0; i < letters_in.size(); ++i) {
        if (letters_in[i] == " " && !belongs_together(letters_in, i)) end_word();
        else word += letters_in[i];
    }
    end_word();
    if (!line.empty() || all.empty()) all.push_back(line);
    return all;
}

Letters Lettering::fitted(const std::string& text, double widest_mm, Letters letters, double least_pt) const {
    const double width = width_mm(text, letters);
    if (width > widest_mm) letters.pt = std::max(least_pt, letters.pt * widest_mm / width);
    return letters;
}

}  // namespace tubewright
