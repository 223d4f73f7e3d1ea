import { expect, test } from "vitest";
import type { Cable } from "../../drivers/cable.ts";
import { createCabledDevice } from "../../drivers/cabled-device.ts";
import { readAnyShape } from "../../drivers/shapes/index.ts";

test("stopping waits for an opening under way and closes what it opened, so that the port is free for the next", async () => {
  const done: string[] = [];
  let stands: (cable: Cable) => void = () => {};
  const balance = createCabledDevice({
    read: () => readAnyShape(),
    name: "balance on a slow port",
    open: () =>
      new Promise((opened) => {
        stands = opened;
      }),
  });
  balance.start();
  const stopped = balance.stop().then(() => done.push("stopped"));
  await new Promise((resolve) => setImmediate(resolve));
  expect(done).toEqual([]);
  stands({
    send() {},
    async close() {
      done.push("closed");
    },
  });
  await stopped;
  expect(done).toEqual(["closed", "stopped"]);
});
