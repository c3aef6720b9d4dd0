#pragma once
// What was asked for on the command line.

namespace tubewright {

/// Does it, and gives back the exit status.
int run(int count, char** words);

}  // namespace tubewright
