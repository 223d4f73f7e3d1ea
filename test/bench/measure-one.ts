// Measures one benchmark file in a process of its own and sends its figures to the process that started it.
import { pathToFileURL } from "node:url";
import type { Benchmark } from "./benchmark.ts";

const { default: benchmark } = (await import(pathToFileURL(process.argv[2] ?? "").href)) as {
  default: Benchmark;
};
const figures = await benchmark.measure();
process.send?.(figures, () => process.exit(0));
