import { get } from "node:http";
import { parentPort } from "node:worker_threads";
import { createCable } from "../drivers/pty.ts";

/**
 * A balance that sends fifty lines a second and, in the same thread, a page that listens: asked to `listen` at an
 * address, then for the `longest` wait between two messages since it was last asked, ms.
 */
export type Asked = { do: "plug" } | { do: "listen"; url: string } | { do: "longest" };
export type Answer = { number: number; path?: string; ms?: number };

const cable = createCable();
let count = 0;
setInterval(() => {
  count += 1;
  cable.send(`    ${(10 + (count % 9999) / 10_000).toFixed(4)} g   stable\r\n`);
}, 20);

let [last, longest] = [performance.now(), 0];
function passed(): void {
  const now = performance.now();
  longest = Math.max(longest, now - last);
  last = now;
}

parentPort?.on("message", ({ number, ...asked }: Asked & { number: number }) => {
  const answer: Answer = { number };
  if (asked.do === "plug") answer.path = cable.path;
  if (asked.do === "listen")
    get(`${asked.url}bench/live`, { agent: false }, (response) => response.on("data", passed));
  if (asked.do === "longest") {
    passed();
    answer.ms = longest;
    longest = 0;
  }
  parentPort?.postMessage(answer);
});
