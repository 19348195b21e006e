// What an assessor asks for, through the whole program: each point that was missed once, with a
// formula that shows it (fixtures/assessor/findings.csv), and the dossier in every format.
#include <doctest/doctest.h>

#include <fstream>
#include <set>
#include <string>
#include <vector>

#include "process.h"
#include "where.h"

namespace {

namespace fs = std::filesystem;

const fs::path source = sudsmark::testing::source_dir();
const fs::path folder = source / "fixtures" / "assessor";

/// Words with one blank between them, however lines were broken.
std::string unbroken(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const bool blank = c == ' ' || c == '\n';
    if (!blank) out += c;
    if (blank && !out.empty() && out.back() != ' ') out += ' ';
  }
  return out;
}

std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> out;
  std::size_t begin = 0;
  constexpr std::size_t last = 3;  // words may hold what parts the cells
  while (out.size() < last) {
    const std::size_t end = std::min(line.find("; ", begin), line.size());
    out.push_back(line.substr(begin, end - begin));
    begin = std::min(end + 2, line.size());
  }
  out.push_back(line.substr(begin));
  return out;
}

TEST_CASE("each point that an assessor found is told now") {
  std::ifstream file(folder / "findings.csv");
  std::set<std::string> points;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line.front() == '#') continue;
    const std::vector<std::string> cells = cells_of(line);
    points.insert(cells[0]);
    const std::string day =
        cells[1].starts_with("explain") || cells[1].find("--on ") != std::string::npos
            ? ""
            : " --on 2026-11-29";
    const auto ran = test::run(cells[1] + day, folder);
    CHECK_MESSAGE(ran.err.empty(), line << "\n" << ran.err);
    const bool has = unbroken(ran.out).find(cells[3]) != std::string::npos;
    CHECK_MESSAGE(has == (cells[2] == "has"), line << "\n" << ran.out);
  }
  const auto all_of = [&](const std::string& list, int from, int to) {
    for (int at = from; at <= to; ++at) {
      CHECK_MESSAGE(points.count(list + std::to_string(at)) == 1, list << at);
    }
  };
  all_of("A", 1, 15);
  all_of("C", 1, 8);
  all_of("D", 1, 10);
}

TEST_CASE("a dossier in text, JSON and as a page: ten headings, and who can answer each question") {
  const test::Folder out;
  for (const char* name :
       {"fen-crumble", "gale-warning", "harbour-puck", "lighthouse-wash", "murmuration-scoop"}) {
    const std::string about =
        "dossier --on 2026-11-25 " +
        (source / "fixtures" / "formulas" / (std::string(name) + ".formula")).string();
    const auto text = test::run(about, out.path());
    CHECK(text.status == 0);
    CHECK(text.err.empty());
    for (int heading = 1; heading <= 10; ++heading) {
      CHECK(text.out.find("\nA " + std::to_string(heading) + ". ") != std::string::npos);
    }
    CHECK(text.out.find("\nB. Safety assessment\n") != std::string::npos);
    CHECK(text.out.find("It is no safety report.") != std::string::npos);
    const auto json = test::run_command(
        "'" + sudsmark::testing::program().string() + "' " + about +
            " --format json | jq -e '(.partA | length == 10) and .partB.text == null and "
            "(.questions | length > 10) and ([.questions[].who] | unique - [\"assessor\", "
            "\"laboratory\", \"maker\", \"supplier\"] == []) and ([.questions[].decides] | . == "
            "(sort | reverse))'",
        out.path());
    CHECK_MESSAGE(json.status == 0, name << json.err);
    const auto page = test::run(about + " --format html=page.html", out.path());
    CHECK(page.status == 0);
    const std::string html = test::contents(out.path() / "page.html");
    CHECK(html.find("<h2>B. Safety assessment</h2>") != std::string::npos);
    CHECK(html.find("Only a qualified safety assessor writes it") != std::string::npos);
    CHECK(html.find("not a safety assessment") != std::string::npos);
    CHECK(html.find("href=\"http") == std::string::npos);
  }
}

TEST_CASE("a page of law: by market what applies, from which day, on which paper, and how sure") {
  const test::Folder out;
  const auto text = test::run("explain law", out.path());
  CHECK(text.status == 0);
  const std::string words = unbroken(text.out);
  for (const char* market : {"European Union (EU)", "Northern Ireland (NI)", "Great Britain (GB)",
                             "United States (US)", "Canada (CA)"}) {
    CHECK(words.find(market) != std::string::npos);
  }
  for (const char* said :
       {"[Art. 19 (1) (a); published: ", "from 2026-08-12", "[21 CFR 701.3 (a); published: 21 CFR",
        "product information file: Kept at the address of the responsible person",
        "notification to Health Canada: Within 10 days of the first sale",
        "from memory: Cosmetics law of the US as recalled", " read, "}) {
    CHECK_MESSAGE(words.find(said) != std::string::npos, said);
  }
  const auto json = test::run_command(
      "'" + sudsmark::testing::program().string() +
          "' explain --format json law | jq -e '.topic == \"law\" and (.parts | length == 6) and "
          "([.parts[1:][] | .heading[-4:]] == [\"(EU)\", \"(NI)\", \"(GB)\", \"(US)\", "
          "\"(CA)\"]) and ([.parts[1:][] | .entries | length > 15] | all)'",
      out.path());
  CHECK_MESSAGE(json.status == 0, json.out << json.err);
  const auto page = test::run("explain --format html=law.html law", out.path());
  CHECK(page.status == 0);
  const std::string html = test::contents(out.path() / "law.html");
  CHECK(html.find("<h2>Great Britain (GB)</h2>") != std::string::npos);
  CHECK(html.find("not a safety assessment") != std::string::npos);
}

}  // namespace
