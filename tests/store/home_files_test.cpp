#include "store/home_files.h"

#include "desk.h"

namespace tubewright {

TEST_CASE("the person's files are known by their names; half written ones and what is not ours are left alone") {
    for (const char* name : {"shop-book.db", "shop-book-2.db", "shop-book.db.version-1", "at-the-bench.json", "fittings.json", "jobs/rail.json", "benders/own.json.old", "points/wire.csv", "bends/bends-2026-11-29.json"}) {
        INFO(name);
        CHECK(is_persons_file(name));
    }
    for (const char* name : {"", "jobs", "jobs/", "jobs/a/b.json", "jobs/../shop-book.db", "../shop-book.db", "/etc/passwd", "jobs/.hidden", "jobs/rail.json.new", "backups/tubewright-2026-11-29.backup", "restoring.backup", "touch-map.json", "jobs/a\nb.json"}) {
        INFO(name);
        CHECK_FALSE(is_persons_file(name));
    }
}

TEST_CASE("all that is there comes by name, and the youngest book is found") {
    const OwnFolder own;
    CHECK(persons_files(own.path()).empty());
    CHECK(youngest_book(own.path()) == 1);
    for (const char* name : {"shop-book.db", "shop-book-2.db", "shop-book-10.db", "shop-book-10.db-journal", "shop-book-x.db", "jobs/rail.json", "jobs/rail.json.new", "backups/a.backup", "other/file"}) own.write(name, "x");
    CHECK(persons_files(own.path()) == std::vector<std::string>{"jobs/rail.json", "shop-book-10.db", "shop-book-10.db-journal", "shop-book-2.db", "shop-book-x.db", "shop-book.db"});
    CHECK(youngest_book(own.path()) == 10);
    CHECK(book_path("h", 10) == "h/shop-book-10.db");
    CHECK(is_book("shop-book.db"));
    for (const char* name : {"shop-book-1.db", "shop-book-0.db", "shop-book--2.db", "shop-book.db.version-1", "shop-book.db-journal"}) CHECK_FALSE(is_book(name));
}

}  // namespace tubewright
