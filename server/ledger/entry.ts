import { hash } from "node:crypto";
import { canonicalJson } from "./canonical-json.ts";
import type { BodyOf, Kind } from "./kinds.ts";

/** Where an entry was first written, when a bench handed it over from a ledger of its own. */
export interface Origin {
  seq: number;
  prevHash: string;
  hash: string;
}

/** One event, as it stands in the ledger for good. */
export interface EntryOf<K extends Kind> {
  /** place in the chain: 1, 2, 3 … without a gap */
  seq: number;
  /** unique for ever; also the key by which saving twice stores once */
  id: string;
  /** the bench that saw it happen */
  bench: string;
  /** when, ISO 8601 with milliseconds, UTC */
  at: string;
  kind: K;
  /** what it is about: a piece, a balance, a reference piece … */
  subject: string;
  body: BodyOf<K>;
  /** set when the entry came from another ledger */
  origin?: Origin;
  /** hash of the entry before, 64 hex digits; 64 zeros before the first */
  prevHash: string;
  hash: string;
}

/** Any entry; `entry.kind` tells which body it has. */
export type Entry = { [K in Kind]: EntryOf<K> }[Kind];

/** What is hashed of an entry; body and origin as canonical JSON text, the origin null at the bench itself. */
export interface EntryText {
  seq: number;
  id: string;
  bench: string;
  at: string;
  kind: string;
  subject: string;
  body: string;
  origin: string | null;
}

/** The hash "before the first entry". */
export const noHash = "0".repeat(64);

/** The canonical JSON of everything in the entry but the chain: what is hashed, and a leaf of the tree. */
export function contentText(entry: EntryText): string {
  return (
    `{"at":${JSON.stringify(entry.at)},"bench":${JSON.stringify(entry.bench)},"body":${entry.body},` +
    `"id":${JSON.stringify(entry.id)},"kind":${JSON.stringify(entry.kind)},` +
    (entry.origin === null ? "" : `"origin":${entry.origin},`) +
    `"seq":${entry.seq},"subject":${JSON.stringify(entry.subject)}}`
  );
}

/** SHA-256 of `contentText`, hex. `body` and `origin` are canonical already. */
export function contentHash(entry: EntryText): string {
  return hash("sha256", contentText(entry), "hex");
}

/**
 * Hash of an entry: SHA-256 over the canonical JSON {"content", "prev"}. In two steps, so that one record can be
 * proved to stand in the chain by the content hashes of its neighbours, without showing what the neighbours say.
 */
export function chainHash(content: string, prevHash: string): string {
  return hash("sha256", canonicalJson({ content, prev: prevHash }), "hex");
}
