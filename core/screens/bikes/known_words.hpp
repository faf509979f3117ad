// The words of what is known of an engine, on the page of a bike.
#pragma once

namespace camside::screens::words {

inline const char* show_known() {
  return "What is known of this engine";
}
inline const char* hide_known() {
  return "Hide what is known";
}

}  // namespace camside::screens::words
