import { message } from "../../calibration/message.ts";
import { massBesideLimit } from "./amounts.ts";
import { atLeast, type CheckedBy, type CheckResult, shownGrams } from "./check.ts";

export interface ZeroReturnTest {
  /** what the empty pan or hanger shows before the load went on and after it came off, g */
  zeros: readonly { before: string; after: string }[];
  readabilityGrams: number;
  /** largest difference to pass, g; one last place when left out (common practice) */
  mostGrams?: number;
}

export interface ZeroReturnFound {
  largestGrams: number;
  times: number;
}

/** Does the balance come back to its zero after a load? Throws Refusal without a pair of zeros. */
export function zeroReturn(test: ZeroReturnTest, checked: CheckedBy): CheckResult<ZeroReturnFound> {
  atLeast(1, test.zeros);
  const moved = test.zeros.map(({ before, after }) => shownGrams(after) - shownGrams(before));
  const worst = moved.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
  const most = test.mostGrams ?? test.readabilityGrams;
  const passed = Math.abs(worst) <= most * (1 + 1e-9); // decimal text: 0.0002 − 0.0001 is not exactly 0.0001
  const { found, limit } = massBesideLimit(worst, most);
  return {
    ...checked,
    kind: "zero-return",
    passed,
    says: message("bench-check.zero-return.found", { off: found, passed: String(passed), limit }),
    todo: message(passed ? "bench-check.zero-return.passed" : "bench-check.zero-return.failed"),
    found: { largestGrams: Math.abs(worst), times: moved.length },
  };
}
