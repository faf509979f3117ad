# usage: cmake -DSITE=folder -DICON=icon.svg -P icons.cmake
# Draws the icon in the sizes that phones want. A maskable one may be cut to a circle by the phone: its corners are filled
# and the drawing keeps to the middle.
file(MAKE_DIRECTORY "${SITE}/icons")
foreach(size 180 192 512)
  execute_process(COMMAND rsvg-convert -w ${size} -h ${size} -o "${SITE}/icons/${size}.png" "${ICON}" COMMAND_ERROR_IS_FATAL ANY)
endforeach()
execute_process(COMMAND rsvg-convert -w 400 -h 400 --page-width 512 --page-height 512 --top 56 --left 56 -b "#11161a"
  -o "${SITE}/icons/maskable.png" "${ICON}" COMMAND_ERROR_IS_FATAL ANY)
