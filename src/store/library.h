#pragma once
// What the shop has and knows: tube sizes, materials, fittings, benders and checklists.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "bench/bender.h"
#include "bench/checklist.h"
#include "bench/fitting.h"
#include "bench/material.h"
#include "store/refusal.h"
#include "tube/tube.h"

namespace tubewright {

/// A size of tube, the walls it usually has, and the length it is sold in.
struct TubeSize {
    std::string name;
    Length od;
    std::vector<Length> walls;
    Length stick;
    std::string source;
    bool operator==(const TubeSize&) const = default;
};

/// What differs for one size of tube.
struct FittingSize {
    Length od;
    std::optional<Length> allowance, straight_needed, heaviest_wall;
    std::string wall_source;
    bool operator==(const FittingSize&) const = default;
};

/// A kind of fitting: `usual` holds for every size that `sizes` does not name.
struct FittingKind {
    Fitting usual;
    std::vector<FittingSize> sizes;
    bool operator==(const FittingKind&) const = default;
};

/// A file of the user's own that is not good. Whatever it says does not count; all else does.
struct LeftOut {
    Refusal why;
    std::string bender;  ///< the card's id, where it can be made out: no card of this id counts, shipped or not
    bool operator==(const LeftOut&) const = default;

    std::string sentence() const;
    std::string words() const;  ///< "whose card is left out: ...", for the refusal of what names it
};

/// All of it together; each id stands once in its list.
struct Library {
    std::vector<TubeSize> tubes;
    std::vector<Material> materials;
    std::vector<FittingKind> fittings;
    std::vector<Bender> benders;  ///< by id
    Checklists checklists;
    std::vector<LeftOut> left_out;
    bool operator==(const Library&) const = default;
};

/// From the shipped assets, and from the user's folder where it has tubes.json, materials.json,
/// fittings.json, checklists.json or benders/*.json: the user's entry wins over the shipped one of the
/// same id (tube: of the same size), the user's checklists over the shipped ones as a whole. Refused where a
/// shipped file is not good; one of the user's is left out, and for all but cards the shipped one stands in.
Result<Library, Refusal> read_library(const std::filesystem::path& assets_dir, const std::filesystem::path& user_dir);

/// The entry with this id, or none. It stays where it is as long as the library is not changed.
const Material* find_material(const Library& library, const std::string& id);
const Bender* find_bender(const Library& library, const std::string& id);
/// Why there is no such bender, where that is because a card was left out.
const LeftOut* find_left_out(const Library& library, const std::string& bender);
/// With what differs for tube of this diameter already put in.
std::optional<Fitting> find_fitting(const Library& library, const std::string& id, Length od);
/// The length that this tube is sold in, where the size is known.
std::optional<Length> stick_for(const Library& library, Length od);

/// In the order in which the library lists them: for choices, and for what a refusal allows.
std::vector<std::string> material_ids(const Library& library);
std::vector<std::string> bender_ids(const Library& library);
std::vector<std::string> fitting_ids(const Library& library);

}  // namespace tubewright
