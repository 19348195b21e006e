#include "catalogue/name_words.h"

#include <doctest/doctest.h>

#include "catalogue/near_names.h"

using namespace sudsmark::catalogue;
using Words = std::vector<std::string>;

TEST_CASE("one spelling of the words of a name") {
  CHECK(name_words("Organic Raw Shea Butter") == Words{"shea", "butter"});
  CHECK(name_words("sulphated castor oil") == Words{"sulfated", "castor", "oil"});
  CHECK(name_words("FD&C Blue No. 1") == Words{"blue", "1"});
  // the last s goes from all words, whatever they are: keys are compared with keys alone
  CHECK(name_words("BTMS50") == Words{"btm", "50"});
  CHECK(name_words("beurre de karité") == Words{"beurre", "karite"});
  CHECK(name_words("rose petals, dried") == Words{"rose", "petal", "dried"});
  CHECK(name_words("SLES 70 %") == Words{"sle", "70%"});
  CHECK(name_words("lavender EO") == Words{"lavender", "essential", "oil"});
  CHECK(name_words("99.5% glycerine") == Words{"99.5%", "glycerin"});
  CHECK(name_words("cold-pressed, food grade sesame oil") == Words{"sesame", "oil"});
  // a name of nothing but such words keeps them
  CHECK(name_words("pure") == Words{"pure"});
  CHECK(name_words("").empty());
  CHECK(name_words("(&)").empty());
}

TEST_CASE("what would change the meaning of a name stays in it") {
  for (const char* word :
       {"monohydrate", "anhydrous", "hydrogenated", "fractionated", "synthetic", "distilled",
        "free", "non", "dried", "acetate", "liquid", "powder", "FCF", "5%", "lake"}) {
    CHECK(name_words(word + std::string(" thing")).size() == 2);
  }
  CHECK(name_words("non-fat milk") == Words{"non", "fat", "milk"});
  CHECK(name_words("non-GMO soy wax") == Words{"soy", "wax"});
}

TEST_CASE("keys of words") {
  CHECK(any_order({"oil", "castor", "70%"}) == "70 castor oil");
  CHECK(run_together({"sea", "salt", "5%"}) == "seasalt5");
  CHECK(run_together(name_words("corn starch")) == run_together(name_words("cornstarch")));
}

TEST_CASE("strengths and forms") {
  CHECK(*strength("70%") == doctest::Approx(0.7));
  CHECK(*strength("99.5%") == doctest::Approx(0.995));
  CHECK(*strength("40") == doctest::Approx(0.4));
  CHECK_FALSE(strength("7").has_value());
  CHECK_FALSE(strength("120%").has_value());
  CHECK_FALSE(strength("%").has_value());
  CHECK_FALSE(strength("").has_value());
  CHECK_FALSE(strength("oil").has_value());
  const auto has = [](std::string_view word, Form form) {
    return (forms_of_word(word) >> static_cast<unsigned>(form) & 1U) != 0;
  };
  CHECK(has("powder", Form::fine_powder));
  CHECK_FALSE(has("powder", Form::liquid));
  CHECK(has("flake", Form::granules));
  CHECK(has("liquid", Form::liquid));
  CHECK(forms_of_word("oil") == 0);
}

TEST_CASE("which brackets may be left out") {
  CHECK(tells_nothing("Bulgaria"));
  CHECK(tells_nothing("Sweet Almond"));
  CHECK_FALSE(tells_nothing("monohydrate"));
  CHECK_FALSE(tells_nothing("70%"));
  CHECK_FALSE(tells_nothing("powder"));
  CHECK_FALSE(tells_nothing("synthetic"));
}

TEST_CASE("the nearest of the names that are offered") {
  const std::vector<Offer> offers{{"Sodium borate", 0}, {"Sodium bicarbonate", 1}, {"Kaolin", 2},
                                  {"Sunflower oil", 3}, {"Soda bicarbonate", 1},   {"Menthol", 4}};
  NearNames near(offers);
  CHECK(near.to("sodium bicarb") == Words{"Sodium bicarbonate"});
  CHECK(near.to("sodium b") == Words{"Sodium borate", "Sodium bicarbonate"});
  CHECK(near.to("lanolin").empty());
  CHECK(near.to("safflower oil").empty());
  CHECK(near.to("sunflwer oil") == Words{"Sunflower oil"});
  CHECK(near.to("menthol crystal") == Words{"Menthol"});
  CHECK(near.to("oil") == Words{"Sunflower oil"});
  CHECK(near.to("").empty());
  CHECK(near.to(std::string(300, 'a')).empty());
}
