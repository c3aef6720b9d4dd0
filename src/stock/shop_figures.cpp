#include "stock/shop_figures.h"

namespace tubewright {

namespace {

void add(ScrapSum& sum, const ScrapRecord& record) {
    ++sum.pieces;
    sum.length += record.length;
    sum.cost += record.cost;
}

template <class Key>
auto sums_by(const std::vector<ScrapRecord>& records, const Key& key) {
    std::map<std::decay_t<decltype(key(records.front()))>, ScrapSum> sums;
    for (const ScrapRecord& record : records) add(sums[key(record)], record);
    return sums;
}

}  // namespace

ScrapSum scrap_in_all(const std::vector<ScrapRecord>& records) {
    ScrapSum sum;
    for (const ScrapRecord& record : records) add(sum, record);
    return sum;
}

std::map<std::string, ScrapSum> scrap_by_reason(const std::vector<ScrapRecord>& records) {
    return sums_by(records, [](const ScrapRecord& record) { return record.reason; });
}
std::map<std::string, ScrapSum> scrap_by_line(const std::vector<ScrapRecord>& records) {
    return sums_by(records, [](const ScrapRecord& record) { return record.line; });
}
std::map<StockTube, ScrapSum> scrap_by_tube(const std::vector<ScrapRecord>& records) {
    return sums_by(records, [](const ScrapRecord& record) { return record.tube; });
}
std::map<int, ScrapSum> scrap_by_week(const std::vector<ScrapRecord>& records, int first_day) {
    return sums_by(records, [=](const ScrapRecord& record) { return week_of(record.day, first_day); });
}

int week_of(int day, int first_day) {
    const int since = day - first_day;
    return since >= 0 ? since / 7 : -((6 - since) / 7);
}

std::vector<ScrapRecord> mistakes_of(const std::vector<ScrapRecord>& records) {
    std::vector<ScrapRecord> mistakes;
    for (const ScrapRecord& record : records)
        if (record.reason != reason_trimmed && record.reason != reason_straightened && record.reason != reason_practice) mistakes.push_back(record);
    return mistakes;
}

std::optional<Costliest> costliest_reason(const std::vector<ScrapRecord>& records) {
    const std::vector<ScrapRecord> mistakes = mistakes_of(records);
    const ScrapSum all = scrap_in_all(mistakes);
    std::optional<Costliest> most;
    for (const auto& [reason, sum] : scrap_by_reason(mistakes)) {
        if (most && std::pair(sum.cost, sum.length) <= std::pair(most->sum.cost, most->sum.length)) continue;
        const double share = all.cost.cents > 0 ? static_cast<double>(sum.cost.cents) / static_cast<double>(all.cost.cents)
                                                : static_cast<double>(sum.length.um) / static_cast<double>(all.length.um);
        most = Costliest{reason, sum, share};
    }
    return most;
}

std::optional<double> FirstTimeRight::rate() const {
    if (made == 0) return std::nullopt;
    return static_cast<double>(first_time) / made;
}

FirstTimeRight first_time_right(const Ledger& ledger) {
    FirstTimeRight right;
    std::map<PieceNumber, std::string> line_of;  // of the lengths in hand
    std::map<std::string, int> spoiled;          // and not yet made good
    for (std::size_t i = 0; i < ledger.entries.size(); ++i) {
        if (ledger.taken_back.contains(i)) continue;
        const StockEvent& event = ledger.entries[i].event;
        if (const auto* cut = std::get_if<Cut>(&event)) {
            if (!cut->line.empty()) line_of[cut->piece] = cut->line;
        } else if (const auto* back = std::get_if<PutBack>(&event)) {
            line_of.erase(back->piece);
        } else if (const auto* scrapped = std::get_if<Scrapped>(&event)) {
            if (const auto at = line_of.find(scrapped->piece); at != line_of.end()) {
                ++spoiled[at->second];
                line_of.erase(at);
            }
        } else if (const auto* used = std::get_if<Used>(&event)) {
            int& before = spoiled[line_of.at(used->piece)];
            ++right.made;
            right.first_time += before == 0;
            before = 0;
            line_of.erase(used->piece);
        }
    }
    return right;
}

}  // namespace tubewright
