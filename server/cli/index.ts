/** A command of the command line: gets its arguments, resolves with the exit status. */
export interface Command {
  run(args: string[]): Promise<number>;
}

/** Each command is loaded when it is asked for, so that `compute` never opens a port or a ledger. */
export const commands = {
  serve: { says: "run the bench and its pages", load: (): Promise<Command> => import("./serve.ts") },
  compute: {
    says: "JSON Lines of weighings in, their statements out",
    load: (): Promise<Command> => import("./compute.ts"),
  },
  listen: {
    says: "print the readings of a balance as JSON Lines",
    load: (): Promise<Command> => import("./listen.ts"),
  },
  learn: {
    says: "set up an unknown balance: learn from its own lines how it writes a weight",
    load: (): Promise<Command> => import("./learn.ts"),
  },
  verify: { says: "check the chain of a ledger", load: (): Promise<Command> => import("./verify.ts") },
  backup: {
    says: "copy the ledger while the bench goes on, and check the copy",
    load: (): Promise<Command> => import("./backup.ts"),
  },
  restore: {
    says: "make the ledger again from a backup, whole or up to a moment",
    load: (): Promise<Command> => import("./restore.ts"),
  },
  export: {
    says: "records as CSV or JSON, or one record in a file of its own",
    load: (): Promise<Command> => import("./export.ts"),
  },
  doctor: {
    says: "look at program, folder, ledger, clock and ports, and say what to do",
    load: (): Promise<Command> => import("./doctor.ts"),
  },
} satisfies Record<string, { says: string; load: () => Promise<Command> }>;

export function isCommand(name: string): name is keyof typeof commands {
  return Object.hasOwn(commands, name);
}

export const usage = [
  "underhook COMMAND [OPTIONS]",
  "",
  ...Object.entries(commands).map(([name, { says }]) => `  ${name.padEnd(9)} ${says}`),
].join("\n");
