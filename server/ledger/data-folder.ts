import { join } from "node:path";

/** Where this bench keeps its data: UNDERHOOK_DATA, or underhook-data in the working folder. */
export function dataFolder(environment: NodeJS.ProcessEnv = process.env): string {
  return environment.UNDERHOOK_DATA || "underhook-data";
}

/** The ledger file in a data folder. */
export function ledgerFile(folder: string = dataFolder()): string {
  return join(folder, "ledger.sqlite");
}

/** Where the key before is put while its successor is introduced: the same folder, the file named so. */
export function previousKeyFile(keyFile: string): string {
  return keyFile.replace(/\.pem$/, ".previous.pem");
}

/** The file of the key that signs, in a data folder. */
export function keyFileIn(folder: string): string {
  return join(folder, "signing-key.pem");
}
