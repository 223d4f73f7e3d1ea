import { Refusal } from "../../../calibration/refusal.ts";

/** Outline of a piece, in millimetres. */
export type Shape =
  | { kind: "disc"; diameterMm: number; thicknessMm: number }
  | { kind: "bar"; lengthMm: number; widthMm: number; heightMm: number }
  | { kind: "ring"; outerMm: number; innerMm: number; widthMm: number };

function dimensions(shape: Shape): number[] {
  return Object.values(shape).filter((value) => typeof value === "number");
}

function checked(shape: Shape): Shape {
  for (const mm of dimensions(shape)) if (!(mm > 0)) throw new Refusal("composite.refusal.length", { mm });
  if (shape.kind === "ring" && shape.innerMm >= shape.outerMm)
    throw new Refusal(
      "composite.refusal.ring",
      { inner_mm: shape.innerMm, outer_mm: shape.outerMm },
      "inner",
    );
  return shape;
}

/** Volume left in mm³ when the outline loses a skin of even thickness everywhere; 0 when nothing is left. */
export function volumeInside(shape: Shape, skinMm: number): number {
  const less = (mm: number) => Math.max(0, mm - 2 * skinMm);
  if (shape.kind === "disc") return (Math.PI / 4) * less(shape.diameterMm) ** 2 * less(shape.thicknessMm);
  if (shape.kind === "bar") return less(shape.lengthMm) * less(shape.widthMm) * less(shape.heightMm);
  const outer = less(shape.outerMm);
  const inner = shape.innerMm + 2 * skinMm;
  return outer > inner ? (Math.PI / 4) * (outer ** 2 - inner ** 2) * less(shape.widthMm) : 0;
}

/** Volume of the outline in mm³. Refuses a length that is not above zero, or a ring without a wall. */
export function volumeOf(shape: Shape): number {
  return volumeInside(checked(shape), 0);
}

/** Thickness in mm of an even skin that takes the share (0…1) of the outline's volume. */
export function skinThickness(shape: Shape, volumeShare: number): number {
  const whole = volumeOf(shape);
  let [thin, thick] = [0, Math.min(...dimensions(shape)) / 2];
  if (shape.kind === "ring") thick = Math.min(shape.widthMm / 2, (shape.outerMm - shape.innerMm) / 4);
  for (let i = 0; i < 24; i++) {
    const middle = (thin + thick) / 2;
    if (1 - volumeInside(shape, middle) / whole < volumeShare) thin = middle;
    else thick = middle;
  }
  return (thin + thick) / 2;
}
