// What comes out of the printer, measured in pixels: the PDF drawn by poppler's pdftoppm, a program of others.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <numbers>
#include <set>

#include "bench/samples.h"
#include "paper/gauge_pages.h"
#include "paper/paper_samples.h"
#include "paper/pdf.h"
#include "paper/strip_pages.h"

using namespace tubewright;

namespace {

/// A page in grey, 0 is ink and 255 paper.
struct Print {
    int width = 0, height = 0;
    std::string pixels;
    double mm = 0;  ///< of a pixel

    int grey(int x, int y) const { return static_cast<unsigned char>(pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)]); }
    double ink(int x, int y) const { return 1 - grey(x, y) / 255.0; }
    int px(double length_mm) const { return static_cast<int>(std::lround(length_mm / mm)); }
};

Print read_print(const std::filesystem::path& path, int dpi) {
    Print print;
    print.mm = 25.4 / dpi;
    std::ifstream in(path, std::ios::binary);
    std::string magic;
    int most = 0;
    in >> magic >> print.width >> print.height >> most;
    REQUIRE(magic == "P5");
    REQUIRE(most == 255);
    in.get();
    print.pixels.assign(std::istreambuf_iterator<char>(in), {});
    REQUIRE(print.pixels.size() == static_cast<std::size_t>(print.width) * static_cast<std::size_t>(print.height));
    return print;
}

std::vector<Print> printed(const std::string& pdf, int dpi) {
    namespace fs = std::filesystem;
    std::string folder = (fs::temp_directory_path() / "tubewright-print-XXXXXX").string();
    REQUIRE(mkdtemp(folder.data()));
    std::ofstream(folder + "/it.pdf", std::ios::binary) << pdf;
    REQUIRE(std::system(("pdftoppm -r " + std::to_string(dpi) + " -gray " + folder + "/it.pdf " + folder + "/page").c_str()) == 0);
    std::set<fs::path> files;
    for (const auto& entry : fs::directory_iterator(folder))
        if (entry.path().extension() == ".pgm") files.insert(entry.path());
    std::vector<Print> prints;
    for (const fs::path& file : files) prints.push_back(read_print(file, dpi));
    fs::remove_all(folder);
    return prints;
}

/// Middles of the stretches of ink between two columns, each row between two rows counted alike.
std::vector<double> lines_across(const Print& print, int left, int right, int top, int foot) {
    std::vector<double> middles;
    double sum = 0, weighed = 0;
    for (int x = left; x <= right; ++x) {
        double ink = 0;
        for (int y = top; y < foot && x < right; ++y) ink += print.ink(x, y) / (foot - top);
        if (ink > 0.3) {  // the grey of a tab is 0.14
            sum += ink;
            weighed += ink * (x + 0.5);
        } else if (sum > 0) {
            middles.push_back(weighed / sum);
            sum = weighed = 0;
        }
    }
    return middles;
}

struct Run {
    int start = 0, length = 0;
};
Run longest_run(const Print& print, int y) {
    Run best, run;
    for (int x = 0; x < print.width; ++x) {
        if (print.grey(x, y) > 127) run = {x + 1, 0};
        else if (++run.length > best.length) best = run;
    }
    return best;
}

struct MeasuredPiece {
    double length_mm;
    std::vector<double> ticks_mm;  ///< from the piece's start
};

/// A piece is a box: a long level line with an upright one from its left end 45 mm down.
std::vector<MeasuredPiece> measured_pieces(const Print& print) {
    std::vector<MeasuredPiece> pieces;
    for (int y = 0; y + print.px(48) < print.height; ++y) {
        const Run edge = longest_run(print, y);
        if (edge.length < print.px(50)) continue;
        bool upright = true;
        for (int down = 0; down < print.px(45); ++down) upright = upright && print.grey(edge.start + 1, y + down) < 128;
        if (!upright || longest_run(print, y + print.px(2)).length > print.px(50)) continue;
        const int left = edge.start - print.px(2), right = print.width;
        const std::vector<double> sides = lines_across(print, left, right, y + print.px(37), y + print.px(40));
        REQUIRE(sides.size() >= 2);
        MeasuredPiece piece{(sides[1] - sides[0]) * print.mm, {}};
        for (const double middle : lines_across(print, left, right, y + print.px(4), y + print.px(8)))
            if (middle > sides[0] + 2 && middle < sides[1] - 2) piece.ticks_mm.push_back((middle - sides[0]) * print.mm);
        pieces.push_back(piece);
        y += print.px(40);
    }
    return pieces;
}

/// The bar: 3 mm or more of rows with about a hand's breadth of ink in one stretch.
double measured_bar(const Print& print) {
    int rows = 0;
    for (int y = 0; y < print.height; ++y) {
        const Run run = longest_run(print, y);
        rows = run.length > print.px(95) && run.length < print.px(107) ? rows + 1 : 0;
        if (rows < print.px(3)) continue;
        double ink = 0;
        for (int x = run.start - 5; x < run.start + run.length + 5; ++x) ink += print.ink(x, y - print.px(1));
        return ink * print.mm;
    }
    return 0;
}

/// Legs of 12, 9, 11 and 15 in: more than a metre of tube, of five or six pieces of paper.
Sheet long_line() {
    Line line = line_of({12, 9, 11, 15}, {{90, 0}, {45, 90}, {30, 180}});
    line.b.trim = Length{20};
    return bend_sheet(line);
}

void check_strip(PageSize size, Unit unit) {
    const Sheet sheet = long_line();
    REQUIRE(sheet.layout->cut_length.mm > 1000);
    const Lettering lettering = own_letters();
    const std::string pdf = pdf_of(strip_pages(strip_view(sheet, {unit, 16}), size, lettering), size, lettering, "strip");
    std::vector<double> found;
    double at = 0;
    for (const Print& print : printed(pdf, 300)) {
        CHECK(measured_bar(print) == Approx(unit == Unit::inch ? 101.6 : 100).margin(0.1));
        for (const MeasuredPiece& piece : measured_pieces(print)) {
            for (const double tick : piece.ticks_mm) found.push_back(at + tick);
            at += piece.length_mm;
        }
    }
    CHECK(at == Approx(sheet.layout->cut_length.mm).margin(0.1));
    std::vector<double> wanted{(sheet.layout->cut_length - Length{20}).mm};
    for (const Step& step : sheet.steps) wanted.push_back(step.mark.mm);  // from A, the sheet's choice
    std::sort(wanted.begin(), wanted.end());
    REQUIRE(found.size() == wanted.size());
    for (std::size_t i = 0; i < wanted.size(); ++i) CHECK(found[i] == Approx(wanted[i]).margin(0.1));
}

struct Fit {
    double sum = 0, u = 0, v = 0, uu = 0, uv = 0;
    void take(double at, double middle) {
        sum += 1;
        u += at;
        v += middle;
        uu += at * at;
        uv += at * middle;
    }
    double slope() const { return (sum * uv - u * v) / (sum * uu - u * u); }
};

/// The tube on a gauge is the grey of 86 % white, in stretches of a millimetre or more; letters' soft edges are not.
struct GreyTube {
    const Print& print;
    int left = 1 << 20, top = 1 << 20, right = 0, foot = 0;

    explicit GreyTube(const Print& of) : print(of) {
        for (int y = 0; y < print.height; ++y)
            for (int x = 0; x < print.width; ++x)
                if (is_tube(x, y, 1, 0) && is_tube(x, y, 0, 1)) {
                    left = std::min(left, x);
                    right = std::max(right, x);
                    top = std::min(top, y);
                    foot = std::max(foot, y);
                }
    }
    bool is_grey(int x, int y) const { return x >= 0 && y >= 0 && x < print.width && y < print.height && std::abs(print.grey(x, y) - 219) <= 3; }
    bool is_tube(int x, int y, int dx, int dy) const {
        int run = 0;
        for (int way : {1, -1})
            for (int i = 0; i < print.px(1) && is_grey(x + way * i * dx, y + way * i * dy); ++i) ++run;
        return run > print.px(1);
    }
    /// dy/dx of the leg that crosses these columns, between these rows.
    double slope_by_columns(int from, int to, int high, int low) const {
        Fit fit;
        for (int x = from; x < to; ++x)
            for (int y = high; y < low; ++y)
                if (is_tube(x, y, 0, 1)) fit.take(x, y);
        return fit.slope();
    }
    double slope_by_rows(int from, int to) const {
        Fit fit;
        for (int y = from; y < to; ++y)
            for (int x = left; x <= right; ++x)
                if (is_tube(x, y, 1, 0)) fit.take(y, x);
        return fit.slope();
    }
};

}  // namespace

TEST_CASE("on the printed strip every mark lies within 0.1 mm of its place over more than a metre, and the check bar too") {
    check_strip(PageSize::letter, Unit::inch);
    check_strip(PageSize::a4, Unit::mm);
}

TEST_CASE("the legs of a printed gauge stand at the target to 0.2 degrees") {
    const Lettering lettering = own_letters();
    for (const double target : {20.0, 45.0, 90.0, 135.0, 170.0}) {
        INFO("target " << target);
        const Sheet sheet = bend_sheet(line_of({12, 12}, {{target, 0}}));
        const std::vector<Print> prints = printed(pdf_of(gauge_pages(gauges_view(sheet, {Unit::mm, 16}), PageSize::a4, lettering), PageSize::a4, lettering, "gauge"), 200);
        REQUIRE(prints.size() == 1);
        const Print& print = prints[0];
        CHECK(measured_bar(print) == Approx(100).margin(0.15));
        const GreyTube tube(print);
        REQUIRE(tube.right > tube.left + print.px(30));
        // The first leg lies level at the foot, as high as the tube is thick. Rightwards is along, up is away from y.
        const double first = tube.slope_by_columns(tube.left + print.px(3), tube.left + print.px(35), tube.foot - print.px(4.7), tube.foot);
        CHECK(std::abs(first) < 0.002);
        double angle;
        if (target < 30) angle = std::atan(-tube.slope_by_columns(tube.right - print.px(25), tube.right - print.px(6), tube.top, tube.foot)) * 180 / std::numbers::pi;
        else if (target > 150) angle = 180 - std::atan(tube.slope_by_columns(tube.left + print.px(10), tube.left + print.px(35), tube.top, (tube.top + tube.foot) / 2)) * 180 / std::numbers::pi;
        else angle = 90 - std::atan(-tube.slope_by_rows(tube.top + print.px(6), tube.top + print.px(26))) * 180 / std::numbers::pi;
        CHECK(angle == Approx(target).margin(0.2));
    }
}
