import { keysOf } from "../../calibration/keyed.ts";
import { locales } from "../../views/messages/language.ts";
import { tellerOf } from "../../views/messages/tell.ts";
import type { CommandName } from "./command.ts";
import { languageIn } from "./language.ts";

/** A command of the command line: gets its arguments, resolves with the exit status. */
export interface Command {
  run(args: string[]): Promise<number>;
}

/** Each command is loaded when it is asked for, so that `compute` never opens a port or a ledger. */
const commands: Record<CommandName, () => Promise<Command>> = {
  serve: () => import("./serve.ts"),
  compute: () => import("./compute.ts"),
  listen: () => import("./listen.ts"),
  learn: () => import("./learn.ts"),
  verify: () => import("./verify.ts"),
  backup: () => import("./backup.ts"),
  restore: () => import("./restore.ts"),
  export: () => import("./export.ts"),
  database: () => import("./database.ts"),
  doctor: () => import("./doctor.ts"),
};
const names = keysOf(commands);

/** What the program is called with: does it, and resolves with the exit status. */
export async function run([name = "", ...args]: string[]): Promise<number> {
  const asked = names.find((one) => one === name);
  const isHelp = name === "" || name === "help" || name === "--help";
  if (name === "--version" || (asked && args.includes("--version"))) {
    console.log((await import("../version.ts")).programVersion);
    return 0;
  }
  if (asked) return (await commands[asked]()).run(args);
  const t = tellerOf(languageIn(args));
  const listed = names.map((one) => `  ${one.padEnd(9)} ${t(`cli.${one}.says`)}`).join("\n");
  const usage = t("cli.usage", { commands: listed, languages: { anyOf: locales } });
  if (isHelp) console.log(usage);
  else console.error(`${t("cli.command-unknown", { command: name })}\n\n${usage}`);
  return isHelp ? 0 : 2;
}
