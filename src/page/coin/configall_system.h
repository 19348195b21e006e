// What Clp and CoinUtils ask of a system that their configure script has not seen: the browser's.
#pragma once

#define HAVE_CFLOAT 1
#define HAVE_CMATH 1
#define COIN_C_FINITE std::isfinite
#define COIN_C_ISNAN std::isnan
