#pragma once
// Corner points as a table: a header that names x, y and z, and below it a point a line, ends and corners of the
// centre line from A to B. Made elsewhere or by us.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "base/words.h"
#include "store/refusal.h"
#include "tube/measured.h"

namespace tubewright {

struct GivenPoints {
    Unit unit;  ///< the one that the table is written in
    std::vector<MeasuredPoint> points;
    bool operator==(const GivenPoints&) const = default;
};

/// The unit that the header tells of by calling its columns x_mm or x_in and so on, as we write them; none: only
/// the person knows it.
Result<std::optional<Unit>, Refusal> unit_of_points(const std::string& text, const std::string& file);

/// `said`: the unit that the person gave. It is never guessed: without it the header has to tell, and where both
/// tell they have to agree. Columns stand in any order, between commas or semicolons; other columns are passed
/// over. Numbers have decimal points or decimal commas, where they can be read one way only.
Result<GivenPoints, Refusal> read_points_text(const std::string& text, const std::string& file, std::optional<Unit> said);
Result<GivenPoints, Refusal> read_points(const std::filesystem::path& path, std::optional<Unit> said);

/// The table that read_points_text reads back as these points: commas, decimal points, and the unit in the header.
std::string points_text(const std::vector<MeasuredPoint>& points, Unit unit);

}  // namespace tubewright
