import { BadCatalogue } from "../../views/messages/catalogue-check.ts";
import { checkCatalogueFiles } from "../catalogue-files.ts";

/**
 * `underhook serve`: runs until interrupted; 0 then, 2 for a wrong call, 1 when the bench cannot start. The catalogues are
 * looked at before anything that needs them is loaded: one that is not JSON would end the loading without a word of ours.
 */
export async function run(args: string[]): Promise<number> {
  try {
    checkCatalogueFiles();
  } catch (error) {
    if (!(error instanceof BadCatalogue)) throw error;
    console.error(`underhook serve: ${error.message}`);
    return 1;
  }
  return (await import("./serving.ts")).run(args);
}
