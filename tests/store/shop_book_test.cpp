#include "store/shop_book.h"

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>

#include "desk.h"
#include "random_work.h"
#include "specimen_pages.h"
#include "store/database.h"

namespace tubewright {
namespace {

namespace fs = std::filesystem;

ShopBook opened(const fs::path& path) {
    auto book = ShopBook::open(path);
    if (!book.ok()) FAIL(book.trouble().sentence);
    return std::move(book).value();
}

/// What opening says; the file and its folder have to be as they were.
std::string refusal(const fs::path& path) {
    const std::string before = bytes_in(path);
    const auto files = std::distance(fs::directory_iterator(path.parent_path()), fs::directory_iterator());
    std::string said = "was opened";
    {
        const auto book = ShopBook::open(path);
        if (!book.ok()) said = book.trouble().sentence;
    }
    CHECK(bytes_in(path) == before);
    CHECK(std::distance(fs::directory_iterator(path.parent_path()), fs::directory_iterator()) == files);
    return said;
}

std::string sentence_for(const fs::path& path, const std::string& why) { return "The shop book " + path.string() + " " + why + "; it is left as it is."; }

/// A book with something in it, its file's bytes changed at one place.
fs::path book_with(const OwnFolder& own, std::size_t at, const std::string& bytes) {
    const fs::path path = own.path() / "book.sqlite";
    { REQUIRE(opened(path).save(random_work(7), {}).ok()); }
    std::string whole = bytes_in(path);
    return own.write("book.sqlite", whole.replace(at, bytes.size(), bytes));
}

/// What opening says to somebody who may not write into the book's folder.
std::string refusal_in_a_locked_folder(const fs::path& path) {
    const fs::perms may_read = fs::perms::owner_read | fs::perms::owner_exec | fs::perms::group_read | fs::perms::group_exec | fs::perms::others_read | fs::perms::others_exec;
    fs::permissions(path, fs::perms::all);
    fs::permissions(path.parent_path(), may_read);
    const uid_t me = geteuid();
    if (me == 0) REQUIRE(seteuid(65534) == 0);  // to the superuser every folder is open
    const std::string said = refusal(path);
    if (me == 0) REQUIRE(seteuid(0) == 0);
    fs::permissions(path.parent_path(), fs::perms::owner_all);
    return said;
}

}  // namespace

TEST_CASE("a good book in a folder that takes no journal is refused when it is opened, not at the first touch") {
    const OwnFolder own;
    const fs::path path = own.path() / "book.sqlite";
    { REQUIRE(opened(path).save(random_work(7), {}).ok()); }
    const std::string said = refusal_in_a_locked_folder(path);
    CHECK(said == sentence_for(path, "can't be used (attempt to write a readonly database)"));
    CHECK(opened(path).read().work == random_work(7));
}

TEST_CASE("a book changed by hand to what can't be is refused and left as it is") {
    const OwnFolder own;
    const fs::path path = own.write("book.sqlite", bytes_in(source_dir / "tests/specimens/book-version-1.sqlite"));
    for (const std::string change : {
             "UPDATE line_work SET cut_length_mm = -5", "UPDATE line_work SET cut_length_mm = 9e999", "UPDATE line_work SET pull_again_deg = 1e308",
             "UPDATE settings SET tape_denominator = 7", "UPDATE settings SET screen_px_per_mm = 1e300", "UPDATE offcut SET length_mm = 1e300, tube = 'stainless-304 4763x711'",
             "UPDATE scrap SET kept_mm = -1", "UPDATE used SET used_mm = 9e999", "UPDATE bend_made SET set_deg = -1e300"}) {
        INFO(change);
        own.write("book.sqlite", bytes_in(source_dir / "tests/specimens/book-version-1.sqlite"));
        { Database(path).run(change); }
        CHECK(refusal(path) == sentence_for(path, "holds an entry that this program did not write"));
    }
}

TEST_CASE("what is left for the fitter stands in the book, and one that nobody can have left is refused") {
    const OwnFolder own;
    const fs::path path = own.path() / "book.sqlite";
    Work work;
    LineWork& line = work.lines["trailer/axle crossover"];
    line.stage = Stage::done;
    line.finished = 2;
    line.ticks = {"hand-over-clamped"};
    line.later = {{{1, "hand-over-brake-proof"}, true}, {{2, "hand-over-brake-proof"}, false}, {{2, "hand-over-recheck"}, false}};
    { REQUIRE(opened(path).save(work, {}).ok()); }
    CHECK(opened(path).read().work == work);
    for (const std::string tick : {"later hand-over-recheck", "later 0 hand-over-recheck", "done 99999999999 hand-over-recheck", "later 2"}) {
        INFO(tick);
        { Database(path).run("DELETE FROM line_tick; INSERT INTO line_tick VALUES ('trailer/axle crossover', '" + tick + "')"); }
        CHECK(refusal(path) == sentence_for(path, "holds an entry that this program did not write"));
    }
}

TEST_CASE("what a tube is saved for stands in the book behind what it was cut for, and what can't be there is refused") {
    const OwnFolder own;
    const fs::path path = own.path() / "book.sqlite";
    Work work;
    LineWork& line = work.lines["trailer/axle crossover"];
    line.cut = true;
    line.plan = "stainless-304 4763x711; 16002 18246 0 9000";
    line.saved = SavedPlan{{{{{160.02}, End::B, {91.91274563789}, {-90.5}}}, {1064.4123456789}, {3.175}, {1050}, {14.6}, 0.0125}, 1};
    { REQUIRE(opened(path).save(work, {}).ok()); }
    CHECK(opened(path).read().work == work);
    for (const std::string saved : {"1 2 3", "-1 1 1 1 1 0", "1 1 1 1 1 0; 5 C 90 0", "1 1 1 1 1 0; 5 A 90", "1 1 1 1 1 nan", "1 1e300 1 1 1 0", "1 1 1 1 1 0, 5 A 90 0"}) {
        INFO(saved);
        { Database(path).run("UPDATE line_work SET plan = 'p' || char(10) || 'saved after " + saved + "'"); }
        CHECK(refusal(path) == sentence_for(path, "holds an entry that this program did not write"));
    }
}

TEST_CASE("what was read of a tube besides its bends' angles is there again, its undo too, and what can't be is refused") {
    const OwnFolder own;
    const fs::path path = own.path() / "book.sqlite";
    Work work;
    LineWork& line = work.lines["trailer/axle crossover"];
    line.ticks = {"prepare-deburr"};
    line.turns = {{2, 1, {-88.5}}, {1, 0, {171}}};
    line.tapes = {{{{0, 3}, {412.7501}}, 2}, {{{1, 5}, {300}}, 3}};
    const Work before = work;
    { REQUIRE(opened(path).save(work, {}).ok()); }
    CHECK(opened(path).read().work == work);
    // Undo of a reading comes back with the book.
    line.turns.pop_back();
    line.tapes.clear();
    { REQUIRE(opened(path).save(work, {{1, "trailer", before}}).ok()); }
    CHECK(opened(path).read().work == work);
    CHECK(opened(path).read().past.back().work == before);
    { REQUIRE(opened(path).save(before, {}).ok()); }
    const std::string sound = bytes_in(path);
    const std::string strange = "holds an entry that this program did not write", bent_wrong = "is damaged (CHECK constraint failed in line_turn)", taped_wrong = "is damaged (CHECK constraint failed in line_tape)";
    for (const auto& [change, said] : {std::pair{"UPDATE line_turn SET read_deg = 1e9", strange}, std::pair{"UPDATE line_turn SET against = bend", bent_wrong}, std::pair{"UPDATE line_tape SET read_mm = -5", strange},
                                       std::pair{"UPDATE line_tape SET to_point = from_point", taped_wrong}}) {
        INFO(change);
        own.write("book.sqlite", sound);
        { Database(path).run(std::string("PRAGMA ignore_check_constraints = 1; ") + change); }
        CHECK(refusal(path) == sentence_for(path, said));
    }
}

TEST_CASE("a book of version 1 takes the pieces a bender is learned from, half measured ones too, and undo of them") {
    const OwnFolder own;
    const fs::path path = own.write("book.sqlite", bytes_in(source_dir / "tests/specimens/book-version-1.sqlite"));
    BookPages pages = opened(path).read();
    KeptPiece begun, round;
    begun.id = 1001;
    begun.tube = "stainless-304 4763x711";
    begun.aim = {90};
    begun.cut = Length{304.8};
    begun.inks = {{"0", Length{101.6}}, {"50% ##2", {}}};
    round.id = 1002;
    round.tube = begun.tube;
    round.aim = half_turn;
    round.tape = 64;
    round.set = half_turn;
    round.width = Length{33.3};
    Work work = pages.work;
    work.pieces = {{"hand-3/16", {begun, round}}, {"other", {}}};
    work.pieces.erase("other");
    std::vector<UndoStep> past = pages.past;
    past.push_back({past.empty() ? 1 : past.back().number + 1, "trailer", pages.work});
    { REQUIRE(opened(path).save(work, past).ok()); }
    CHECK(opened(path).read().work == work);
    CHECK(opened(path).read().past.back().work == pages.work);
    { Database(path).run("UPDATE piece SET cut_mm = -5 WHERE id = 1001"); }
    CHECK(refusal(path) == sentence_for(path, "holds an entry that this program did not write"));
}

TEST_CASE("a new book is empty, and everything saved in it is there again, to the last bit") {
    const OwnFolder own;
    const fs::path path = own.path() / "book.sqlite";
    CHECK(opened(path).read() == BookPages{});
    Settings settings;
    for (unsigned number = 1; number <= 60; ++number) {
        INFO("work " << number);
        const Work work = random_work(number);
        {
            ShopBook book = opened(path);
            REQUIRE(book.save(work, {}).ok());
            if (number % 5 == 0) {
                settings = WorkDice(number).settings();
                REQUIRE(book.save_settings(settings).ok());
            }
            CHECK(book.read().work == work);
        }
        const BookPages pages = opened(path).read();
        CHECK(pages.work == work);
        CHECK(pages.settings == settings);
    }
}

TEST_CASE("many saves in one sitting leave the last") {
    const OwnFolder own;
    const fs::path path = own.path() / "book.sqlite";
    {
        ShopBook book = opened(path);
        for (unsigned number = 0; number < 50; ++number) REQUIRE(book.save(random_work(number), {}).ok());
    }
    CHECK(opened(path).read().work == random_work(49));
}

TEST_CASE("looking into a book changes not a byte of it") {
    const OwnFolder own;
    const fs::path path = book_with(own, 0, "S");
    const std::string before = bytes_in(path);
    { CHECK(opened(path).read().work == random_work(7)); }
    { REQUIRE(opened(path).save(random_work(7), {}).ok()); }  // nothing new
    CHECK(bytes_in(path) == before);
}

TEST_CASE("the specimen of version 1 reads as it was written") {
    const OwnFolder own;
    const fs::path path = own.write("book.sqlite", bytes_in(source_dir / "tests/specimens/book-version-1.sqlite"));
    CHECK(opened(path).read() == specimen_pages());
}

namespace {

/// That specimen read, brought up to date, and changed by one touch with what came later.
void check_brought_up(int version, BookPages pages, const std::function<void(Work&)>& touch) {
    const OwnFolder own;
    const std::string older = bytes_in(source_dir / ("tests/specimens/book-version-" + std::to_string(version) + ".sqlite"));
    const fs::path path = own.write("book.sqlite", older);
    {
        ShopBook book = opened(path);
        CHECK(book.read() == pages);
        pages.past.push_back({pages.past.back().number + 1, "trailer", pages.work});
        touch(pages.work);
        REQUIRE(book.save(pages.work, pages.past).ok());
    }
    CHECK(opened(path).read() == pages);
    CHECK(bytes_in(path.string() + ".version-" + std::to_string(version)) == older);
}

}  // namespace

TEST_CASE("the specimens of versions 4 and 5 read as they were written, with their undo, take what came later, and stay beside as they were") {
    check_brought_up(4, specimen_pages_4(), [](Work& work) { work.pieces["hand-3/16"][0].crown_gap = Length{11.5}; });
    check_brought_up(5, specimen_pages_5(), [](Work& work) { work.joints = {{{"trailer/axle crossover", End::B}, {JointKind::tee, 1}}}; });
}

TEST_CASE("a book of version 1 is brought up to date, and stays beside as it was") {
    const OwnFolder own;
    const std::string older = bytes_in(source_dir / "tests/specimens/book-version-1.sqlite");
    const fs::path path = own.write("book.sqlite", older);
    BookPages pages = specimen_pages();
    LoggedBend logged;
    logged.check.record = {4, "2026-11-28", RecordStanding::confirmed, true};
    logged.check.with = {"hand-3/16", {{4.7625}, {0.7112}, "stainless-304"}};
    logged.check.target = Angle{90};
    logged.check.set = {93};
    logged.check.measured = {87};
    logged.of = {"trailer", "axle crossover", 1, 2, 3};
    {
        ShopBook book = opened(path);
        CHECK(book.read() == pages);
        pages.past.push_back({9, "trailer", pages.work});  // the touch that brings the bend
        pages.work.bends = {logged};
        pages.work.lots = {{"tube a", "2026-11-28"}};
        pages.work.next_id = 5;
        REQUIRE(book.save(pages.work, pages.past).ok());
    }
    CHECK(opened(path).read() == pages);
    CHECK(bytes_in(path.string() + ".version-1") == older);
}

namespace {

/// What a book of version 1 holds once it is brought up to date; `change` is made to the specimen before.
Work brought_up(const std::string& change) {
    const OwnFolder own;
    const fs::path path = own.write("book.sqlite", bytes_in(source_dir / "tests/specimens/book-version-1.sqlite"));
    { Database(path).run(change); }
    return opened(path).read().work;
}

}  // namespace

TEST_CASE("what lay on the rack of an older book comes in, to the micrometre, the sticks in use first") {
    const Work work = brought_up("UPDATE stick SET tube = 'stainless-304 4762x711'; UPDATE offcut SET tube = 'steel-low-carbon 9525x889'");
    const StockTube brake{{4763}, {711}, "stainless-304"}, fuel{{9525}, {889}, "steel-low-carbon"};
    REQUIRE(work.rack->entries.size() == 2);
    // The last day that the book knows of; and the offcut's own. Days from 1970-01-01: 20,782 and 20,781.
    CHECK(work.rack->entries[0] == LedgerEntry{20782, Received{{1}, PieceKind::offcut, brake, {4'000'100}, "", "", {}}});
    CHECK(work.rack->entries[1] == LedgerEntry{20781, Received{{2}, PieceKind::offcut, fuel, {363'900}, "", "", {}}});
    CHECK(work.in_use == std::map<std::string, PieceNumber>{{tube_key(brake), {1}}});
}

TEST_CASE("two sticks in use of one tube, by an inch job and one in millimetres: both come in, one stays in use") {
    const Work work = brought_up("DELETE FROM offcut; DELETE FROM stick; INSERT INTO stick VALUES ('stainless-304 4762x711', 1000), ('stainless-304 4763x711', 2000)");
    CHECK(work.rack->pieces.size() == 2);
    CHECK(work.in_use == std::map<std::string, PieceNumber>{{"stainless-304 4763x711", {1}}});
}

TEST_CASE("a ledger that can't have happened makes the book a damaged one, and nothing of it is written over") {
    const OwnFolder own;
    const fs::path path = own.path() / "book.sqlite";
    {
        Work work;
        Ledger ledger;
        REQUIRE(write(ledger, {20782, Received{{1}, PieceKind::stick, {{4763}, {711}, "stainless-304"}, {6'096'000}, "", "", {}}}).ok());
        REQUIRE(write(ledger, {20782, Cut{{1}, {2}, {590'550}, {}, "trailer/axle"}}).ok());
        work.rack.ledger = std::make_shared<const Ledger>(ledger);
        REQUIRE(opened(path).save(work, {}).ok());
    }
    for (const char* change : {"UPDATE stock_entry SET length_um = 7000000 WHERE n = 1", "UPDATE stock_entry SET piece = 9 WHERE n = 1", "DELETE FROM stock_entry WHERE n = 0", "UPDATE stock_entry SET tube = 'x' WHERE n = 0"}) {
        const fs::path copy = own.write("copy.sqlite", bytes_in(path));
        {
            Database database(copy);
            database.run(change);
        }
        INFO(change);
        CHECK(refusal(copy) == sentence_for(copy, "holds an entry that this program did not write"));
    }
}

TEST_CASE("what is no book, not ours, newer, damaged or in use is refused and left as it is") {
    const OwnFolder own;
    SECTION("some other file") {
        const auto path = own.write("book.sqlite", std::string(5000, 'x'));
        CHECK(refusal(path) == sentence_for(path, "is no shop book but some other file"));
    }
    SECTION("a short file") {
        const auto path = own.write("book.sqlite", "SQLite");
        CHECK(refusal(path) == sentence_for(path, "is no shop book but some other file"));
    }
    SECTION("another program's database: another application id, at byte 68") {
        const auto path = book_with(own, 68, std::string("\0\0\0\0", 4));
        CHECK(refusal(path) == sentence_for(path, "is another program's database"));
    }
    SECTION("a newer one: the version is at byte 60") {
        const auto path = book_with(own, 60, std::string("\0\0\0\7", 4));
        CHECK(refusal(path) == sentence_for(path, "is of format 7, from a newer version of the program; this one knows up to 6"));
    }
    SECTION("a damaged one") {
        const auto path = book_with(own, 4096, std::string(3000, '\xA5'));
        const std::string said = refusal(path);
        INFO(said);
        CHECK(said.rfind("The shop book " + path.string() + " is damaged (", 0) == 0);
    }
    SECTION("cut off in the middle") {
        const auto path = book_with(own, 0, "S");
        const std::string whole = bytes_in(path);
        own.write("book.sqlite", whole.substr(0, whole.size() / 2));
        const std::string said = refusal(path);
        INFO(said);
        CHECK(said.rfind("The shop book " + path.string() + " is damaged (", 0) == 0);
    }
    SECTION("in use") {
        const auto path = own.path() / "book.sqlite";
        ShopBook first = opened(path);
        REQUIRE(first.save(random_work(3), {}).ok());
        CHECK(refusal(path) == sentence_for(path, "is in use by another program"));
        REQUIRE(first.save(random_work(4), {}).ok());
    }
    SECTION("a folder, and a folder that is not there") {
        fs::create_directory(own.path() / "book.sqlite");
        const auto book = ShopBook::open(own.path() / "book.sqlite");
        REQUIRE_FALSE(book.ok());
        CHECK(book.trouble().sentence == sentence_for(own.path() / "book.sqlite", "is no plain file"));
        const auto nowhere = ShopBook::open(own.path() / "nowhere" / "book.sqlite");
        REQUIRE_FALSE(nowhere.ok());
        CHECK(nowhere.trouble().sentence == sentence_for(own.path() / "nowhere" / "book.sqlite", "can't be used (unable to open database file)"));
    }
}

TEST_CASE("an entry that can't be lets nothing of its save in, and the book goes on") {
    const OwnFolder own;
    const fs::path path = own.path() / "book.sqlite";
    ShopBook book = opened(path);
    REQUIRE(book.save(random_work(11), {}).ok());
    Work twice = random_work(12);
    twice.scrap = {{5, "2026-11-25", "job", "line", "tube", Reason::kinked, {1}, {}, std::nullopt}, {5, "2026-11-25", "job", "line", "tube", Reason::kinked, {2}, {}, std::nullopt}};  // one id for two
    const auto saved = book.save(twice, {});
    REQUIRE_FALSE(saved.ok());
    CHECK(saved.trouble().sentence.find("the last change is not in it, all before it is.") != std::string::npos);
    CHECK(book.read().work == random_work(11));
    REQUIRE(book.save(random_work(13), {}).ok());
    CHECK(book.read().work == random_work(13));
}

TEST_CASE("a save that finds no room on the disk leaves the book as it was") {
    const OwnFolder own;
    const fs::path path = own.path() / "book.sqlite";
    { REQUIRE(opened(path).save(random_work(21), {}).ok()); }
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {  // a disk that takes no more than the book's own size, for this process only
        std::signal(SIGXFSZ, SIG_IGN);
        auto book = ShopBook::open(path);
        const rlimit limit{fs::file_size(path), fs::file_size(path)};
        setrlimit(RLIMIT_FSIZE, &limit);
        Work large = random_work(22);
        for (int i = 0; i < 2000; ++i) large.in_use["a tube of a long name " + std::to_string(i)] = {1};
        _exit(book.ok() && !ShopBook(std::move(book).value()).save(large, {}).ok() ? 0 : 1);
    }
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    CHECK(WIFEXITED(status));
    CHECK(WEXITSTATUS(status) == 0);
    CHECK(opened(path).read().work == random_work(21));
}

}  // namespace tubewright
