import { type Message, message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { tell } from "../../views/messages/tell.ts";
import { firstMinutes } from "../access/sign-up-codes.ts";
import { LedgerError } from "../ledger/error.ts";
import { serveUsage, settingsFrom } from "../settings.ts";
import { type Running, start } from "../start.ts";
import { inEnglish } from "./told.ts";

/** The bench itself, as `underhook serve` runs it once its catalogues are found good. */
export async function run(args: string[]): Promise<number> {
  if (args.includes("--help")) {
    console.log(serveUsage);
    return 0;
  }
  let settings: ReturnType<typeof settingsFrom>;
  try {
    settings = settingsFrom(args, process.env);
  } catch (error) {
    const said = error instanceof Refusal ? tell(error, "en") : (error as Error).message;
    console.error(`underhook serve: ${said}\n\n${serveUsage}`);
    return 2;
  }
  try {
    const running = await start(settings);
    console.log(
      running.settings.source.kind === "demo"
        ? `Underhook: a demonstration with a simulated balance and invented pieces, at ${running.url}`
        : `Underhook: the bench is at ${running.url}`,
    );
    if (running.room) console.log(roomTold(running.room));
    console.log(`Records are kept in ${running.settings.dataFolder}. Stop with Ctrl+C.`);
    await new Promise<void>((interrupted) => {
      process.once("SIGINT", () => interrupted());
      process.once("SIGTERM", () => interrupted());
    });
    await running.stop();
    return 0;
  } catch (error) {
    if (!(error instanceof LedgerError || error instanceof Refusal) && !isPortTaken(error)) throw error;
    console.error(
      isPortTaken(error)
        ? `underhook serve: port ${settings.port} is taken, perhaps by another bench. Stop that one, or start with --port 0 for any free port.`
        : `underhook serve: ${inEnglish(error)}`,
    );
    return 1;
  }
}

/**
 * What the terminal says of the address for the room. The code of the first person is for whoever stands at the machine:
 * in a log it would be read by others.
 */
function roomTold({ room: { urls, certificate, proxied }, firstCode }: NonNullable<Running["room"]>): string {
  const [url = "", ...others] = urls;
  const told: Message[] = [message(proxied ? "access.told.proxied" : "access.told.room", { url })];
  if (others.length > 0) told.push(message("access.told.others", { urls: others }));
  if (certificate?.renewed) told.push(message("access.told.renewed"));
  if (certificate) told.push(message("access.told.fingerprint", { fingerprint: certificate.fingerprint }));
  if (firstCode !== undefined)
    told.push(
      process.stdout.isTTY
        ? message("access.told.first", { code: firstCode, minutes: firstMinutes })
        : message("access.told.first-elsewhere"),
    );
  return told.map((one) => tell(one, "en")).join("\n");
}

function isPortTaken(error: unknown): boolean {
  return error instanceof Error && "code" in error && error.code === "EADDRINUSE";
}
