# camside::zlib: only what deflate and inflate need, and nothing of gzip, whose tables alone would be 6 kB of the page.
set(zlib "${CAMSIDE_SOURCES}/zlib")
set(zlib_sources deflate trees inflate inftrees inffast adler32 zutil)
list(TRANSFORM zlib_sources PREPEND "${zlib}/")
list(TRANSFORM zlib_sources APPEND ".c")
camside_foreign(camside_zlib ${zlib_sources})
target_include_directories(camside_zlib SYSTEM PUBLIC "${zlib}")
target_compile_definitions(camside_zlib PUBLIC ZLIB_CONST PRIVATE NO_GZIP BUILDFIXED)
