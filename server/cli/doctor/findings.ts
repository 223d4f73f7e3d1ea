import { accessSync, constants, existsSync, statfsSync, statSync } from "node:fs";
import { message, messageOf } from "../../../calibration/message.ts";
import { listScales } from "../../../drivers/hid/scales.ts";
import { listPorts } from "../../../drivers/ports.ts";
import { listPluggedSensors } from "../../../drivers/sensors/plugged-sensors.ts";
import { keyFileIn, ledgerFile } from "../../ledger/data-folder.ts";
import { LedgerError } from "../../ledger/error.ts";
import { openLedger } from "../../ledger/open-ledger.ts";
import { pinnedKey, pinnedKeyFile } from "../../ledger/pinned-key.ts";
import { publicKeyId } from "../../ledger/signing-key.ts";
import type { Finding } from "./finding.ts";
import { certificate, checksDue, database } from "./services.ts";

/** Below this much room a ledger is asked about, bytes: photos of some hundred pieces. */
const leastRoomBytes = 500e6;

/** Everything the doctor looks at on this machine, in the order it is told. */
export async function findings(folder: string, now: Date): Promise<Finding[]> {
  return [
    runtime(),
    ...rightsOf(folder),
    ...room(folder),
    ...(await ledger(folder, now)),
    ...key(folder),
    ...certificate(folder, now),
    ...(await database(process.env.DATABASE_URL, now)),
    ...devices(),
  ];
}

function runtime(): Finding {
  const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
  const good = major > 20 || (major === 20 && minor >= 19);
  return {
    good,
    message: message(good ? "doctor.node" : "doctor.node.old", { version: process.versions.node }),
  };
}

function rightsOf(folder: string): Finding[] {
  if (!existsSync(folder)) return [{ good: true, message: message("doctor.folder.none", { folder }) }];
  const good = may(folder, constants.R_OK | constants.W_OK);
  return [{ good, message: message(good ? "doctor.folder" : "doctor.folder.no-right", { folder }) }];
}

function room(folder: string): Finding[] {
  if (!existsSync(folder)) return [];
  const { bavail, bsize } = statfsSync(folder);
  const gigabytes = (bavail * bsize) / 1e9;
  const good = bavail * bsize >= leastRoomBytes;
  return [{ good, message: message(good ? "doctor.room" : "doctor.room.little", { gigabytes }) }];
}

/** The ledger is opened for reading only; a bench that runs on it goes on. */
async function ledger(folder: string, now: Date): Promise<Finding[]> {
  const file = ledgerFile(folder);
  if (!existsSync(file)) return [{ good: true, message: message("doctor.ledger.none") }];
  try {
    const opened = await openLedger({ file, now: () => now, bench: "doctor", readOnly: true });
    try {
      const keyId = pinnedKey(folder) ?? undefined;
      const found = await opened.verify(keyId === undefined ? {} : { keyId });
      const [newest] = await opened.entries({ newestFirst: true, limit: 1 });
      const ahead = newest ? (Date.parse(newest.at) - now.getTime()) / 1000 : 0;
      return [
        found.good
          ? { good: true, message: message("doctor.ledger", { entries: found.entries }) }
          : { good: false, message: message("doctor.ledger.not-good", { message: found.message }) },
        ...(ahead > 60
          ? [{ good: false, message: message("doctor.clock.behind", { seconds: Math.round(ahead) }) }]
          : []),
        ...(await checksDue(opened, now)),
      ];
    } finally {
      await opened.close();
    }
  } catch (error) {
    if (!(error instanceof LedgerError)) throw error;
    return [
      {
        good: false,
        message: message("doctor.ledger.not-opened", { message: messageOf(error) }),
      },
    ];
  }
}

/** The key that signs, and the one that is trusted: a successor is no fault here, the ledger says whether it counts. */
function key(folder: string): Finding[] {
  const file = keyFileIn(folder);
  if (!existsSync(ledgerFile(folder))) return [];
  if (!existsSync(file)) return [{ good: false, message: message("doctor.key.none", { file }) }];
  const mode = statSync(file).mode & 0o777;
  if ((mode & 0o077) !== 0)
    return [{ good: false, message: message("doctor.key.readable", { file, mode: mode.toString(8) }) }];
  const [own, pinned, pin] = [keyIn(file), pinnedKey(folder), pinnedKeyFile(folder)];
  if (own === null) return [{ good: false, message: message("doctor.key.none", { file }) }];
  if (pinned === null)
    return [{ good: false, message: message("doctor.key.not-pinned", { key: own, file: pin }) }];
  return [{ good: true, message: message("doctor.key", { key: own, pinned, same: `${own === pinned}` }) }];
}

function keyIn(file: string): string | null {
  try {
    return publicKeyId(file);
  } catch {
    return null;
  }
}

function devices(): Finding[] {
  const rights = constants.R_OK | constants.W_OK;
  const ports = listPorts().map(({ path }) => ({ path, good: may(path, rights) }));
  const scales = listScales().map(({ path }) => ({ path, good: may(path, constants.R_OK) }));
  const sensors = listPluggedSensors().map(({ path }) => ({ path, good: may(path, constants.R_OK) }));
  const all = [...ports, ...scales, ...sensors];
  if (all.length === 0) return [{ good: true, message: message("doctor.ports.none") }];
  return all.map(({ path: port, good }) => ({
    good,
    message: message(good ? "doctor.port" : "doctor.port.no-right", { port }),
  }));
}

function may(path: string, rights: number): boolean {
  try {
    accessSync(path, rights);
    return true;
  } catch {
    return false;
  }
}
