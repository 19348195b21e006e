#include "report/subject_words.h"

namespace sudsmark::report {
namespace {

bool goes_without_saying(const std::string& kind, const std::string& subject) {
  return subject.empty() || kind == "row";
}

}  // namespace

std::string named_subject(const std::string& kind, const std::string& subject) {
  return kind + " '" + subject + "'";
}

std::string subject_prefix(const std::string& kind, const std::string& subject) {
  if (goes_without_saying(kind, subject)) return {};
  return named_subject(kind, subject) + ": ";
}

std::string of_subject(const std::string& kind, const std::string& subject) {
  if (goes_without_saying(kind, subject)) return {};
  return " of " + named_subject(kind, subject);
}

}  // namespace sudsmark::report
