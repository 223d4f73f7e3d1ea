import { createHash } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { keyed } from "../calibration/keyed.ts";
import { type CatalogueFiles, checkCatalogues } from "../views/messages/catalogue-check.ts";
import { locales } from "../views/messages/language.ts";
import { programFolder } from "./program-folder.ts";

const folder = join(programFolder, "views", "messages");
/** Written by the build: the digest of the catalogues as they were when they were found good. */
const checkedFile = join(programFolder, "dist", "messages-checked.txt");

/**
 * Throws BadCatalogue when a catalogue cannot be used. Files that are as they were at the build cost one digest; others
 * are read text by text.
 */
export function checkCatalogueFiles(): void {
  const files = catalogueFiles();
  if (digestOf(files) !== digestAtBuild()) checkCatalogues(files);
}

/** For the build: checks the catalogues and keeps their digest beside the program. Throws BadCatalogue. */
export function keepDigest(): void {
  const files = catalogueFiles();
  checkCatalogues(files);
  writeFileSync(checkedFile, digestOf(files));
}

const catalogueFiles = (): CatalogueFiles =>
  keyed(locales, (locale) => readFileSync(join(folder, `${locale}.json`), "utf8"));

function digestOf(files: CatalogueFiles): string {
  const hash = createHash("sha256");
  for (const locale of locales) hash.update(files[locale]);
  return hash.digest("hex");
}

function digestAtBuild(): string | undefined {
  try {
    return readFileSync(checkedFile, "utf8");
  } catch {
    return undefined;
  }
}
