import fc from "fast-check";
import { seed } from "./long-run.ts";

/** Properties that name no seed of their own are drawn from the one of the run; what it finds becomes an example. */
fc.configureGlobal({ seed });
