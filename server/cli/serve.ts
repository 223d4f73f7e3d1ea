import { type Message, message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { firstMinutes } from "../access/sign-up-codes.ts";
import { LedgerError } from "../ledger/error.ts";
import { defaultPort, type Settings, serveOptions, settingsFrom } from "../settings.ts";
import { type Running, start } from "../start.ts";
import { command, type Voice } from "./command.ts";

const usage = {
  name: "serve",
  options: serveOptions,
  takesArguments: false,
  helped: { port: String(defaultPort), room: String(defaultPort + 1) },
} as const;

/** `underhook serve`: runs until interrupted; 0 then, 2 for a wrong call, 1 when the bench cannot start. */
export const run = (args: string[]): Promise<number> =>
  command(usage, args, async ({ values, say }) => {
    const settings = settingsFrom(values, process.env);
    const running = await started(settings, say);
    if (running === undefined) return 1;
    const { source, dataFolder } = running.settings;
    say.out(source.kind === "demo" ? "cli.serve.demo" : "cli.serve.bench", { url: running.url });
    if (running.room) for (const { code, params } of ofRoom(running.room)) say.out(code, params);
    say.out("cli.serve.kept", { folder: dataFolder });
    await new Promise<void>((interrupted) => {
      process.once("SIGINT", () => interrupted());
      process.once("SIGTERM", () => interrupted());
    });
    await running.stop();
    return 0;
  });

/** The bench, or undefined where it cannot start, which is said. */
async function started(settings: Settings, say: Voice): Promise<Running | undefined> {
  try {
    return await start(settings);
  } catch (error) {
    const sentence = whyNot(error, settings.port);
    if (sentence === undefined) throw error;
    say.error("cli.failed", { command: "serve", message: sentence });
    return undefined;
  }
}

/**
 * What the terminal says of the address for the room. The code of the first person is for whoever stands at the machine:
 * in a log it would be read by others.
 */
function ofRoom({
  room: { urls, certificate, proxied },
  firstCode,
}: NonNullable<Running["room"]>): Message[] {
  const [url = "", ...others] = urls;
  const messages: Message[] = [message(proxied ? "access.told.proxied" : "access.told.room", { url })];
  if (others.length > 0) messages.push(message("access.told.others", { urls: others }));
  if (certificate?.renewed) messages.push(message("access.told.renewed"));
  if (certificate)
    messages.push(message("access.told.fingerprint", { fingerprint: certificate.fingerprint }));
  if (firstCode !== undefined)
    messages.push(
      process.stdout.isTTY
        ? message("access.told.first", { code: firstCode, minutes: firstMinutes })
        : message("access.told.first-elsewhere"),
    );
  return messages;
}

/** What keeps a bench from starting that a person can mend; undefined for an error of the program. */
function whyNot(error: unknown, port: number): Message | undefined {
  if (error instanceof LedgerError || error instanceof Refusal) return error;
  const isTaken = error instanceof Error && "code" in error && error.code === "EADDRINUSE";
  return isTaken ? message("cli.serve.port-taken", { port: String(port) }) : undefined;
}
