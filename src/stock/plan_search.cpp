#include "stock/plan_search.h"

#include <cmath>
#include <numeric>

namespace tubewright {

namespace {

using From = RoomKind::From;

/// More than this many situations are not remembered; some are looked at twice then.
constexpr std::size_t most_seen = 1'000'000;

}  // namespace

PlanSearch::PlanSearch(const CuttingQuestion& question) : saw_(question.saw.um), keep_(question.keep.um) {
    const auto room_for = [&](ExactLength length, From from, std::size_t place) {
        const std::int64_t room = length.um - question.squared.um + saw_;
        for (RoomKind& there : rooms)
            if (there.room == room && there.from == from) {
                ++there.count;
                there.places.push_back(place);
                return;
            }
        rooms.push_back({room, from, 1, {place}});
    };
    for (std::size_t i = 0; i < question.rack.size(); ++i)
        room_for(question.rack[i].length, question.rack[i].stick ? From::stick : From::offcut, i);
    for (std::size_t i = 0; i < question.for_sale.size(); ++i) room_for(question.for_sale[i], From::bought, i);
    for (std::size_t i = 0; i < question.wanted.size(); ++i) {
        const std::int64_t need = question.wanted[i].length.um + saw_;
        auto at = std::find_if(kinds.begin(), kinds.end(), [&](const CutKind& kind) { return kind.need == need; });
        if (at == kinds.end()) at = kinds.insert(at, {need, {}});
        at->places.insert(at->places.end(), static_cast<std::size_t>(question.wanted[i].count), i);
    }
    std::erase_if(kinds, [](const CutKind& kind) { return kind.places.empty(); });
    std::sort(kinds.begin(), kinds.end(), [](const CutKind& a, const CutKind& b) { return a.need > b.need; });
    std::sort(rooms.begin(), rooms.end(), [](const RoomKind& a, const RoomKind& b) {
        if (a.from != b.from) return a.from < b.from;
        return a.from == From::bought ? a.room > b.room : a.room < b.room;
    });
    for (const CutKind& kind : kinds) left_.push_back(static_cast<int>(kind.places.size()));
    for (const RoomKind& room : rooms) there_.push_back(room.count);

    // By which sticks are counted: by length, and by functions f for which cuts that fit a room come to no more than the room
    // does (Fekete and Schepers, New classes of fast lower bounds for bin packing problems, 2001: u(k) and U(e); both are
    // superadditive, which makes them hold for offcuts too). From memory.
    std::int64_t largest = 0;
    for (const RoomKind& room : rooms)
        if (room.from != From::offcut) largest = std::max(largest, room.room);
    if (largest == 0) return;
    const auto add = [&](const std::function<double(std::int64_t)>& f) {
        Weights weights{{}, {}, f(largest)};
        for (const CutKind& kind : kinds) weights.kinds.push_back(f(std::min(kind.need, largest)));
        for (const RoomKind& room : rooms) weights.rooms.push_back(f(std::min(room.room, largest)));
        // An offcut that is longer than any stick is rare; it counts for as many as it could be.
        for (std::size_t i = 0; i < rooms.size(); ++i)
            if (rooms[i].room > largest) weights.rooms[i] = std::ceil(static_cast<double>(rooms[i].room) / static_cast<double>(largest)) * weights.largest * 2;
        weights_.push_back(std::move(weights));
    };
    add([](std::int64_t x) { return static_cast<double>(x); });
    for (std::int64_t k = 1; k <= 12; ++k)
        add([=](std::int64_t x) { return static_cast<double>((k + 1) * x % largest ? (k + 1) * x / largest * largest : k * x); });
    for (const CutKind& kind : kinds)
        if (kind.need * 2 <= largest)
            add([=](std::int64_t x) { return static_cast<double>(x > largest - kind.need ? largest : x < kind.need ? 0 : x); });
}

PlanCost PlanSearch::cost_of(std::size_t room, std::int64_t rest) const {
    const std::int64_t leftover = std::max<std::int64_t>(0, rest - saw_);
    const bool kept = leftover > 0 && leftover >= keep_;
    return {rooms[room].from != From::offcut, {kept ? 0 : leftover}, rooms[room].from == From::bought, kept};
}

std::int64_t PlanSearch::sticks_needed() const {
    std::int64_t sticks = 0;
    for (const Weights& weights : weights_) {
        double needed = 0;
        for (std::size_t i = 0; i < kinds.size(); ++i) needed += left_[i] * weights.kinds[i];
        for (std::size_t i = 0; i < rooms.size() && rooms[i].from == From::offcut; ++i) needed -= there_[i] * weights.rooms[i];
        if (needed > 0) sticks = std::max(sticks, static_cast<std::int64_t>(std::ceil(needed / weights.largest)));
    }
    return sticks;
}

/// No plan that goes on from here costs less.
PlanCost PlanSearch::bound_from(const PlanCost& so_far) const {
    PlanCost least = so_far;
    const std::int64_t sticks = sticks_needed();
    least.sticks += sticks;
    std::int64_t on_rack = 0, offcuts = 0, shortest = INT64_MAX, longest = 0, need = 0, offcut_room = 0;
    for (std::size_t i = 0; i < rooms.size(); ++i) {
        if (!may_open(i)) continue;
        if (rooms[i].from == From::offcut) {
            offcuts += there_[i];
            offcut_room += there_[i] * rooms[i].room;
            continue;
        }
        if (rooms[i].from == From::stick) on_rack += there_[i];
        shortest = std::min(shortest, rooms[i].room);
        longest = std::max(longest, rooms[i].room);
    }
    least.bought += std::max<std::int64_t>(0, sticks - on_rack);
    // If no more sticks are opened than that, this much room is left over at least; whatever is not kept is waste.
    // What is left behind last cuts and narrower than the saw is neither.
    for (std::size_t i = 0; i < kinds.size(); ++i) need += left_[i] * kinds[i].need;
    const std::int64_t over = sticks > 0 ? sticks * shortest - need - (sticks + offcuts) * saw_ : 0;
    if (over <= 0) return least;
    const std::int64_t most_over = sticks * longest + offcut_room - need;
    if (most_over < keep_ + saw_) least.waste.um += over;
    else ++least.leftovers;  // at least one, or waste, which is worse
    return least;
}

bool PlanSearch::may_open(std::size_t room) const { return rooms[room].from == From::bought || there_[room] > 0; }

bool PlanSearch::stopped() {
    if (cancelled || out_of_patience || (found && cost == bound)) return true;
    steps_->take(1);
    out_of_patience = steps_->stopped();
    cancelled = steps_->cancelled();
    return cancelled || out_of_patience;
}

void PlanSearch::keep_best(const PlanCost& so_far, const std::vector<Opened>& plan) {
    if (found && so_far >= cost) return;
    found = true;
    cost = so_far;
    best = plan;
}

/// The longest first, each into an opened length (the fullest, or the first), else into a new one: an offcut, a stick, one bought.
void PlanSearch::greedy(bool best_fit, std::size_t to_buy) {
    std::vector<Opened> plan;
    std::vector<std::int64_t> rest;
    std::vector<int> there = there_;
    for (std::size_t kind = 0; kind < kinds.size(); ++kind) {
        for (int piece = 0; piece < left_[kind]; ++piece) {
            std::size_t into = plan.size();
            for (std::size_t i = 0; i < plan.size(); ++i)
                if (rest[i] >= kinds[kind].need && (into == plan.size() || (best_fit && rest[i] < rest[into]))) into = i;
            if (into == plan.size()) {
                std::size_t room = 0;
                while (room < rooms.size() && (rooms[room].room < kinds[kind].need || (rooms[room].from == From::bought ? room < to_buy : there[room] == 0)))
                    ++room;
                if (room == rooms.size()) return;
                --there[room];
                plan.push_back({room, std::vector<int>(kinds.size())});
                rest.push_back(rooms[room].room);
            }
            rest[into] -= kinds[kind].need;
            ++plan[into].pieces[kind];
        }
    }
    PlanCost sum;
    for (std::size_t i = 0; i < plan.size(); ++i) sum += cost_of(plan[i].room, rest[i]);
    keep_best(sum, plan);
}

void PlanSearch::run(PlanSteps& steps) {
    steps_ = &steps;
    bound = bound_from({});
    for (std::size_t room = 0; room < rooms.size(); ++room)
        if (rooms[room].from == From::bought || room + 1 == rooms.size())
            for (const bool best_fit : {true, false}) greedy(best_fit, room);
    look({});
    if (!cancelled && !out_of_patience && found) bound = cost;
}

void PlanSearch::look(const PlanCost& so_far) {
    const auto first = std::find_if(left_.begin(), left_.end(), [](int left) { return left > 0; });
    if (first == left_.end()) return keep_best(so_far, plan_);
    if (stopped()) return;
    std::string situation;
    for (const auto* counts : {&left_, &there_})
        for (const int count : *counts) situation += {static_cast<char>(count & 255), static_cast<char>(count >> 8)};
    const auto seen = seen_.find(situation);
    if (seen != seen_.end()) {
        if (seen->second <= so_far) return;
        seen->second = so_far;
    } else if (seen_.size() < most_seen) {
        seen_.emplace(std::move(situation), so_far);
    }

    if (pattern_.size() <= depth_) {
        pattern_.emplace_back(kinds.size());
        most_more_.emplace_back(kinds.size() + 1);
    }
    std::vector<std::int64_t>& most_more = most_more_[depth_];
    for (std::size_t i = kinds.size(); i-- > 0;) most_more[i] = most_more[i + 1] + left_[i] * kinds[i].need;
    const auto longest = static_cast<std::size_t>(first - left_.begin());
    std::fill(pattern_[depth_].begin(), pattern_[depth_].end(), 0);
    // Lengths that come out even first: they cost nothing.
    for (const bool even : {true, false})
        for (std::size_t room = 0; room < rooms.size(); ++room)
            if (may_open(room) && rooms[room].room >= kinds[longest].need) fill(room, longest, 0, even, so_far);
}

/// From `kind` on, with `sum` of the room taken. A pattern begins with one of the longest piece there is.
void PlanSearch::fill(std::size_t room, std::size_t kind, std::int64_t sum, bool even, const PlanCost& so_far) {
    if (stopped()) return;
    const std::int64_t rest = rooms[room].room - sum;
    while (kind < kinds.size() && sum > 0 && (left_[kind] == 0 || kinds[kind].need > rest)) pattern_[depth_][kind++] = 0;
    if (kind == kinds.size()) {
        if (even == (rest <= saw_)) open(room, rest, so_far);
        return;
    }
    if (even && rest - most_more_[depth_][kind] > saw_) return;
    const auto most = static_cast<int>(std::min<std::int64_t>(left_[kind], rest / kinds[kind].need));
    for (int count = most; count >= (sum == 0 ? 1 : 0); --count) {
        pattern_[depth_][kind] = count;
        fill(room, kind + 1, sum + count * kinds[kind].need, even, so_far);
    }
}

void PlanSearch::open(std::size_t room, std::int64_t rest, const PlanCost& so_far) {
    PlanCost with = so_far;
    with += cost_of(room, rest);
    if (found && with >= cost) return;
    const std::vector<int> pattern = pattern_[depth_];
    for (std::size_t i = 0; i < kinds.size(); ++i) left_[i] -= pattern[i];
    if (rooms[room].from != From::bought) --there_[room];
    steps_->take(8);  // the bound takes about as long
    if (!found || bound_from(with) < cost) {
        plan_.push_back({room, pattern});
        ++depth_;
        look(with);
        --depth_;
        plan_.pop_back();
    }
    if (rooms[room].from != From::bought) ++there_[room];
    for (std::size_t i = 0; i < kinds.size(); ++i) left_[i] += pattern[i];
}

void PlanSearch::join(const PlanSearch& other) {
    if (other.found && (!found || other.cost < cost)) best = other.best, cost = other.cost;
    found = found || other.found;
    bound = std::max(bound, other.bound);
    cancelled = other.cancelled;
    out_of_patience = other.out_of_patience;
}

}  // namespace tubewright
