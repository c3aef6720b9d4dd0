#pragma once
// A process that works on and tells each touch it has acknowledged through a pipe, until it is killed.

#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <csignal>
#include <functional>
#include <random>

namespace tubewright {

/// `work_on` never comes back and writes each touch into the pipe it is given. The touch last acknowledged, `touch` where none was.
inline unsigned kill_somewhere(unsigned touch, int at_least, unsigned longest_wait_us, std::mt19937& dice, const std::function<void(int pipe)>& work_on) {
    int ends[2];
    REQUIRE(pipe(ends) == 0);
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        close(ends[0]);
        work_on(ends[1]);
        _exit(6);
    }
    close(ends[1]);
    const int acknowledged = std::uniform_int_distribution<int>(at_least, 3)(dice);
    for (int i = 0; i < acknowledged; ++i) REQUIRE(read(ends[0], &touch, sizeof touch) == sizeof touch);
    usleep(std::uniform_int_distribution<unsigned>(0, longest_wait_us)(dice));  // the instant: no clock is asked, nothing waits for it
    REQUIRE(kill(child, SIGKILL) == 0);
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    REQUIRE(WIFSIGNALED(status));
    while (read(ends[0], &touch, sizeof touch) == sizeof touch) {}
    close(ends[0]);
    return touch;
}

}  // namespace tubewright
