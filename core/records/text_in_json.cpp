#include "records/text_in_json.hpp"

#include "records/strict_json.hpp"

namespace camside::records {

std::string text_in_json(std::string_view text) {
  return Json(text).dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace camside::records
