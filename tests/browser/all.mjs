// Every test in Chromium by its name, the longest ones first: two workers then end at about the same time.
import { tests as basics } from "./basics.mjs";
import { tests as code } from "./code.mjs";
import { tests as display } from "./display.mjs";
import { tests as kill } from "./kill.mjs";
import { tests as log } from "./log.mjs";
import { tests as lookOver } from "./look_over.mjs";
import { tests as offline } from "./offline.mjs";
import { tests as parts } from "./parts.mjs";
import { tests as touch } from "./touch.mjs";
import { tests as typing } from "./typing.mjs";

export const tests = { ...kill, ...code, ...display, ...lookOver, ...touch, ...log, ...typing, ...offline, ...parts, ...basics };
