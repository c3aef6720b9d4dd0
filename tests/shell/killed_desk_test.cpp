// A whole desk killed at any instant, over and over, on its way through a job: the book opens again at the last touch that was
// acknowledged, or at the one on its way. TUBEWRIGHT_KILLS=1000 for the long run.

#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <csignal>
#include <cstdlib>
#include <fstream>
#include <random>
#include <sstream>

#include "shell/book_digest.h"
#include "shell/temporary_home.h"
#include "store/database.h"
#include "store/shop_book.h"

namespace tubewright {
namespace {

namespace fs = std::filesystem;

// One line of two bends, many times over; few enough for its order to be found in no time.
const char* const job_text = R"({"format": "tubewright-job", "version": 1, "name": "Killed", "service": "brake", "units": "in",
  "tube": {"od": 0.1875, "wall": 0.028, "material": "stainless-304"}, "bender": "hand-3/16",
  "lines": [{"name": "axle crossover", "quantity": 1000, "ends": {"A": {"fitting": "flare-37-single"}, "B": {"fitting": "flare-37-single", "trim": 0.5}},
             "route": {"form": "legs", "measured_to": "centre", "legs": [6.5, 4.25, 12.0], "bends": [{"angle": 90}, {"angle": 45, "rotation": 90}]}}]})";

struct Heard {
    int touches = 0;             ///< acknowledged
    std::string done, going;     ///< what the book holds after the last of them, and after the one on its way; empty: none was
};

/// All that comes through the pipe until so many touches are acknowledged, and the next one is on its way if that is asked; or till its end.
void hear(int pipe, int enough, bool on_its_way, std::string& rest, Heard& heard) {
    char bytes[512];
    while (heard.touches < enough || (on_its_way && heard.going.empty())) {
        const ssize_t got = read(pipe, bytes, sizeof bytes);
        if (got <= 0) return;
        rest.append(bytes, static_cast<std::size_t>(got));
        for (std::size_t end; (end = rest.find('\n')) != rest.npos; rest.erase(0, end + 1)) {
            std::istringstream line(rest.substr(0, end));
            std::string what, digest;
            unsigned long touch = 0;
            line >> what >> touch >> digest;
            (what == "done" ? heard.done : heard.going) = digest;
            if (what == "done") ++heard.touches, heard.going.clear();
        }
    }
}

/// Runs the hands in this home and kills them somewhere behind so many touches.
Heard kill_somewhere(const fs::path& home, const fs::path& twin, const fs::path& job, unsigned seed, std::mt19937& dice) {
    int ends[2];
    REQUIRE(pipe(ends) == 0);
    const std::string number = std::to_string(seed);
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        dup2(ends[1], 1);
        close(ends[0]);
        execl(RANDOM_HANDS, "random_hands", home.c_str(), twin.c_str(), job.c_str(), number.c_str(), nullptr);
        _exit(127);
    }
    close(ends[1]);
    const int enough = std::uniform_int_distribution<int>(0, 12)(dice);
    Heard heard;
    std::string rest;
    // Half of them within a touch that is on its way, the others anywhere, also while it is starting. The instant is the dice's: no
    // clock is asked, nothing waits for it.
    const bool within = enough > 0 && std::uniform_int_distribution<int>(0, 1)(dice) == 1;
    hear(ends[0], enough, within, rest, heard);
    usleep(std::uniform_int_distribution<unsigned>(0, within ? 1500 : enough == 0 ? 200000 : 15000)(dice));
    REQUIRE(kill(child, SIGKILL) == 0);
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    REQUIRE(WIFSIGNALED(status));  // else the hands gave up: the sentence is on the screen
    hear(ends[0], 1 << 30, false, rest, heard);
    close(ends[0]);
    return heard;
}

/// A journal that has to be played back begins with these bytes: SQLite file format, section 3.
bool was_cut_in_the_middle(const fs::path& book) {
    std::ifstream in(book.string() + "-journal", std::ios::binary);
    const std::string start(std::istreambuf_iterator<char>(in), {});
    return start.rfind("\xd9\xd5\x05\xf9\x20\xa1\x63\xd7", 0) == 0;
}

/// What any book has to keep to, whenever it was cut short.
void look_through(const fs::path& path, const BookPages& pages) {
    CHECK(Database(path).text("PRAGMA integrity_check") == "ok");
    CHECK(pages.past.size() <= undo_kept);
    for (const auto& [tube, balance] : balances(*pages.work.rack.ledger)) CHECK(balance.holds());
}

BookPages pages_in(const fs::path& path) {
    const auto opened = ShopBook::open(path);
    if (!opened.ok()) FAIL(opened.trouble().sentence);
    return opened.value().read();
}

struct Count {
    int in_the_middle = 0, one_more = 0, touches = 0;
    std::size_t scrapped = 0, made = 0;
};

}  // namespace

TEST_CASE("a desk killed at any instant comes back at the last touch acknowledged or the one on its way, never before") {
    const char* wanted = std::getenv("TUBEWRIGHT_KILLS");
    const int kills = wanted ? std::atoi(wanted) : 12;
    const TemporaryHome all;
    const fs::path home = all.path() / "home", twin = all.path() / "twin", job = all.path() / "killed.json", book = home / "shop-book.db";
    std::ofstream(job) << job_text;
    fs::create_directories(home);
    std::mt19937 dice(20261129);
    std::string known = digest_of({}, {}, {});
    Count count;
    for (int round = 0; round < kills; ++round) {
        fs::remove_all(twin);
        fs::copy(home, twin, fs::copy_options::recursive);
        const Heard heard = kill_somewhere(home, twin, job, static_cast<unsigned>(round), dice);
        INFO("round " << round << ", touches acknowledged " << heard.touches);
        count.in_the_middle += was_cut_in_the_middle(book);
        count.touches += heard.touches;
        const BookPages pages = pages_in(book);
        const std::string found = digest_of(pages.work, pages.settings, pages.past), last = heard.done.empty() ? known : heard.done;
        CHECK((found == last || found == heard.going));
        count.one_more += found != last;
        known = found;
        count.scrapped = pages.work.scrap.size();
        for (const auto& [key, line] : pages.work.lines) count.made = static_cast<std::size_t>(line.finished);
        look_through(book, pages);
    }
    std::ostringstream told;
    told << kills << " kills, " << count.touches << " touches acknowledged, " << count.in_the_middle << " times inside a save, " << count.one_more << " times saved but not acknowledged, " << count.made
         << " pieces made, " << count.scrapped << " scrapped";
    INFO(told.str());
    if (wanted) WARN(told.str());
    CHECK(count.touches > kills);
    if (wanted) CHECK(count.in_the_middle > 0);  // else the killing hit nothing; a few kills can all miss
    CHECK(count.scrapped + count.made > 0);  // nor did the hands
}

}  // namespace tubewright
