import type { Code } from "../../calibration/message.ts";

/** What false pieces are mostly made of, by the plain names a counter uses (common practice); asked about in this order. */
export const plainNames: Readonly<Record<string, Code>> = {
  "el-cu": "plan.plain-name.el-cu",
  "brass-c260": "plan.plain-name.brass-c260",
  nisilver: "plan.plain-name.nisilver",
  "cuni-25": "plan.plain-name.cuni-25",
  "el-pb": "plan.plain-name.el-pb",
  "w-pure": "plan.plain-name.w-pure",
  "steel-c": "plan.plain-name.steel-c",
  "ag-999": "plan.plain-name.ag-999",
};
