import { randomBytes } from "node:crypto";
import { createRequire } from "node:module";
import { Worker } from "node:worker_threads";
import type { argon2id } from "hash-wasm";
import { Refusal } from "../../calibration/refusal.ts";

/**
 * Argon2id with 19 MiB, 2 passes, 1 lane: the smallest setting that the OWASP Password Storage Cheat Sheet recommends
 * (cheatsheetseries.owasp.org, from memory); salt 16 bytes, as RFC 9106 section 3.1 recommends.
 */
const cost = { memorySize: 19 * 1024, iterations: 2, parallelism: 1, hashLength: 32 } as const;

/** Least length where a passphrase is the only factor, characters: NIST SP 800-63B-4, section 3.1.1.2 (from memory). */
export const leastLength = 15;
/** The same section asks that at least 64 be allowed. */
const mostLength = 200;

/** One form for each character, so that two keyboards give the same passphrase (NIST SP 800-63B-4, section 3.1.1.2). */
const sameForm = (typed: string) => typed.normalize("NFKC");

/** Keys in the order of the alphabet or of a keyboard. */
const runs = ["1234567890", "0987654321", "abcdefghijklmnopqrstuvwxyz", "qwertyuiopasdfghjklzxcvbnm"];

/**
 * Throws Refusal for a passphrase that is too short or too long, or one of the few that are tried first: one character
 * or one short run over and over, or little more than the person's own name.
 */
export function checkPassphrase(typed: string, own: readonly string[]): void {
  const text = sameForm(typed);
  const { length } = [...text];
  if (length < leastLength)
    throw new Refusal("access.passphrase.short", { length, least: leastLength }, "passphrase");
  if (length > mostLength)
    throw new Refusal("access.passphrase.long", { length, most: mostLength }, "passphrase");
  const rest = [...own, "underhook"]
    .map((word) => sameForm(word).toLowerCase())
    .filter((word) => word.length > 2)
    .reduce((left, word) => left.replaceAll(word, ""), text.toLowerCase());
  if (/^(.{0,4}?)\1*$/u.test(rest) || runs.some((run) => run.repeat(mostLength).includes(rest)))
    throw new Refusal("access.passphrase.guessable", {}, "passphrase");
}

/** The encoded hash to keep of a passphrase. */
export function hashedPassphrase(typed: string): Promise<string> {
  const input: Parameters<typeof argon2id>[0] = {
    ...cost,
    password: sameForm(typed),
    salt: randomBytes(16),
    outputType: "encoded",
  };
  return inThread("argon2id", input);
}

/** Whether the passphrase is the one that was hashed. */
export function isPassphrase(typed: string, hash: string): Promise<boolean> {
  return inThread<boolean>("argon2Verify", { password: sameForm(typed) || " ", hash });
}

const thread = `const { parentPort, workerData } = require("node:worker_threads");
require(workerData.module)[workerData.task](workerData.input).then((answer) => parentPort.postMessage(answer));`;

/** Runs in a thread of its own: a hash takes a tenth of a second and more, and the live reading must not wait for it. */
function inThread<T>(task: "argon2id" | "argon2Verify", input: object): Promise<T> {
  const module = createRequire(import.meta.url).resolve("hash-wasm");
  const worker = new Worker(thread, { eval: true, workerData: { module, task, input } });
  return new Promise((resolve, reject) => {
    worker.once("message", (answer: T) => {
      resolve(answer);
      void worker.terminate();
    });
    worker.once("error", reject);
    worker.once("exit", (code) => reject(new Error(`The thread of a passphrase ended with code ${code}.`)));
  });
}
