// Runs the program on a terminal of its own, as a person would.
#pragma once

#include <fcntl.h>
#include <poll.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <string>
#include <thread>

#include "where.h"

namespace test {

struct OnTerminal {
  int status = -1;
  std::string seen;  ///< standard output and standard error, as they came
};

/// Runs `sudsmark ARGUMENTS` (as a shell reads them) with a terminal of so many columns as standard
/// output and error. `input` comes into standard input after a while.
inline OnTerminal run_on_terminal(const std::string& arguments, const std::string& in,
                                  unsigned short columns, const std::string& input = {},
                                  std::chrono::milliseconds after = {}) {
  OnTerminal out;
  const int leader = posix_openpt(O_RDWR | O_NOCTTY);
  if (leader < 0 || grantpt(leader) != 0 || unlockpt(leader) != 0) return out;
  const std::string name = ptsname(leader);
  const int kept = open(name.c_str(), O_RDWR | O_NOCTTY);  // so that its end is ours to tell
  winsize size{};
  size.ws_col = columns;
  size.ws_row = 24;
  ioctl(kept, TIOCSWINSZ, &size);
  int pipe_ends[2];
  if (pipe(pipe_ends) != 0) return out;
  const std::string command =
      "cd '" + in + "' && exec '" + sudsmark::testing::program().string() + "' " + arguments;
  const pid_t child = fork();
  if (child == 0) {
    dup2(pipe_ends[0], STDIN_FILENO);
    dup2(kept, STDOUT_FILENO);
    dup2(kept, STDERR_FILENO);
    for (const int end : {leader, kept, pipe_ends[0], pipe_ends[1]}) close(end);
    unsetenv("COLUMNS");
    execl("/bin/sh", "sh", "-c", command.c_str(), nullptr);
    _exit(127);
  }
  close(pipe_ends[0]);
  std::thread writer([&] {
    std::this_thread::sleep_for(after);
    if (!input.empty() && write(pipe_ends[1], input.data(), input.size()) < 0) out.status = -2;
    close(pipe_ends[1]);
  });
  int status = 0;
  bool gone = false;
  while (true) {
    pollfd ready{leader, POLLIN, 0};
    if (poll(&ready, 1, 50) > 0) {
      char bytes[4096];
      const ssize_t count = read(leader, bytes, sizeof bytes);
      if (count > 0) out.seen.append(bytes, static_cast<std::size_t>(count));
    } else if (gone) {
      break;
    }
    gone = gone || waitpid(child, &status, WNOHANG) == child;
  }
  writer.join();
  close(kept);
  close(leader);
  out.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128;
  return out;
}

}  // namespace test
