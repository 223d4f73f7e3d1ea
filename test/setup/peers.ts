import { peers, provide } from "./debian.ts";

/** What some tests are checked against: a PostgreSQL to share a ledger in, and another reader of PDF. */
export default function setup(): void {
  provide(peers.postgresql, peers.poppler);
}
