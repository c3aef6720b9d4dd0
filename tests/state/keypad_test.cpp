#include <catch2/catch.hpp>

#include "state/sample_state.h"

namespace tubewright {

TEST_CASE("what is typed is a number, with a point or with quarters") {
    CHECK(typed_number("88") == 88.0);
    CHECK(typed_number("88.5") == 88.5);
    CHECK(typed_number("88 1/2") == 88.5);
    CHECK(typed_number("3/4") == 0.75);
    CHECK_FALSE(typed_number(""));
    CHECK_FALSE(typed_number("."));
    CHECK_FALSE(typed_number("8/0"));
    CHECK_FALSE(typed_number("nan"));
    CHECK_FALSE(typed_number("-3"));
}

TEST_CASE("keys make only entries that can become a number") {
    CHECK(with_key("88", "1/2") == "88 1/2");
    CHECK(with_key("88 1/2", "3/4") == "88 3/4");
    CHECK(with_key("88 1/2", "back") == "88");
    CHECK(with_key("1/2", "back") == "");
    CHECK(with_key("88.", "1/2") == "88.");
    CHECK(with_key("8.5", ".") == "8.5");
    CHECK(with_key("88 1/2", "4") == "88 1/2");
    CHECK(with_key("0", "7") == "7");
    CHECK(with_key("8", "back") == "");
    CHECK(with_key("", "back") == "");
    CHECK(with_key("123", "clear") == "");
    CHECK(with_key("12", "%s") == "12");
    CHECK(with_key("123456789", "1") == "123456789");
}

TEST_CASE("a protractor reads up to 180, and a stick is as long as it is typed in the reader's unit") {
    State state = at_check(at_first_bend());
    state.looks.typed = "181";
    CHECK_FALSE(typed_reading(state));
    state = touched(touched(job_open(), {OpenLine{"left rear"}, GoTo{Screen::stick_length}, Key{"7"}, Key{"2"}, Key{"1/2"}}), {});
    CHECK(typed_stick(state)->inch() == Approx(72.5));
    const State taken = touched(state, {Next{}});
    CHECK(left_in_use(taken.work).inch() == Approx(72.5));
    CHECK(taken.looks.screen == Screen::line);
    CHECK(reader_unit(touched(job_open(), {SetUnit{Unit::mm}, SetUnit{std::nullopt}})) == job_open().job->unit);
    State metric = touched(job_open(), {SetUnit{Unit::mm}, OpenLine{"left rear"}, GoTo{Screen::stick_length}, Key{"9"}, Key{"0"}, Key{"0"}});
    CHECK(typed_stick(metric)->mm == Approx(900));
}

}  // namespace tubewright
