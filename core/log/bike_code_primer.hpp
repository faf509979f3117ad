// What both sides of bike_code.hpp have read before they begin, zlib's preset dictionary: entries of every kind as an
// export writes them, so that their names and phrases cost next to nothing. What is near the end costs least, so the
// commonest stands there; ids, of which no two are alike, stand nowhere. Invented. Part of the format: not a letter of
// it may change.
#pragma once

#include <string_view>

namespace camside::records {

// clang-format off
constexpr std::string_view bike_code_primer = R"camside({"id": "", "bike": "", "kind": "measurement", "made": "2025-11-15T14:05:22.394+01:00", "day": "2024-05-14", "by": "The Lantern Shed", "note": "invented", "record": {"id": "", "kind": "runout", "name": "Pinion shaft, plate off", "taken": "2024-05-14T10:20:00-05:00", "by": "The Lantern Shed", "note": "Invented readings", "entered": {"subject": "crank pinion shaft", "method": "swing", "swings": [{"low": "-0.0002 in", "high": "0.0016 in", "high_spot": "140°"}, {"low": "-0.0001 in", "high": "0.0017 in", "high_spot": "150°"}, {"low": "-0.0002 in", "high": "0.0016 in", "high_spot": "145°"}], "setup": {"contact": "bushing band", "plate": "off", "stand": "crankcase", "indicator": "plunger", "indicator_angle": "0°", "graduation": "0.0005 in", "stated_error": "0.0001 in", "play": "0.0008 in", "range": "0.2 in", "seen_from": "right", "swing_means": "needle ends"}, "limit": {"value": "0.003 in", "basis": "common practice"}, "budget": {"lash_least": "0.0005 in", "lash_most": "0.0030 in"}}}},
{"id": "", "bike": "", "kind": "measurement", "made": "2025-11-15T14:38:10.257+01:00", "record": {"id": "", "kind": "backlash", "name": "Pinion with rear cam gear, arm on the cam gear", "taken": "2024-05-15T09:10:00-05:00", "by": "The Lantern Shed", "note": "Invented readings", "entered": {"mesh": "crank", "teeth1": 17, "teeth2": 34, "module": "16 DP", "pressure_angle": "20°", "centre_distance": "1.5938 in", "access": "direct", "loads_off": true, "contact": "arm face", "contact_radius": "1.950 in", "indicator_angle": "0°", "force": "light", "graduation": "0.0001 in", "stated_error": "0.0001 in", "play1": "0.0002 in", "play2": "0.0002 in", "readings": [{"angle": "0°", "reading": "0.00300 in"}, {"angle": "90°", "reading": "0.00320 in"}, {"angle": "180°", "reading": "0.00330 in"}, {"angle": "270°", "reading": "0.00315 in"}, {"angle": "360°", "reading": "0.00285 in"}, {"angle": "450°", "reading": "0.00260 in"}, {"angle": "540°", "reading": "0.00255 in"}, {"angle": "630°", "reading": "0.00275 in"}], "method": {"place": "in case", "plate_torqued": true, "engine": "cold"}, "window": {"min": "0.0005 in", "max": "0.0025 in", "source": {"basis": "makers sheet", "title": "the sheet that came with the gears"}, "method": {"place": "in case", "plate_torqued": true, "engine": "cold", "spots": "round the turn", "line": "pitch line"}}, "temperatures": {"measured_at": "68 °F", "coldest_start": "32 °F"}}}},
{"id": "", "bike": "", "kind": "deletion", "made": "2025-10-11T06:21:47.008+02:00", "replaces": ""},
{"id": "", "bike": "", "kind": "snooze", "made": "2025-10-11T06:20:33.846+02:00", "entered": {"item": "Inner cam bearings", "until": "2026-03-01", "reason": "done with the cam change in winter"}},
{"id": "", "bike": "", "kind": "rule", "made": "2025-09-30T12:44:59.573+02:00", "entered": {"item": "Engine oil and filter", "every": "5000 mi", "months": 12, "why": "short rides in winter"}},
{"id": "", "bike": "", "kind": "facts", "made": "2025-03-08T10:15:42.318+01:00", "day": "2025-03-08", "by": "The Lantern Shed", "note": "invented", "entered": {"nickname": "Brindle", "engine": "two cams, sprung chains", "model_year": 2003, "odometer_unit": "mi"}},
{"id": "", "bike": "", "kind": "facts", "made": "2025-03-08T10:16:05.902-05:00", "entered": {"nickname": "Brindle", "engine": "two cams, hydraulic chains", "model_year": 2009, "odometer_unit": "km"}},
{"id": "", "bike": "", "kind": "finding", "made": "2025-06-02T08:12:14.655-06:00", "entered": {"part": "Outer tensioner shoe", "grade": "failed", "odometer": "41,300 mi", "wear": [{"what": "thickness", "measured": "0.120 in", "limit": {"value": "0.090 in", "basis": "makers sheet"}}], "proof": "paper"}},
{"id": "", "bike": "", "kind": "note", "made": "2025-08-23T19:31:08.119+01:00", "day": "2024-05-14", "by": "The Lantern Shed", "note": "invented", "entered": {"text": "No papers for the tensioners; ask for the invoice of the last service"}},
{"id": "", "bike": "", "kind": "service", "made": "2025-04-19T17:58:36.441+02:00", "day": "2024-06-18", "entered": {"items": ["Engine oil and filter", "Tensioner shoes", "Inner cam bearings"], "odometer": "41300 mi", "done_by": "the owner", "proof": "photo"}},
{"id": "", "bike": "", "kind": "service", "made": "2025-06-02T08:09:50.287+00:00", "entered": {"items": ["Primary oil"], "odometer": "38,900 mi", "done_by": "myself", "proof": "own entry"}},
{"id": "", "bike": "", "kind": "odometer", "made": "2025-03-08T10:17:27.064+01:00", "entered": {"reading": "41300 mi"}},
{"id": "", "bike": "", "kind": "odometer", "made": "2025-04-19T17:52:11.730+02:00", "day": "2025-04-17", "entered": {"reading": "62500 km"}},
{"id": "", "bike": "", "kind": "odometer", "made": "2026-01-24T11:03:45.612+01:00", "entered": {"reading": "41870 mi"}}
]
}
{
"camside": 1,
"kind": "log",
"count": 14,
"entries": [
)camside";
// clang-format on

}  // namespace camside::records
