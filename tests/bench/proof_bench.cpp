// How often three readings of a tape show a slip in a measured route, and name it, and what choosing them costs.
// Prints; asserts nothing; is no test.
//
//   proof_bench [LINES] [SEED]     5000 lines unless told
//
// A slip counts when the entry differs from the right one by more than 1/4 in and by more than an honest entry of that
// wire does 19 times in 20, in some distance between two touched points; or when it is the mirror image. It is named when
// the first explanation's remedy makes the right entry's shape again, to 1/4 in: slips that come to one shape are one.

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <map>

#include "bench/wire_world.h"

using namespace tubewright;
using namespace wire_world;

namespace {

struct Count {
    int lines = 0, found = 0, named = 0;
    void add(bool was_found, bool was_named) {
        ++lines;
        found += was_found;
        named += was_named;
    }
};

struct Tally {
    std::map<std::string, Count> rows;
    int right = 0, doubted = 0;
};

Taken taken_at_once(const World& world, const ProofEntry& entry, std::mt19937& dice, const Settings& settings) {
    Taken all;
    if (const auto question = hand_question(entry.wire)) all.hand = seen(world, *question);
    for (const TapeTask& task : tasks_to_take(entry)) all.readings.push_back(taped(world, task.span, dice, settings));
    return all;
}

std::string size_of(const Difference& size) {
    if (size.other_hand && size.most_inch <= same_inch) return "size: mirror image only";
    if (size.most_inch <= 0.5) return "size: 1/4 to 1/2 in";
    if (size.most_inch <= 1.01) return "size: to 1 in";
    return size.most_inch <= 2 ? "size: to 2 in" : "size: more than 2 in";
}

Tally measured(int lines, unsigned seed, const Settings& settings, bool one_by_one) {
    std::mt19937 dice(seed);
    Tally tally;
    const auto proof_of = [&](const World& world, const ProofEntry& entry) {
        return prove(entry, one_by_one ? taken(world, entry, dice, settings) : taken_at_once(world, entry, dice, settings));
    };
    for (int done = 0; done < lines;) {
        const World world = random_world(dice, settings);
        const auto slipped = slip(world, dice);
        if (!slipped) continue;
        const Difference size = difference(slipped->entered, world.right.wire.route, world);
        if (size.most_inch < 0.01 && !size.other_hand) continue;  // nothing changed: a Z of two equal halves turned end for end
        ProofEntry entry = world.right;
        entry.wire.route = slipped->entered;
        const bool counted = counts(world, slipped->entered, dice, settings);
        const Proof proof = proof_of(world, entry);
        const bool found = proof.verdict != ProofVerdict::consistent, named = names_it(proof, world);
        if (size.other_hand || size.most_inch > same_inch) tally.rows["over 1/4 in, all of them"].add(found, named);
        if (!counted) {
            tally.rows["too small to count"].add(found, named);
            continue;
        }
        ++done;
        for (const std::string& row : {std::string("all that count"), size_of(size), "slip: " + slipped->kind, "bends: " + std::to_string(world.angles_deg.size())})
            tally.rows[row].add(found, named);
        const World fine = random_world(dice, settings);
        ++tally.right;
        const bool doubted = proof_of(fine, fine.right).verdict != ProofVerdict::consistent;
        tally.doubted += doubted;
        tally.rows["bends: " + std::to_string(fine.angles_deg.size()) + ", no slip"].add(doubted, false);
    }
    return tally;
}

void print(const std::string& name, const Count& count) {
    std::printf("  %-34s %6d  %5.1f %%  %5.1f %%\n", name.c_str(), count.lines, 100.0 * count.found / count.lines, 100.0 * count.named / count.lines);
}

void report(const char* title, const Tally& tally, bool whole) {
    std::printf("%s\n  %-34s  lines  found    named first\n", title, "");
    for (const auto& [name, count] : tally.rows)
        if (whole || name.find(':') == std::string::npos) print(name, count);
    std::printf("  right entries doubted: %d of %d, %.2f %%\n", tally.doubted, tally.right, 100.0 * tally.doubted / tally.right);
    std::fflush(stdout);
}

/// Processor time, the longest of 20 lines, for the first question and for a third one.
void time_choosing() {
    for (const int bends : {2, 4, 8, 12, 18, 40}) {
        double first = 0, third = 0, said = 0;
        for (int i = 0; i < 20; ++i) {
            ProofEntry entry;
            std::mt19937 dice(static_cast<unsigned>(i));
            while (static_cast<int>(entry.wire.route.bends.size()) < bends) {
                const ProofEntry more = random_world(dice, {}).right;
                if (entry.wire.route.runs.empty()) entry.wire.route.runs = {more.wire.route.runs.front()};
                for (std::size_t k = 0; k < more.wire.route.bends.size() && static_cast<int>(entry.wire.route.bends.size()) < bends; ++k) {
                    entry.wire.route.bends.push_back(more.wire.route.bends[k]);
                    entry.wire.route.runs.push_back(more.wire.route.runs[k + 1]);
                }
                entry.wire.od = more.wire.od;
            }
            Taken taken;
            const auto seconds = [](auto what) {
                const std::clock_t start = std::clock();
                what();
                return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
            };
            first = std::max(first, seconds([&] { next_task(entry, taken); }));
            for (const TapeTask& task : tasks_to_take(entry, 2)) taken.readings.push_back({task.span, task.expected + Length{40}});
            third = std::max(third, seconds([&] { next_task(entry, taken); }));
            said = std::max(said, seconds([&] { prove(entry, taken); }));
        }
        std::printf("%d bends, longest of 20 lines: first choice %.1f ms, third choice in doubt %.1f ms, what it says then %.1f ms\n", bends, 1000 * first, 1000 * third, 1000 * said);
    }
}

}  // namespace

int main(int count, char** words) {
    const int lines = count > 1 ? std::atoi(words[1]) : 5000;
    const unsigned seed = count > 2 ? static_cast<unsigned>(std::atoi(words[2])) : 20260101;
    time_choosing();
    report("Each reading chosen after those before; tape 1/16 in standard deviation, angles within 2, turns within 3 degrees", measured(lines, seed, {}, true), true);
    report("Three readings chosen at once", measured(lines, seed, {}, false), false);
    Settings other;
    other.tape_sd_inch /= std::sqrt(6);
    report("Each after those before; the tape within 1/16 in", measured(lines, seed, other, true), false);
    other = {};
    other.angle_bound_deg = 3, other.rotation_bound_deg = 5;
    report("The same; a rougher hand, angles within 3, turns within 5 degrees", measured(lines, seed, other, true), false);
    other = {};
    other.even_legs = true;
    report("The same; legs as often long as short", measured(lines, seed, other, true), false);
    return 0;
}
