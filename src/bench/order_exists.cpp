#include <unordered_set>

#include "bench/order_search.h"

namespace tubewright {
namespace {

std::uint64_t bit(std::size_t bend) { return std::uint64_t{1} << bend; }

/// Sets of made bends, from none made on and from all made back, a set at a time from each side: they meet, or one of
/// them runs dry and has proven that they never do.
class Meeting {
public:
    Meeting(const OrderQuestion& question, const CanBend& can_bend) : question_(question), can_bend_(can_bend) {
        for (std::size_t i = 0; i < question.layout.part.bends.size(); ++i)
            if (is_made(question.layout.part.bends[i])) bends_.push_back(i), all_ |= bit(i);
        std::uint64_t begun = 0;  // what is made stays made: the sets begin there
        for (const Placing& placing : question.wish.begun.value_or(std::vector<Placing>{})) begun |= bit(placing.bend);
        begun_ = static_cast<std::size_t>(__builtin_popcountll(begun));
        std::erase_if(bends_, [&](std::size_t bend) { return (begun & bit(bend)) != 0; });
        reached_ = {begun}, leads_on_ = {all_};
        forward_ = {begun}, back_ = {all_};
    }

    std::optional<bool> meet(const Progress& progress, Patience* patience) {
        if (bends_.empty()) return true;
        for (std::size_t i = 0;; ++i) {
            if (i % 64 == 0 && progress && !progress(0)) return std::nullopt;
            if (forward_.empty() || back_.empty()) return false;
            if (patience && patience->sets < 2) return std::nullopt;
            if (patience) patience->sets -= 2;  // one from each side
            if (step(forward_, reached_, leads_on_, true) || step(back_, leads_on_, reached_, false)) return true;
        }
    }

private:
    using Sets = std::unordered_set<std::uint64_t>;

    bool wished(std::uint64_t made, const Placing& placing) const {
        const OrderWish& wish = question_.wish;
        if (wish.hook && placing.hook != *wish.hook) return false;
        const auto step = static_cast<std::size_t>(__builtin_popcountll(made)) - begun_;
        for (std::size_t i = 0; i < step && i < wish.opening.size(); ++i)
            if (!(made & bit(wish.opening[i]))) return false;  // no beginning that is wished leads here
        return step >= wish.opening.size() || placing.bend == wish.opening[step];
    }

    bool can(std::uint64_t made, const Placing& placing) const {
        return wished(made, placing) && !bender_stops(question_, made, placing) && can_bend_(made, placing);
    }

    /// One set further; whether it meets the other side.
    bool step(std::vector<std::uint64_t>& waiting, Sets& seen, const Sets& other_side, bool on) {
        const std::uint64_t here = waiting.back();
        waiting.pop_back();
        for (const std::size_t bend : bends_) {
            if (static_cast<bool>(here & bit(bend)) == on) continue;
            const std::uint64_t there = here ^ bit(bend), before = on ? here : there;
            if (seen.contains(there) || !(can(before, {bend, End::A}) || can(before, {bend, End::B}))) continue;
            if (other_side.contains(there)) return true;
            seen.insert(there);
            waiting.push_back(there);
        }
        return false;
    }

    const OrderQuestion& question_;
    const CanBend& can_bend_;
    std::vector<std::size_t> bends_;
    std::uint64_t all_ = 0;
    std::size_t begun_ = 0;   ///< bends made already
    Sets reached_, leads_on_;
    std::vector<std::uint64_t> forward_, back_;
};

}  // namespace

std::optional<bool> order_exists(const OrderQuestion& question, const CanBend& can_bend, const Progress& progress, Patience* patience) {
    if (patience || question.layout.part.bends.size() <= most_bends_proven) return Meeting(question, can_bend).meet(progress, patience);
    const OrderAnswer answer = best_order(question, can_bend, progress);
    if (std::holds_alternative<Cancelled>(answer)) return std::nullopt;
    return std::holds_alternative<OrderFound>(answer);
}

}  // namespace tubewright
