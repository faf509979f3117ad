#!/usr/bin/python3
"""usage: webkit_window.py FOLDER WIDTH HEIGHT

The least browser around WebKitGTK, to be driven by WebKitWebDriver (webkit.mjs): one view of this size, which keeps all it
is given in FOLDER. The engine's own MiniBrowser forgets everything when it is driven. What the engine says on its console
goes to FOLDER/console.
"""
import os
import sys

folder, width, height = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
console = os.open(os.path.join(folder, "console"), os.O_WRONLY | os.O_CREAT | os.O_APPEND)
for stream in (1, 2):
    os.dup2(console, stream)

import gi  # noqa: E402  says on the console, too, what of it is missing

gi.require_version("Gtk", "3.0")
gi.require_version("WebKit2", "4.1")
from gi.repository import Gtk, WebKit2  # noqa: E402

print("WebKitGTK", f"{WebKit2.get_major_version()}.{WebKit2.get_minor_version()}.{WebKit2.get_micro_version()}", flush=True)

kept = WebKit2.WebsiteDataManager(base_data_directory=f"{folder}/data", base_cache_directory=f"{folder}/cache")
context = WebKit2.WebContext(website_data_manager=kept)
context.set_automation_allowed(True)
view = WebKit2.WebView(
    web_context=context,
    is_controlled_by_automation=True,
    settings=WebKit2.Settings(enable_write_console_messages_to_stdout=True),
)
context.connect("automation-started", lambda _, session: session.connect("create-web-view", lambda _: view))
window = Gtk.Window(decorated=False, default_width=width, default_height=height)
window.add(view)
window.show_all()
Gtk.main()
