#include "paper/pdf.h"

#include <cairo-pdf.h>

#include <numbers>

#include "paper/faces.h"
#include "present/paper_words.h"

namespace tubewright {
namespace {

constexpr double pt_per_mm = 72 / 25.4;
constexpr Letters foot_letters{11};

struct Colour {
    double red, green, blue;
};

Colour colour_of(Tint tint) {
    switch (tint) {
        case Tint::black: return {0, 0, 0};
        case Tint::grey: return {0.33, 0.33, 0.33};  // 7.6 : 1 on paper
        case Tint::pale: return {0.86, 0.86, 0.86};
        case Tint::white: return {1, 1, 1};
        case Tint::red: return {0.70, 0, 0};
    }
    return {};
}

void set_tint(cairo_t* at, Tint tint) {
    const Colour colour = colour_of(tint);
    cairo_set_source_rgb(at, colour.red, colour.green, colour.blue);
}

void set_path(cairo_t* at, const std::vector<Spot>& path, bool closed) {
    cairo_new_path(at);
    for (const Spot& spot : path) cairo_line_to(at, spot.x_mm, spot.y_mm);
    if (closed) cairo_close_path(at);
}

struct Draw {
    cairo_t* at;
    const Lettering& lettering;

    void operator()(const Lettered& it) const {
        set_tint(at, it.tint);
        cairo_save(at);
        cairo_translate(at, it.start.x_mm, it.start.y_mm);
        cairo_rotate(at, -it.turned_deg * std::numbers::pi / 180);
        double x = 0;
        for (const FontRun& run : font_runs(lettering.faces(), it.text, it.letters.bold)) {
            const double width = set_font(at, run, mm_of_pt(it.letters.pt));
            cairo_move_to(at, x, 0);
            cairo_show_text(at, run.text.c_str());
            x += width;
        }
        cairo_restore(at);
    }
    void operator()(const Stroked& it) const {
        set_tint(at, it.tint);
        set_path(at, it.path, it.closed);
        cairo_set_line_width(at, it.width_mm);
        cairo_set_dash(at, it.dashes_mm.data(), static_cast<int>(it.dashes_mm.size()), 0);
        cairo_stroke(at);
    }
    void operator()(const Filled& it) const {
        set_tint(at, it.tint);
        set_path(at, it.path, true);
        cairo_fill(at);
    }
};

cairo_status_t keep(void* bytes, const unsigned char* data, unsigned int length) {
    static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
    return CAIRO_STATUS_SUCCESS;
}

std::vector<Drawn> foot_of(const PrintedPage& page, std::size_t number, std::size_t pages, Extent extent, const Lettering& lettering) {
    const double y = extent.height_mm - margin_mm + 4;
    const std::string counted = paper_says::page(number, pages);
    const double room = lettering.width_mm(counted, foot_letters), right = extent.width_mm - margin_mm;
    const Letters letters = lettering.fitted(page.foot, right - margin_mm - room - 8, foot_letters, 6);
    return {Lettered{{margin_mm, y}, page.foot, letters, Tint::grey}, Lettered{{right - room, y}, counted, foot_letters, Tint::grey}};
}

}  // namespace

std::string pdf_of(const std::vector<PrintedPage>& pages, PageSize size, const Lettering& lettering, const std::string& title) {
    std::string bytes;
    const Extent upright = extent_of(size, false);
    cairo_surface_t* const surface = cairo_pdf_surface_create_for_stream(keep, &bytes, upright.width_mm * pt_per_mm, upright.height_mm * pt_per_mm);
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, title.c_str());
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, "");
    cairo_t* const at = cairo_create(surface);
    for (std::size_t i = 0; i < pages.size(); ++i) {
        const Extent extent = extent_of(size, pages[i].on_its_side);
        cairo_pdf_surface_set_size(surface, extent.width_mm * pt_per_mm, extent.height_mm * pt_per_mm);
        cairo_identity_matrix(at);
        cairo_scale(at, pt_per_mm, pt_per_mm);
        for (const Drawn& drawn : pages[i].drawn) std::visit(Draw{at, lettering}, drawn);
        for (const Drawn& drawn : foot_of(pages[i], i + 1, pages.size(), extent, lettering)) std::visit(Draw{at, lettering}, drawn);
        cairo_show_page(at);
    }
    cairo_destroy(at);
    cairo_surface_finish(surface);
    cairo_surface_destroy(surface);
    return bytes;
}

}  // namespace tubewright
