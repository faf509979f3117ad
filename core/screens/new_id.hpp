// A random UUID (version 4, RFC 9562) for a new record.
#pragma once

#include <string>

namespace camside::screens {

std::string new_id();

}  // namespace camside::screens
