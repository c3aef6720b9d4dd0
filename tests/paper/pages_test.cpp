#include <catch2/catch.hpp>

#include <algorithm>

#include "paper/flow.h"
#include "paper/gauge_pages.h"
#include "paper/paper_samples.h"
#include "paper/pdf.h"
#include "paper/sheet_pages.h"
#include "paper/strip_pages.h"
#include "paper/strip_plan.h"
#include "paper/table_pages.h"

using namespace tubewright;

namespace {

std::vector<std::string> words_on(const PrintedPage& page) {
    std::vector<std::string> all;
    for (const Drawn& drawn : page.drawn)
        if (const auto* words = std::get_if<Lettered>(&drawn)) all.push_back(words->text);
    return all;
}

bool has_words(const PrintedPage& page, const std::string& wanted) {
    const std::vector<std::string> all = words_on(page);
    return std::any_of(all.begin(), all.end(), [&](const std::string& words) { return words.find(wanted) != std::string::npos; });
}

struct Box {
    double left, top, right, foot;
    std::string text;
};

/// Around words that lie level: capitals are less than 0.75 of the size high, tails reach less than 0.2 under the base line.
std::vector<Box> level_words(const PrintedPage& page, const Lettering& lettering) {
    std::vector<Box> boxes;
    for (const Drawn& drawn : page.drawn)
        if (const auto* words = std::get_if<Lettered>(&drawn); words && words->turned_deg == 0) {
            const double size = mm_of_pt(words->letters.pt);
            boxes.push_back({words->start.x_mm, words->start.y_mm - 0.75 * size, words->start.x_mm + lettering.width_mm(words->text, words->letters), words->start.y_mm + 0.2 * size, words->text});
        }
    return boxes;
}

bool overlap(const Box& a, const Box& b) { return a.left < b.right && b.left < a.right && a.top < b.foot && b.top < a.foot; }

struct Reach {
    double left = 1e9, top = 1e9, right = -1e9, foot = -1e9;
    void operator()(const Lettered&) {}
    void operator()(const Stroked& it) { take(it.path); }
    void operator()(const Filled& it) { take(it.path); }
    void take(const std::vector<Spot>& path) {
        for (const Spot& spot : path) {
            left = std::min(left, spot.x_mm);
            right = std::max(right, spot.x_mm);
            top = std::min(top, spot.y_mm);
            foot = std::max(foot, spot.y_mm);
        }
    }
};

/// Nothing beyond the margins, no word on another.
void check_pages(const std::vector<PrintedPage>& pages, PageSize size, const Lettering& lettering) {
    constexpr double slack = 0.05;
    for (std::size_t i = 0; i < pages.size(); ++i) {
        INFO(pages[i].foot << ", page " << i + 1);
        const Extent paper = extent_of(size, pages[i].on_its_side);
        const double right = paper.width_mm - margin_mm + slack, foot = paper.height_mm - margin_mm + slack;
        Reach reach;
        for (const Drawn& drawn : pages[i].drawn) std::visit(reach, drawn);
        CHECK(reach.left > margin_mm - slack);
        CHECK(reach.top > margin_mm - slack);
        CHECK(reach.right < right);
        CHECK(reach.foot < foot);
        const std::vector<Box> boxes = level_words(pages[i], lettering);
        for (std::size_t a = 0; a < boxes.size(); ++a) {
            INFO(boxes[a].text);
            CHECK((boxes[a].left > margin_mm - slack && boxes[a].right < right && boxes[a].foot < foot));
            for (std::size_t b = a + 1; b < boxes.size(); ++b)
                if (overlap(boxes[a], boxes[b])) FAIL_CHECK(boxes[a].text << " lies on " << boxes[b].text);
        }
    }
}

std::vector<PrintedPage> all_pages(const Job& job, const Sheet& sheet, PageSize size, const Tape& tape, const Lettering& lettering) {
    std::vector<PrintedPage> all = sheet_pages(sheet_words(job, sheet, shipped_library().checklists, tape), size, lettering);
    for (const auto& more : {strip_pages(strip_view(sheet, tape), size, lettering), gauge_pages(gauges_view(sheet, tape), size, lettering)}) all.insert(all.end(), more.begin(), more.end());
    return all;
}

/// Many bends near each other, every angle another one, of a name that no heading has room for.
Line crowded_line(const Line& like) {
    Line line = like;
    line.name = "from the tank's own outlet along the left rail and over the cross member to the pump";
    line.route = {RouteForm::straights, TapeEdge::centre, {}, {}};
    for (int i = 0; i <= 16; ++i) line.route.runs.push_back(Length{30});
    for (int i = 0; i < 16; ++i) line.route.bends.push_back({Angle{5.0 + 11 * i}, Angle{i == 0 ? 0.0 : 70.0}});
    return line;
}

}  // namespace

TEST_CASE("on every page of every shipped job nothing lies beyond the margins and no word on another") {
    const Lettering lettering = own_letters();
    for (const char* name : {"cooler-pair.json", "engine-fuel-line.json", "trailer-axle-steel.json", "trailer-brakes-stainless.json"}) {
        const Job job = shipped_job(name);
        for (const PageSize size : {PageSize::letter, PageSize::a4})
            for (const Line& line : job.lines) {
                INFO(name << ", " << line.name);
                check_pages(all_pages(job, bend_sheet(line), size, {size == PageSize::a4 ? Unit::mm : Unit::inch, 32}, lettering), size, lettering);
            }
    }
}

TEST_CASE("a crowded line that a finding stops has the words on every page, step, piece and card, and still lies well") {
    const Lettering lettering = own_letters();
    const Job job = shipped_job("engine-fuel-line.json");
    const Sheet sheet = bend_sheet(crowded_line(job.lines[0]));
    REQUIRE(stopped(sheet));
    for (const PageSize size : {PageSize::letter, PageSize::a4}) {
        const std::vector<PrintedPage> pages = all_pages(job, sheet, size, {Unit::mm, 16}, lettering);
        check_pages(pages, size, lettering);
        for (const PrintedPage& page : pages) CHECK(has_words(page, "STOP"));
    }
    std::size_t banners = 0, pieces = 0;
    for (const PrintedPage& page : strip_pages(strip_view(sheet, {Unit::mm, 16}), PageSize::a4, lettering))
        for (const std::string& words : words_on(page)) {
            banners += words.rfind("STOP", 0) == 0;
            pieces += words.find(", piece ") != std::string::npos;
        }
    CHECK(pieces > 2);
    CHECK(banners > pieces);  // one on each piece, one at the head of each page
    CHECK_FALSE(has_words(strip_pages(strip_view(bend_sheet(job.lines[0]), {Unit::mm, 16}), PageSize::a4, lettering).front(), "STOP"));
}

TEST_CASE("the sheet has the steps in the order of work, in letters of 14 points or more") {
    const Lettering lettering = own_letters();
    const Job job = shipped_job("cooler-pair.json");
    const SheetWords words = sheet_words(job, bend_sheet(job.lines[0]), shipped_library().checklists, {Unit::inch, 16});
    REQUIRE(words.steps.size() == 4);
    std::vector<std::string> all;
    std::size_t small = 0;
    for (const PrintedPage& page : sheet_pages(words, PageSize::letter, lettering))
        for (const Drawn& drawn : page.drawn)
            if (const auto* it = std::get_if<Lettered>(&drawn)) {
                all.push_back(it->text);
                const bool on_the_clocks_rim = it->text == "up" || it->text == "down" || it->text == "away" || it->text == "toward";
                if (it->letters.pt < 14 && !on_the_clocks_rim) ++small;
            }
    CHECK(small == 0);
    auto at = all.begin();
    for (const StepWords& step : words.steps)
        for (const std::string& wanted : {"Bend " + step.bend, step.hook_told, step.from_a, "on line " + step.line, step.pull_to}) {
            INFO(wanted);
            at = std::find(at, all.end(), wanted);
            REQUIRE(at != all.end());
        }
    for (const TapedLeg& leg : words.legs) CHECK(std::find(all.begin(), all.end(), leg.length) != all.end());
    CHECK(std::any_of(all.begin(), all.end(), [](const std::string& line) { return line.find("Follow the vehicle or machine maker's data") != std::string::npos; }));
    CHECK(std::any_of(all.begin(), all.end(), [](const std::string& line) { return line.find("every joint dry") != std::string::npos; }));
}

TEST_CASE("the longest notes that a job may hold go on on the next page") {
    const Lettering lettering = own_letters();
    Job job = shipped_job("cooler-pair.json");
    job.lines[0].name = std::string(200, 'W');
    job.lines[0].note = std::string(1000, 'W');
    job.lines[0].bend_notes = std::vector<std::string>(4, std::string(1000, 'W'));
    for (const PageSize size : {PageSize::letter, PageSize::a4}) check_pages(all_pages(job, bend_sheet(job.lines[0]), size, {Unit::inch, 16}, lettering), size, lettering);
}

TEST_CASE("labels stand under their marks where there is room, and beside each other where there is not") {
    // Three labels of 20 with gaps of 2. The first two marks are 10 apart and share the room evenly about their middle: the
    // labels' middles want to be at 50 and 60 and have to be 22 apart, so 44 and 66. The third is free.
    const std::vector<LabelledSpot> spots{{Length{50}, Length{20}}, {Length{60}, Length{20}}, {Length{200}, Length{20}}};
    const std::vector<Length> starts = label_starts(spots, Length{0}, Length{240}, Length{2});
    CHECK(starts[0].mm == Approx(34));
    CHECK(starts[1].mm == Approx(56));
    CHECK(starts[2].mm == Approx(190));
    // Against the end nothing runs over it: 240 - 20 and one label and gap before.
    const std::vector<Length> at_end = label_starts({{Length{236}, Length{20}}, {Length{238}, Length{20}}}, Length{0}, Length{240}, Length{2});
    CHECK(at_end[1].mm == Approx(220));
    CHECK(at_end[0].mm == Approx(198));
}

TEST_CASE("a join lies on a whole step and clear of marks") {
    // The paper has 250, less a tab of 12: 238, on steps of 5 no further than 235. The mark at 232 pushes the join to where 8 are clear: 220
    // is 12 away, 225 only 7.
    const StripRoom room{Length{250}, Length{12}, Length{2}, Length{8}, Length{3}, Length{5}};
    const std::vector<StripPiece> pieces = strip_pieces(Length{600}, {{Length{0}, Length{20}}, {Length{232}, Length{20}}, {Length{600}, Length{20}}}, room);
    REQUIRE(pieces.size() == 3);
    CHECK(pieces[0].to.mm == Approx(220));
    CHECK(pieces[1].from.mm == Approx(220));
    CHECK(pieces[2].to.mm == 600);
    CHECK(pieces[0].spots == std::vector<std::size_t>{0});
    CHECK(pieces[1].spots == std::vector<std::size_t>{1});
    CHECK(pieces[2].spots == std::vector<std::size_t>{2});
}

TEST_CASE("bends of one angle share a gauge, and it says where the lever stands") {
    const Job job = shipped_job("cooler-pair.json");
    const Sheet sheet = bend_sheet(job.lines[0]);
    const GaugesView view = gauges_view(sheet, {Unit::inch, 16});
    REQUIRE(view.gauges.size() == 2);
    const Line runs = [&] {
        Line line = job.lines[0];
        line.route = {RouteForm::straights, TapeEdge::centre, std::vector<Length>(8, Length{200}), std::vector<Bend>(7, Bend{Angle{90}, Angle{90}})};
        line.route.bends[0].rotation = {};
        line.route.bends[3].angle = {30};
        return line;
    }();
    CHECK(gauges_view(bend_sheet(runs), {Unit::inch, 16}).gauges[1].bends == "bends 1 to 3 and 5 to 7");
    CHECK(view.gauges[0].target == Angle{45});
    CHECK(view.gauges[0].bends == "bends 2 and 3");
    CHECK(view.gauges[1].bends == "bends 1 and 4");
    for (const Step& step : sheet.steps)
        if (step.bend == 0) CHECK(view.gauges[1].pulled == on_lever(step.set));
}

TEST_CASE("a table's title and heads stand on each page, each row on one of them") {
    const Lettering lettering = own_letters();
    WordTable table{"Cut list", {{"Line"}, {"Cut to", true}, {"From"}}, {}, {"Kerf counted in."}};
    for (int i = 1; i <= 70; ++i) table.rows.push_back({"row " + std::to_string(i) + ".", "12 3/16\"", "a stick that is named with so many words that its cell has to be broken over lines"});
    for (const PageSize size : {PageSize::letter, PageSize::a4}) {
        const std::vector<PrintedPage> pages = table_pages(table, size, lettering);
        CHECK(pages.size() > 2);
        check_pages(pages, size, lettering);
        std::vector<std::string> rows;
        for (const PrintedPage& page : pages) {
            CHECK(has_words(page, "Cut list"));
            CHECK(has_words(page, "From"));
            for (const std::string& words : words_on(page))
                if (words.rfind("row ", 0) == 0) rows.push_back(words);
        }
        REQUIRE(rows.size() == 70);
        CHECK(rows.front() == "row 1.");
        CHECK(rows.back() == "row 70.");
        CHECK(has_words(pages.back(), "Kerf counted in."));
    }
    check_pages(table_pages({"Empty", {}, {}, {}}, PageSize::a4, lettering), PageSize::a4, lettering);
}

TEST_CASE("lines break at blanks, but neither within a number nor before its unit") {
    const Lettering lettering = own_letters();
    const double room = lettering.width_mm("left 43 13/16\"", body) - 1;
    CHECK(lettering.lines("left 43 13/16\" more", room, body) == std::vector<std::string>{"left", "43 13/16\"", "more"});
    CHECK(lettering.lines("the left 43 mm", lettering.width_mm("the left 43", body) + 0.1, body) == std::vector<std::string>{"the left", "43 mm"});
    CHECK(lettering.lines("a\tb\xff\n%s ##2", 500, body) == std::vector<std::string>{"a b? %s ##2"});
    CHECK(lettering.lines("mmmm", lettering.width_mm("mm", body) + 0.1, body) == std::vector<std::string>{"mm", "mm"});
}

TEST_CASE("the same pages give the same bytes, with no date in them") {
    const Lettering lettering = own_letters();
    const Job job = shipped_job("cooler-pair.json");
    const auto make = [&](const Lettering& letters) { return pdf_of(all_pages(job, bend_sheet(job.lines[0]), PageSize::letter, {Unit::inch, 16}, letters), PageSize::letter, letters, job.name); };
    const std::string pdf = make(lettering);
    CHECK(pdf.rfind("%PDF-", 0) == 0);
    CHECK(pdf == make(own_letters()));
    CHECK(pdf.find("CreationDate") == std::string::npos);
}
