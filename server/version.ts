import { readFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { programFolder } from "./program-folder.ts";

/** Version of the program, kept with every result. */
export const programVersion = z
  .object({ version: z.string() })
  .parse(JSON.parse(readFileSync(join(programFolder, "package.json"), "utf8"))).version;
