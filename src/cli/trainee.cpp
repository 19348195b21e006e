#include "cli/trainee.h"

#include <csignal>
#include <iostream>

#include <unistd.h>

#include "cli/terminal.h"
#include "wording/code_points.h"
#include "wording/fold.h"

namespace sudsmark::cli {
namespace {

volatile std::sig_atomic_t interrupted = 0;

void interrupt(int /*signal*/) {
  interrupted = 1;
}

}  // namespace

Speech::Speech(bool ascii) : ascii_(ascii), columns_(terminal_columns()) {}

void Speech::say(const std::string& text) const {
  const std::string shown = ascii_ ? wording::in_ascii(text) : text;
  std::cout << (columns_ > 0 ? wording::folded_to(shown, columns_) : shown) << std::flush;
}

// Without SA_RESTART a read ends when the signal comes, and so does the asking.
Interruptible::Interruptible() {
  interrupted = 0;
  struct sigaction action {};
  action.sa_handler = interrupt;
  sigemptyset(&action.sa_mask);
  sigaction(SIGINT, &action, nullptr);
}

Interruptible::~Interruptible() {
  std::signal(SIGINT, SIG_DFL);
}

Typed typed_line() {
  std::string line;
  while (interrupted == 0) {
    char byte = 0;
    const ssize_t got = ::read(STDIN_FILENO, &byte, 1);
    if (got <= 0) {
      if (got == 0 && !line.empty()) return {std::move(line)};
      return {};
    }
    if (byte == '\n') return {std::move(line)};
    if (line.size() == longest_line) return {std::nullopt, true};
    line += byte;
  }
  return {};
}

}  // namespace sudsmark::cli
