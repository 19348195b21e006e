// Runs the program as a process: its output, its errors, its exit status.
#pragma once

#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include "where.h"

namespace test {

struct Ran {
  int status = -1;
  std::string out;
  std::string err;
};

inline std::string contents(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

/// A folder of its own that goes with the object.
class Folder {
 public:
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "sudsmark-XXXXXX").string();
    path_ = mkdtemp(name.data());
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  std::string write(const std::string& name, const std::string& text) const {
    std::filesystem::create_directories((path_ / name).parent_path());
    std::ofstream(path_ / name, std::ios::binary) << text;
    return (path_ / name).string();
  }

 private:
  std::filesystem::path path_;
};

/// Runs a command (as a shell reads it) in a folder, with some standard input.
inline Ran run_command(const std::string& words, const std::filesystem::path& in,
                       const std::string& input = {}) {
  const Folder work;
  const std::string given = work.write("in", input);
  const std::string out = (work.path() / "out").string();
  const std::string err = (work.path() / "err").string();
  const std::string command =
      "cd '" + in.string() + "' && " + words + " <'" + given + "' >'" + out + "' 2>'" + err + "'";
  const int status = std::system(command.c_str());
  Ran ran;
  ran.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128;
  ran.out = contents(out);
  ran.err = contents(err);
  return ran;
}

/// Runs `sudsmark ARGUMENTS`, the same way.
inline Ran run(const std::string& arguments, const std::filesystem::path& in,
               const std::string& input = {}) {
  return run_command("'" + sudsmark::testing::program().string() + "' " + arguments, in, input);
}

}  // namespace test
