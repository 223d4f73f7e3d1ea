#!/usr/bin/env node
import { BadCatalogue } from "../views/messages/catalogue-check.ts";
import { checkCatalogueFiles } from "./catalogue-files.ts";

/** The catalogues are looked at first: one that is no JSON would end the loading of what needs it without a word of ours. */
try {
  checkCatalogueFiles();
  const { run } = await import("./cli/index.ts");
  process.exitCode = await run(process.argv.slice(2));
} catch (error) {
  if (!(error instanceof BadCatalogue)) throw error;
  console.error(`underhook: ${error.message}`);
  process.exitCode = 1;
}
