#include "stock/fit_search.h"

#include <bit>
#include <numeric>

namespace tubewright {

namespace {

constexpr std::size_t most_failed = 400'000, most_sums = 1 << 14;
/// So many fits are looked at in the time of a step.
constexpr std::size_t fits_in_a_step = 16;
/// What is remembered takes longer to be looked up.
constexpr std::int64_t steps_of_placing = 20, steps_of_looking = 2, steps_of_remembering = 12;

}  // namespace

std::size_t HashOfFitSituation::operator()(const FitSituation& situation) const {
    std::uint64_t hash = 0;
    const auto mix = [&](std::uint64_t value) { hash = (std::rotl(hash, 23) ^ value) * 0x9E3779B97F4A7C15u; };
    for (const Counts& counts : {situation.left, situation.pool}) {
        mix(counts.low);
        mix(counts.high);
    }
    for (const std::int16_t count : situation.opened) mix(static_cast<std::uint64_t>(count));
    return static_cast<std::size_t>(hash ^ (hash >> 29));
}

FitSearch::FitSearch(const FitList& list, const PlanCost& limit, PlanSteps& steps, std::vector<std::size_t> order)
    : list_(list), limit_(limit), steps_(steps), kinds_(std::move(order)), left_(list.all), need_(list.need), sticks_left_(limit.sticks), bought_left_(limit.bought), waste_left_(limit.waste.um), kept_left_(limit.leftovers), used_(list.openables.size()) {
    if (kinds_.empty()) order_kinds();
    sort_out_fits();
    gather_offcuts();
    add_up_offcuts();
    steps_.take(static_cast<std::int64_t>(list.fits.size() / fits_in_a_step));
}

void FitSearch::sort_out_fits() {
    offcut_fits_.resize(list_.openables.size());
    stick_fits_.resize(kinds_.size());
    for (const Fit& fit : list_.fits) {
        const auto first = std::find_if(kinds_.begin(), kinds_.end(), [&](std::size_t kind) { return list_.count(kind, fit.pieces) > 0; });
        (list_.openables[fit.of].stick ? stick_fits_[static_cast<std::size_t>(first - kinds_.begin())] : offcut_fits_[fit.of]).push_back(&fit);
    }
}

void FitSearch::gather_offcuts() {
    for (std::size_t of = 0; of < list_.openables.size(); ++of) {
        const Openable& openable = list_.openables[of];
        if (openable.stick) {
            longest_stick_ = std::max(longest_stick_, openable.room);
            shortest_stick_ = std::min(shortest_stick_, openable.room);
        } else {
            offcuts_.insert(offcuts_.end(), static_cast<std::size_t>(openable.on_rack), of);
        }
    }
    std::stable_sort(offcuts_.begin(), offcuts_.end(), [&](std::size_t a, std::size_t b) { return offcut_fits_[a].size() < offcut_fits_[b].size() || (offcut_fits_[a].size() == offcut_fits_[b].size() && a < b); });
}

void FitSearch::add_up_offcuts() {
    sums_.assign(offcuts_.size() + 1, {});
    sums_.back() = {0};
    for (std::size_t i = offcuts_.size(); i-- > 0;) {
        std::vector<std::int64_t> sums = sums_[i + 1];
        for (const std::int64_t sum : sums_[i + 1]) sums.push_back(sum + list_.openables[offcuts_[i]].room);
        std::sort(sums.begin(), sums.end());
        sums.erase(std::unique(sums.begin(), sums.end()), sums.end());
        if (sums.size() > most_sums) return;
        sums_[i] = std::move(sums);
    }
}

void FitSearch::order_kinds() {
    std::vector<std::size_t> in(list_.fields.size());
    for (const Fit& fit : list_.fits)
        for (std::size_t kind = 0; kind < in.size() && list_.openables[fit.of].stick; ++kind) in[kind] += list_.count(kind, fit.pieces) > 0;
    kinds_.resize(in.size());
    std::iota(kinds_.begin(), kinds_.end(), std::size_t{0});
    std::stable_sort(kinds_.begin(), kinds_.end(), [&](std::size_t a, std::size_t b) { return in[a] < in[b]; });
}

FitSearch::Verdict FitSearch::run() {
    if (look_at_offcuts(0, 0)) return Verdict::found;
    return steps_.stopped() ? Verdict::unknown : Verdict::impossible;
}

bool FitSearch::can_open(std::size_t of) const {
    const Openable& openable = list_.openables[of];
    if (openable.stick && sticks_left_ == 0) return false;
    return used_[of] < openable.on_rack || (openable.for_sale && bought_left_ > 0);
}
void FitSearch::open(std::size_t of) {
    sticks_left_ -= list_.openables[of].stick;
    bought_left_ -= used_[of]++ >= list_.openables[of].on_rack;
}
void FitSearch::close(std::size_t of) {
    sticks_left_ += list_.openables[of].stick;
    bought_left_ += --used_[of] >= list_.openables[of].on_rack;
}

template <class GoOn> bool FitSearch::fill(const Fit& fit, const GoOn& go_on) {
    open(fit.of);
    left_ = left_ - fit.pieces;
    need_ -= fit.need;
    waste_left_ -= fit.waste;
    filled_.push_back({fit.of, fit.pieces});
    const bool found = go_on();
    filled_.pop_back();
    waste_left_ += fit.waste;
    need_ += fit.need;
    left_ = left_ + fit.pieces;
    close(fit.of);
    return found;
}

/// The choices are its fits, to leave it, and to keep something of it. Of equal ones none chooses before what the one before it chose.
bool FitSearch::look_at_offcuts(std::size_t offcut, std::size_t first_choice) {
    steps_.take(1);
    if (steps_.stopped() || !sums_come_out(offcut)) return false;
    if (offcut == offcuts_.size()) return look_at_sticks(0, 0);
    const std::size_t of = offcuts_[offcut];
    const std::vector<const Fit*>& fits = offcut_fits_[of];
    const auto go_on = [&](std::size_t choice) { return look_at_offcuts(offcut + 1, offcut + 1 < offcuts_.size() && offcuts_[offcut + 1] == of ? choice : 0); };
    for (std::size_t choice = first_choice; choice < fits.size(); ++choice)
        if (fits[choice]->waste <= waste_left_ && list_.enough(left_, fits[choice]->pieces) && fill(*fits[choice], [&] { return go_on(choice); })) return true;
    if (first_choice <= fits.size() && go_on(fits.size())) return true;
    const std::int64_t room = list_.openables[of].room - list_.least_kept;
    if (kept_left_ == 0 || room < list_.search.kinds.back().need) return false;
    --kept_left_;
    kept_room_ += room;
    kept_.push_back({of, room, {}});
    const bool found = go_on(fits.size() + 1);
    kept_.pop_back();
    kept_room_ -= room;
    ++kept_left_;
    return found;
}

/// With one of the sums that the offcuts from here on can come to, all that has to be cut has room, and no more is over than may be wasted.
bool FitSearch::sums_come_out(std::size_t offcut) const {
    const std::vector<std::int64_t>& sums = sums_[offcut];
    if (sums.empty()) return true;
    const auto least = std::lower_bound(sums.begin(), sums.end(), kept_left_ * list_.least_kept - kept_room_ - sticks_left_ * longest_stick_ + need_);
    if (least == sums.end()) return false;
    if (kept_left_ > 0 || !kept_.empty()) return true;
    const auto lengths_left = sticks_left_ + static_cast<std::int64_t>(offcuts_.size() - offcut);
    return *least <= need_ - (sticks_left_ > 0 ? sticks_left_ * shortest_stick_ : 0) + waste_left_ + lengths_left * list_.search.saw();
}

/// What may be left of the sticks if the rest is to be cut from them and something kept of as many as it should.
std::int64_t FitSearch::slack() const { return sticks_left_ * longest_stick_ + kept_room_ - kept_left_ * list_.least_kept - need_ - pool_need_; }

bool FitSearch::hopeless() const {
    const std::int64_t in_a_stick = longest_stick_ - list_.least_kept;
    if (slack() < 0 || kept_left_ > sticks_left_ || pool_need_ > kept_room_ + kept_left_ * in_a_stick) return true;
    // All sticks are opened: there is no plan with fewer.
    return kept_left_ == 0 && kept_.empty() && sticks_left_ > 0 && sticks_left_ * (shortest_stick_ - list_.search.saw()) - need_ > waste_left_;
}

FitSituation FitSearch::situation(bool with_pool) const {
    FitSituation here{left_, with_pool ? pool_ : Counts{}, used_};
    for (std::size_t of = 0; of < used_.size(); ++of)
        if (!list_.openables[of].stick) here.opened[of] = 0;
    for (const Kept& kept : kept_) ++here.opened[kept.of];
    here.opened.push_back(with_pool);
    return here;
}

bool FitSearch::known_to_fail() {
    for (const bool with_pool : {false, true}) {
        const auto failed = failed_.find(situation(with_pool));
        if (failed != failed_.end() && failed->second.pool_need <= pool_need_ && failed->second.waste_left >= waste_left_) {
            not_placed_ += with_pool;  // it failed with this very pool, and so did what led here
            return true;
        }
    }
    return false;
}

void FitSearch::note_failure(bool with_pool) {
    if (failed_.size() >= most_failed) return;
    const Failed failure{pool_need_, waste_left_};
    const auto [at, is_new] = failed_.try_emplace(situation(with_pool), failure);
    if (!is_new && failure.pool_need <= at->second.pool_need && failure.waste_left >= at->second.waste_left) at->second = failure;
}

bool FitSearch::look_at_sticks(std::size_t at, std::size_t first_fit) {
    const std::size_t came_to = at;
    while (at < kinds_.size() && list_.count(kinds_[at], left_) == 0) ++at;
    if (at == kinds_.size()) {
        if (place(pool_, pool_need_, 0)) return true;
        ++not_placed_;
        return false;
    }
    steps_.take(steps_of_looking);
    if (steps_.stopped()) return false;
    if (hopeless()) return false;
    if (at == came_to && first_fit > 0) return look_at_kind(at, first_fit);
    steps_.take(steps_of_remembering);
    if (known_to_fail()) return false;
    const std::int64_t not_placed = not_placed_;
    if (look_at_kind(at, 0)) return true;
    // Where no pool was too awkward to place, neither here nor where that was remembered, any other as large fails too.
    if (!steps_.stopped()) note_failure(not_placed_ != not_placed);
    return false;
}

bool FitSearch::look_at_kind(std::size_t at, std::size_t first_fit) {
    const std::vector<const Fit*>& fits = stick_fits_[at];
    const std::int64_t most_waste = std::min(waste_left_, slack());
    for (std::size_t i = first_fit; i < fits.size() && fits[i]->waste <= most_waste; ++i) {
        if (++fits_looked_at_ % fits_in_a_step == 0) steps_.take(1);
        if (!list_.enough(left_, fits[i]->pieces) || !can_open(fits[i]->of)) continue;
        if (fill(*fits[i], [&] { return look_at_sticks(at, i); })) return true;
        if (steps_.stopped()) return false;
    }
    if (limit_.leftovers == 0) return false;
    const std::size_t kind = kinds_[at];
    const Counts rest = list_.fields[kind].times(static_cast<std::uint64_t>(list_.count(kind, left_)));
    const std::int64_t more = list_.count(kind, left_) * list_.search.kinds[kind].need;
    left_ = left_ - rest;
    need_ -= more;
    pool_ = pool_ + rest;
    pool_need_ += more;
    const bool found = look_at_sticks(at + 1, 0);
    pool_need_ -= more;
    pool_ = pool_ - rest;
    need_ += more;
    left_ = left_ + rest;
    return found;
}

/// Where the shortest does not fit, nothing will come to lie.
std::int64_t FitSearch::room_to_place(const Counts& pool) const {
    std::size_t shortest = list_.fields.size() - 1;
    while (list_.count(shortest, pool) == 0) --shortest;
    std::int64_t room = std::min(kept_left_, sticks_left_) * (longest_stick_ - list_.least_kept);
    for (const Kept& kept : kept_)
        if (kept.rest >= list_.search.kinds[shortest].need) room += kept.rest;
    return room;
}

std::vector<std::int64_t> FitSearch::placing(const Counts& pool) const {
    std::vector<std::int64_t> rests;
    for (const Kept& kept : kept_) rests.push_back(kept.rest);
    std::sort(rests.begin(), rests.end());
    rests.insert(rests.end(), {static_cast<std::int64_t>(pool.low), static_cast<std::int64_t>(pool.high), kept_left_});
    for (std::size_t of = 0; of < used_.size(); ++of)
        if (list_.openables[of].stick) rests.push_back(used_[of]);
    return rests;
}

bool FitSearch::place(Counts pool, std::int64_t pool_need, std::size_t kind) {
    if (pool_need == 0) {
        keep_plan();
        return true;
    }
    while (list_.count(kind, pool) == 0) ++kind;
    steps_.take(steps_of_placing);
    if (steps_.stopped() || pool_need > room_to_place(pool)) return false;
    const std::vector<std::int64_t> here = placing(pool);
    if (not_to_be_placed_.contains(here)) return false;
    if (place_longest(pool, pool_need, kind)) return true;
    if (!steps_.stopped() && not_to_be_placed_.size() < most_failed) not_to_be_placed_.insert(here);
    return false;
}

/// Into one that something is kept of, or into a new one.
bool FitSearch::place_longest(const Counts& pool, std::int64_t pool_need, std::size_t kind) {
    const std::int64_t need = list_.search.kinds[kind].need;
    const Counts piece = list_.fields[kind].times(1);
    for (std::size_t i = 0; i < kept_.size(); ++i) {
        const auto same = [&](const Kept& other) { return other.rest == kept_[i].rest; };
        if (kept_[i].rest < need || std::any_of(kept_.begin(), kept_.begin() + static_cast<std::ptrdiff_t>(i), same)) continue;
        kept_[i].rest -= need;
        kept_[i].pieces = kept_[i].pieces + piece;
        const bool found = place(pool - piece, pool_need - need, kind);
        kept_[i].pieces = kept_[i].pieces - piece;
        kept_[i].rest += need;
        if (found) return true;
    }
    for (std::size_t of = 0; of < list_.openables.size() && kept_left_ > 0; ++of) {
        const std::int64_t room = list_.openables[of].room - list_.least_kept;
        if (!list_.openables[of].stick || !can_open(of) || room < need) continue;
        open(of);
        --kept_left_;
        kept_.push_back({of, room - need, piece});
        const bool found = place(pool - piece, pool_need - need, kind);
        kept_.pop_back();
        ++kept_left_;
        close(of);
        if (found) return true;
    }
    return false;
}

void FitSearch::keep_plan() {
    std::vector<Filled> lengths = filled_;
    for (const Kept& kept : kept_)
        if (kept.pieces != Counts{}) lengths.push_back({kept.of, kept.pieces});
    std::vector<int> used(list_.openables.size());
    for (const Filled& length : lengths) {
        const Openable& openable = list_.openables[length.of];
        Opened opened{used[length.of]++ < openable.on_rack ? openable.rack_room : openable.sale_room, {}};
        std::int64_t rest = openable.room;
        for (std::size_t kind = 0; kind < list_.fields.size(); ++kind) {
            opened.pieces.push_back(list_.count(kind, length.pieces));
            rest -= opened.pieces.back() * list_.search.kinds[kind].need;
        }
        cost += list_.search.cost_of(opened.room, rest);
        plan.push_back(std::move(opened));
    }
}

}  // namespace tubewright
