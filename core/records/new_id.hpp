// The name of a new record, for good and on every device.
#pragma once

#include <string>

namespace camside::records {

// A random UUID (RFC 9562, version 4) from the system's own source of chance: "0b6f3c1e-5a0d-4e0e-9a51-7d1f6f2c8a01".
std::string new_id();

}  // namespace camside::records
