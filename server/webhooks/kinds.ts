import { z } from "zod";
import { words } from "../ledger/shapes.ts";

export const webhookKinds = {
  /** addresses that are told of what happens from here on; the newest counts */
  webhooks: z.strictObject({ urls: z.array(words).max(8) }),
};
