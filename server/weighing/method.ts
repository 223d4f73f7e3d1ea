import { Refusal } from "./refusal.ts";

/** The three ways to weigh a displaced mass. Common practice; the words are those of the trade. */
export type Method = "hung" | "displaced" | "flask";

/** A reading that a method needs. */
export type NeededRole = "dry" | "immersed" | "rise" | "flask-full" | "flask-with-piece";

/** Readings that every method may hold beside those it needs: the balance with the load away, and the piece dried again. */
export const rolesBeside = ["zero", "dry-after"] as const;

/** What a captured reading stands for in its method. */
export type Role = NeededRole | (typeof rolesBeside)[number];

interface MethodWords {
  name: string;
  /** the readings it needs, in the order they are taken */
  roles: readonly NeededRole[];
}

export const methods: Record<Method, MethodWords> = {
  hung: { name: "hung from the balance", roles: ["dry", "immersed"] },
  displaced: { name: "beaker on the pan", roles: ["dry", "rise"] },
  flask: { name: "flask", roles: ["dry", "flask-full", "flask-with-piece"] },
};

export const roleNames: Record<Role, string> = {
  dry: "dry",
  immersed: "immersed",
  rise: "rise of the beaker",
  "flask-full": "flask full of water",
  "flask-with-piece": "flask with the piece, topped up",
  zero: "zero",
  "dry-after": "dry, afterwards",
};

/** The roles a method may hold; a reading under another role belongs to another method. */
export function takes(method: Method, role: Role): boolean {
  return [...methods[method].roles, ...rolesBeside].includes(role);
}

/** True for one of the three ways to weigh. */
export function isMethod(text: string): text is Method {
  return Object.hasOwn(methods, text);
}

/** True for the name of a reading that some method takes. */
export function isRole(text: string): text is Role {
  return Object.hasOwn(roleNames, text);
}

/** Throws Refusal when the method has no such reading. */
export function mustTake(method: Method, role: Role): void {
  if (takes(method, role)) return;
  const roles = methods[method].roles.map((one) => roleNames[one]).join(", ");
  throw new Refusal(
    `The method "${methods[method].name}" has no ${roleNames[role]} reading. It takes: ${roles}.`,
  );
}
