// The program killed at any instant: the book opens again at the last touch that was acknowledged, or at
// the one that was on its way.

#include "desk.h"
#include "killed.h"
#include "random_work.h"
#include "store/shop_book.h"

namespace tubewright {
namespace {

/// A fresh book holds nothing.
Work work_after(unsigned touch) { return touch == 0 ? Work{} : random_work(touch); }

/// Saves one work after the other and says so through the pipe, until it is killed.
[[noreturn]] void work_on(const std::filesystem::path& path, unsigned touch, int pipe) {
    auto opened = ShopBook::open(path);
    if (!opened.ok()) _exit(3);
    ShopBook book = std::move(opened).value();
    while (true) {
        ++touch;
        if (!book.save(work_after(touch), {}).ok()) _exit(4);
        if (::write(pipe, &touch, sizeof touch) != sizeof touch) _exit(5);
    }
}

/// A journal that has to be played back begins with these bytes: SQLite file format, section 3.
bool was_cut_in_the_middle(const std::filesystem::path& path) {
    return bytes_in(path.string() + "-journal").rfind("\xd9\xd5\x05\xf9\x20\xa1\x63\xd7", 0) == 0;
}

}  // namespace

TEST_CASE("killed 120 times at any instant, the book is always at the last touch or the one on its way") {
    std::mt19937 dice(20261125);
    const OwnFolder own;
    std::filesystem::path path = own.path() / "book.sqlite";
    unsigned touch = 0;
    int in_the_middle = 0, one_more = 0;
    for (int round = 0; round < 120; ++round) {
        if (round % 10 == 0) {  // also while the book is being made
            path = own.path() / ("book-" + std::to_string(round) + ".sqlite");
            touch = 0;
        }
        const unsigned last = kill_somewhere(touch, touch == 0 ? 0 : 1, 12000, dice, [&](int pipe) { work_on(path, touch, pipe); });
        in_the_middle += was_cut_in_the_middle(path);
        const auto book = ShopBook::open(path);
        INFO("round " << round << ", last touch acknowledged " << last);
        if (!book.ok()) FAIL(book.trouble().sentence);
        const bool at_next = book.value().read().work == work_after(last + 1);
        CHECK((at_next || book.value().read().work == work_after(last)));
        one_more += at_next;
        touch = at_next ? last + 1 : last;
    }
    INFO("killed inside a save: " << in_the_middle << ", saved but not yet acknowledged: " << one_more);
    CHECK(in_the_middle > 0);  // else the killing hit nothing
}

}  // namespace tubewright
