#include "store/library.h"

#include <algorithm>
#include <cmath>

#include "bench/springback.h"
#include "desk.h"

namespace tubewright {

TEST_CASE("the shipped library has the sizes, materials, fittings and benders of a small shop") {
    const Library& library = shipped_library();
    CHECK(library.tubes.size() == 9);
    CHECK(material_ids(library) == std::vector<std::string>{"stainless-304", "stainless-316", "steel-low-carbon", "copper-nickel-90-10"});
    CHECK(fitting_ids(library) == std::vector<std::string>{"flare-37-single", "flare-45-double", "flare-45-single", "plain", "none"});
    for (const char* id : {"hand-3/16", "hand-1/4", "hand-5/16", "hand-3/8", "hand-1/2", "hand-4.75", "hand-6", "hand-8", "hand-10"}) {
        INFO(id);
        CHECK(find_bender(library, id));
    }
    CHECK_FALSE(find_bender(library, "hand-7"));
    CHECK_FALSE(find_material(library, "lead"));
}

TEST_CASE("there is a bender and a length on sale for every size, and no bend of it is too tight") {
    const Library& library = shipped_library();
    for (const TubeSize& tube : library.tubes) {
        INFO(tube.name);
        CHECK(stick_for(library, tube.od) == tube.stick);
        const auto fits = [&](const Bender& bender) { return std::abs(bender.tube_od.mm - tube.od.mm) < 1e-9; };
        const auto bender = std::find_if(library.benders.begin(), library.benders.end(), fits);
        REQUIRE(bender != library.benders.end());
        for (const Material& material : library.materials) CHECK(bender->radius / tube.od >= Approx(material.usual_radius_od));
    }
}

TEST_CASE("the shipped materials give the springback lines that were worked out by hand for them") {
    // Springback notes, section 3.6: growth and zero for 3/16 x .028 on 0.5625, 1/4 x .035 on 0.75,
    // 3/8 x .035 on 1.125 and 1/2 x .049 on 1.5 in; printed to 5 and 3 decimals.
    struct Row { const char* material; double od_in, wall_in, radius_in, growth, zero; };
    for (const Row& row : {Row{"stainless-304", 0.1875, 0.028, 0.5625, 0.02765, 0.727}, Row{"steel-low-carbon", 0.1875, 0.028, 0.5625, 0.01715, 0.456},
                           Row{"copper-nickel-90-10", 0.1875, 0.028, 0.5625, 0.02530, 0.667}, Row{"stainless-304", 0.25, 0.035, 0.75, 0.02782, 0.724},
                           Row{"stainless-304", 0.375, 0.035, 1.125, 0.03036, 0.707}, Row{"steel-low-carbon", 0.5, 0.049, 1.5, 0.01834, 0.440}}) {
        INFO(row.material << " " << row.od_in);
        const Material* material = find_material(shipped_library(), row.material);
        REQUIRE(material);
        const Springback line = springback_prior(*material, Length{row.od_in * 25.4}, Length{row.wall_in * 25.4}, Length{row.radius_in * 25.4}).line;
        CHECK(line.growth == Approx(row.growth).margin(0.00001));
        CHECK(line.zero.deg == Approx(row.zero).margin(0.001));
    }
}

TEST_CASE("a fitting's figures go by the size of the tube") {
    const Library& library = shipped_library();
    // A tenth of an inch at 3/16; 4.75 mm tube is the same size to a fitting.
    CHECK(find_fitting(library, "flare-37-single", Length{4.7625})->allowance.mm == Approx(2.54));
    CHECK(find_fitting(library, "flare-37-single", Length{4.75})->allowance.mm == Approx(2.54));
    CHECK(find_fitting(library, "none", Length{4.75})->allowance == Length{});
    CHECK_FALSE(find_fitting(library, "welded", Length{4.75}));

    // SAE J533 (2024), table of 45 degree flares, as excerpted in a published summary: heaviest wall, mm.
    CHECK(find_fitting(library, "flare-45-double", Length{4.7625})->heaviest_wall == Length{0.71});
    CHECK(find_fitting(library, "flare-45-single", Length{4.7625})->heaviest_wall == Length{0.89});
    CHECK(find_fitting(library, "flare-45-single", Length{6.35})->heaviest_wall == Length{1.24});
    CHECK(find_fitting(library, "flare-45-double", Length{7.9375})->heaviest_wall == Length{0.89});
    // The excerpt has no row for 3/8 in, and no limit for 37 degree flares by size.
    CHECK_FALSE(find_fitting(library, "flare-45-double", Length{9.525})->heaviest_wall);
    CHECK_FALSE(find_fitting(library, "flare-37-single", Length{4.7625})->heaviest_wall);
}

TEST_CASE("nut before sleeve, so that the sleeve lies nearer the end") {
    const Fitting flare = *find_fitting(shipped_library(), "flare-37-single", Length{4.7625});
    REQUIRE(flare.slide_on.size() == 2);
    CHECK(flare.slide_on[0].id == "nut");
    CHECK(flare.slide_on[1].id == "sleeve");
    REQUIRE(find_fitting(shipped_library(), "flare-45-double", Length{4.7625})->slide_on.size() == 1);
    CHECK(find_fitting(shipped_library(), "plain", Length{4.7625})->slide_on.empty());
}

TEST_CASE("no sentence to tick is longer than its button, and each list has something for every service") {
    const Checklists& lists = shipped_library().checklists;
    for (const auto* list : {&lists.prepare, &lists.finish, &lists.hand_over, &lists.cautions}) {
        for (const CheckItem& item : *list) {
            INFO(item.id);
            CHECK(item.text.size() <= 92);  // bytes: a degree sign is two
            CHECK(item.text.back() == '.');
        }
        for (const Service service : {Service::brake, Service::fuel, Service::cooler, Service::hydraulic, Service::air, Service::other})
            CHECK(std::any_of(list->begin(), list->end(), [&](const CheckItem& item) {
                return item.services.empty() || std::find(item.services.begin(), item.services.end(), service) != item.services.end();
            }));
    }
    // What is done on the vehicle may wait for the fitter; the label's words are shorter than the sentence.
    for (const CheckItem& item : lists.hand_over) {
        INFO(item.id);
        CHECK_FALSE(item.later.empty());
        CHECK(item.later.size() <= 46);
    }
    for (const auto* list : {&lists.prepare, &lists.finish, &lists.cautions})
        for (const CheckItem& item : *list) CHECK(item.later.empty());
    // Every service is proved in a way of its own before it is handed over.
    for (const Service service : {Service::brake, Service::fuel, Service::cooler, Service::hydraulic, Service::air, Service::other})
        CHECK(std::any_of(lists.hand_over.begin(), lists.hand_over.end(), [&](const CheckItem& item) {
            return std::find(item.services.begin(), item.services.end(), service) != item.services.end();
        }));
}

TEST_CASE("the user's own card wins over the shipped one of the same id, and a new one is added") {
    const OwnFolder own;
    const std::string card = bytes_in(source_dir / "assets/benders/hand-3-16.json");
    own.write("benders/mine.json", with(card, "\"hook_straight\": 0.75", "\"hook_straight\": 0.8"));
    own.write("benders/other.json", with(card, "\"id\": \"hand-3/16\"", "\"id\": \"bench-3/16\""));
    const auto read = read_library(source_dir / "assets", own.path());
    REQUIRE(read.ok());
    CHECK(find_bender(read.value(), "hand-3/16")->hook_straight.mm == Approx(0.8 * 25.4));
    CHECK(find_bender(read.value(), "bench-3/16"));
    CHECK(read.value().benders.size() == shipped_library().benders.size() + 1);
}

TEST_CASE("the user's own fittings and tubes win entry by entry, the user's checklists as a whole") {
    const OwnFolder own;
    own.write("fittings.json", R"({"format": "tubewright-fittings", "version": 1, "fittings": [
        {"id": "plain", "name": "plain, beaded", "flared": false, "allowance_mm": 1.5, "straight_needed_mm": 20}]})");
    own.write("tubes.json", R"({"format": "tubewright-tubes", "version": 1, "tubes": [
        {"name": "3/16 coil", "od_mm": 4.7625, "walls_mm": [0.7112], "stick_mm": 7620, "source": "our supplier"}]})");
    own.write("checklists.json", R"({"format": "tubewright-checklists", "version": 1, "prepare": [{"id": "cut", "text": "Cut."}],
        "finish": [], "hand_over": [], "cautions": []})");
    const auto read = read_library(source_dir / "assets", own.path());
    REQUIRE(read.ok());
    CHECK(find_fitting(read.value(), "plain", Length{4.7625})->allowance == Length{1.5});
    CHECK(find_fitting(read.value(), "flare-37-single", Length{4.7625})->allowance.mm == Approx(2.54));
    CHECK(stick_for(read.value(), Length{4.7625}) == Length{7620});
    CHECK(stick_for(read.value(), Length{9.525}) == Length{6096});
    CHECK(read.value().checklists.prepare.size() == 1);
    CHECK(read.value().checklists.cautions.empty());
}

namespace {

const std::string hand_card = bytes_in(source_dir / "assets/benders/hand-3-16.json");

Library with_own(const OwnFolder& own) {
    const auto read = read_library(source_dir / "assets", own.path());
    if (!read.ok()) FAIL(read.trouble().sentence());
    return read.value();
}

std::string refusal_of_job(const Library& library, const std::string& bender) {
    const auto job = read_job_text(with(example_job, "\"hand-3/16\"", "\"" + bender + "\""), "job.json", library);
    return job.ok() ? "was taken" : job.trouble().sentence();
}

}  // namespace

TEST_CASE("a shipped file that is not there is refused with file, place, what and allowed") {
    const OwnFolder own;
    const auto nothing = read_library(own.path() / "nowhere", {});
    REQUIRE_FALSE(nothing.ok());
    CHECK(nothing.trouble().sentence() == own.path().string() + "/nowhere/tubes.json is not there; allowed: a file that exists.");
}

TEST_CASE("a card that is not good is left out, and only a job that names it is refused, saying why") {
    const OwnFolder own;
    own.write("benders/good.json", with(hand_card, "\"id\": \"hand-3/16\"", "\"id\": \"bench-3/16\""));
    own.write("benders/spoiled.json", with(with(hand_card, "\"id\": \"hand-3/16\"", "\"id\": \"mine\""), "\"radius\": 0.5625", "\"radius\": -1"));
    const Library library = with_own(own);
    CHECK(find_bender(library, "bench-3/16"));
    CHECK_FALSE(find_bender(library, "mine"));
    REQUIRE(library.left_out.size() == 1);
    const std::string file = (own.path() / "benders/spoiled.json").string();
    CHECK(library.left_out[0].sentence() == "Left out: " + file + ", radius is -1; allowed: 0.094 to 9.374 in.");
    CHECK(refusal_of_job(library, "hand-3/16") == "was taken");
    CHECK(refusal_of_job(library, "mine") == "job.json, bender is \"mine\", whose card is left out: " + file + ", radius is -1; allowed: 0.094 to 9.374 in.");
}

TEST_CASE("a card that was meant to win over a shipped one takes that one out with it") {
    // Its owner measured another bender of this id: the shipped figures would bend wrong.
    const OwnFolder own;
    own.write("benders/mine.json", hand_card.substr(0, hand_card.size() / 2));
    const Library library = with_own(own);
    CHECK_FALSE(find_bender(library, "hand-3/16"));
    CHECK(refusal_of_job(library, "hand-3/16").rfind("job.json, bender is \"hand-3/16\", whose card is left out: ", 0) == 0);
    CHECK(find_bender(library, "hand-1/4"));
}

TEST_CASE("of two cards of one id neither counts") {
    const OwnFolder own;
    own.write("benders/a.json", hand_card);
    own.write("benders/b.json", hand_card);
    const Library library = with_own(own);
    CHECK_FALSE(find_bender(library, "hand-3/16"));
    REQUIRE(library.left_out.size() == 1);
    CHECK(library.left_out[0].why.sentence() == (own.path() / "benders/b.json").string() + ", id is \"hand-3/16\", as in a.json; allowed: an id for each card.");
}

TEST_CASE("a card that is empty, or no text at all, spoils nothing else") {
    const OwnFolder own;
    own.write("benders/empty.json", "");
    own.write("benders/half.json", "{\"id\"");
    own.write("benders/odd.json", "{\"id\": 7}");
    const Library library = with_own(own);
    CHECK(library.benders == shipped_library().benders);
    CHECK(library.left_out.size() == 3);
    CHECK(library.left_out[0].why.sentence() == (own.path() / "benders/empty.json").string() + " is empty; allowed: JSON text in UTF-8.");
}

TEST_CASE("for the user's other files that are not good the shipped ones stand in") {
    const OwnFolder own;
    for (const char* name : {"tubes.json", "materials.json", "fittings.json"}) own.write(name, "{");
    own.write("checklists.json", R"({"format": "tubewright-checklists", "version": 1, "prepare": [{"id": "cut", "text": "Cut.", "fittings": ["weld"]}],
        "finish": [], "hand_over": [], "cautions": []})");
    Library library = with_own(own);
    REQUIRE(library.left_out.size() == 4);
    CHECK(library.left_out[3].sentence() == "Left out: " + own.path().string() + "/checklists.json, prepare[0].fittings[0] is \"weld\"; allowed: flare-37-single, flare-45-double, flare-45-single, plain, none.");
    library.left_out.clear();
    CHECK(library == shipped_library());
}

TEST_CASE("nothing but the hand-over list can be left for later") {
    const OwnFolder own;
    own.write("checklists.json", R"({"format": "tubewright-checklists", "version": 1, "prepare": [{"id": "cut", "text": "Cut.", "later": "cut"}],
        "finish": [], "hand_over": [], "cautions": []})");
    const Library library = with_own(own);
    REQUIRE(library.left_out.size() == 1);
    CHECK(library.left_out[0].sentence().find("prepare[0]") != std::string::npos);
    CHECK(library.left_out[0].sentence().find("later") != std::string::npos);
}

}  // namespace tubewright
