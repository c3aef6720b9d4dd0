#include "store/csv.h"

#include <random>

#include "desk.h"

namespace tubewright {
namespace {

using Rows = std::vector<std::vector<std::string>>;

/// RFC 4180, section 2, read the other way, letter by letter.
Rows read_csv(const std::string& text) {
    Rows rows{{""}};
    bool quoted = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        std::string& cell = rows.back().back();
        if (quoted && text[i] == '"' && i + 1 < text.size() && text[i + 1] == '"') cell += text[i++];
        else if (text[i] == '"') quoted = !quoted;
        else if (quoted) cell += text[i];
        else if (text[i] == ',') rows.back().push_back("");
        else if (text[i] == '\r' && i + 1 < text.size() && text[i + 1] == '\n') { rows.push_back({""}); ++i; }
        else cell += text[i];
    }
    CHECK_FALSE(quoted);
    CHECK(rows.back() == std::vector<std::string>{""});  // the text ends with the end of a row
    rows.pop_back();
    return rows;
}

}  // namespace

TEST_CASE("a table comes out as RFC 4180 writes it") {
    // The examples of RFC 4180, section 2, rules 1, 3, 5, 6 and 7.
    CHECK(csv_text({{"field_name", "field_name", "field_name"}, {{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}}) == "field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n");
    CHECK(csv_text({{"aaa", "b\r\nbb", "ccc"}, {{"zzz", "yyy", "xxx"}}}) == "aaa,\"b\r\nbb\",ccc\r\nzzz,yyy,xxx\r\n");
    CHECK(csv_text({{"aaa", "b\"bb", "ccc"}, {}}) == "aaa,\"b\"\"bb\",ccc\r\n");
    // Ours: a comma, spaces that stay, an empty cell, and a row of nothing but one.
    CHECK(csv_text({{"name", "note", "length_mm"}, {{"axle, left", " as is ", ""}}}) == "name,note,length_mm\r\n\"axle, left\", as is ,\r\n");
    CHECK(csv_text({{"note"}, {{""}, {"x"}}}) == "note\r\n\"\"\r\nx\r\n");
}

TEST_CASE("what a spreadsheet could take for a formula gets an apostrophe, a number does not") {
    const auto cell = [](const std::string& text) { return csv_text({{text}, {}}); };
    CHECK(cell("=1+1") == "'=1+1\r\n");
    CHECK(cell("=HYPERLINK(\"x\",\"y\")") == "\"'=HYPERLINK(\"\"x\"\",\"\"y\"\")\"\r\n");
    CHECK(cell("+cmd") == "'+cmd\r\n");
    CHECK(cell("-2+3") == "'-2+3\r\n");
    CHECK(cell("@SUM(A1)") == "'@SUM(A1)\r\n");
    CHECK(cell("\t=1") == "'\t=1\r\n");
    CHECK(cell("-") == "'-\r\n");
    CHECK(cell("-3.5.1") == "'-3.5.1\r\n");
    CHECK(cell("-1e5") == "'-1e5\r\n");
    for (const char* number : {"-3.5", "+2", "-0.25", "12", "0"}) CHECK(cell(number) == std::string(number) + "\r\n");
    CHECK(cell("a=b") == "a=b\r\n");
    CHECK(cell("") == "\"\"\r\n");
}

TEST_CASE("any table reads back as it was, but for the apostrophes") {
    std::mt19937 dice(4180);
    const std::string letters = "a,\"\r\n '=-+@\t0.;\xc3\xa9";
    for (int round = 0; round < 300; ++round) {
        const auto roll = [&](std::size_t sides) { return std::uniform_int_distribution<std::size_t>(0, sides - 1)(dice); };
        TextTable table;
        const std::size_t columns = 1 + roll(4);
        const auto row = [&] {
            std::vector<std::string> cells(columns);
            for (std::string& cell : cells)
                for (std::size_t n = roll(6); n > 0; --n) cell += letters[roll(letters.size())];
            return cells;
        };
        table.header = row();
        for (std::size_t n = roll(4); n > 0; --n) table.rows.push_back(row());
        Rows wanted{table.header};
        wanted.insert(wanted.end(), table.rows.begin(), table.rows.end());
        Rows got = read_csv(csv_text(table));
        REQUIRE(got.size() == wanted.size());
        for (std::size_t i = 0; i < got.size(); ++i) {
            REQUIRE(got[i].size() == columns);
            for (std::size_t j = 0; j < columns; ++j) {
                INFO(wanted[i][j]);
                CHECK((got[i][j] == wanted[i][j] || got[i][j] == "'" + wanted[i][j]));
                CHECK((got[i][j].empty() || std::string("=@\t\r\n").find(got[i][j][0]) == std::string::npos));
            }
        }
    }
}

TEST_CASE("a table is written under a name that no file has") {
    const OwnFolder own;
    RealDisk disk;
    const TextTable table{{"name"}, {{"left"}}};
    CHECK(write_csv_beside(disk, own.path(), "rack-2026-11-29", "The rack is not written", table).value() == own.path() / "rack-2026-11-29.csv");
    CHECK(write_csv_beside(disk, own.path(), "rack-2026-11-29", "The rack is not written", table).value() == own.path() / "rack-2026-11-29-2.csv");
    CHECK(bytes_in(own.path() / "rack-2026-11-29-2.csv") == "name\r\nleft\r\n");
}

}  // namespace tubewright
