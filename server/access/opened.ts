import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { Access } from "./access.ts";
import { type Certificate, givenCertificate, ownCertificate } from "./certificate.ts";
import { People } from "./people.ts";
import { type Room, roomAt, roomNames } from "./room.ts";
import type { RoomSettings } from "./room-settings.ts";

/** How often sessions whose time is over are looked for, ms: their streams end then. */
const sweepMs = 5000;

/** What an address for the room needs, once its files were read. */
export interface OpenedAccess {
  access: Access;
  /** undefined behind a proxy */
  certificate: Certificate | undefined;
  /** the room as it listens on this port */
  at: (port: number) => Room;
  close(): void;
}

/**
 * Reads people and certificate from the folder, or from the given files, and makes what is not there yet.
 * Throws Refusal for a file that is damaged, not good now, or can be read by others.
 */
export async function openAccess(settings: RoomSettings, folder: string): Promise<OpenedAccess> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const names = roomNames(settings);
  const access = new Access(new People(join(folder, "people.json")), Date.now);
  const sweeping = setInterval(() => access.sessions.sweep(), sweepMs);
  sweeping.unref();
  const certificate = await certificateFor(settings, folder, names);
  return {
    access,
    certificate,
    at: (port) => roomAt(settings, names, port, certificate),
    close: () => clearInterval(sweeping),
  };
}

async function certificateFor(
  { given, publicAddress }: RoomSettings,
  folder: string,
  names: readonly string[],
): Promise<Certificate | undefined> {
  if (publicAddress) return undefined;
  return given ? givenCertificate(given, new Date()) : ownCertificate(folder, names, new Date());
}
