// Turns and flats from preload and pitch, and back; for pushrod.cpp.
#pragma once

#include <optional>
#include <string>

#include "calc/pushrod/pushrod.hpp"

namespace camside::pushrod {

// The pitch of one thread: given, or a tenth of ten threads. Nothing when neither is there.
std::optional<ThreadPitch> pitch_of(const std::optional<ThreadPitch>& pitch, const std::optional<Length>& ten);

// How far the rod lengthens in one turn: the sum over its threads.
std::optional<Length> advance_per_turn(const Input& in);

Way way_of(const Input& in);

// The preload to aim at: given, else half of the travel; none for fixed rods.
std::optional<Length> wanted_preload(const Input& in);

// Preload after turning `turns` from zero (or back from the bottom), and the turns for a preload. Each is the other's
// inverse.
Length preload_after(Way way, double turns, Length per_turn, const std::optional<Length>& travel);
double turns_for(Way way, Length preload, Length per_turn, const std::optional<Length>& travel);

// 3.2 turns of a hexagon are 3 turns 1 flat 12°. Within 1e-9 of a flat counts as that flat.
TurnsAndFlats split_turns(double turns, int flats_per_turn);
TurnsAndFlats split_flats(long flats, int flats_per_turn);

Setting setting_for(const Input& in, Length wanted, Length per_turn);

std::string text_of(const TurnsAndFlats& t, int flats_per_turn);  // "3 turns 1 flat 12°"

}  // namespace camside::pushrod
