#include "bench/layout.h"

#include <catch2/catch.hpp>

#include "bench/samples.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

/// A bender that gives exactly what it is set to, radius 1 in, and fittings that use up a tenth.
Line plain_line() {
    Line line = line_of({6, 4, 5}, {{90, 0}, {45, 90}});
    line.bender.radius = 1_in;
    line.a.allowance = 0.1_in;
    line.b.allowance = 0.1_in;
    line.b.trim = 0.5_in;
    return line;
}

}  // namespace

TEST_CASE("the cut length is wastes, straights and arcs, and marks count from the cut end") {
    // Setback 1 at 90 and tan(22.5) = 0.414214 at 45; arcs 1.570796 and 0.785398.
    //   straights: 6 - 1 = 5;  4 - 1 - 0.414214 = 2.585786;  5 - 0.414214 = 4.585786
    //   cut:       0.1 + 5 + 1.570796 + 2.585786 + 0.785398 + 4.585786 + 0.6 = 15.227766
    const Layout laid = layout(plain_line(), {});
    CHECK(laid.cut_length.inch() == Approx(15.227766).margin(1e-6));
    CHECK(laid.waste(End::A).inch() == Approx(0.1));
    CHECK(laid.waste(End::B).inch() == Approx(0.6));
    CHECK(laid.spans[0].start.inch() == Approx(5.1));
    CHECK(laid.spans[0].end.inch() == Approx(6.670796).margin(1e-6));
    CHECK(laid.spans[1].start.inch() == Approx(9.256582).margin(1e-6));
    CHECK(laid.spans[1].end.inch() == Approx(10.041981).margin(1e-6));
}

TEST_CASE("the ink mark follows the end on the hook") {
    const Layout laid = layout(plain_line(), {});
    const ReferenceMark quarter{"a quarter past", 0.25_in};
    // A held: the bend starts at 5.1, the mark a quarter further to B. B held: it starts at 6.670796,
    // the mark a quarter further to A.
    CHECK(ink_mark(laid, 0, End::A, quarter).inch() == Approx(5.35));
    CHECK(ink_mark(laid, 0, End::B, quarter).inch() == Approx(6.420796).margin(1e-6));
}

TEST_CASE("a growing bend is laid out on the radius it ends with") {
    // 2 percent: radius 1.02. Straight A: 6 - 1.02; arc: 1.02 * pi/2 = 1.602212
    const Layout laid = layout(plain_line(), {0.02, {0.7}});
    CHECK(laid.part.radius.inch() == Approx(1.02));
    CHECK(laid.spans[0].start.inch() == Approx(0.1 + 6 - 1.02));
    CHECK((laid.spans[0].end - laid.spans[0].start).inch() == Approx(1.602212).margin(1e-6));
}

TEST_CASE("a bend that stretches takes less tube, and leaves the finished part as it is") {
    Line line = plain_line();
    line.bender.stretch = 0.02;
    const Layout laid = layout(line, {});
    CHECK((laid.spans[0].end - laid.spans[0].start).inch() == Approx(1.570796 * 0.98).margin(1e-6));
    CHECK(laid.part == layout(plain_line(), {}).part);
}

TEST_CASE("an offset of 2 in at 45 degrees over 12 in of run, on a 21/32 radius") {
    // developed = run + offset tan(22.5) - 2 gain: 12.771952; the straight between the bends 2.284772; identities
    // worked out apart from this program. Legs: travel 2.828427, run left over split in two.
    Line line = line_of({5, 2.8284271247461903, 5}, {{45, 0}, {45, 180}});
    line.bender.radius = 0.65625_in;
    const Layout laid = layout(line, {});
    CHECK(laid.cut_length.inch() == Approx(12.771952).margin(5e-7));
    CHECK(laid.part.straights[1].inch() == Approx(2.284772).margin(5e-7));
}
