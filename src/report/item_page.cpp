#include "report/item_page.h"

#include "report/html_page.h"
#include "report/prose.h"

namespace sudsmark::report {

void write_items(Markup& page, const std::vector<SheetItem>& items, bool first_is_title) {
  bool listing = false;
  bool first = first_is_title;
  const auto list = [&](bool wanted) {
    if (wanted == listing) return;
    listing = wanted;
    if (wanted) {
      page.open("dl", {{"class", "entries"}});
    } else {
      page.close();
    }
  };
  for (const SheetItem& item : items) {
    list(item.kind == SheetItem::Kind::entry);
    if (item.kind == SheetItem::Kind::heading) {
      prose_element(page, first ? "h1" : "h2", {}, item.words);
      first = false;
    } else if (item.kind == SheetItem::Kind::entry) {
      prose_element(page, "dt", {}, item.label);
      prose_element(page, "dd", {}, item.words);
    } else if (item.kind == SheetItem::Kind::paragraph) {
      prose_element(page, "p", {}, item.words);
    }
  }
  list(false);
}

std::string item_page(const std::string& title, std::string_view of,
                      const std::vector<SheetItem>& items, const std::string& back, bool ascii) {
  Markup page(ascii);
  open_page(page, title);
  write_masthead(page, of, back);
  page.open("main");
  page.open("article", {{"class", "bench"}});
  write_items(page, items, true);
  page.close();
  page.close();
  write_foot(page, {});
  return page.finished();
}

}  // namespace sudsmark::report
