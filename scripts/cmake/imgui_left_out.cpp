// Stand-ins for imgui_tables.cpp, which Camside has no use for; a window of Dear ImGui asks for these even so.
#include "imgui_internal.h"

void ImGui::EndColumns() {}
void ImGui::EndTable() {}
void ImGui::TablePushColumnChannel(int) {}
void ImGui::TablePopColumnChannel() {}
void ImGui::TableGcCompactTransientBuffers(ImGuiTable*) {}
void ImGui::TableGcCompactTransientBuffers(ImGuiTableTempData*) {}
void ImGui::TableGcCompactSettings() {}
void ImGui::TableSettingsAddSettingsHandler() {}
void ImGui::PushColumnsBackground() {}
void ImGui::PopColumnsBackground() {}
void ImGui::TablePushBackgroundChannel() {}
void ImGui::TablePopBackgroundChannel() {}
void ImGui::TableEndRow(ImGuiTable*) {}
void ImGui::TableEndCell(ImGuiTable*) {}
