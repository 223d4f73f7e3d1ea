import { spawn } from "node:child_process";

/**
 * Has the system check the parity of eight data bits, which the serial binding leaves off: a character whose parity is
 * wrong comes as the bytes FF 00 and itself, so that no line with one is read (POSIX termios: INPCK and PARMRK without
 * IGNPAR). The port is locked for others, so its open descriptor is handed on. Where there is no such program, as on
 * Windows, parity stays as the system has it.
 */
export function checkParity(descriptor: number): Promise<void> {
  return new Promise((done) => {
    const set = spawn("stty", ["inpck", "parmrk", "-ignpar"], { stdio: [descriptor, "ignore", "ignore"] });
    set.on("error", () => done());
    set.on("close", () => done());
  });
}
