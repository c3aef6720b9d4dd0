// Any bytes as a table of points, the first one deciding on the unit said: refused in one sentence, or points
// that come back from our own table.

#include "shop.h"
#include "store/points_file.h"

using namespace tubewright;

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
    if (size == 0) return 0;
    const std::optional<Unit> said = data[0] % 3 == 0 ? std::nullopt : std::optional<Unit>(data[0] % 3 == 1 ? Unit::mm : Unit::inch);
    const std::string text(reinterpret_cast<const char*>(data + 1), size - 1);
    const auto given = read_points_text(text, "p.csv", said);
    if (!given.ok()) {
        hold_sentence(given.trouble(), "p.csv");
        return 0;
    }
    const auto unit = unit_of_points(text, "p.csv");
    hold(unit.ok() && (unit.value() ? *unit.value() == given.value().unit : said == given.value().unit), "the unit is the header's or the person's");
    const auto back = read_points_text(points_text(given.value().points, given.value().unit), "p.csv", std::nullopt);
    hold(back.ok() && back.value() == given.value(), "what was written is read back the same");
    MeasuredRoute route;
    route.form = RouteForm::points;
    route.points = given.value().points;
    hold(route_from(route).ok(), "points that were taken make a route");
    return 0;
}
