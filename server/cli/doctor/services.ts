import { X509Certificate } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { message, messageOf } from "../../../calibration/message.ts";
import { closesBench } from "../../checks/bench-closed.ts";
import { holdsUntil } from "../../checks/holds-until.ts";
import { LedgerError } from "../../ledger/error.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { balanceLabel } from "../../station/balance-label.ts";
import { checkRepository } from "../../station/check-repository.ts";
import type { Finding } from "./finding.ts";

/** Of each balance whether its newest checks still hold. */
export async function checksDue(ledger: Ledger, now: Date): Promise<Finding[]> {
  const { all } = await checkRepository(ledger, () => now);
  const newest = new Map(all.filter(closesBench).map((check) => [`${check.of} ${check.kind}`, check]));
  if (newest.size === 0) return [{ good: true, message: message("doctor.checks.none") }];
  const due = new Map<string, number>();
  for (const check of newest.values())
    if (holdsUntil(check) < now.getTime()) due.set(check.of, (due.get(check.of) ?? 0) + 1);
  if (due.size === 0) return [{ good: true, message: message("doctor.checks") }];
  return [...due].map(([of, checks]) => ({
    good: false,
    message: message("doctor.checks.due", { of: balanceLabel(of), checks }),
  }));
}

/** Whether the shared ledger answers; nothing where the bench shares none. */
export async function database(databaseUrl: string | undefined, now: Date): Promise<Finding[]> {
  if (!databaseUrl) return [];
  try {
    const { openSharedForReading } = await import("../../ledger/shared/postgres-reading.ts");
    const shared = await openSharedForReading({
      databaseUrl,
      now: () => now,
      bench: "doctor",
    });
    const { place } = shared;
    await shared.close();
    return [{ good: true, message: message("doctor.database", { place }) }];
  } catch (error) {
    if (!(error instanceof LedgerError)) throw error;
    return [{ good: false, message: message("doctor.database.not-read", { message: messageOf(error) }) }];
  }
}

const soonMs = 30 * 86_400_000;

/** The certificate that the bench made for the room; nothing where it has made none. */
export function certificate(folder: string, now: Date): Finding[] {
  const file = join(folder, "room-certificate.pem");
  if (!existsSync(file)) return [];
  let until: string;
  try {
    until = new Date(new X509Certificate(readFileSync(file)).validTo).toISOString().slice(0, 10);
  } catch {
    return [{ good: false, message: message("doctor.certificate.not-read", { file }) }];
  }
  const good = Date.parse(until) - now.getTime() > soonMs;
  return [{ good, message: message(good ? "doctor.certificate" : "doctor.certificate.ends", { until }) }];
}
