import { Refusal } from "../../calibration/refusal.ts";
import { BadCatalogue } from "../../views/messages/catalogue-check.ts";
import { tell } from "../../views/messages/tell.ts";
import { checkCatalogueFiles } from "../catalogue-files.ts";
import { LedgerError } from "../ledger/error.ts";
import { serveUsage, settingsFrom } from "../settings.ts";
import { inEnglish } from "./told.ts";

/** `underhook serve`: runs until interrupted; 0 then, 2 for a wrong call, 1 when the bench cannot start. */
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
    checkCatalogueFiles();
    // loaded after the check: a catalogue that is not JSON would end the loading without a word of ours
    const { start } = await import("../start.ts");
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
    if (!(error instanceof LedgerError || error instanceof BadCatalogue) && !isPortTaken(error)) throw error;
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
