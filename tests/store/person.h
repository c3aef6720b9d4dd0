#pragma once
// Somebody who has the shop book of a folder open, with something in it.

#include <filesystem>

#include "desk.h"
#include "random_work.h"
#include "store/shop_book.h"

namespace tubewright {

class Person {
public:
    explicit Person(const std::filesystem::path& home, unsigned work = 7) : book_(opened_in(home)) { REQUIRE(book_.save(random_work(work), {}).ok()); }
    ShopBook& book() { return book_; }

private:
    static ShopBook opened_in(const std::filesystem::path& home) {
        auto book = ShopBook::open(home / "shop-book.db");
        if (!book.ok()) FAIL(book.trouble().sentence);
        return std::move(book).value();
    }
    ShopBook book_;
};

}  // namespace tubewright
