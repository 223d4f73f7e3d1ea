import { Refusal } from "../../calibration/refusal.ts";
import { tell } from "../../views/messages/tell.ts";
import { LedgerError } from "../ledger/error.ts";
import { serveUsage, settingsFrom } from "../settings.ts";
import { start } from "../start.ts";
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
    console.log(`Records are kept in ${running.settings.dataFolder}. Stop with Ctrl+C.`);
    await new Promise<void>((interrupted) => {
      process.once("SIGINT", () => interrupted());
      process.once("SIGTERM", () => interrupted());
    });
    await running.stop();
    return 0;
  } catch (error) {
    if (!(error instanceof LedgerError) && !isPortTaken(error)) throw error;
    console.error(
      isPortTaken(error)
        ? `underhook serve: port ${settings.port} is taken, perhaps by another bench. Stop that one, or start with --port 0 for any free port.`
        : `underhook serve: ${inEnglish(error)}`,
    );
    return 1;
  }
}

function isPortTaken(error: unknown): boolean {
  return error instanceof Error && "code" in error && error.code === "EADDRINUSE";
}
