import type { FastifyServerOptions } from "fastify";

const levels = ["error", "warn", "info", "debug"] as const;

/**
 * How the pages write down what is asked of them, by UNDERHOOK_LOG (error, warn, info, debug); nothing without it. Lines of
 * JSON, on a terminal one short line each; what stands behind the question mark of an address is left out, for it may be a
 * name.
 */
export function logOptions(asked: string | undefined): Pick<FastifyServerOptions, "logger"> {
  const level = levels.find((one) => one === asked);
  if (level === undefined) return {};
  const req = ({ method, url }: { method: string; url: string }) => ({ method, path: url.split("?")[0] });
  const stream = {
    write: (line: string) => void process.stderr.write(isTerminal() ? shortLine(line) : line),
  };
  return { logger: { level, stream, serializers: { req } } };
}

/** Writes an error of the program down: whole on a terminal, else as a line of JSON. */
export function logError(error: unknown): void {
  if (isTerminal()) {
    console.error(error);
    return;
  }
  const { name: type, message, stack } = error instanceof Error ? error : new Error(String(error));
  const line = { level: 50, time: Date.now(), pid: process.pid, err: { type, message, stack }, msg: message };
  process.stderr.write(`${JSON.stringify(line)}\n`);
}

const isTerminal = () => process.stderr.isTTY === true;

interface Line {
  time: number;
  msg: string;
  req?: { method: string; path: string };
  res?: { statusCode: number };
  responseTime?: number;
}

/** "18:02:11 request completed 200 12 ms" */
function shortLine(line: string): string {
  const { time, msg, req, res, responseTime } = JSON.parse(line) as Line;
  const parts = [
    new Date(time).toISOString().slice(11, 19),
    msg,
    req && `${req.method} ${req.path}`,
    res?.statusCode,
    responseTime === undefined ? undefined : `${Math.round(responseTime)} ms`,
  ];
  return `${parts.filter((part) => part !== undefined).join(" ")}\n`;
}
