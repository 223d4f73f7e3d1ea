#!/usr/bin/env node
import { commands, isCommand, usage } from "./cli/index.ts";

const [name = "", ...args] = process.argv.slice(2);
if (name === "" || name === "help" || name === "--help") {
  console.log(usage);
} else if (name === "--version" || (isCommand(name) && args.includes("--version"))) {
  console.log((await import("./version.ts")).programVersion);
} else if (isCommand(name)) {
  process.exitCode = await (await commands[name].load()).run(args);
} else {
  console.error(`underhook: there is no command "${name}".\n\n${usage}`);
  process.exitCode = 2;
}
