#include "store/points_file.h"

#include <random>

#include "desk.h"
#include "store/own_points.h"
#include "store/number_text.h"

namespace tubewright {
namespace {

const std::vector<MeasuredPoint> square{{Length{0}, Length{0}, Length{0}}, {Length{100.5}, Length{0}, Length{0}}, {Length{100.5}, Length{-40.25}, Length{0}}};

std::vector<MeasuredPoint> points_of(const std::string& text, std::optional<Unit> said = Unit::mm) {
    const auto read = read_points_text(text, "p.csv", said);
    if (!read.ok()) FAIL(read.trouble().sentence() << "\n" << text);
    return read.value().points;
}

std::string says(const std::string& text, std::optional<Unit> said = Unit::mm) {
    const auto read = read_points_text(text, "p.csv", said);
    return read.ok() ? "was taken" : read.trouble().sentence();
}

}  // namespace

TEST_CASE("a table of points, however a spreadsheet writes it") {
    CHECK(points_of("x,y,z\n0,0,0\n100.5,0,0\n100.5,-40.25,0\n") == square);
    CHECK(points_of("x,y,z\r\n0,0,0\r\n100.5,0,0\r\n100.5,-40.25,0") == square);
    CHECK(points_of("x,y,z\r0,0,0\r100.5,0,0\r100.5,-40.25,0\r") == square);
    CHECK(points_of("\xEF\xBB\xBFX;Y;Z\n0;0;0\n100,5;0;0\n100,5;-40,25;0\n;;\n\n  \n") == square);
    CHECK(points_of(" z , x, y \n0,0,0\n 0 ,\t100.5, 0\n0.0,+100.50,-40.25\n") == square);
    CHECK(points_of("\"x\",\"y\",\"z\"\n\"0\",\"0\",\"0\"\n\"100.5\",\" 0 \",0\n\"100.5\",\"-40.25\",0") == square);
}

TEST_CASE("decimal commas in quotes, powers of ten, and no figure before or after the sign") {
    CHECK(points_of("x,y,z\n0,0,0\n\"100,5\",0,0\n\"100,5\",\"-40,25\",0\n") == square);
    CHECK(points_of("x,y,z\n.0,0.,0e5\n1.005e2,0,0\n1005E-1,-4025e-2,0\n") == square);
}

TEST_CASE("other columns are passed over, with whatever stands in them") {
    CHECK(points_of("point,x,note,y,z\nA,0,\"from the \"\"T\"\", then\nup\",0,0\n1,100.5,5'6\",0,0\nB,100.5,,-40.25,0\n") == square);
    CHECK(says("point,x,note,y,z\nA,0,\"two\nlines\",0,0\nB,1,,q,0\n") == "p.csv, line 4, column 4 is \"q\"; allowed: a number, such as -12.5.");
}

TEST_CASE("the unit is the person's to say, unless the header says it") {
    const std::string inch = "x_in,y_in,z_in\n0,0,0\n2,0,0\n", none = "x,y,z\n0,0,0\n2,0,0\n";
    CHECK(points_of(none, Unit::inch)[1][0] == Length{50.8});
    CHECK(points_of(none, Unit::mm)[1][0] == Length{2});
    CHECK(points_of(inch, Unit::inch)[1][0] == Length{50.8});
    CHECK(points_of(inch, std::nullopt)[1][0] == Length{50.8});
    CHECK(points_of("Z_MM,Y_mm,x_mm\n0,0,0\n0,0,2\n", std::nullopt)[1][0] == Length{2});
    CHECK(says(none, std::nullopt) == "p.csv, line 1 does not say whether x, y and z are in or mm; allowed: a unit given by you, or x_mm or x_in and so on in the header.");
    CHECK(says(inch, Unit::mm) == "p.csv, line 1, column 1 is \"x_in\", but you gave mm; allowed: in for this file.");
    CHECK(says("n,z_mm,x_mm,y_mm\n,0,0,0\n,1,0,0\n", Unit::inch) == "p.csv, line 1, column 2 is \"z_mm\", but you gave in; allowed: mm for this file.");
    CHECK(unit_of_points(inch, "p.csv").value() == Unit::inch);
    CHECK(unit_of_points(none, "p.csv").value() == std::nullopt);
    CHECK_FALSE(unit_of_points("a,b,c\n", "p.csv").ok());
}

TEST_CASE("headers that are none") {
    const std::string wanted = "; allowed: a header with x, y and z, or with x_mm or x_in and so on.", one_unit = ", which does not go with the columns before it; allowed: x, y and z all in one unit.";
    CHECK(says("0,0,0\n1,0,0\n") == "p.csv, line 1 has no column x" + wanted);
    CHECK(says("x,y\n0,0\n1,0\n") == "p.csv, line 1 has no column z" + wanted);
    CHECK(says("x\ty\tz\n0\t0\t0\n") == "p.csv, line 1 has no column x" + wanted);
    CHECK(says("x,y,z,x\n0,0,0,0\n") == "p.csv, line 1, column 4 names x a second time; allowed: each of x, y and z once.");
    CHECK(says("x,y,z,x_mm\n0,0,0,0\n") == "p.csv, line 1, column 4 names x a second time; allowed: each of x, y and z once.");
    CHECK(says("x_mm,y_in,z_mm\n0,0,0\n") == "p.csv, line 1, column 2 is \"y_in\"" + one_unit);
    CHECK(says("x,y,z_mm\n0,0,0\n") == "p.csv, line 1, column 3 is \"z_mm\"" + one_unit);
    CHECK(says("x_mm,y,z\n0,0,0\n") == "p.csv, line 1, column 2 is \"y\"" + one_unit);
    CHECK(says("x_cm,y_cm,z_cm\n0,0,0\n") == "p.csv, line 1 has no column x" + wanted);
}

TEST_CASE("numbers that can be read two ways are not read at all") {
    const std::string doubt = ", which can be read as a decimal or as thousands; allowed: numbers that can be read one way only, such as 1.2340.";
    CHECK(says("x;y;z\n1,234;2,500;3\n4,000;5;6\n") == "p.csv, line 2, column 1 is \"1,234\"" + doubt);
    CHECK(says("x;y;z\n1;-1.234;3\n4;5;6\n") == "p.csv, line 2, column 2 is \"-1.234\"" + doubt);
    CHECK(says("x,y,z\n1,\"1,234\",3\n4,5,6\n") == "p.csv, line 2, column 2 is \"1,234\"" + doubt);
    // One number that shows what the sign is for speaks for all of them.
    CHECK(points_of("x;y;z\n1,234;2,5;3\n4,000;5;6\n")[0][0] == Length{1.234});
    CHECK(points_of("x;y;z\n1,234;0,500;3\n4,000;5;6\n")[1][0] == Length{4});
    CHECK(points_of("x;y;z\n1.234;2000.000;3\n4;5;6\n")[0][1] == Length{2000});
    // Between commas the point is the decimal sign.
    CHECK(points_of("x,y,z\n1.234,2.500,3\n4,5,6\n")[0][0] == Length{1.234});
    const std::string mixed = ", with another decimal sign than the numbers before it; allowed: decimal points throughout, or decimal commas throughout.";
    CHECK(says("x;y;z\n1,5;2.5;3\n4;5;6\n") == "p.csv, line 2, column 2 is \"2.5\"" + mixed);
    CHECK(says("x,y,z\n1.5,2,3\n4,5,\"6,5\"\n") == "p.csv, line 3, column 3 is \"6,5\"" + mixed);
}

TEST_CASE("cells that hold no number, or one beyond reason") {
    for (const std::string bad : {"1.234,5", "1,234,567", "1.2.3", "12 mm", "1 2", "nan", "inf", "0x10", "--1", "-", "+", ".", "e5", "1e", "1e+", "1e5.5", "\xE2\x88\x92" "5", "1/2", "=A1", "5\""}) {
        INFO(bad);
        CHECK(says("x;y;z\n0;0;0\n0;" + bad + ";0\n") == "p.csv, line 3, column 2 is \"" + bad + "\"; allowed: a number, such as -12.5.");
    }
    CHECK(says("x;y;z\n0;0;0\n0;" + std::string(61, '1') + ";0\n").rfind("p.csv, line 3, column 2 is \"111", 0) == 0);
    CHECK(says("x;y;z\n0;0;0\n0;;0\n") == "p.csv, line 3, column 2 has no y; allowed: a number.");
    CHECK(says("x;y;z\n0;0;0\n0;1\n") == "p.csv, line 3, column 3 has no z; allowed: a number.");
    CHECK(says("x;y;z\n0;0;0\n0;1;2;3\n") == "p.csv, line 3, column 4 stands beyond the header's last column; allowed: 3 columns, as in the header.");
    CHECK(says("x;y;z\n0;0;0\n0;1;2; ;\n") == "was taken");
    CHECK(says("x,y,z\n0,0,0\n100001,0,0\n") == "p.csv, line 3, column 1 is 100001; allowed: -100000 to 100000 mm.");
    CHECK(says("x,y,z\n0,0,0\n4000,0,0\n", Unit::inch) == "p.csv, line 3, column 1 is 4000; allowed: -3937 to 3937 in.");
    CHECK(says("x,y,z\n0,0,0\n1e999,0,0\n") == "p.csv, line 3, column 1 is 1e999; allowed: -100000 to 100000 mm.");
    CHECK(says("x,y,z\n0,0,0\n-1e99,0,0\n") == "p.csv, line 3, column 1 is -1e99; allowed: -100000 to 100000 mm.");
}

TEST_CASE("tables that are too short, too long, torn, or none") {
    CHECK(says("x,y,z\n") == "p.csv holds 0 of the two ends; allowed: 2 to 202 points.");
    CHECK(says("x,y,z\n1,2,3\n") == "p.csv holds 1 of the two ends; allowed: 2 to 202 points.");
    CHECK(says("x,y,z\n1,2,3\n\n4,5,6\n") == "p.csv, line 3 is empty and rows follow; allowed: rows one after the other.");
    CHECK(says("\nx,y,z\n1,2,3\n4,5,6\n") == "p.csv, line 1 is empty and rows follow; allowed: rows one after the other.");
    CHECK(says("x,y,z\n1,2,3\n1,2,3.0005\n") == "p.csv, line 3 is where the point before it is; allowed: neighbouring points apart.");
    CHECK(says("x,y,z\n1,2,\"3\n4,5,6\n") == "p.csv, line 2, column 3 has a quote that is not closed; allowed: quotes in pairs.");
    CHECK(says("x,y,z\n1,\"2\"2,3\n4,5,6\n") == "p.csv, line 2, column 2 goes on after its closing quote; allowed: a separator or the line's end there.");
    std::string many = "x,y,z\n";
    for (int i = 0; i < 202; ++i) many += std::to_string(i) + ",0,0\n";
    CHECK(points_of(many).size() == 202);
    CHECK(says(many + "500,0,0\n") == "p.csv, line 204 is one row too many; allowed: up to 202 rows below the header.");
    CHECK(says("x,y,z" + std::string(98, ',') + "\n") == "p.csv, line 1 has more than 100 columns; allowed: up to 100 columns.");
    const std::string table = "a table in UTF-8 text, its cells between commas or semicolons.";
    CHECK(says("") == "p.csv is empty; allowed: " + table);
    CHECK(says(" \r\n") == "p.csv is empty; allowed: " + table);
    CHECK(says(",,\n\"\"\n") == "p.csv is empty; allowed: " + table);
    CHECK(says("\xFF\xFEx\0,\0y") == "p.csv is not text; allowed: " + table);
    CHECK(says("x,y,z\n\xE9,0,0\n") == "p.csv is not text; allowed: " + table);
    CHECK(says(std::string((4u << 20) + 1, ',')) == "p.csv is larger than 4 MB; allowed: files up to 4 MB.");
}

TEST_CASE("what is written says its unit and comes back as it was") {
    CHECK(points_text(square, Unit::mm) == "x_mm,y_mm,z_mm\n0,0,0\n100.5,0,0\n100.5,-40.25,0\n");
    CHECK(points_text({{Length{25.4}, Length{-6.35}, Length{0}}}, Unit::inch) == "x_in,y_in,z_in\n1,-0.25,0\n");
    std::mt19937 dice(20261125);
    std::uniform_int_distribution<int> thousandths(-3000000, 3000000);
    for (int i = 0; i < 300; ++i) {
        const Unit unit = i % 2 ? Unit::inch : Unit::mm;
        std::vector<MeasuredPoint> points;
        for (int n = 2 + i % 50; n > 0; --n) {
            const auto length = [&] { return Length{thousandths(dice) / 1000.0 * mm_in(unit)}; };
            points.push_back({length(), length(), length()});
        }
        const auto back = read_points_text(points_text(points, unit), "p.csv", i % 3 ? std::nullopt : std::optional<Unit>(unit));
        REQUIRE(back.ok());
        CHECK(back.value() == GivenPoints{unit, points});
    }
}

TEST_CASE("tables are read from files") {
    const OwnFolder own;
    const auto read = read_points(own.write("p.csv", points_text(square, Unit::mm)), std::nullopt);
    REQUIRE(read.ok());
    CHECK(read.value().points == square);
    const auto folder = read_points(own.path(), Unit::mm);
    REQUIRE_FALSE(folder.ok());
    CHECK(folder.trouble().sentence() == own.path().string() + " is a folder; allowed: a file.");
}


TEST_CASE("tables of one's own lie in a folder, each with the unit in its header or why it can't be read") {
    const OwnFolder home;
    const auto folder = home.path() / "points";
    CHECK(point_files_in(folder).empty());
    REQUIRE(std::filesystem::is_directory(folder));  // a place to put them
    const auto put = [&](const std::string& name, const std::string& text) { std::ofstream(folder / name) << text; };
    put("b.csv", "x,y,z\n0,0,0\n1,0,0\n");
    put("a.CSV", "x_mm,y_mm,z_mm\n0,0,0\n1,0,0\n");
    put("c.csv", "p,q\n1,2\n");
    put("notes.txt", "x,y,z\n");
    const auto found = point_files_in(folder);
    REQUIRE(found.size() == 3);
    CHECK(found[0] == FoundPoints{"a.CSV", Unit::mm, ""});
    CHECK(found[1] == FoundPoints{"b.csv", std::nullopt, ""});
    CHECK(found[2].trouble == "c.csv, line 1 has no column x; allowed: a header with x, y and z, or with x_mm or x_in and so on.");
}

TEST_CASE("points are written beside what is there, never over it, and read back as they were") {
    const OwnFolder home;
    const auto folder = home.path() / "points";
    RealDisk disk;
    const auto first = write_points_beside(disk, folder, "frame-run", square, Unit::mm), second = write_points_beside(disk, folder, "frame-run", {square[0], square[1]}, Unit::inch);
    REQUIRE(first.ok());
    REQUIRE(second.ok());
    CHECK(first.value() == folder / "frame-run.csv");
    CHECK(second.value() == folder / "frame-run-2.csv");
    CHECK(read_points(first.value(), std::nullopt).value() == GivenPoints{Unit::mm, square});
    CHECK(read_points(second.value(), Unit::inch).value().points.size() == 2);
    std::ofstream(home.path() / "a file") << "in the way";
    const auto refused = write_points_beside(disk, home.path() / "a file" / "points", "p", square, Unit::mm);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.trouble().sentence.rfind("The points are not written: ", 0) == 0);
}
}  // namespace tubewright
