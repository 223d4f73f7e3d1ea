import { validDays } from "./balance-profile.ts";
import type { CheckKind } from "./check.ts";

/** Checks made before use hold for a day. Common practice. */
const dailyDays = 1;
const dayMs = 86_400_000;

/** The moment (ms since 1970) from which a check is due again; `at` is ISO 8601. */
export const holdsUntil = ({ kind, at }: { kind: CheckKind; at: string }): number =>
  Date.parse(at) + (validDays[kind] ?? dailyDays) * dayMs;
