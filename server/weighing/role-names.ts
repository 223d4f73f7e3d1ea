import { type MethodName, methods, type Role, rolesOf, takes } from "../methods/index.ts";
import { Refusal } from "./refusal.ts";

/** Readings as entries and refusals name them in English. */
export const roleNames: Record<Role, string> = {
  dry: "dry",
  immersed: "immersed",
  rise: "rise of the beaker",
  "flask-full": "flask full of water",
  "flask-with-piece": "flask with the piece, topped up",
  zero: "zero",
  "dry-after": "dry, afterwards",
};

/** Throws Refusal when the method has no such reading. */
export function mustTake(method: MethodName, role: Role): void {
  if (takes(method, role)) return;
  const roles = rolesOf(method)
    .map((one) => roleNames[one])
    .join(", ");
  throw new Refusal(
    `The method "${methods[method].called}" has no ${roleNames[role]} reading. It takes: ${roles}.`,
  );
}
