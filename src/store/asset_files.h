#pragma once
// The library's files, one function for each. Only for use inside store; throw Refusal.

#include "store/library.h"
#include "store/node.h"

namespace tubewright {

std::vector<TubeSize> tubes_from(const Node& root);
std::vector<Material> materials_from(const Node& root);
std::vector<FittingKind> fittings_from(const Node& root);
/// Materials and fittings that a sentence is for have to be in the library.
Checklists checklists_from(const Node& root, const Library& library);

Service service_from(const Node& node);

}  // namespace tubewright
