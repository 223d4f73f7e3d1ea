import { peers, provide } from "./debian.ts";

/** What the browser tests need. */
export default function setup(): void {
  provide(peers.chromium);
}
