import "preact";

/** How the answer is put in place; names from htmx 4. Modifiers may follow after a space: "outerHTML swap:0s". */
export type Swap =
  | "innerHTML"
  | "outerHTML"
  | "innerMorph"
  | "outerMorph"
  | "beforebegin"
  | "afterbegin"
  | "beforeend"
  | "afterend"
  | "delete"
  | "none";

/**
 * The htmx attributes this project uses, typed. TypeScript accepts any hyphenated JSX attribute, so a misspelt
 * name compiles; the test of the frame therefore checks every rendered hx- name against htmx's own list.
 */
export interface HxAttributes {
  "hx-get"?: string;
  "hx-post"?: string;
  "hx-put"?: string;
  "hx-delete"?: string;
  "hx-trigger"?: string;
  "hx-target"?: string;
  "hx-swap"?: Swap | `${Swap} ${string}`;
  "hx-swap-oob"?: string;
  "hx-select"?: string;
  "hx-include"?: string;
  "hx-vals"?: string;
  "hx-vals:inherited"?: string;
  "hx-push-url"?: "true" | "false" | string;
  "hx-replace-url"?: "true" | "false" | string;
  "hx-sync"?: string;
  "hx-confirm"?: string;
  "hx-indicator"?: string;
  "hx-disable"?: string;
  "hx-encoding"?: "multipart/form-data";
  "hx-preserve"?: boolean | "true";
  "hx-config"?: string;
  "hx-sse:connect"?: string;
  "hx-sse:close"?: string;
}

declare module "preact" {
  interface Attributes extends HxAttributes {}
}
