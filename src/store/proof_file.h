#pragma once
// The "proof" of a job file's line: what was taped on the wire to prove its entry. Points are counted along the wire:
// 0 is end A, then the corners of the bends, the last one is end B.

#include "bench/taken.h"
#include "store/json_raw.h"
#include "store/node.h"

namespace tubewright {

/// Throws a Refusal; only for use inside store.
LineProof proof_from(const Node& node, Unit unit, const RawText& raw);

}  // namespace tubewright
