// Codes and dates: terms whose shape is given by others (CAS numbers, hazard codes, calendar days).
#pragma once

#include "formula/card.h"
#include "formula/reading.h"

namespace sudsmark::formula {

/// A day as `2026-11-01`; refuses days that no calendar has.
bool scan_date(Iterator& first, Iterator last, Reading& reading, Date& date);

/// A CAS number: two to seven digits, two digits, a check digit (the sum of the other digits, each
/// times its place from the right, modulo 10). Refuses a wrong check digit.
bool scan_cas(Iterator& first, Iterator last, Reading& reading, Word& cas);

/// A hazard code of the harmonised system: H and three digits of which the first is 2, 3 or 4, with
/// the letters that refine it (H360FD); or EUH and three digits (EUH066).
bool scan_hazard(Iterator& first, Iterator last, Reading& reading, Word& code);

}  // namespace sudsmark::formula
