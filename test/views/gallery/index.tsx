import type { Frame } from "../../../views/page.tsx";
import { plots } from "./plots.tsx";

/** One page as it may look on some day; the names are file names of the pictures. */
export interface Shown {
  name: string;
  frame: Frame;
}

const base = { csrfToken: "gallery", demo: true } as const;

/** Every page in the states worth looking at, filled with invented things. */
export const gallery: readonly Shown[] = [
  { name: "plots", frame: { ...base, title: "Plots", path: "/", main: plots } },
];
