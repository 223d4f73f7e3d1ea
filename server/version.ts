import { readFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { houseFolder } from "./organisation.ts";

/** Version of the program, kept with every result. */
export const programVersion = z
  .object({ version: z.string() })
  .parse(JSON.parse(readFileSync(join(houseFolder, "package.json"), "utf8"))).version;
