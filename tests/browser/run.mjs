// usage: node tests/browser/run.mjs [part of a test's name]
// Runs the browser tests, "ok<tab>name" or "failed<tab>name" for each: those in Chromium by two workers (CAMSIDE_WORKERS), each
// with a browser of its own, and beside them, unless a name is given, all of engines.mjs. A test that failed is tried once
// more, and says so: a machine that was busy for a moment is no fault of the page. Three such in a run are one.
import { fork, spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import path from "node:path";
import { tests } from "./all.mjs";

const MOST_TWICE = 2;
const WORKERS = Number(process.env.CAMSIDE_WORKERS ?? 2);
const chosen = process.argv[2] ?? "";
const here = path.dirname(fileURLToPath(import.meta.url));

const waiting = Object.keys(tests).filter((name) => name.includes(chosen));
const took = [];  // [seconds, name]
const twice = [];
let failed = 0;

function told(passed, name, seconds) {
  console.log(`${passed ? "ok" : "failed"}\t${name} (${seconds.toFixed(1)} s)`);
  if (!passed) failed += 1;
  took.push([seconds, name]);
}

// → { fault, seconds } of one run of this test; a worker that ends in the middle of it is the test's fault
function answerOf(worker, name) {
  return new Promise((resolve) => {
    const began = Date.now();
    const ended = () => resolve({ fault: "the worker has ended", seconds: (Date.now() - began) / 1000 });
    worker.once("exit", ended);
    worker.once("message", (answer) => { worker.off("exit", ended); resolve(answer); });
    worker.send(name);
  });
}

async function started() {
  const worker = fork(path.join(here, "worker.mjs"));
  await new Promise((resolve, reject) => {
    worker.once("message", resolve);
    worker.once("exit", () => reject(new Error("a worker could not be started")));
  });
  return worker;
}

async function work() {
  let worker = await started();
  const tried = async (name) => {
    if (!worker.connected) worker = await started();
    const answer = await answerOf(worker, name);
    if (answer.fault) console.log(answer.fault);
    return answer;
  };
  while (waiting.length > 0) {
    const name = waiting.shift();
    let { fault, seconds } = await tried(name);
    if (fault) {
      console.log(`tried twice: ${name}`);
      twice.push(name);
      ({ fault, seconds } = await tried(name));
    }
    told(!fault, name, seconds);
  }
  const gone = new Promise((resolve) => worker.once("exit", resolve));
  worker.disconnect();
  await gone;
}

// What engines.mjs prints goes on as it is. It needs a display.
async function engines() {
  const running = spawn("xvfb-run", ["-a", "node", path.join(here, "engines.mjs")], { stdio: ["ignore", "inherit", "inherit"] });
  const status = await new Promise((resolve) => { running.once("error", resolve); running.once("exit", resolve); });
  if (status === 2) failed += 1;
  else if (status !== 0) told(false, `Firefox and WebKit could not go on: ${status}`, 0);
}

const began = Date.now();
await Promise.all([...Array.from({ length: WORKERS }, work), ...(chosen ? [] : [engines()])]);
if (twice.length > MOST_TWICE) {
  console.log("failed\tthree tests were tried twice");
  failed += 1;
}
const longest = took.sort(([one], [other]) => other - one).slice(0, 5).map(([seconds, name]) => `${seconds.toFixed(1)} s ${name}`);
console.log(`${took.length} tests in Chromium took ${((Date.now() - began) / 1000).toFixed(0)} s, ${twice.length} of them tried twice; longest:`);
console.log(longest.join("\n"));
process.exit(failed > 0 ? 2 : 0);  // 1 is what Node itself says when it could not go on
