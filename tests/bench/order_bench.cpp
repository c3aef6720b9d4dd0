// What the search for the best order costs: with the real geometry of a shipped bender, in seconds of processor time and as a
// ratio to trying every order there is; then with made-up answers of the geometry, as ratios to the rule of thumb
// (default_order) in the same run. Prints; asserts nothing; is no test.
//
//   order_bench [LINES] [MICROSECONDS]     lines of each kind, 8 unless told; what each made-up answer takes, 5 unless told
//   order_bench ways [LINES]               only the ways out of lines that have no order, 4 of each kind unless told. With
//                                          TUBEWRIGHT_ANSWERS=1 it prints them, to be compared before and after a change

#include <algorithm>
#include <cstdlib>
#include <ctime>
#include <iostream>
#include <numeric>
#include <random>
#include <string>

#include "bench/line_question.h"
#include "bench/ordered.h"
#include "bench/samples.h"
#include "store/checksum.h"
#include "store/library.h"

using namespace tubewright;

namespace {

/// Of processor time: what else runs on the machine does not count.
double seconds_since(std::clock_t start) { return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC; }

/// A geometry that takes its time, counts, and answers as it is told.
struct Geometry {
    double microseconds;
    long* asked;
    std::function<bool(std::uint64_t, const Placing&)> answer;
    bool operator()(std::uint64_t made, const Placing& placing) const {
        ++*asked;
        const auto start = std::clock();
        while (seconds_since(start) < microseconds * 1e-6) {}
        return answer(made, placing);
    }
};

Line line_with(std::size_t bends) {
    std::vector<double> legs{6};
    std::vector<std::pair<double, double>> list;
    for (std::size_t i = 0; i < bends; ++i) {
        list.emplace_back(i % 3 == 0 ? 90 : 45, i ? static_cast<double>(i * 50 % 360) - 180 : 0);
        legs.push_back(static_cast<double>(4 + i % 4));
    }
    return line_of(legs, list);
}

int swinging(std::uint64_t made, const Placing& placing) {
    const std::uint64_t before = (std::uint64_t{1} << placing.bend) - 1;
    return __builtin_popcountll(placing.hook == End::A ? made & ~before : made & before);
}

bool coin(std::uint64_t made, const Placing& placing, double heads) {
    std::mt19937_64 dice((made * 0x9e3779b97f4a7c15u) ^ (placing.bend * 2 + (placing.hook == End::B)) * 0xff51afd7ed558ccdu);
    return std::uniform_real_distribution<double>()(dice) < heads;
}

// ---------------------------------------------------------------- the real geometry

/// Which lines are drawn: inches and degrees. Short legs and sharp corners are in each other's way, long legs in the bench's.
struct Kind {
    const char* name;
    double least_leg, most_leg, sharpest;
};
constexpr Kind kinds[]{{"roomy", 3, 9, 100}, {"tight", 2.2, 5, 120}, {"sprawling", 2.2, 12, 160}};

/// On the shipped 3/16 bender. Nothing stops it whatever the order, and no straight or angle forbids any first or last bend.
Sheet random_sheet(std::mt19937& dice, std::size_t bends, const Kind& kind) {
    static const Library library = read_library(TUBEWRIGHT_SOURCE_DIR "/assets", "").value();
    std::uniform_real_distribution<double> leg(kind.least_leg, kind.most_leg), angle(20, kind.sharpest), turn(-180, 180);
    while (true) {
        std::vector<double> legs{leg(dice)};
        std::vector<std::pair<double, double>> list;
        for (std::size_t i = 0; i < bends; ++i) {
            list.emplace_back(angle(dice), i ? turn(dice) : 0);
            legs.push_back(leg(dice));
        }
        Line line = line_of(legs, list);
        line.bender = *find_bender(library, "hand-3/16");
        Sheet sheet = bend_sheet(line);
        if (!has_question(sheet)) continue;
        const OrderQuestion question = question_of(sheet, {});
        const std::uint64_t all = (std::uint64_t{1} << bends) - 1;
        bool in_play = true;
        for (std::size_t bend = 0; bend < bends; ++bend)
            for (const std::uint64_t made : {std::uint64_t{0}, all & ~(std::uint64_t{1} << bend)})
                for (const End hook : {End::A, End::B}) in_play = in_play && !bender_stops(question, made, {bend, hook});
        if (in_play) return sheet;
    }
}

/// All orders with all hooks, one after the other; what the geometry says of a bend is asked once.
class EveryOrder {
public:
    EveryOrder(const OrderQuestion& question, const CanBend& can_bend) : question_(question), can_bend_(can_bend), costs_(question.layout, question.weights, question.hand), known_((std::size_t{1} << costs_.bends().size()) * costs_.bends().size() * 2, -1) { go(0, 0); }
    std::int32_t least = -1;

private:
    bool can(std::uint64_t made, const Placing& placing) {
        signed char& known = known_[(made * costs_.bends().size() + placing.bend) * 2 + (placing.hook == End::B)];
        if (known < 0) known = !bender_stops(question_, made, placing) && can_bend_(made, placing);
        return known == 1;
    }
    void go(std::uint64_t made, std::int32_t paid) {
        if (order_.size() == costs_.bends().size()) {
            if (least < 0 || paid < least) least = paid;
            return;
        }
        for (const std::size_t bend : costs_.bends())
            for (const End hook : {End::A, End::B}) {
                const Placing placing{bend, hook};
                if ((made >> bend & 1) || !can(made, placing)) continue;
                const std::int32_t before = (order_.empty() ? costs_.start(bend) : costs_.between(order_.back(), placing)).total();
                order_.push_back(placing);
                go(made | std::uint64_t{1} << bend, paid + before + costs_.step(made, placing).total());
                order_.pop_back();
            }
    }

    const OrderQuestion& question_;
    const CanBend& can_bend_;
    OrderCosts costs_;
    std::vector<signed char> known_;
    std::vector<Placing> order_;
};

template <class Work>
double processor_seconds(const Work& work) {
    const std::clock_t start = std::clock();
    work();
    return seconds_since(start);
}

double sum_of(const std::vector<double>& seconds) { return std::accumulate(seconds.begin(), seconds.end(), 0.0); }

void print(const char* what, std::vector<double> seconds) {
    if (seconds.empty()) return;
    std::sort(seconds.begin(), seconds.end());
    std::cout << "; " << what << " median " << seconds[seconds.size() / 2] << " s, worst " << seconds.back() << " s";
}

void measure_real(std::size_t lines) {
    constexpr std::size_t most_tried_all = 8;
    for (const std::size_t bends : {std::size_t{7}, std::size_t{8}, std::size_t{12}, std::size_t{16}})
        for (const Kind& kind : kinds) {
            std::mt19937 dice(static_cast<unsigned>(bends));
            std::vector<double> search, tried_too, reasons, ways_out, all;
            std::size_t found = 0, ways = 0;
            bool agree = true;
            for (std::size_t i = 0; i < lines; ++i) {
                const Sheet sheet = random_sheet(dice, bends, kind);
                OrderVerdict verdict;
                search.push_back(processor_seconds([&] { verdict = find_order(sheet); }));
                auto& told = verdict.outcome == OrderVerdict::Outcome::found ? reasons : ways_out;
                told.push_back(processor_seconds([&] { ways += find_order(sheet, {}, Asked::order_and_why).ways.size(); }));
                found += verdict.outcome == OrderVerdict::Outcome::found;
                // Trying all orders of 12 would take years: up to 8, two lines of each kind do.
                if (bends > most_tried_all || all.size() == 2) continue;
                const OrderQuestion question = question_of(sheet, {});
                const CanBend can_bend = geometry_of(question, sheet.line.tube.od);
                std::int32_t least = -1;
                tried_too.push_back(search.back());
                all.push_back(processor_seconds([&] { least = EveryOrder(question, can_bend).least; }));
                agree = agree && (least < 0 ? verdict.order.empty() : least == OrderCosts(question.layout, question.weights, question.hand).of(verdict.order).total());
            }
            std::cout << bends << " bends, " << kind.name << ", " << lines << " lines, " << found << " with an order";
            print("search", search);
            print("with reasons", reasons);
            print("of those with none, with ways out", ways_out);
            if (!ways_out.empty()) std::cout << ", " << static_cast<double>(ways) / static_cast<double>(ways_out.size()) << " ways each";
            if (!all.empty()) std::cout << "; every order one after the other " << sum_of(all) / sum_of(tried_too) << " times the search, which finds " << (agree ? "the same cost" : "ANOTHER COST");
            std::cout << std::endl;
        }
}

/// One row of figures, to see whether a faster program still says the same.
std::string answers(const OrderVerdict& verdict) {
    struct Say {
        std::string operator()(const OtherSetUp& way) const { return "stand " + std::to_string(static_cast<int>(way.set_up.hook)) + std::to_string(static_cast<int>(way.set_up.swing)); }
        std::string operator()(const LongerStraight& way) const { return "longer " + std::to_string(way.straight) + " " + std::to_string(way.by.mm); }
        std::string operator()(const ShorterStraight& way) const { return "shorter " + std::to_string(way.straight) + " " + std::to_string(way.by.mm); }
        std::string operator()(const LongerBetween& way) const { return "between " + std::to_string(way.by.mm); }
        std::string operator()(const OtherAngle& way) const { return "angle " + std::to_string(way.bend) + " " + std::to_string(way.to.deg); }
        std::string operator()(const FreeOrderOfWork&) const { return "free"; }
        std::string operator()(const OtherBender& way) const { return "bender " + std::to_string(way.bender); }
    };
    std::string text = std::to_string(static_cast<int>(verdict.outcome)) + (verdict.every_way ? "" : " not all");
    for (const WayOut& way : verdict.ways) text += ", " + std::visit(Say{}, way);
    return text + "\n";
}

/// What the person waits for at worst: a long line that has no order, and every way out of that. Two bends in its middle are so close
/// that neither can be the later one, or four are; or a shelf over the bender leaves no room for what is bent.
void measure_ways_out(std::size_t lines) {
    struct Case { const char* why; int bends, close; bool shelf; };
    for (const auto& [why, bends_of_line, close, shelf] : {Case{"one straight too short", 16, 1, false}, Case{"three straights too short", 16, 3, false}, Case{"blocked by a shelf", 12, 0, true}, Case{"blocked by a shelf", 16, 0, true}}) {
        std::mt19937 dice(99);
        std::uniform_real_distribution<double> straight(1.2, 6), angle(20, 140), turn(-180, 180);
        std::vector<double> alone, took;
        std::size_t ways = 0, none = 0, given_up = 0;
        std::string said;
        while (took.size() < lines) {
            std::vector<std::pair<double, double>> bends;
            for (int i = 0; i < bends_of_line; ++i) bends.emplace_back(angle(dice), i ? turn(dice) : 0);
            Line line = line_of({}, bends);
            static const Library library = read_library(TUBEWRIGHT_SOURCE_DIR "/assets", "").value();
            line.bender = *find_bender(library, "hand-3/16");
            if (shelf) line.bender.body.push_back({"shelf", Stands::bench, HalfSpace{{0, 0, 60}, {0, 0, 1}}});
            line.route.form = RouteForm::straights;
            for (int i = 0; i <= bends_of_line; ++i) line.route.runs.push_back(Length{25.4 * (i >= 8 && i < 8 + close ? 0.4 : straight(dice))});
            const Sheet sheet = bend_sheet(line);
            if (!has_question(sheet)) continue;
            OrderVerdict verdict;
            alone.push_back(processor_seconds([&] { find_order(sheet); }));
            took.push_back(processor_seconds([&] { verdict = find_order(sheet, {}, Asked::order_and_why, {}, library.benders); }));
            none += verdict.outcome == OrderVerdict::Outcome::none;
            ways += verdict.ways.size();
            said += answers(verdict);
            given_up += !verdict.every_way;
        }
        std::cout << bends_of_line << " bends, " << why << ", " << lines << " lines, " << none << " without an order, " << ways << " ways out in all, " << given_up << " where not every way was tried";
        std::cout << "; answers " << sha256(said).substr(0, 8);
        if (std::getenv("TUBEWRIGHT_ANSWERS")) std::cout << "\n" << said;
        print("order alone", alone);
        print("order and ways out", took);
        std::cout << std::endl;
    }
}

}  // namespace

int main(int count, char** words) {
    if (count > 1 && std::string(words[1]) == "ways") {
        measure_ways_out(count > 2 ? static_cast<std::size_t>(std::max(1, std::atoi(words[2]))) : 4);
        return 0;
    }
    measure_ways_out(4);
    measure_real(count > 1 ? static_cast<std::size_t>(std::max(1, std::atoi(words[1]))) : 8);
    const double microseconds = count > 2 ? std::atof(words[2]) : 5;
    for (const std::size_t bends : {std::size_t{8}, std::size_t{12}, std::size_t{16}, std::size_t{18}, std::size_t{24}}) {
        const Line line = line_with(bends);
        OrderQuestion question;
        question.layout = layout(line, {});
        question.bender = line.bender;
        const auto start = std::clock();
        std::size_t sum = 0;
        for (int i = 0; i < 20; ++i) sum += default_order(question.layout, question.bender).size();
        const double reference = seconds_since(start) / 20;
        const std::size_t middle = bends / 2;
        const std::vector<std::pair<std::string, std::function<bool(std::uint64_t, const Placing&)>>> answers{
            {"all allowed", [](std::uint64_t, const Placing&) { return true; }},
            {"one bend swings at most", [](std::uint64_t made, const Placing& p) { return swinging(made, p) <= 1; }},
            {"half allowed", [](std::uint64_t made, const Placing& p) { return coin(made, p, 0.5); }},
            {"one in five allowed", [](std::uint64_t made, const Placing& p) { return coin(made, p, 0.2); }},
            {"two bends block each other", [=](std::uint64_t made, const Placing& p) { return !(p.bend == middle && (made >> (middle + 1) & 1)) && !(p.bend == middle + 1 && (made >> middle & 1)); }},
            {"one bend never", [=](std::uint64_t, const Placing& p) { return p.bend != middle; }},
        };
        for (const auto& [name, answer] : answers) {
            long asked = 0;
            const CanBend can = Geometry{microseconds, &asked, answer};
            const auto begun = std::clock();
            const OrderAnswer found = best_order(question, can);
            const double took = seconds_since(begun);
            std::cout << bends << " bends, " << name << ": " << took << " s, " << took / reference << " times the rule of thumb; geometry asked " << asked << " times; "
                      << (std::holds_alternative<OrderFound>(found) ? "found" : "none") << "\n";
        }
        if (sum == 0) return 1;
    }
    return 0;
}
