import { readFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { organisationFolder } from "./organisation.ts";

/** Version of the program, kept with every result. */
export const programVersion = z
  .object({ version: z.string() })
  .parse(JSON.parse(readFileSync(join(organisationFolder, "package.json"), "utf8"))).version;
