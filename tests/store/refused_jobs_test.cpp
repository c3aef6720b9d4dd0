// Every way in which a job file can be wrong: one sentence each, with file, place, what and allowed.

#include <sys/stat.h>
#include <unistd.h>

#include <random>

#include "bench/sheet.h"
#include "desk.h"
#include "store/node.h"

namespace tubewright {
namespace {

struct Row { std::string was, is, says; };

void check(const std::vector<Row>& rows) {
    for (const Row& row : rows) {
        INFO(row.was << " -> " << row.is);
        CHECK(sentence_of(with(example_job, row.was, row.is)) == "job.json, " + row.says + ".");
    }
}

/// Spoils the route's only; `says` follows lines[0].route.
void check_routes(const std::vector<std::pair<std::string, std::string>>& rows) {
    for (const auto& [route, says] : rows) {
        INFO(route);
        CHECK(sentence_of(job_with_route(route)) == "job.json, lines[0].route" + says + ".");
    }
}

const std::string materials = "stainless-304, stainless-316, steel-low-carbon, copper-nickel-90-10";
const std::string fittings = "flare-37-single, flare-45-double, flare-45-single, plain, none";

}  // namespace

TEST_CASE("format and version") {
    check({{"\"format\": \"tubewright-job\", ", "", "format is missing; allowed: \"tubewright-job\""},
           {"\"tubewright-job\"", "\"tubewright-sheet\"", "format is \"tubewright-sheet\"; allowed: \"tubewright-job\""},
           {"\"tubewright-job\"", "7", "format is 7; allowed: \"tubewright-job\""},
           {"\"version\": 1", "\"version\": 2", "version is 2, from a newer version of the program; allowed: 1"},
           {"\"version\": 1", "\"version\": 0", "version is 0; allowed: 1"},
           {"\"version\": 1", "\"version\": \"1\"", "version is \"1\"; allowed: 1"},
           {" \"version\": 1,", "", "version is missing; allowed: 1"}});
}

TEST_CASE("what was taped to prove a line") {
    const std::string whole = R"("proof": { "of": "a", "readings": [ { "from": 0, "to": 2, "read": 9.5 } ], "hand": { "before": 1, "bend": 2, "goes": "left" } }, "quantity": 1)";
    const auto spoilt = [&](const std::string& was, const std::string& is, const std::string& says) {
        INFO(was << " -> " << is);
        std::string text = whole;
        REQUIRE(text.find(was) != std::string::npos);
        text.replace(text.find(was), was.size(), is);
        CHECK(sentence_of(with(example_job, "\"quantity\": 1", text)) == "job.json, lines[0].proof" + says + ".");
    };
    spoilt("\"to\": 2", "\"to\": 0", ".readings[0].to is 0; allowed: a whole number, 1 to 201");
    spoilt("\"from\": 0", "\"from\": 0.5", ".readings[0].from is 0.5; allowed: a whole number, 0 to 200");
    spoilt("9.5", "0", ".readings[0].read is 0; allowed: more than 0 and at most 3937 in");
    spoilt("\"left\"", "\"up\"", ".hand.goes is \"up\"; allowed: left, right");
    spoilt("\"bend\": 2", "\"bend\": 1", ".hand.bend is 1; allowed: a whole number, 2 to 200");
    spoilt("\"of\": \"a\", ", "", ".of is missing; allowed: the mark of the wire that was taped");
    spoilt("\"of\"", "\"off\"", ".off is not a key that belongs here; allowed: of, readings, out_of_reach, hand, hand_passed, wanted, and keys that begin with x-");
}

TEST_CASE("keys that do not belong, that are missing, or that stand twice") {
    check({{"\"units\": \"in\"", "\"units\": \"in\", \"colour\": 1",
            "colour is not a key that belongs here; allowed: format, version, name, note, service, units, tube, bender, lines, and keys that begin with x-"},
           {"{ \"angle\": 90 }", "{ \"angle\": 90, \"roll\": 0 }",
            "lines[0].route.bends[0].roll is not a key that belongs here; allowed: angle, rotation, note, and keys that begin with x-"},
           {"\"trim\": 0.5", "\"trimm\": 0.5",
            "lines[0].ends.B.trimm is not a key that belongs here; allowed: fitting, allowance, trim, and keys that begin with x-"},
           {"\"wall\": 0.028,", "\"wall\": 0.028, \"wall\": 0.035,", "tube.wall is given twice; allowed: each key once"},
           {"{ \"angle\": 90 }", "{ \"angle\": 90, \"angle\": 45 }", "lines[0].route.bends[0].angle is given twice; allowed: each key once"},
           {"\"trim\": 0.5", "\"trim\": 0.5, \"x-a\": 1, \"x-a\": 2", "lines[0].ends.B.x-a is given twice; allowed: each key once"},
           {" \"units\": \"in\",", "", "units is missing; allowed: in, mm"},
           {" \"service\": \"brake\",", "", "service is missing; allowed: brake, fuel, cooler, hydraulic, air, other"},
           {"\"bender\": \"hand-3/16\",", "", "lines[0].bender is missing; allowed: a bender here or for the whole job"},
           {"\"tube\": { \"od\": 0.1875, \"wall\": 0.028, \"material\": \"stainless-304\" },", "", "lines[0].tube is missing; allowed: a tube here or for the whole job"},
           {"\"A\": { \"fitting\": \"flare-37-single\" },", "", "lines[0].ends.A is missing; allowed: an end with its fitting"},
           {"\"fitting\": \"flare-37-single\", \"trim\"", "\"trim\"", "lines[0].ends.B.fitting is missing; allowed: " + fittings},
           {", \"rotation\": 90", "", "lines[0].route.bends[1].rotation is missing; allowed: degrees against the bend before, -360 to 360"}});
}

TEST_CASE("units, and names that are not known") {
    check({{"\"in\"", "\"inch\"", "units is \"inch\"; allowed: in, mm"},
           {"\"in\"", "null", "units is null; allowed: in, mm"},
           {"\"brake\"", "\"steam\"", "service is \"steam\"; allowed: brake, fuel, cooler, hydraulic, air, other"},
           {"\"stainless-304\"", "\"stainless-303\"", "tube.material is \"stainless-303\"; allowed: " + materials},
           {"\"hand-3/16\"", "\"hand-3-16\"", "bender is \"hand-3-16\"; allowed: " + joined(bender_ids(shipped_library())) + ", or a whole card"},
           {"\"hand-3/16\"", "3", "bender is 3; allowed: " + joined(bender_ids(shipped_library())) + ", or a whole card"},
           {"\"flare-37-single\" },", "\"flare-37-double\" },", "lines[0].ends.A.fitting is \"flare-37-double\"; allowed: " + fittings},
           {"\"legs\", ", "\"corners\", ", "lines[0].route.form is \"corners\"; allowed: legs, straights, points, moves"},
           {"\"centre\"", "\"center\"", "lines[0].route.measured_to is \"center\"; allowed: centre, outside, inside"}});
}

TEST_CASE("wrong kinds of value") {
    check({{"6.5,", "\"6.5\",", "lines[0].route.legs[0] is \"6.5\"; allowed: more than 0 and at most 3937 in"},
           {"6.5,", "[6.5],", "lines[0].route.legs[0] is a list; allowed: more than 0 and at most 3937 in"},
           {"6.5,", "true,", "lines[0].route.legs[0] is true; allowed: more than 0 and at most 3937 in"},
           {"6.5,", "\"NaN\",", "lines[0].route.legs[0] is \"NaN\"; allowed: more than 0 and at most 3937 in"},
           {"\"angle\": 45", "\"angle\": null", "lines[0].route.bends[1].angle is null; allowed: 0 to 180"},
           {"\"name\": \"axle crossover\"", "\"name\": 5", "lines[0].name is 5; allowed: text"},
           {"\"axle crossover\"", "\" \"", "lines[0].name is empty; allowed: some text"},
           {"\"axle crossover\"", "\"two\\nlines\"", "lines[0].name holds a control character; allowed: one line of text"},
           {"\"axle crossover\"", "\"" + std::string(201, 'n') + "\"", "lines[0].name is too long; allowed: text up to 200 bytes"},
           {"\"quantity\": 1", "\"quantity\": 1.5", "lines[0].quantity is 1.5; allowed: a whole number, 1 to 1000"},
           {"\"quantity\": 1", "\"quantity\": 0", "lines[0].quantity is 0; allowed: a whole number, 1 to 1000"},
           {"{ \"angle\": 90 },", "90,", "lines[0].route.bends[0] is 90; allowed: an object"},
           {"\"trim\": 0.5", "\"trim\": -0.5", "lines[0].ends.B.trim is -0.5; allowed: 0 to 393.7 in"},
           {"\"trim\": 0.5", "\"allowance\": 40", "lines[0].ends.B.allowance is 40; allowed: 0 to 39.37 in"}});
}

TEST_CASE("numbers beyond reason") {
    check({{"6.5,", "0,", "lines[0].route.legs[0] is 0; allowed: more than 0 and at most 3937 in"},
           {"6.5,", "-6.5,", "lines[0].route.legs[0] is -6.5; allowed: more than 0 and at most 3937 in"},
           {"6.5,", "1e308,", "lines[0].route.legs[0] is 1e+308; allowed: more than 0 and at most 3937 in"},
           {"6.5,", "-1e308,", "lines[0].route.legs[0] is -1e+308; allowed: more than 0 and at most 3937 in"},
           {"6.5,", "4000,", "lines[0].route.legs[0] is 4000; allowed: more than 0 and at most 3937 in"},
           {"6.5,", "10000000000000000000000,", "lines[0].route.legs[0] is 1e+22; allowed: more than 0 and at most 3937 in"},
           {"6.5,", "1e999,", "line 11 holds a number that no machine can hold, 1e999; allowed: finite numbers"},
           {"6.5,", "NaN,", "line 11 can't be read from \"NaN, 4.25, 1\" on; allowed: JSON text in UTF-8"},
           {"6.5,", "Infinity,", "line 11 can't be read from \"Infinity, 4.\" on; allowed: JSON text in UTF-8"},
           {"\"angle\": 45", "\"angle\": -45", "lines[0].route.bends[1].angle is -45; allowed: 0 to 180"},
           {"\"angle\": 45", "\"angle\": 180.5", "lines[0].route.bends[1].angle is 180.5; allowed: 0 to 180"},
           {"\"rotation\": 90", "\"rotation\": 361", "lines[0].route.bends[1].rotation is 361; allowed: -360 to 360"},
           {"{ \"angle\": 90 }", "{ \"angle\": 90, \"rotation\": 10 }",
            "lines[0].route.bends[0].rotation is 10; allowed: 0, or none: the first bend has no bend before it"},
           {"\"wall\": 0.028", "\"wall\": 0.09375", "tube.wall is 0.09375; allowed: 0.002 to 0.093 in"},
           {"\"wall\": 0.028", "\"wall\": 0", "tube.wall is 0; allowed: 0.002 to 0.093 in"},
           {"\"od\": 0.1875", "\"od\": 0", "tube.od is 0; allowed: 0.02 to 3.937 in"},
           {"\"od\": 0.1875", "\"od\": 4.7625", "tube.od is 4.7625; allowed: 0.02 to 3.937 in"}});
}

TEST_CASE("counts that do not agree, too many, two lines of one name") {
    check_routes({{R"({"form": "legs", "legs": [6, 7], "bends": [{"angle": 90}, {"angle": 45, "rotation": 0}]})",
                   ".bends has 2 entries; allowed: 1, one less than legs"},
                  {R"({"form": "straights", "straights": [6, 7, 8], "bends": [{"angle": 90}]})", ".bends has 1 entry; allowed: 2, one less than straights"},
                  {R"({"form": "legs", "legs": [], "bends": []})", ".legs has 0 entries; allowed: a list of 1 to 201"},
                  {R"({"form": "legs", "legs": [6]})", ".bends is missing; allowed: a list of bends"},
                  {R"({"form": "points", "points": [[0, 0, 0]]})", ".points has 1 entry; allowed: a list of 2 to 202"},
                  {R"({"form": "moves", "moves": []})", ".moves has 0 entries; allowed: a list of 1 to 201"}});
    std::string legs = "1", bends = "{\"angle\": 5}";
    for (int i = 0; i < 201; ++i) { legs += ", 1"; if (i > 0) bends += ", {\"angle\": 5, \"rotation\": 0}"; }
    check_routes({{"{\"form\": \"legs\", \"legs\": [" + legs + "], \"bends\": [" + bends + "]}", ".legs has 202 entries; allowed: a list of 1 to 201"}});

    const std::size_t from = example_job.find("{ \"name\": \"axle"), to = example_job.rfind(" ]\n}");
    const std::string line = example_job.substr(from, to - from);
    const auto lines = [&](const std::string& all) { return example_job.substr(0, from) + all + " ]\n}"; };
    CHECK(sentence_of(lines(line + ", " + line)) == "job.json, lines[1].name is \"axle crossover\", the name of another line too; allowed: a name for each line.");
    CHECK(sentence_of(lines("")) == "job.json, lines has 0 entries; allowed: a list of 1 to 1000.");
    std::string many = line;
    for (int i = 0; i < 1000; ++i) many += "," + line;
    CHECK(sentence_of(lines(many)) == "job.json, lines has 1001 entries; allowed: a list of 1 to 1000.");
}

TEST_CASE("points and moves that go nowhere or both ways") {
    check_routes({{R"({"form": "points", "points": [[0, 0, 0], [4, 0, 0], [4, 0, 0]]})", ".points[2] is where the point before it is; allowed: neighbouring points apart"},
                  {R"({"form": "points", "points": [[0, 0, 0], [4, 0]]})", ".points[1] has 2 entries; allowed: a list of 3 to 3"},
                  {R"({"form": "points", "points": [[0, 0, 0], [4, 0, "1"]]})", ".points[1][2] is \"1\"; allowed: -3937 to 3937 in"},
                  {R"({"form": "points", "points": [[0, 0, 0], [4, 0, 1e308]]})", ".points[1][2] is 1e+308; allowed: -3937 to 3937 in"},
                  {R"({"form": "points", "points": [[0, 0, 0], [4, 0, 0]], "measured_to": "outside"})",
                   ".measured_to goes with legs only; allowed: no measured_to beside form points"},
                  {R"({"form": "straights", "straights": [4], "bends": [], "measured_to": "centre"})",
                   ".measured_to goes with legs only; allowed: no measured_to beside form straights"},
                  {R"({"form": "straights", "straights": [4, -1], "bends": [{"angle": 9}]})", ".straights[1] is -1; allowed: 0 to 3937 in"},
                  {R"({"form": "straights", "straights": [4, 1], "bends": [{"angle": 360}]})", ".bends[0].angle is 360; allowed: at least 0 and less than 360"},
                  {R"({"form": "moves", "moves": [{"forward": 4, "back": 1}]})", ".moves[0] goes forward and back at once; allowed: either forward or back"},
                  {R"({"form": "moves", "moves": [{"up": 4, "left": 2, "down": 1}]})", ".moves[0] goes up and down at once; allowed: either up or down"},
                  {R"({"form": "moves", "moves": [{"forward": 4}, {"up": 0}]})", ".moves[1] goes nowhere; allowed: a length forward, back, left, right, up or down"},
                  {R"({"form": "moves", "moves": [{"forward": 4}, {}]})", ".moves[1] goes nowhere; allowed: a length forward, back, left, right, up or down"},
                  {R"({"form": "moves", "moves": [{"forward": -4}]})", ".moves[0].forward is -4; allowed: 0 to 3937 in"},
                  {R"({"form": "moves", "moves": [{"sideways": 4}]})",
                   ".moves[0].sideways is not a key that belongs here; allowed: forward, back, left, right, up, down, and keys that begin with x-"},
                  {R"({"legs": [4], "bends": []})", ".form is missing; allowed: legs, straights, points, moves"}});
}

TEST_CASE("files that are no JSON at all") {
    CHECK(sentence_of("") == "job.json is empty; allowed: JSON text in UTF-8.");
    CHECK(sentence_of(" \n\t ") == "job.json is empty; allowed: JSON text in UTF-8.");
    CHECK(sentence_of("{\n\"format\": \n") == "job.json, line 3 ends in the middle; allowed: JSON text in UTF-8.");
    CHECK(sentence_of(example_job + "}") == "job.json, line 13 can't be read from \"}\" on; allowed: JSON text in UTF-8.");
    CHECK(sentence_of(std::string("\x00\x01\x02", 3)) == "job.json is not text; allowed: JSON text in UTF-8.");
    CHECK(sentence_of("\x89PNG\r\n\x1a\n") == "job.json is not text; allowed: JSON text in UTF-8.");
    CHECK(sentence_of(with(example_job, "axle", "\xC0\xAF")) == "job.json is not text; allowed: JSON text in UTF-8.");
    CHECK(sentence_of("[1, 2]") == "job.json is a list; allowed: an object with \"format\": \"tubewright-job\".");
    CHECK(sentence_of("42") == "job.json is 42; allowed: an object with \"format\": \"tubewright-job\".");
    CHECK(sentence_of("{\"x-a\": " + std::string(40, '[') + std::string(40, ']') + "}").find("is nested too deeply; allowed: at most 32 levels.") != std::string::npos);
    CHECK(sentence_of(std::string(3000000, '[')).find("is nested too deeply") != std::string::npos);
    CHECK(sentence_of(std::string((4u << 20) + 1, ' ')) == "job.json is larger than 4 MB; allowed: files up to 4 MB.");
}

TEST_CASE("a sentence stays one short line, whatever stands in the file") {
    const std::string endless(1000000, 'k');
    for (const std::string& text : {with(example_job, "\"units\"", "\"" + endless + "\": 1, \"units\""), with(example_job, "\"in\"", "\"" + endless + "\""),
                                    with(example_job, "\"trim\"", "\"a\\nb\\u0007\""), with(example_job, "\"in\"", "\"\\n\\r\\u007f\"")}) {
        const std::string sentence = sentence_of(text);
        INFO(sentence);
        CHECK(sentence.size() < 500);
        CHECK(std::all_of(sentence.begin(), sentence.end(), [](char c) { return static_cast<unsigned char>(c) >= 0x20 && c != 0x7F; }));
    }
}

TEST_CASE("paths that are no readable file") {
    const OwnFolder own;
    const std::string folder = own.path().string();
    const auto sentence = [&](const std::string& name) {
        const auto read = read_job(own.path() / name, shipped_library());
        return read.ok() ? "was taken" : read.trouble().sentence();
    };
    CHECK(sentence("none.json") == folder + "/none.json is not there; allowed: a file that exists.");
    std::filesystem::create_directory(own.path() / "folder.json");
    CHECK(sentence("folder.json") == folder + "/folder.json is a folder; allowed: a file.");
    REQUIRE(mkfifo((own.path() / "pipe.json").c_str(), 0600) == 0);
    CHECK(sentence("pipe.json") == folder + "/pipe.json is not a plain file; allowed: a plain file.");
    own.write("huge.json", std::string((4u << 20) + 1, ' '));
    CHECK(sentence("huge.json") == folder + "/huge.json is larger than 4 MB; allowed: files up to 4 MB.");

    own.write("locked.json", example_job);
    std::filesystem::permissions(own.path() / "locked.json", std::filesystem::perms::none);
    std::filesystem::permissions(own.path(), std::filesystem::perms::owner_all | std::filesystem::perms::group_exec | std::filesystem::perms::others_exec);
    const uid_t me = geteuid();
    shipped_library();
    if (me == 0) REQUIRE(seteuid(65534) == 0);  // to the superuser every file is open
    const std::string said = sentence("locked.json");
    if (me == 0) REQUIRE(seteuid(0) == 0);
    CHECK(said == folder + "/locked.json can't be opened (Permission denied); allowed: a file that you may read.");
    CHECK(bytes_in(own.path() / "huge.json").size() == (4u << 20) + 1);
}

TEST_CASE("a job spoiled at random is read or refused, and what is read can be worked out") {
    std::mt19937 dice(20261125);
    const auto roll = [&](std::size_t sides) { return std::uniform_int_distribution<std::size_t>(0, sides - 1)(dice); };
    const std::string source = bytes_in(source_dir / "tests/specimens/job-version-1.json");
    const std::vector<std::string> bits{"0", "-1", "1e9", "179.9", "[", "]", "{", "}", "\"", ",", ":", "null", "1e-300", "\xC3", "90", "\"angle\"", "6"};
    int taken = 0;
    for (int i = 0; i < 4000; ++i) {
        std::string text = source;
        for (std::size_t n = 1 + roll(2); n > 0; --n) {
            const std::size_t at = roll(text.size());
            if (roll(2)) text.replace(at, 1 + roll(3), bits[roll(bits.size())]);
            else text[at] = static_cast<char>(roll(256));
        }
        const auto read = read_job_text(text, "job.json", shipped_library());
        if (!read.ok()) {
            CHECK(read.trouble().sentence().rfind("job.json", 0) == 0);
            continue;
        }
        ++taken;
        for (const Line& line : read.value().lines) CHECK(bend_sheet(line).line == line);
    }
    CHECK(taken > 50);
}

}  // namespace tubewright
