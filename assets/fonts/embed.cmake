# cmake -DFONTS=folder -DOUTPUT=fonts.cpp -P embed.cmake: writes the fonts as arrays.
set(text "#include \"fonts.hpp\"\nnamespace camside::fonts {\n")
foreach(name regular bold)
  file(READ "${FONTS}/${name}.otf" bytes HEX)
  string(REGEX REPLACE "(..)" "0x\\1," bytes "${bytes}")
  string(APPEND text "static constexpr unsigned char ${name}_bytes[] = {${bytes}};\n"
    "std::span<const unsigned char> ${name}() { return ${name}_bytes; }\n")
endforeach()
file(WRITE "${OUTPUT}" "${text}}  // namespace camside::fonts\n")
