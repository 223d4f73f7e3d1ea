import { message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { requestBytes } from "../../drivers/asked-lines.ts";
import { balanceAt, cableOptions } from "../../drivers/balance-at.ts";
import { nameMessage } from "../../drivers/balance-name.ts";
import { detect } from "../../drivers/detection.ts";
import type { Balance } from "../../drivers/device.ts";
import { listScales } from "../../drivers/hid/scales.ts";
import { listPorts } from "../../drivers/ports.ts";
import { createRecordedBalance } from "../../drivers/recorded-balance.ts";
import { createSimulatedBalance } from "../../drivers/simulated-balance.ts";
import type { Tell } from "../../views/messages/tell.ts";
import { command } from "./command.ts";
import { byWallClock, everyLine, everyLoad, fromFirstByte } from "./listen-lines.ts";
import { type ListenOptions, listenArguments, listenOptions } from "./listen-options.ts";
import { recordingIn } from "./recording-in.ts";

const usage = { name: "listen", options: listenArguments, takesArguments: true } as const;

/** `underhook listen`: 0 when interrupted or played to the end, 1 when the port is gone for good or not found out, 2 for wrong arguments. */
export const run = (args: string[]): Promise<number> =>
  command(usage, args, async ({ values, positionals, say: { tell } }) => {
    const options = listenOptions(values);
    if (options.recording !== undefined) return playBack(options.recording, positionals, options, tell);
    const balance = await opened(onlyPort(positionals), options, tell);
    return balance ? print(balance, options, tell) : 1;
  });

/** Prints records until interrupted (0) or until nothing but absence was told for so long (1). */
async function print(balance: Balance, options: ListenOptions, tell: Tell): Promise<number> {
  const { giveUpMs, raw } = options;
  const lines = options.take
    ? everyLoad(fromFirstByte(balance), isOnKey(options), tell)
    : everyLine(byWallClock, raw, tell);
  let givingUp: NodeJS.Timeout | undefined;
  const ended = new Promise<number>((end) => {
    process.once("SIGINT", () => end(0));
    process.once("SIGTERM", () => end(0));
    // Whoever read our lines has gone: there is nobody to print for.
    process.stdout.once("error", () => end(0));
    givingUp = setTimeout(end, giveUpMs, 1);
    balance.onLine((record) => {
      const kind = record.event?.kind;
      if (kind !== "refused") clearTimeout(givingUp);
      if (kind === "lost") givingUp = setTimeout(end, giveUpMs, 1);
      for (const line of lines(record)) console.log(line);
    });
  });
  balance.start();
  const status = await ended;
  clearTimeout(givingUp);
  if (status === 1)
    console.error(tell("listen.gone", { balance: nameMessage(balance.name), seconds: giveUpMs / 1000 }));
  await balance.stop();
  return status;
}

/** Prints what a recording says, at times counted from its first byte. */
function playBack(path: string, ports: string[], options: ListenOptions, tell: Tell): number {
  const { settings, raw, take } = options;
  if (ports.length > 0) throw new Refusal("listen.recording-alone", { port: ports.join(" ") });
  const balance = createRecordedBalance(recordingIn(path).chunks, (clock) => cableOptions(settings, clock));
  const lines = take
    ? everyLoad(fromFirstByte(balance), isOnKey(options), tell)
    : everyLine(fromFirstByte(balance), raw, tell);
  balance.onLine((record) => {
    for (const line of lines(record)) console.log(line);
  });
  balance.play();
  return 0;
}

/** True where a hand on the balance's own key chooses the moment. */
const isOnKey = ({ settings }: ListenOptions) =>
  settings.profile?.cadence.byItself === false && !settings.ask;

function onlyPort([port, ...rest]: string[]): string {
  if (port !== undefined && rest.length === 0) return port;
  throw new Refusal("listen.port", { count: rest.length + (port === undefined ? 0 : 1), plugged: plugged() });
}

/** The balance at the port, its settings found first where that is asked for; null when they are not found. */
async function opened(path: string, { settings, find }: ListenOptions, tell: Tell): Promise<Balance | null> {
  if (path === "simulated") return demonstration();
  if (!find) return balanceAt(path, settings);
  console.error(tell("listen.searching"));
  const request = settings.ask && requestBytes(settings.ask);
  const found = await detect({ path, ...(request && { request }) });
  for (const { line, message: outcome, first } of found.tried)
    console.error(`  ${line.padEnd(11)} ${tell(outcome.code, outcome.params)} ${first}`.trimEnd());
  console.error(tell(found.message.code, found.message.params));
  return found.line === null ? null : balanceAt(path, { ...settings, line: found.line });
}

function plugged() {
  const ports = [
    ...listPorts().map(({ path, device }) => (path === device ? path : `${path} (${device})`)),
    ...listScales().map(({ path, identity }) => `${path} (${identity})`),
  ];
  return ports.length === 0 ? message("listen.plugged.none") : message("listen.plugged", { ports });
}

/** A simulated balance that is given an invented piece, so that there is something to see. */
function demonstration(): Balance {
  const balance = createSimulatedBalance({ seed: Date.now() });
  balance.put({ name: "invented", massGrams: 31.1035, densityGPerCm3: 10.49 });
  return balance;
}
