// The scrap log adds up as a reader adds it up: from what stands on the screen.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <map>
#include <random>

#include "present/screen_view.h"
#include "state/sample_state.h"

namespace tubewright {
namespace {

/// 17 3/16" or 487.5 mm as a number.
double figure(std::string text) {
    text.erase(text.find_first_of(text.find('"') != std::string::npos ? "\"" : "m"));
    while (!text.empty() && text.back() == ' ') text.pop_back();
    const auto number = typed_number(text);
    REQUIRE(number);
    return *number;
}

double tenths_of_percent(const std::string& text) { return std::round(std::stod(text) * 10); }

State random_log(std::mt19937& dice, const Settings& settings) {
    const auto roll = [&](int below) { return std::uniform_int_distribution<int>(0, below - 1)(dice); };
    const auto length = [&] { return Length{std::uniform_real_distribution<double>(0, 900)(dice)}; };
    State state;
    state.settings = settings;
    const int entries = roll(14);
    int day = 10;
    for (int i = 0; i < entries; ++i) {
        day += roll(3) == 0 ? 1 : 0;
        const bool two = roll(3) == 0;
        const Length a = length(), b = two ? length() : Length{};
        state.work.scrap.push_back({i + 1, "2026-11-" + std::to_string(day), "job", "line " + std::to_string(i), "tube", static_cast<Reason>(roll(9)), length(), a + b, std::nullopt, b});
    }
    for (int i = roll(4); i > 0; --i) state.work.used["2026-11-" + std::to_string(10 + roll(6))]["tube " + std::to_string(roll(2))] = length();
    return touched(state, {GoTo{Screen::scrap}});
}

struct Day {
    double scrap = -1, used = 0, share = 0, scrap_of_entries = 0, share_of_entries = 0;
};

/// Reads all pages; checks that every entry stands under its day, and each day says the same on each page.
std::map<std::string, Day> read_log(State state, std::size_t& entries, std::string& total) {
    std::map<std::string, Day> days;
    bool more = true;
    while (more) {
        const auto table = std::get<TableBody>(screen_view(state).body);
        CHECK(table.rows.size() <= 5);
        if (!table.rows.empty()) CHECK(table.heads.at(0) == 0);
        std::string name;
        for (std::size_t i = 0; i < table.rows.size(); ++i) {
            const auto& row = table.rows[i];
            const bool head = std::find(table.heads.begin(), table.heads.end(), i) != table.heads.end();
            CHECK(head == !row[0].empty());
            if (head) {
                name = row[0];
                Day& day = days[name];
                if (day.scrap >= 0) CHECK(day.scrap == figure(row[3]));
                day.scrap = figure(row[3]);
                day.used = figure(row[2].substr(3));
                day.share = tenths_of_percent(row[4]);
                if (i + 1 == table.rows.size()) CHECK(row[1] == "no scrap");
            } else {
                days[name].scrap_of_entries += figure(row[3]);
                days[name].share_of_entries += tenths_of_percent(row[4]);
                ++entries;
            }
        }
        total = table.totals.front().text;
        more = table.pager.needed && table.pager.later.enabled;
        if (more) state = touched(std::move(state), {*table.pager.later.press});
    }
    return days;
}

}  // namespace

TEST_CASE("entries add up to their day, days to the whole, and shares with them, as they are shown") {
    std::mt19937 dice(20261128);
    std::size_t seen = 0;
    for (int log = 0; log < 200; ++log) {
        Settings settings;
        settings.unit = log % 2 == 0 ? Unit::inch : Unit::mm;
        settings.tape_denominator = 16 << (log % 3);
        const State state = random_log(dice, settings);
        INFO("log " << log);
        std::size_t entries = 0;
        std::string total;
        double scrap = 0, used = 0;
        for (const auto& [name, day] : read_log(state, entries, total)) {
            INFO(name);
            CHECK(day.scrap_of_entries == Approx(day.scrap).margin(1e-9));
            CHECK(day.share_of_entries == Approx(day.share).margin(1e-9));
            if (day.used > 0) CHECK(day.share == Approx(1000 * day.scrap / day.used).margin(0.51));
            scrap += day.scrap;
            used += day.used;
        }
        CHECK(entries == state.work.scrap.size());
        seen += entries;
        if (state.work.scrap.empty()) continue;
        const std::string before = "Scrap in all ", of = " of ";
        REQUIRE(total.rfind(before, 0) == 0);
        const std::size_t at = total.find(of);
        CHECK(figure(total.substr(before.size(), at - before.size())) == Approx(scrap).margin(1e-9));
        CHECK(figure(total.substr(at + of.size(), total.find(" used") - at - of.size())) == Approx(used).margin(1e-9));
    }
    CHECK(seen > 500);
}

TEST_CASE("no stick and no offcut is said to be longer than it is, on any screen that names it") {
    // 100.05 in lies between 100 1/16 (100.0625) and 100; 2541.27 mm between 2541 and 2541.5. The nearest would be more.
    State state = touched(job_open(), {OpenLine{"axle crossover"}, NewStick{inches(30.05)}, NewStick{inches(100.05)}});
    for (const Unit unit : {Unit::inch, Unit::mm}) {
        state = touched(state, {SetUnit{unit}});
        const std::string said = unit == Unit::inch ? "100\"" : "2541 mm", kept = unit == Unit::inch ? "30\"" : "763 mm";
        const ScreenView line = screen_view(touched(state, {GoTo{Screen::line}}));
        CHECK(std::count(line.header.chips.begin(), line.header.chips.end(), "on stick " + said) == 1);
        const auto stock = std::get<ListBody>(screen_view(touched(state, {GoTo{Screen::stock}})).body);
        CHECK(stock.heading.rfind("On the stick " + said + ";", 0) == 0);
        CHECK(std::any_of(stock.rows.begin(), stock.rows.end(), [&](const RowView& row) { return row.touch.label == "Stick, " + kept; }));
        const auto rack = std::get<ListBody>(screen_view(touched(state, {GoTo{Screen::rack}, ShowTube{stock_tube(sheet_in_hand(state)->line.tube)}})).body);
        REQUIRE(rack.rows.size() == 2);
        CHECK(rack.rows[0].touch.label == "Stick, " + said);
        CHECK(rack.rows[1].touch.label == "Stick, " + kept);
    }
}

}  // namespace tubewright
