// Starts the bare page and marks its first frame the way Camside's page does.
import createBare from "./bare_page.js";

const program = await createBare({ canvas: document.getElementById("canvas") });
program._bare_frame(innerWidth * devicePixelRatio, innerHeight * devicePixelRatio);
requestAnimationFrame(() => performance.mark("usable"));
