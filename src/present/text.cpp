#include "present/text.h"

#include <cmath>
#include <numeric>

#include "base/tolerance.h"
#include "bench/springback.h"

namespace tubewright {
namespace {

/// Rounds half away from zero, also what arithmetic left a hair under the half: 3/8 in is 9.525 mm however it was
/// come by. The sign is the caller's.
long long nearest(double value) { return std::llround(std::abs(value) * (1 + tolerance::arithmetic)); }

double tape_step(const Tape& tape) { return tape.unit == Unit::inch ? 25.4 / tape.denominator : 0.5; }

const char* minus(double value, long long shown) { return value < 0 && shown != 0 ? "\u2212" : ""; }

/// `parts` of 1/denominator, in lowest terms: 19 3/16, 3/16, 19, 0.
std::string mixed(long long parts, long long denominator) {
    const long long whole = parts / denominator, rest = parts % denominator;
    if (rest == 0) return std::to_string(whole);
    const long long divisor = std::gcd(rest, denominator);
    const std::string fraction = std::to_string(rest / divisor) + "/" + std::to_string(denominator / divisor);
    return whole == 0 ? fraction : std::to_string(whole) + " " + fraction;
}

std::string halves(long long parts) { return std::to_string(parts / 2) + (parts % 2 == 0 ? "" : ".5"); }

/// Half away from zero, always with a point, whatever the machine's locale.
std::string decimals(double value, int places) {
    long long scale = 1;
    for (int i = 0; i < places; ++i) scale *= 10;
    const long long parts = nearest(value * static_cast<double>(scale));
    std::string rest = std::to_string(parts % scale);
    rest.insert(0, static_cast<std::size_t>(places) - rest.size(), '0');
    return minus(value, parts) + std::to_string(parts / scale) + "." + rest;
}

std::string trimmed(std::string number) {
    while (number.find('.') != std::string::npos && (number.back() == '0' || number.back() == '.')) {
        const bool point = number.back() == '.';
        number.pop_back();
        if (point) break;
    }
    return number;
}

/// A size as it is sold: a fraction where it is one, with room for 4.75 mm being sold as 3/16 (4.7625).
std::string sold_inch(Length length) {
    const long long parts = nearest(length.inch() * 64);
    if (std::abs(length.inch() * 64 - static_cast<double>(parts)) < 0.04) return mixed(parts, 64);
    return decimals(length.inch(), 3);
}

}  // namespace

std::string bare(Length length, const Tape& tape) {
    if (tape.unit == Unit::inch) {
        const long long parts = nearest(length.inch() * tape.denominator);
        return minus(length.mm, parts) + mixed(parts, tape.denominator);
    }
    const long long parts = nearest(length.mm * 2);
    return minus(length.mm, parts) + halves(parts);
}

std::string exact(Length length, Unit unit) {
    if (unit == Unit::mm) return trimmed(decimals(length.mm, 3)) + " mm";
    const double parts = length.inch() * 64;
    if (std::abs(parts - std::round(parts)) < 1e-6) return minus(length.mm, nearest(parts)) + mixed(nearest(parts), 64) + "\"";
    return trimmed(decimals(length.inch(), 4)) + "\"";
}

std::string exact(Angle angle) { return trimmed(decimals(angle.deg, 3)) + "°"; }

Length on_tape(Length length, const Tape& tape) {
    const double step = tape_step(tape);
    return {std::copysign(static_cast<double>(nearest(length.mm / step)), length.mm) * step};
}

Length down_on_tape(Length length, const Tape& tape) {
    const double step = tape_step(tape);
    return {std::floor(length.mm / step * (1 + tolerance::arithmetic)) * step};
}

std::string left_text(Length length, const Tape& tape) { return text(down_on_tape(length, tape), tape); }

Tally tally_of(Length cut, Length formed, const Tape& tape) {
    const Length whole = on_tape(cut, tape), left = formed > Length{} ? down_on_tape(cut - formed, tape) : whole;
    return {whole - left, left};
}

Length rest_of(Length whole, Length part, const Tape& tape) { return on_tape(whole, tape) - on_tape(part, tape); }

std::string text(Length length, const Tape& tape) { return bare(length, tape) + (tape.unit == Unit::inch ? "\"" : " mm"); }

std::string text(Angle angle, const Tape& tape) {
    const long long parts = nearest(angle.deg * 2);
    return minus(angle.deg, parts) + (tape.unit == Unit::inch ? mixed(parts, 2) : halves(parts)) + "°";
}

std::string lever_text(Angle set, const Tape& tape) { return text(on_lever(set), tape); }

std::string fine(Length length, const Tape& tape) {
    return tape.unit == Unit::inch ? decimals(length.inch(), 3) + "\"" : decimals(length.mm, 2) + " mm";
}

std::string learned_text(Length length, Unit unit) {
    if (unit == Unit::inch) return text(length, {unit, 64});
    return trimmed(decimals(length.mm, 1)) + " mm";
}

std::string moved_text(Length by, const Tape& tape) {
    const Length far{std::abs(by.mm)};
    if (on_tape(far, tape) != Length{}) return text(far, tape);
    const std::string finer = learned_text(far, tape.unit);
    return finer == learned_text(Length{}, tape.unit) ? fine(far, tape) : finer;
}

std::string band_text(Length band, Unit unit) {
    const double step = unit == Unit::inch ? 25.4 / 64 : 0.1;
    return learned_text({std::ceil(band.mm / step - tolerance::arithmetic) * step}, unit);
}

std::string fine_band(Length band, Unit unit) {
    const double step = unit == Unit::inch ? 0.0254 : 0.01;
    return fine({std::ceil(band.mm / step - tolerance::arithmetic) * step}, {unit, 64});
}

std::string plain(double value) { return trimmed(decimals(value, 3)); }

std::string od_text(Length od, const Tape& tape) {
    return tape.unit == Unit::inch ? sold_inch(od) + "\"" : trimmed(decimals(od.mm, 2)) + " mm";
}

std::string size_text(const Tube& tube, const Tape& tape) {
    if (tape.unit == Unit::inch) return sold_inch(tube.od) + "\" × " + decimals(tube.wall.inch(), 3) + "\"";
    return trimmed(decimals(tube.od.mm, 2)) + " × " + trimmed(decimals(tube.wall.mm, 2)) + " mm";
}

std::string unit_word(Unit unit) { return unit == Unit::inch ? "inches" : "mm"; }

std::string percent(double share) { return decimals(share * 100, 1) + " %"; }

std::vector<std::string> percents(const std::vector<double>& shares) {
    std::vector<std::string> all;
    double sum = 0;
    long long shown = 0;
    for (const double share : shares) {
        sum += share;
        const long long next = nearest(sum * 1000);
        all.push_back(decimals(static_cast<double>(next - shown) / 10, 1) + " %");
        shown = next;
    }
    return all;
}

std::string two_places(double value) { return decimals(value, 2); }

std::string counted(std::size_t count, const std::string& one, const std::string& many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

bool shows_as(Angle angle, double degrees) { return nearest(angle.deg * 2) == nearest(degrees * 2); }

}  // namespace tubewright
