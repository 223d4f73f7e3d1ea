import { Refusal } from "../calibration/refusal.ts";

/** What keeps a port from opening, as the operating system tells it. */
export interface PortError {
  /** error code of a file access, such as ENOENT or EACCES, when known */
  code?: string | undefined;
  message: string;
}

/**
 * The refusal of a port that cannot be opened: what is wrong, with which port, and what to do.
 * The serial library gives no codes, so its messages are matched too.
 */
export function portRefused(port: string, { code, message }: PortError): Refusal {
  const reads = (pattern: RegExp) => pattern.test(message);
  if (code === "EACCES" || code === "EPERM" || reads(/permission denied|operation not permitted/i))
    return new Refusal("line.refused.permission", { port });
  if (code === "EBUSY" || reads(/cannot lock port|resource busy|temporarily unavailable/i))
    return new Refusal("line.refused.busy", { port });
  if (code === "ENOENT" || code === "ENXIO" || code === "ENODEV" || reads(/no such (file|device)/i))
    return new Refusal("line.refused.missing", { port });
  if (code === "ENOTTY" || reads(/inappropriate ioctl|invalid argument|not a tty/i))
    return new Refusal("line.refused.not-serial", { port });
  return new Refusal("line.refused.other", { port, reason: message });
}

/** What an error that was thrown says about itself. */
export function errorFacts(error: unknown): PortError {
  if (!(error instanceof Error)) return { message: String(error) };
  const code = "code" in error && typeof error.code === "string" ? error.code : undefined;
  return { code, message: error.message };
}
