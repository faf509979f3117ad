// Numbers 1937-1949: what is known of engines. Slips that any list of data can have are in fields/data_remarks.hpp.
#pragma once

#include <string>
#include <string_view>

#include "findings/finding.hpp"

namespace camside::remarks {

Finding empty_item(std::string field);          // 1937
Finding range_backwards(std::string field);     // 1938
Finding unknown_name(Finding kept);             // 113, refused here
Finding not_knowledge(std::string_view found);  // 1939

Finding intervals_differ(std::string field, std::string_view risk);  // 1940

}  // namespace camside::remarks
