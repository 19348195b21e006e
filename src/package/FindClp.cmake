# Finds Clp and CoinUtils, which bring no CMake package on Debian, and makes the imported targets
# Clp::Clp and CoinUtils::CoinUtils. Installed beside the package of sudsmark where that links them.
find_path(CLP_INCLUDE_DIR coin/Clp_C_Interface.h)
find_library(CLP_LIBRARY Clp)
find_library(COINUTILS_LIBRARY CoinUtils)
mark_as_advanced(CLP_INCLUDE_DIR CLP_LIBRARY COINUTILS_LIBRARY)
# An archive does not tell what it needs: linear algebra with Fortran's runtime, and compression.
set(coinutils_needs "")
if(COINUTILS_LIBRARY MATCHES "\\.a$")
  foreach(needed lapack blas z bz2)
    find_library(CLP_${needed}_LIBRARY ${needed} REQUIRED)
    mark_as_advanced(CLP_${needed}_LIBRARY)
    list(APPEND coinutils_needs ${CLP_${needed}_LIBRARY})
  endforeach()
  list(APPEND coinutils_needs -lgfortran -lquadmath)  # the compiler knows where they are
endif()

include(FindPackageHandleStandardArgs)
find_package_handle_standard_args(Clp REQUIRED_VARS CLP_LIBRARY COINUTILS_LIBRARY CLP_INCLUDE_DIR)

if(Clp_FOUND AND NOT TARGET CoinUtils::CoinUtils)
  add_library(CoinUtils::CoinUtils UNKNOWN IMPORTED)
  set_target_properties(CoinUtils::CoinUtils PROPERTIES
    IMPORTED_LOCATION "${COINUTILS_LIBRARY}"
    INTERFACE_LINK_LIBRARIES "${coinutils_needs}")
endif()
if(Clp_FOUND AND NOT TARGET Clp::Clp)
  add_library(Clp::Clp UNKNOWN IMPORTED)
  set_target_properties(Clp::Clp PROPERTIES
    IMPORTED_LOCATION "${CLP_LIBRARY}"
    INTERFACE_INCLUDE_DIRECTORIES "${CLP_INCLUDE_DIR};${CLP_INCLUDE_DIR}/coin"
    INTERFACE_LINK_LIBRARIES CoinUtils::CoinUtils)
endif()
