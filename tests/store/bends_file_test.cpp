// The log of bends as a file.

#include "store/bends_file.h"

#include "desk.h"
#include "random_work.h"

namespace tubewright {
namespace {

LoggedBend read_87() {
    LoggedBend logged;
    logged.check.record.day = "2026-11-28";
    logged.check.with = {"hand-3/16", {{4.7625}, {0.7112}, "stainless-304"}};
    logged.check.target = Angle{90};
    logged.check.set = {93};
    logged.check.measured = {87};
    logged.of = {"trailer", "axle crossover", 1, 1, 0};
    return logged;
}

/// What is said of the file of read_87() with one piece of its text changed.
std::string said_of(const std::string& from, const std::string& to) {
    std::string text = bends_text({read_87()});
    const std::size_t at = text.find(from);
    REQUIRE(at != text.npos);
    const auto read = bends_from(text.replace(at, from.size(), to), "bends.json");
    return read.ok() ? "was read" : read.trouble().sentence();
}

}  // namespace

TEST_CASE("a log written to a file is the same when it is read, but for the ids, which are the book's") {
    std::vector<LoggedBend> bends{read_87(), read_87()};
    bends[1].check.record = {0, "2026-11-29", RecordStanding::asked, true};
    bends[1].check.target.reset();
    bends[1].check.measured = {1.0 / 3.0};
    bends[1].check.set_was_read = false;
    bends[1].of = {"", "50% ##2 \"x\"", 3, 2, 7};
    const auto read = bends_from(bends_text(bends), "bends.json");
    REQUIRE(read.ok());
    CHECK(read.value() == bends);
    const auto none = bends_from(bends_text({}), "bends.json");
    REQUIRE(none.ok());
    CHECK(none.value().empty());
}

TEST_CASE("each thing that can't be in such a file is one sentence: file, place, what, allowed") {
    CHECK(said_of("\"measured\": 87.0", "\"measured\": 0") == "bends.json, bends[0].measured is 0; allowed: more than 0 and at most 190.");
    CHECK(said_of("\"set\": 93.0", "\"set\": 930") == "bends.json, bends[0].set is 930; allowed: more than 0 and at most 190.");
    CHECK(said_of("2026-11-28", "28.11.2026") == "bends.json, bends[0].day is \"28.11.2026\"; allowed: a day such as 2026-11-25.");
    CHECK(said_of("counted", "sure") == "bends.json, bends[0].standing is \"sure\"; allowed: counted, asked, confirmed.");
    CHECK(said_of("\"lot\"", "\"charge\"").rfind("bends.json, bends[0].charge", 0) == 0);
    CHECK(said_of("tubewright-bends", "tubewright-job").rfind("bends.json, format", 0) == 0);
    CHECK(said_of("\"bend\": 1", "\"bend\": 0").rfind("bends.json, bends[0].of.bend is 0", 0) == 0);
    CHECK(said_of("\"mm\"", "\"in\"").rfind("bends.json, units is \"in\"", 0) == 0);
    CHECK(said_of("}", "").rfind("bends.json", 0) == 0);
}

TEST_CASE("a copy takes a name that no file has, and what lies in the folder is listed, the newest first") {
    const OwnFolder own;
    RealDisk disk;
    const auto folder = own.path() / "bends";
    CHECK(bend_files_in(folder).empty());
    for (const char* name : {"bends-2026-11-27", "bends-2026-11-28", "bends-2026-11-28"}) REQUIRE(write_bends_beside(disk, folder, name, {read_87()}).ok());
    CHECK(bend_files_in(folder) == std::vector<std::string>{"bends-2026-11-28.json", "bends-2026-11-28-2.json", "bends-2026-11-27.json"});
    const auto read = read_bends(folder / "bends-2026-11-28-2.json");
    REQUIRE(read.ok());
    CHECK(read.value() == std::vector<LoggedBend>{read_87()});
    CHECK_FALSE(read_bends(folder / "no such file.json").ok());
}

}  // namespace tubewright
