#pragma once
// What the scrap book says of the shop: where tube and money go, and how much comes out right the first time.

#include <optional>

#include "stock/ledger.h"

namespace tubewright {

struct ScrapSum {
    int pieces = 0;
    ExactLength length;
    Money cost;
    bool operator==(const ScrapSum&) const = default;
};

ScrapSum scrap_in_all(const std::vector<ScrapRecord>& records);
std::map<std::string, ScrapSum> scrap_by_reason(const std::vector<ScrapRecord>& records);
/// Tube that never was cut for a line stands under no name.
std::map<std::string, ScrapSum> scrap_by_line(const std::vector<ScrapRecord>& records);
std::map<StockTube, ScrapSum> scrap_by_tube(const std::vector<ScrapRecord>& records);
/// By the week's number: seven days each, week 0 begins with `first_day`. Weeks without scrap are not in it.
std::map<int, ScrapSum> scrap_by_week(const std::vector<ScrapRecord>& records, int first_day);
int week_of(int day, int first_day);

/// Without what was planned to be lost: trims, straightening and practice.
std::vector<ScrapRecord> mistakes_of(const std::vector<ScrapRecord>& records);

/// What went wrong for the most money; of equal ones the most tube, then the first by name. Nothing where nothing went wrong.
struct Costliest {
    std::string reason;
    ScrapSum sum;
    double share;  ///< of the money that all mistakes cost, 0 to 1; of their tube where no price is known
};
std::optional<Costliest> costliest_reason(const std::vector<ScrapRecord>& records);

/// Of the lines that were begun, how many were built in without one being scrapped. A line counts once for each length that was cut
/// for it and is built in; a length cut for it and scrapped makes the next one built in of that line not the first.
struct FirstTimeRight {
    int made = 0, first_time = 0;
    /// Nothing where nothing was made.
    std::optional<double> rate() const;
};
FirstTimeRight first_time_right(const Ledger& ledger);

}  // namespace tubewright
