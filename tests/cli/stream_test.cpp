// `check --stream` as a process: every line answered, in order, as soon as it is checked.
#include <doctest/doctest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "process.h"
#include "where.h"

namespace {

using nlohmann::json;
using test::contents;
using test::Folder;
using test::run;

const std::filesystem::path source = sudsmark::testing::source_dir();
const std::string day = " --on 2026-11-25 ";

std::string line_of(const std::string& file, const std::string& text) {
  return json{{"file", file}, {"text", text}}.dump() + "\n";
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> out;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t end = text.find('\n', from);
    REQUIRE(end != std::string::npos);
    out.push_back(text.substr(from, end - from));
    from = end + 1;
  }
  return out;
}

std::vector<std::string> demos() {
  std::vector<std::string> out;
  for (const auto& entry : std::filesystem::directory_iterator(source / "fixtures/formulas")) {
    if (entry.path().extension() == ".formula") {
      out.push_back("fixtures/formulas/" + entry.path().filename().string());
    }
  }
  std::sort(out.begin(), out.end());
  REQUIRE(out.size() > 3);
  return out;
}

/// A formula that includes nothing.
const std::string good = R"(formula "Ebb Line"
  product bubble bar
  forming pressed
  market GB, EU
  bath 27 g in 150 l at 38 C
phase "dry"
  200 g sodium bicarbonate
  100 g cream of tartar
  60 g sodium lauryl sulfoacetate
  20 g glycerin
)";

}  // namespace

TEST_CASE("a stream answers as the files would, in order, with any number of jobs") {
  std::string stream;
  std::string files;
  for (const std::string& file : demos()) {
    stream += line_of(file, contents(source / file));
    files += " " + file;
  }
  const auto by_file = run("check --allow-outside --format json-lines" + day + files, source);
  CHECK(lines_of(by_file.out).size() > 3);
  for (const char* const jobs : {"1", "2", "7"}) {
    const auto streamed =
        run("check --allow-outside --stream --jobs " + (jobs + day), source, stream);
    CHECK(streamed.status == 0);
    CHECK(streamed.out == by_file.out);
    CHECK(streamed.err.empty());
  }
}

TEST_CASE("what cannot be read answers with its errors, and the stream goes on") {
  const std::string long_line =
      R"({"file": "long", "text": ")" + std::string(9U << 20U, 'x') + "\"}";
  const std::string stream = line_of("a", good) + "{\"file\": \"b\", \"te\n" + "[1, 2]\n" + "\n" +
                             R"({"text": "x"})" + "\n" + R"({"file": "c"})" + "\n" +
                             line_of("d", "formula \"Half\"\n  batch 0,5 kg\n") + long_line + "\n" +
                             std::string(100000, '[') + "\n" + line_of("e", good) +
                             R"({"more": [1], "file": "f", "text": ""})";
  const auto ran = run("check --stream" + day, source, stream);
  CHECK(ran.status == 0);
  const auto lines = lines_of(ran.out);
  REQUIRE(lines.size() == 11);
  const auto told = [&](std::size_t at) {
    const json one = json::parse(lines[at]);
    CHECK_FALSE(one.contains("verdicts"));
    REQUIRE(one["errors"].size() > 0);
    return one["file"].get<std::string>() + ": " + one["errors"][0]["message"].get<std::string>();
  };
  CHECK(json::parse(lines[0])["errors"].empty());
  CHECK(told(1) == ": this line is no JSON");
  CHECK(told(2).starts_with(": this line is no object"));
  CHECK(told(3) == ": this line is no JSON");
  CHECK(told(4) == ": this line has no \"file\" that is a text");
  CHECK(told(5) == "c: this line has no \"text\" that is a text");
  CHECK(told(6).starts_with("d: "));
  CHECK(json::parse(lines[6])["errors"][0]["line"] >= 1);
  CHECK(told(7) == ": this line is longer than 8 MiB");
  CHECK(told(8) == ": this line is no JSON");
  CHECK(json::parse(lines[9])["verdicts"].size() > 10);
  CHECK(told(10).starts_with("f: "));
}

TEST_CASE("a stream opens no file for whoever writes it, unless it is let to") {
  const Folder folder;
  folder.write("stock.formula", "material \"Spar\"\n  powder\n  active 90 %\n");
  const std::string path = (folder.path() / "in.formula").string();
  const std::string stream = line_of(path, "include stock.formula\nformula \"x\"\n");
  CHECK(test::run("check --stream" + day, folder.path(), stream).out.find("stock.formula") !=
        std::string::npos);
  const auto let = test::run("check --allow-outside --stream" + day, folder.path(), stream);
  CHECK(let.out.find("cannot be read") == std::string::npos);
}

TEST_CASE("what a stream has no use for is refused") {
  CHECK(run("check --stream fixtures/formulas", source).status == 2);
  CHECK(run("check", source).status == 2);
  for (const char* const option : {"--format json", "--output x", "--baseline x",
                                   "--write-baseline x", "--base-as-reference", "--color never"}) {
    CAPTURE(option);
    const auto ran = run("check --stream " + std::string(option), source);
    CHECK(ran.status == 2);
    CHECK(ran.out.empty());
  }
}

TEST_CASE("an answer leaves before the next line has come") {
  std::array<int, 2> in{};
  std::array<int, 2> out{};
  REQUIRE(pipe(in.data()) == 0);
  REQUIRE(pipe(out.data()) == 0);
  const std::string program = sudsmark::testing::program().string();
  const pid_t child = fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    dup2(in[0], STDIN_FILENO);
    dup2(out[1], STDOUT_FILENO);
    close(in[1]);
    close(out[0]);
    execl(program.c_str(), program.c_str(), "check", "--stream", "--jobs", "2", nullptr);
    _exit(127);
  }
  close(in[0]);
  close(out[1]);
  const auto ask = [&](const std::string& line) {
    REQUIRE(write(in[1], line.data(), line.size()) == static_cast<ssize_t>(line.size()));
    std::string answer;
    char c = 0;
    while (read(out[0], &c, 1) == 1 && c != '\n') answer += c;
    return json::parse(answer)["file"].get<std::string>();
  };
  CHECK(ask(line_of("first", good)) == "first");
  CHECK(ask("no JSON\n").empty());
  CHECK(ask(line_of("second", good)) == "second");
  close(in[1]);
  int status = -1;
  CHECK(waitpid(child, &status, 0) == child);
  CHECK(WEXITSTATUS(status) == 0);
  char rest = 0;
  CHECK(read(out[0], &rest, 1) == 0);
  close(out[0]);
}
