# usage: cmake -DSITE=folder -DTEMPLATE=service_worker.js -P precache.cmake
# Writes SITE/service_worker.js: the files of the page with their SHA-256, and a version that is the hash of that list.
get_filename_component(SITE "${SITE}" ABSOLUTE)
file(GLOB names RELATIVE "${SITE}" "${SITE}/*")
set(FILES "")
foreach(name ${names})
  if(name STREQUAL "service_worker.js" OR IS_DIRECTORY "${SITE}/${name}")  # icons are for the phone's own menu
    continue()
  endif()
  file(SHA256 "${SITE}/${name}" hash)
  string(APPEND FILES "  \"${name}\": \"${hash}\",\n")
endforeach()
if(FILES STREQUAL "")
  message(FATAL_ERROR "precache: there is no page in ${SITE}")
endif()
string(SHA256 VERSION "${FILES}")
string(SUBSTRING "${VERSION}" 0 8 VERSION)
configure_file("${TEMPLATE}" "${SITE}/service_worker.js" @ONLY)
