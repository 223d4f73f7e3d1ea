import { execFileSync } from "node:child_process";
import { closeSync, constants, openSync } from "node:fs";
import * as pty from "@lydell/node-pty";

/** The balance's end of a cable: a pseudo-terminal without a shell. */
export interface Cable {
  /** the port the bench opens, such as /dev/pts/3 */
  path: string;
  /** the balance sends */
  send(text: string): void;
  /** the balance hears */
  onData(listener: (data: Buffer) => void): void;
  /** the settings of the port as the system has them, as `stty -a` writes them */
  settings(): string;
  /** pulls the plug */
  unplug(): void;
}

interface Terminal {
  _pty: string;
  master: {
    write(data: string | Buffer): void;
    on(event: "data", listener: (data: Buffer) => void): void;
    destroy(): void;
  };
  slave: { destroy(): void };
}

// `open` is exported by the package but missing in its type declarations.
const { open } = pty as unknown as {
  open(options: { cols: number; rows: number; encoding: null }): Terminal;
};

export function createCable(): Cable {
  const terminal = open({ cols: 80, rows: 24, encoding: null });
  // The package reads the port's end too and would swallow what is meant for the bench. A bare descriptor keeps that
  // end alive without reading, so that the cable outlives a port that is closed and opened again.
  const held = openSync(terminal._pty, constants.O_RDWR | constants.O_NOCTTY);
  terminal.slave.destroy();
  let plugged = true;
  return {
    path: terminal._pty,
    send: (text) => terminal.master.write(Buffer.from(text, "latin1")),
    onData: (listener) => terminal.master.on("data", listener),
    settings: () => execFileSync("stty", ["-a"], { stdio: [held, "pipe", "pipe"], encoding: "utf8" }),
    unplug() {
      if (!plugged) return;
      plugged = false;
      terminal.master.destroy();
      closeSync(held);
    },
  };
}
